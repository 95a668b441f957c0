namespace Ohmstead.Workshop.Drawing;

/// <summary>
/// How far apart the rows of a side must be: names above their lines, the strip below them, and room for the names of windings.
/// </summary>
internal sealed class RowHeights(SideState state, PlacedLine[] lines, string[][] sliders, int[] shown, DrawnNames names)
{
    private const double LeastGap = 40;
    private const double Air = 6;

    /// <summary>Heights of the rows from the first, and the middles of the rooms for the names of the windings.</summary>
    public (double[] Rows, double[] Labels) Compute()
    {
        var count = state.Rows.Length == 0 ? 0 : state.Rows.Max() + 1;
        var rooms = state.Graph.Windings.Select((_, w) => Room(w)).ToArray();
        var rows = new double[count];
        var lineOrder = Enumerable.Range(0, lines.Length).OrderBy(e => state.Rows[e]).ToArray();
        for (var r = 0; r < count; r++)
        {
            if (r > 0)
                rows[r] = rows[r - 1] + LeastGap;
            foreach (var f in lineOrder.Where(f => state.Rows[f] == r))
            foreach (var e in lineOrder.TakeWhile(e => state.Rows[e] < r))
                if (lines[e].FromU < EndOf(f) && lines[f].FromU < EndOf(e))
                    rows[r] = Math.Max(rows[r], rows[state.Rows[e]] + Below(e) + Above(f) + Air);
            foreach (var room in rooms.Where(m => m.Lower == r))
                rows[r] = Math.Max(rows[r], rows[room.Upper] + room.Height);
            rows[r] = Math.Round(rows[r]);
        }
        return (rows, [.. rooms.Select(m => (rows[m.Upper] + m.Below + rows[m.Lower] - m.Above) / 2)]);
    }

    /// <summary>The largest gap between two ports of a winding, best between two that are no sliders.</summary>
    private (int Upper, int Lower, double Below, double Above, double Height) Room(int w)
    {
        var ports = state.PortsDown(w).ToList();
        var best = Enumerable
            .Range(0, ports.Count - 1)
            .OrderBy(n => (ports[n].Slider is null ? 0 : 1) + (ports[n + 1].Slider is null ? 0 : 1))
            .ThenByDescending(n => state.Rows[ports[n + 1].Line] - state.Rows[ports[n].Line])
            .First();
        var (upper, lower) = (ports[best].Line, ports[best + 1].Line);
        var (below, above) = (Below(upper), sliders[lower].Length > 0 || NamesBegin(lower) < LinePacking.FirstBar ? Above(lower) : 6);
        return (
            state.Rows[upper],
            state.Rows[lower],
            below,
            above,
            below + above + WindingLabel.HeightOf(names, state.Graph.Windings[w].Winding) + Air
        );
    }

    /// <summary>A post's name stands beyond the end of its line.</summary>
    private double EndOf(int e) => lines[e].ToU + (lines[e].Line.Last.Kind == EndKind.Outer ? 1 : 0);

    /// <summary>How near to the windings the first name above a line begins.</summary>
    private double NamesBegin(int e) =>
        lines[e]
            .Items.Where(i => i.Item.Element is not null)
            .Select(i => i.U - ItemSize.Of(i.Item).HalfLabel)
            .DefaultIfEmpty(double.MaxValue)
            .Min();

    private double Above(int e)
    {
        var above = Math.Max(sliders[e].Length > 0 ? SliderSign.Above(sliders[e]) : 8, HalfPost(e));
        foreach (var item in lines[e].Items.Where(i => i.Item.Element is not null))
        {
            var size = ItemSize.Of(item.Item);
            above = Math.Max(above, ItemSize.AboveGap + (item.Item.Label.Length * size.TextSize));
        }
        return above;
    }

    private double Below(int e)
    {
        var last = lines[e].Items.Count - (lines[e].Line.Last.Kind == EndKind.Outer ? 1 : 0);
        var hasStrip = last > 0 || sliders[e].Length > 0;
        for (var v = 0; v < shown.Length; v++)
            hasStrip |= shown[v] == e && state.Graph.Nodes[v].ShowsTerminal;
        return Math.Max(hasStrip ? ItemSize.Strip : 8, HalfPost(e));
    }

    /// <summary>Half the height of the name of the post at the end of a line.</summary>
    private double HalfPost(int e) =>
        lines[e].Line.Last.Kind == EndKind.Outer
            ? Math.Max(SymbolSize.Post, lines[e].Items[^1].Item.Label.Length * ItemSize.PostSize / 2) + 2
            : 0;
}
