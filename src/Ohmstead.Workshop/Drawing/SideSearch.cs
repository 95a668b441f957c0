namespace Ohmstead.Workshop.Drawing;

/// <summary>
/// Looks for a good layout of a side by simulated annealing over rows, columns and windings, from a drawn order that follows
/// the circuit outwards. The chances come from a fixed seed: the same sheet gives the same drawing.
/// </summary>
internal sealed class SideSearch
{
    /// <summary>Enough for the circuits of such units; more finds nothing better on the demo sheets.</summary>
    private const int MostSteps = 14000;

    /// <summary>Bounds the time for large circuits: one step costs the square of the number of lines.</summary>
    private const long MostWork = 60_000_000;

    private const int Runs = 3;
    private const uint FirstSeed = 12345;
    private const double Hottest = 40;

    /// <summary>For a start that is good already.</summary>
    private const double Warm = 15;

    private const double Coldest = 0.4;

    private readonly SideGraph _graph;
    private readonly SideCost _cost;
    private uint _seed;

    private SideSearch(SideGraph graph, SideCost cost) => (_graph, _cost) = (graph, cost);

    /// <summary>The best layout found.</summary>
    public static SideState Run(SideGraph graph, SideTwins twins, SideCost cost)
    {
        var search = new SideSearch(graph, cost);
        var best = SideStart.Of(graph);
        if (graph.Lines.Count < 2)
            return best;
        var bestCost = cost.Of(best);
        for (var run = 0; run < Runs; run++)
        {
            search._seed = FirstSeed + (uint)run;
            var isMirrored = run == 0 && twins.Lines.Count > 0;
            var start = isMirrored ? SideStart.Mirrored(graph, twins) : SideStart.Of(graph);
            var (found, foundCost) = search.Anneal(start, isMirrored ? Warm : Hottest);
            if (foundCost < bestCost - 1e-9)
                (best, bestCost) = (found, foundCost);
        }
        return best;
    }

    private (SideState State, double Cost) Anneal(SideState state, double heat)
    {
        var cost = _cost.Of(state);
        var (best, tried, bestCost) = (new SideState(_graph), new SideState(_graph), cost);
        best.Take(state);
        var steps = Steps(_graph.Lines.Count);
        var cooling = steps < 2 ? 1 : Math.Pow(Coldest / heat, 1.0 / steps);
        for (var step = 0; step < steps; step++, heat *= cooling)
        {
            tried.Take(state);
            if (!Change(tried))
                continue;
            tried.SortPortRows();
            tried.CloseRows();
            var triedCost = _cost.Of(tried);
            if (triedCost > cost && Chance() > Math.Exp((cost - triedCost) / heat))
                continue;
            (state, tried, cost) = (tried, state, triedCost);
            if (cost >= bestCost - 1e-9)
                continue;
            best.Take(state);
            bestCost = cost;
        }
        return (best, bestCost);
    }

    private static int Steps(int lines) => (int)Math.Min(Math.Min(MostSteps, 450L * lines), MostWork / Runs / ((long)lines * lines));

    private bool Change(SideState s) =>
        Pick(12) switch
        {
            < 4 => MoveLine(s),
            < 6 => NewRow(s),
            6 => SwapRows(s),
            7 => TurnRows(s),
            8 or 9 => SwapColumns(s),
            10 => MoveWinding(s),
            _ => MoveSlider(s),
        };

    private bool MoveLine(SideState s)
    {
        var (e, f) = (Pick(s.Rows.Length), Pick(s.Rows.Length));
        if (s.Rows[e] == s.Rows[f])
            return false;
        s.Rows[e] = s.Rows[f];
        return true;
    }

    private bool NewRow(SideState s)
    {
        var e = Pick(s.Rows.Length);
        var at = s.Rows[Pick(s.Rows.Length)];
        for (var n = 0; n < s.Rows.Length; n++)
            if (s.Rows[n] >= at)
                s.Rows[n]++;
        s.Rows[e] = at;
        return true;
    }

    private bool SwapRows(SideState s)
    {
        var (a, b) = (s.Rows[Pick(s.Rows.Length)], s.Rows[Pick(s.Rows.Length)]);
        if (a == b)
            return false;
        for (var n = 0; n < s.Rows.Length; n++)
            s.Rows[n] =
                s.Rows[n] == a ? b
                : s.Rows[n] == b ? a
                : s.Rows[n];
        return true;
    }

    /// <summary>Turns a block of rows upside down, windings within it too.</summary>
    private bool TurnRows(SideState s)
    {
        var (a, b) = (s.Rows[Pick(s.Rows.Length)], s.Rows[Pick(s.Rows.Length)]);
        if (a == b)
            return false;
        var (top, bottom) = (Math.Min(a, b), Math.Max(a, b));
        for (var n = 0; n < s.Rows.Length; n++)
            if (s.Rows[n] >= top && s.Rows[n] <= bottom)
                s.Rows[n] = top + bottom - s.Rows[n];
        foreach (var w in s.Stack)
            if (s.PortsDown(w).All(p => s.Rows[p.Line] >= top && s.Rows[p.Line] <= bottom))
                s.IsFlipped[w] = !s.IsFlipped[w];
        var rows = s.Graph.Windings.Select(w => s.Rows[w.Fixed[0].Line]).ToArray();
        var cores = s.Graph.Windings;
        Array.Sort(s.Stack, (x, y) => (cores[x].CoreIndex, rows[x], x).CompareTo((cores[y].CoreIndex, rows[y], y)));
        return true;
    }

    private bool SwapColumns(SideState s)
    {
        if (s.Columns.Length < 2)
            return false;
        var column = 2 + Pick(s.Columns.Length - 1);
        var (v, w) = (Array.IndexOf(s.Columns, column), Array.IndexOf(s.Columns, column + 1));
        (s.Columns[v], s.Columns[w]) = (column + 1, column);
        return true;
    }

    private bool MoveWinding(SideState s)
    {
        if (s.Stack.Length == 0)
            return false;
        var at = Pick(s.Stack.Length);
        if (
            at + 1 == s.Stack.Length
            || s.Graph.Windings[s.Stack[at]].CoreIndex != s.Graph.Windings[s.Stack[at + 1]].CoreIndex
            || Pick(2) == 0
        )
            s.IsFlipped[s.Stack[at]] = !s.IsFlipped[s.Stack[at]];
        else
            (s.Stack[at], s.Stack[at + 1]) = (s.Stack[at + 1], s.Stack[at]);
        return true;
    }

    private bool MoveSlider(SideState s)
    {
        if (s.Stack.Length == 0)
            return false;
        var w = Pick(s.Stack.Length);
        var order = s.PortOrder[w];
        var at = Pick(order.Length - 1);
        if (order[at] >= 0 && order[at + 1] >= 0)
            return false;
        (order[at], order[at + 1]) = (order[at + 1], order[at]);
        return s.IsOrderAllowed(w);
    }

    /// <summary>Numbers as Knuth's linear congruential generator gives them: even enough here, and the same everywhere.</summary>
    private uint Next()
    {
        _seed = (_seed * 1664525u) + 1013904223u;
        return _seed >> 8;
    }

    private int Pick(int count) => (int)(Next() % (uint)count);

    private double Chance() => Next() / 16777216.0;
}
