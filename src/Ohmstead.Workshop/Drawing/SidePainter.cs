namespace Ohmstead.Workshop.Drawing;

/// <summary>Puts a side into the drawing: to the right of the core, or mirrored to its left.</summary>
internal sealed class SidePainter(PlacedSide side, double halfGap, int outward, ElementPainter painter)
{
    private double X(double u) => outward * (halfGap + u);

    private Spot At(double u, double y) => new(X(u), y);

    /// <summary>The wires of this side.</summary>
    public IEnumerable<NetWire> Wires()
    {
        foreach (var node in side.Nodes)
            yield return new(node.Node.Net, [At(node.U, node.Top), At(node.U, node.Bottom)]);
        var sliders = side.Windings.SelectMany(w => w.Winding.Sliders).Select(s => s.Line).ToHashSet();
        for (var e = 0; e < side.Lines.Count; e++)
        {
            var line = side.Lines[e];
            var (at, net) = (sliders.Contains(e) ? SliderSign.Rail : line.FromU, line.Line.FirstNet);
            foreach (var (item, u) in line.Items)
            {
                if (item.Element is not { } element)
                    continue;
                var half = ItemSize.Of(item).Half;
                yield return new(net, [At(at, line.Y), At(u - half, line.Y)]);
                (at, net) = (u + half, item.IsForward ? element.To : element.From);
            }
            yield return new(net, [At(at, line.Y), At(line.ToU, line.Y)]);
        }
    }

    /// <summary>Where windings meet their wires.</summary>
    public IEnumerable<Spot> WindingPins() =>
        side.Windings.SelectMany(w => w.Ports.Where(p => p.Port.Slider is null).Select(p => At(0, p.Y)));

    /// <summary>Elements and terminals of this side.</summary>
    public IEnumerable<Group> Groups()
    {
        foreach (var w in side.Windings)
        {
            yield return painter.Winding(w, X(0), outward);
            foreach (var (port, y) in w.Ports)
                if (port.Slider is { } slider)
                    yield return painter.Slider(w, slider, X(0), y, outward);
        }
        foreach (var line in side.Lines)
        foreach (var item in line.Items)
            yield return Draw(line, item);
        foreach (var node in side.Nodes.Where(n => n.Node.ShowsTerminal))
        {
            yield return painter.Terminal(node.Node.Net, At(node.U, node.CircleY));
        }
    }

    private Group Draw(PlacedLine line, PlacedItem placed)
    {
        var (item, u) = placed;
        if (item.Element is { } element)
            return painter.OnLine(item, At(u, line.Y), item.IsForward == outward > 0);
        return line.Line.Last.Kind == EndKind.Outer && u == line.ToU
            ? painter.Post(item, At(u, line.Y), outward)
            : painter.Terminal(item.Terminal, At(u, line.Y));
    }
}
