namespace Ohmstead.Workshop.Drawing;

/// <summary>Draws the wires of each terminal, with a dot wherever three or more of them meet.</summary>
internal static class NetPainter
{
    /// <param name="pins">Where windings join: one more thing that meets there.</param>
    /// <param name="names">What the terminals are called.</param>
    public static IEnumerable<Mark> Draw(IReadOnlyList<NetWire> wires, IReadOnlySet<Spot> pins, DrawnNames names)
    {
        foreach (var net in wires.GroupBy(w => w.Net, StringComparer.Ordinal))
        {
            var lines = net.Where(w => Length(w.Points) > 0).ToList();
            if (lines.Count == 0)
                continue;
            IEnumerable<Mark> marks = lines.Select(w => new Polyline(Role.Wire, [.. w.Points]));
            yield return new Group(GroupKind.Net, net.Key, names.Terminal(net.Key), [], [.. marks, .. Dots(lines, pins)]);
        }
    }

    private static double Length(Spot[] points) => points.Zip(points.Skip(1), (a, b) => Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y)).Sum();

    private static IEnumerable<Mark> Dots(IReadOnlyList<NetWire> wires, IReadOnlySet<Spot> pins)
    {
        var segments = wires.SelectMany(w => w.Points.Zip(w.Points.Skip(1))).ToList();
        foreach (var spot in wires.SelectMany(w => w.Points).Distinct())
        {
            var arms = new HashSet<(int, int)>();
            foreach (var (a, b) in segments)
            {
                if (!IsOn(spot, a, b))
                    continue;
                if (a != spot)
                    arms.Add((Math.Sign(a.X - spot.X), Math.Sign(a.Y - spot.Y)));
                if (b != spot)
                    arms.Add((Math.Sign(b.X - spot.X), Math.Sign(b.Y - spot.Y)));
            }
            if (arms.Count + (pins.Contains(spot) ? 1 : 0) > 2)
                yield return new Circle(Role.Solid, spot, SymbolSize.Dot);
        }
    }

    private static bool IsOn(Spot p, Spot a, Spot b) =>
        (a.X == b.X && p.X == a.X && p.Y >= Math.Min(a.Y, b.Y) && p.Y <= Math.Max(a.Y, b.Y))
        || (a.Y == b.Y && p.Y == a.Y && p.X >= Math.Min(a.X, b.X) && p.X <= Math.Max(a.X, b.X));
}
