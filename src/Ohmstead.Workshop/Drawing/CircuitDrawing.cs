namespace Ohmstead.Workshop.Drawing;

/// <summary>Draws a layout with what is laid over it.</summary>
public static class CircuitDrawing
{
    private const double Margin = 12;

    /// <summary>
    /// The drawing: each element, slider and terminal once, as a group with its id; wires by terminal; then what is laid over.
    /// </summary>
    public static DrawingList Draw(CircuitLayout layout, Overlay overlay)
    {
        var marks = new List<Mark>();
        var painter = new ElementPainter(layout, overlay);
        var mains = new SidePainter(layout.Mains, layout.Cores.HalfGap, -1, painter);
        var posts = new SidePainter(layout.Posts, layout.Cores.HalfGap, 1, painter);
        marks.AddRange(CorePainter.Bars(layout.Cores, layout.Names));
        marks.AddRange(
            NetPainter.Draw(
                [
                    .. mains.Wires(),
                    .. posts.Wires(),
                    .. layout.Cores.Bridges.SelectMany(b => b.Wires.Select(w => new NetWire(w.Net, w.Points))),
                ],
                mains.WindingPins().Concat(posts.WindingPins()).ToHashSet(),
                layout.Names
            )
        );
        marks.AddRange(CorePainter.Bridges(layout.Cores, painter));
        marks.AddRange(mains.Groups());
        marks.AddRange(posts.Groups());
        if (overlay.Path is { } path)
            marks = [.. marks.Select(m => m is Group g ? g with { Tone = ToneOf(g, path) } : m)];
        marks.AddRange(new OverlayPainter(layout, overlay).Draw(marks));
        var bounds = marks.Count == 0 ? default : marks.Select(m => m.Extent).Aggregate((a, b) => a.With(b)).Grown(Margin);
        return new(layout.Sheet.Title, bounds, [.. marks]);
    }

    private static Tone ToneOf(Group group, MeasuredPath path) =>
        group.Kind == GroupKind.Element
            ? path.Parts.Any(p => p.Id == group.Id)
                ? Tone.Measured
                : Tone.Hushed
            : path.Terminals.Contains(group.Id)
                ? Tone.Measured
                : Tone.Hushed;
}

/// <summary>A piece of wire of a terminal.</summary>
internal sealed record NetWire(string Net, Spot[] Points);
