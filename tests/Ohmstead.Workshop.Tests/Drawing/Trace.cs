using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;

namespace Ohmstead.Workshop.Tests.Drawing;

/// <summary>Reads a drawing as an eye would: follows its wires and sees what they join. Knows nothing of how it was laid out.</summary>
internal static class Trace
{
    /// <summary>The straight pieces of all wires, with the terminal that the drawing says they belong to.</summary>
    public static List<(string Net, Spot A, Spot B)> Segments(DrawingList drawing) =>
        [
            .. drawing
                .Groups.Where(g => g.Kind == GroupKind.Net)
                .SelectMany(g => g.Marks.OfType<Polyline>().SelectMany(p => p.Points.Zip(p.Points.Skip(1), (a, b) => (g.Id, a, b)))),
        ];

    /// <summary>Everything in which the drawing differs from the sheet; empty when it is the same circuit.</summary>
    public static List<string> Differences(DrawingList drawing, TypeSheet sheet)
    {
        var wrong = new List<string>();
        var terminals = drawing.Groups.Where(g => g.Kind == GroupKind.Terminal).ToList();
        var elements = drawing.Groups.Where(g => g.Kind == GroupKind.Element).ToList();
        Compare(
            wrong,
            "terminal",
            sheet.Elements.SelectMany(e => e.OtherTerminals.Append(e.From).Append(e.To)).Distinct(),
            terminals.Select(g => g.Id)
        );
        Compare(wrong, "element", Expected(sheet).Keys, elements.Select(g => g.Id));
        if (wrong.Count > 0)
            return wrong;

        var spots = new List<Spot>();
        var parent = new List<int>();
        var segments = Segments(drawing);
        var pieces = segments.Select(s => (First: Add(s.A), Last: Add(s.B))).ToList();
        var circles = terminals.ToDictionary(g => g.Id, g => Add(g.Pins[0].At), StringComparer.Ordinal);
        var pins = elements.SelectMany(g => g.Pins.Select(p => (g.Id, p.Terminal, Node: Add(p.At)))).ToList();
        for (var n = 0; n < pieces.Count; n++)
        {
            Join(pieces[n].First, pieces[n].Last);
            for (var p = 0; p < spots.Count; p++)
                if (IsOn(spots[p], segments[n].A, segments[n].B))
                    Join(p, pieces[n].First);
        }
        for (var p = 0; p < spots.Count; p++)
        for (var q = 0; q < p; q++)
            if (spots[p] == spots[q])
                Join(p, q);

        foreach (var pair in circles.GroupBy(c => Root(c.Value)).Where(g => g.Count() > 1))
            wrong.Add("joined: " + string.Join(", ", pair.Select(c => c.Key)));
        var expected = Expected(sheet);
        foreach (var element in pins.GroupBy(p => p.Id, StringComparer.Ordinal))
        {
            var reached = element.Select(p => circles.FirstOrDefault(c => Root(c.Value) == Root(p.Node)).Key ?? "nothing").ToList();
            if (
                !reached.SequenceEqual(element.Select(p => p.Terminal), StringComparer.Ordinal)
                || !reached
                    .Order(StringComparer.Ordinal)
                    .SequenceEqual(expected[element.Key].Order(StringComparer.Ordinal), StringComparer.Ordinal)
            )
                wrong.Add($"{element.Key} joins {string.Join(", ", reached)}, not {string.Join(", ", expected[element.Key])}");
        }
        return wrong;

        int Add(Spot spot)
        {
            spots.Add(spot);
            parent.Add(parent.Count);
            return parent.Count - 1;
        }

        int Root(int n) => parent[n] == n ? n : parent[n] = Root(parent[n]);

        void Join(int a, int b) => parent[Root(a)] = Root(b);
    }

    /// <summary>Pairs of wires of different terminals that cross.</summary>
    public static int Crossings(DrawingList drawing)
    {
        var segments = Segments(drawing);
        return segments
            .Where(h => h.A.Y == h.B.Y)
            .Sum(h =>
                segments.Count(v =>
                    v.Net != h.Net
                    && v.A.X == v.B.X
                    && v.A.X > Math.Min(h.A.X, h.B.X)
                    && v.A.X < Math.Max(h.A.X, h.B.X)
                    && h.A.Y > Math.Min(v.A.Y, v.B.Y)
                    && h.A.Y < Math.Max(v.A.Y, v.B.Y)
                )
            );
    }

    private static Dictionary<string, string[]> Expected(TypeSheet sheet)
    {
        var pins = new Dictionary<string, string[]>(StringComparer.Ordinal);
        foreach (var e in sheet.Elements)
        {
            pins[e.Id] = e is Winding w ? [w.From, w.To, .. w.Taps.Select(t => t.To)] : [e.From, e.To];
            if (e is Winding wound)
                foreach (var s in wound.Sliders)
                    pins[s.Id] = [s.To];
        }
        return pins;
    }

    private static void Compare(List<string> wrong, string what, IEnumerable<string> wanted, IEnumerable<string> drawn)
    {
        var (a, b) = (wanted.Order(StringComparer.Ordinal).ToList(), drawn.Order(StringComparer.Ordinal).ToList());
        wrong.AddRange(a.Except(b, StringComparer.Ordinal).Select(id => $"{what} {id} is missing"));
        wrong.AddRange(b.Except(a, StringComparer.Ordinal).Select(id => $"{what} {id} is invented"));
        wrong.AddRange(
            b.GroupBy(id => id, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => $"{what} {g.Key} is drawn more than once")
        );
    }

    private static bool IsOn(Spot p, Spot a, Spot b) =>
        (a.X == b.X && p.X == a.X && p.Y >= Math.Min(a.Y, b.Y) && p.Y <= Math.Max(a.Y, b.Y))
        || (a.Y == b.Y && p.Y == a.Y && p.X >= Math.Min(a.X, b.X) && p.X <= Math.Max(a.X, b.X));
}
