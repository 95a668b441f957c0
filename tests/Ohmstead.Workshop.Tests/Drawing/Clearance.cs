using Ohmstead.Workshop.Drawing;

namespace Ohmstead.Workshop.Tests.Drawing;

/// <summary>Finds what lies over what in a drawing, by the boxes of its marks.</summary>
internal static class Clearance
{
    /// <summary>Marks may touch; they may not lie over one another by more than this.</summary>
    private const double Touch = 0.6;

    public static List<string> Overlaps(DrawingList drawing)
    {
        var groups = drawing.Groups.Where(g => g.Kind is GroupKind.Element or GroupKind.Terminal or GroupKind.Core).ToList();
        var names = groups
            .SelectMany(g => g.Marks.OfType<Text>().Select(t => (Name: $"\"{t.Words}\"", Group: "", Net: "", t.Extent)))
            .ToList();
        var signs = groups.SelectMany(Signs).ToList();
        var wires = Trace
            .Segments(drawing)
            .Select(s => (Name: $"wire of {s.Net}", Group: "wires", s.Net, Extent: Box.Of(s.A, s.B).Grown(Touch)))
            .ToList();
        var all = names.Concat(signs).Concat(wires).ToList();
        var found = new List<string>();
        for (var a = 0; a < names.Count + signs.Count; a++)
        for (var b = Math.Max(a + 1, 0); b < all.Count; b++)
        {
            if (all[a].Group.Length > 0 && all[a].Group == all[b].Group)
                continue;
            if (all[a].Net.Length > 0 && all[a].Net == all[b].Net)
                continue;
            if (all[a].Extent.Grown(-Touch).Overlaps(all[b].Extent.Grown(-Touch)))
                found.Add($"{all[a].Name} and {all[b].Name}");
        }
        return found;
    }

    /// <summary>The marks of a sign. A terminal's circle may lie on its own wires; the iron's on the bars of its core.</summary>
    private static IEnumerable<(string Name, string Group, string Net, Box Extent)> Signs(Group g)
    {
        var net = g.Kind switch
        {
            GroupKind.Terminal => g.Id,
            GroupKind.Core => "iron",
            _ => "",
        };
        return g
            .Marks.Where(m => m is not Text && m.Role != Role.Hit)
            .Select(m => ($"the sign of {g.Id}", $"{g.Kind} {g.Id}", net, m.Extent.Grown(Touch)));
    }
}
