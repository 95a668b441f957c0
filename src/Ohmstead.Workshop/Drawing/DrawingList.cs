using System.Collections.Immutable;

namespace Ohmstead.Workshop.Drawing;

/// <summary>
/// A drawing as a short list of marks that any writer can put on a page: lines, circles, boxes, curves, text, and groups of
/// them. Lengths are abstract units, x to the right, y downwards; a comfortable size on a screen is one unit to one pixel.
/// </summary>
/// <param name="Title">What is drawn, for those who cannot see it.</param>
/// <param name="Bounds">The smallest box around all marks, with a margin.</param>
public sealed record DrawingList(string Title, Box Bounds, ImmutableArray<Mark> Marks)
{
    /// <summary>All groups, the inner ones after the one that holds them.</summary>
    public IEnumerable<Group> Groups => Marks.OfType<Group>().SelectMany(g => g.AllGroups);

    /// <summary>
    /// The part of the drawing around some elements or terminals, for a small screen: what is seen when these are looked at,
    /// values between them included.
    /// </summary>
    /// <param name="ids">Ids of elements or terminals; unknown ones are passed over. With none known, the whole drawing.</param>
    /// <param name="margin">Space left around them.</param>
    public Box Around(IEnumerable<string> ids, double margin = 90)
    {
        var wanted = ids.ToHashSet(StringComparer.Ordinal);
        var boxes = Groups
            .Where(g =>
                g.Kind == GroupKind.Overlay
                    ? g.Pins.All(p => wanted.Contains(p.Terminal))
                    : g.Kind != GroupKind.Net && wanted.Contains(g.Id)
            )
            .Select(g => g.Extent)
            .ToList();
        return boxes.Count == 0 ? Bounds : boxes.Aggregate((a, b) => a.With(b)).Grown(margin).Within(Bounds);
    }
}
