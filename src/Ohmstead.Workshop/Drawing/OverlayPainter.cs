namespace Ohmstead.Workshop.Drawing;

/// <summary>Draws the two probes, and values between terminals, over a drawing.</summary>
internal static class OverlayPainter
{
    private const double Disc = 11;
    private const double LineHeight = 24;
    private const double TextSize = 16;

    /// <param name="outer">Terminals at the edge, beside which a bracket finds room.</param>
    public static IEnumerable<Mark> Draw(Overlay overlay, IReadOnlySet<string> outer, IReadOnlyList<Mark> drawn)
    {
        var pairs = overlay.Values.ToList();
        if (overlay.Probe is { } probe)
            pairs.Insert(0, new(probe.First, probe.Second, probe.Expected, probe.Measured));
        var terminals = drawn
            .OfType<Group>()
            .Where(g => g.Kind == GroupKind.Terminal)
            .ToDictionary(g => g.Id, StringComparer.Ordinal);
        if (pairs.Count == 0 || terminals.Count == 0)
            yield break;
        var whole = drawn.Select(m => m.Extent).Aggregate((a, b) => a.With(b));
        var (left, right, below) = (whole.X - LineHeight, whole.Right + LineHeight, whole.Bottom + (2 * LineHeight));
        for (var n = 0; n < pairs.Count; n++)
        {
            var pair = pairs[n];
            if (!terminals.TryGetValue(pair.First, out var a) || !terminals.TryGetValue(pair.Second, out var b))
                continue;
            var (from, to) = (a.Pins[0].At, b.Pins[0].At);
            var isProbe = n == 0 && overlay.Probe is not null;
            var marks = new List<Mark>();
            if (outer.Contains(pair.First) && outer.Contains(pair.Second) && Math.Sign(from.X) == Math.Sign(to.X))
            {
                var side = Math.Sign(from.X);
                var x = side > 0 ? right : left;
                var width = Bracket(marks, pair, from.Y, to.Y, x, side);
                if (side > 0)
                    right += width;
                else
                    left -= width;
            }
            else
            {
                Below(marks, pair, whole.X + (whole.Width / 2), below);
                below += LineHeight;
            }
            if (isProbe)
                marks.AddRange([.. Probe("1", from), .. Probe("2", to)]);
            yield return new Group(
                GroupKind.Overlay,
                pair.First + "/" + pair.Second,
                TitleOf(pair),
                [a.Pins[0], b.Pins[0]],
                [.. marks]
            );
        }
    }

    /// <summary>A bracket at the edge from one post to the other, its text in the middle. Gives its width.</summary>
    private static double Bracket(List<Mark> marks, PairValue pair, double fromY, double toY, double x, int side)
    {
        var lines = Lines(pair).ToList();
        var middle = (fromY + toY) / 2;
        marks.Add(
            new Polyline(
                Role.Probe,
                [new(x - (side * 8), fromY), new(x, fromY), new(x, toY), new(x - (side * 8), toY)],
                true
            )
        );
        var y = middle - ((lines.Count - 1) * LineHeight / 2) + 5;
        foreach (var line in lines)
        {
            marks.Add(
                new Text(Role.Value, line, new(x + (side * 10), y), side > 0 ? Anchor.Start : Anchor.End, TextSize)
            );
            y += LineHeight;
        }
        return lines.Select(l => TextWidth.Of(l, TextSize)).DefaultIfEmpty(0).Max() + (2 * LineHeight);
    }

    /// <summary>A line under the drawing that names both terminals.</summary>
    private static void Below(List<Mark> marks, PairValue pair, double x, double y) =>
        marks.Add(new Text(Role.Value, TitleOf(pair), new(x, y), Anchor.Middle, TextSize));

    private static IEnumerable<Mark> Probe(string letter, Spot at) =>
        [new Circle(Role.Probe, at, Disc), new Text(Role.ProbeText, letter, new(at.X, at.Y + 5), Anchor.Middle, 14)];

    private static IEnumerable<string> Lines(PairValue pair)
    {
        if (pair.Expected.Length > 0)
            yield return "expected " + pair.Expected;
        if (pair.Measured.Length > 0)
            yield return "measured " + pair.Measured;
    }

    private static string TitleOf(PairValue pair) =>
        $"{pair.First} to {pair.Second}: {string.Join(", ", Lines(pair).DefaultIfEmpty("not read"))}";
}
