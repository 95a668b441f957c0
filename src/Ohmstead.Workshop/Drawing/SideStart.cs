namespace Ohmstead.Workshop.Drawing;

/// <summary>A first layout: each line in a row of its own, in the order in which one meets them walking out from the windings.</summary>
internal static class SideStart
{
    /// <summary>Passes of averaging that settle the columns.</summary>
    private const int Passes = 60;

    public static SideState Of(SideGraph graph)
    {
        var state = new SideState(graph);
        SetColumns(state);
        var seen = new bool[graph.Lines.Count];
        var row = 0;
        foreach (var line in state.PortLines())
            row = Walk(state, line, seen, row);
        for (var e = 0; e < seen.Length; e++)
            if (!seen[e])
                row = Walk(state, e, seen, row);
        state.SortPortRows();
        return state;
    }

    /// <summary>The same for a side with twins: the first of each pair above, the second mirrored below, all else between.</summary>
    public static SideState Mirrored(SideGraph graph, SideTwins twins)
    {
        var state = Of(graph);
        var (first, second) = (twins.Windings.Select(t => t.First).ToHashSet(), twins.Windings.Select(t => t.Second).ToList());
        for (var w = 0; w < state.Stack.Length; w++)
            SpreadSliders(state, w);
        int Place(int w) =>
            first.Contains(w) ? w
            : second.IndexOf(w) is >= 0 and var n ? (3 * state.Stack.Length) - n
            : state.Stack.Length + w;
        Array.Sort(state.Stack, (a, b) => (graph.Windings[a].CoreIndex, Place(a)).CompareTo((graph.Windings[b].CoreIndex, Place(b))));
        foreach (var w in first)
            state.IsFlipped[w] = true;
        var keys = state.Rows.Select(r => r + state.Rows.Length).ToArray();
        foreach (var (a, b) in twins.Lines)
            (keys[a], keys[b]) = (state.Rows[a], (4 * state.Rows.Length) - state.Rows[a]);
        var order = Enumerable.Range(0, keys.Length).OrderBy(e => keys[e]).ToArray();
        for (var n = 0; n < order.Length; n++)
            state.Rows[order[n]] = n;
        state.SortPortRows();
        return state;
    }

    /// <summary>The first half of the sliders of a winding as near to its `from` as they may stand, the others as far.</summary>
    private static void SpreadSliders(SideState state, int winding)
    {
        var order = state.PortOrder[winding];
        var count = state.Graph.Windings[winding].Sliders.Count;
        if (count < 2)
            return;
        for (var s = 0; s < count; s++)
        {
            var step = s < count / 2 ? -1 : 1;
            for (var at = Array.IndexOf(order, ~s); at + step > 0 && at + step < order.Length - 1; at += step)
            {
                (order[at], order[at + step]) = (order[at + step], order[at]);
                if (state.IsOrderAllowed(winding))
                    continue;
                (order[at], order[at + step]) = (order[at + step], order[at]);
                break;
            }
        }
    }

    private static int Walk(SideState state, int first, bool[] seen, int row)
    {
        var stack = new Stack<int>([first]);
        while (stack.TryPop(out var e))
        {
            if (seen[e])
                continue;
            seen[e] = true;
            state.Rows[e] = row++;
            var (a, b) = (state.Graph.Lines[e].First.Node, state.Graph.Lines[e].Last.Node);
            for (var f = seen.Length - 1; f >= 0; f--)
            {
                var line = state.Graph.Lines[f];
                if (seen[f] || line.First.Kind == EndKind.Port)
                    continue;
                if (Meets(line, a) || Meets(line, b))
                    stack.Push(f);
            }
        }
        return row;
    }

    private static bool Meets(SideLine line, int node) => node >= 0 && (line.First.Node == node || line.Last.Node == node);

    /// <summary>Columns in the order of potentials: ports at 0, the edge at 1, each upright wire the mean of its neighbours.</summary>
    private static void SetColumns(SideState state)
    {
        var graph = state.Graph;
        var level = new double[graph.Nodes.Count];
        Array.Fill(level, 0.5);
        for (var pass = 0; pass < Passes; pass++)
        {
            var (sum, count) = (new double[level.Length], new int[level.Length]);
            foreach (var line in graph.Lines)
            {
                Add(line.First.Node, line.Last);
                Add(line.Last.Node, line.First);
            }
            for (var v = 0; v < level.Length; v++)
                if (count[v] > 0)
                    level[v] = sum[v] / count[v];

            void Add(int node, LineEnd other)
            {
                if (node < 0)
                    return;
                sum[node] += other.Kind switch
                {
                    EndKind.Node => level[other.Node],
                    EndKind.Outer => 1,
                    _ => 0,
                };
                count[node]++;
            }
        }
        var order = Enumerable.Range(0, level.Length).OrderBy(v => level[v]).ToArray();
        for (var n = 0; n < order.Length; n++)
            state.Columns[order[n]] = n + 2;
    }
}
