namespace Ohmstead.Workshop.Drawing;

/// <summary>
/// One way to lay out a side on a grid: the row of each line, the column of each upright wire, the order and direction of the
/// windings. Columns: 0 a port, 1 beside it, then the upright wires, last the edge.
/// </summary>
internal sealed class SideState
{
    private readonly int[] _portLines;
    private readonly int[] _portRows;
    private readonly int[] _number;

    public SideState(SideGraph graph)
    {
        Graph = graph;
        Rows = new int[graph.Lines.Count];
        Columns = [.. Enumerable.Range(0, graph.Nodes.Count).Select(n => n + 2)];
        Stack = [.. Enumerable.Range(0, graph.Windings.Count)];
        IsFlipped = new bool[graph.Windings.Count];
        PortOrder = [.. graph.Windings.Select(FirstOrder)];
        var ports = graph.CoreLines.Count + PortOrder.Sum(o => o.Length);
        (_portLines, _portRows, _number) = (new int[ports], new int[ports], new int[(2 * graph.Lines.Count) + 2]);
    }

    public SideGraph Graph { get; }

    public int[] Rows { get; }

    /// <summary>Column of each upright wire; each has its own.</summary>
    public int[] Columns { get; }

    /// <summary>The windings from top to bottom.</summary>
    public int[] Stack { get; }

    /// <summary>Windings whose `from` is below.</summary>
    public bool[] IsFlipped { get; }

    /// <summary>For each winding its ports from `from` to `to`: fixed ones as themselves, slider s as ~s.</summary>
    public int[][] PortOrder { get; }

    /// <summary>Makes this the same as another state of the same graph.</summary>
    public void Take(SideState other)
    {
        other.Rows.CopyTo(Rows, 0);
        other.Columns.CopyTo(Columns, 0);
        other.Stack.CopyTo(Stack, 0);
        other.IsFlipped.CopyTo(IsFlipped, 0);
        for (var w = 0; w < PortOrder.Length; w++)
            other.PortOrder[w].CopyTo(PortOrder[w], 0);
    }

    public int ColumnOf(LineEnd end) =>
        end.Kind switch
        {
            EndKind.Port => 0,
            EndKind.Free => 1,
            EndKind.Node => Columns[end.Node],
            _ => Graph.Nodes.Count + 2,
        };

    public WindingPort PortOf(int winding, int code) =>
        code >= 0 ? Graph.Windings[winding].Fixed[code] : Graph.Windings[winding].Sliders[~code];

    /// <summary>The lines that start at the core or a winding, from top to bottom.</summary>
    public IEnumerable<int> PortLines()
    {
        foreach (var line in Graph.CoreLines)
            yield return line;
        foreach (var w in Stack)
        foreach (var port in PortsDown(w))
            yield return port.Line;
    }

    /// <summary>The ports of a winding from top to bottom.</summary>
    public IEnumerable<WindingPort> PortsDown(int winding)
    {
        var order = PortOrder[winding];
        for (var n = 0; n < order.Length; n++)
            yield return PortOf(winding, order[IsFlipped[winding] ? order.Length - 1 - n : n]);
    }

    /// <summary>Gives the rows that lines from ports occupy to these lines in their order.</summary>
    public void SortPortRows()
    {
        var next = 0;
        foreach (var line in Graph.CoreLines)
            _portLines[next++] = line;
        foreach (var w in Stack)
        {
            var order = PortOrder[w];
            for (var n = 0; n < order.Length; n++)
                _portLines[next++] = PortOf(w, order[IsFlipped[w] ? order.Length - 1 - n : n]).Line;
        }
        for (var n = 0; n < next; n++)
            _portRows[n] = Rows[_portLines[n]];
        Array.Sort(_portRows);
        for (var n = 0; n < next; n++)
            Rows[_portLines[n]] = _portRows[n];
    }

    /// <summary>Numbers the rows anew without gaps.</summary>
    public void CloseRows()
    {
        if (Rows.Length == 0)
            return;
        Array.Clear(_number);
        foreach (var r in Rows)
            _number[r] = 1;
        var next = 0;
        for (var r = 0; r < _number.Length; r++)
            _number[r] = _number[r] == 1 ? next++ : -1;
        for (var n = 0; n < Rows.Length; n++)
            Rows[n] = _number[Rows[n]];
    }

    /// <summary>True when each slider stands between two fixed ports that its travel reaches.</summary>
    public bool IsOrderAllowed(int winding)
    {
        var order = PortOrder[winding];
        if (order[0] < 0 || order[^1] < 0)
            return false;
        for (var n = 1; n < order.Length - 1; n++)
        {
            if (order[n] >= 0)
                continue;
            var slider = PortOf(winding, order[n]);
            var (before, after) = (n - 1, n + 1);
            while (order[before] < 0)
                before--;
            while (order[after] < 0)
                after++;
            if (PortOf(winding, order[before]).Turn > slider.TurnTo || PortOf(winding, order[after]).Turn < slider.Turn)
                return false;
        }
        return true;
    }

    private static int[] FirstOrder(SideWinding winding)
    {
        var order = Enumerable.Range(0, winding.Fixed.Count).ToList();
        for (var s = 0; s < winding.Sliders.Count; s++)
        {
            var middle = (winding.Sliders[s].Turn + winding.Sliders[s].TurnTo) / 2;
            var after = Enumerable
                .Range(0, order.Count - 1)
                .Last(n => n == 0 || (order[n] >= 0 ? winding.Fixed[order[n]].Turn : 0) <= middle);
            order.Insert(after + 1, ~s);
        }
        return [.. order];
    }
}
