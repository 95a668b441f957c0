namespace Ohmstead.Workshop.Drawing;

/// <summary>Draws cores as parallel bars, and the leakage paths in the middle.</summary>
internal static class CorePainter
{
    private static readonly double[] Bar = [-8, 0, 8];

    public static IEnumerable<Mark> Bars(CorePlacement cores, DrawnNames names)
    {
        for (var n = 0; n < cores.Bars.Count; n++)
        {
            var (id, top, bottom) = cores.Bars[n];
            var marks = new List<Mark>(Bar.Select(x => new Polyline(Role.Core, [new(x, top), new(x, bottom)])));
            var isUnderIron = n == 0 && cores.Iron is not null;
            if (isUnderIron)
                marks.Add(new Polyline(Role.Core, [new(0, Math.Min(top, cores.Iron!.Value.Y)), new(0, top)]));
            marks.Add(
                new Text(
                    Role.Small,
                    names.Terminal(id),
                    new(isUnderIron ? -12 : 0, top - 6),
                    isUnderIron ? Anchor.End : Anchor.Middle,
                    ItemSize.SmallSize
                )
            );
            yield return new Group(GroupKind.Core, id, names.Terminal(id), [], [.. marks]);
        }
    }

    public static IEnumerable<Mark> Bridges(CorePlacement cores, ElementPainter painter)
    {
        foreach (var b in cores.Bridges)
            yield return painter.OnLine(painter.ItemOf(b.Path), b.At, b.IsFromLeft);
        if (cores.Iron is { } iron && cores.Bridges.Count > 0)
        {
            var net = cores.Bridges.SelectMany(b => b.Wires).First(w => w.Points[0] == iron).Net;
            yield return painter.Terminal(net, iron);
        }
    }
}
