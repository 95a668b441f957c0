using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>A part of a page that is not broken over two: its height, and how it is drawn with its top left corner somewhere.</summary>
/// <param name="Height">Space it takes [pt].</param>
/// <param name="Draw">Draws it at a place on a page.</param>
internal sealed record Fragment(double Height, Action<XGraphics, double, double> Draw)
{
    /// <summary>It does not stand last on a page: what follows it comes too.</summary>
    public bool KeepsWithNext { get; init; }

    /// <summary>Drawn again first when this fragment begins a page; null for nothing.</summary>
    public Fragment? RepeatedHeader { get; init; }

    /// <summary>Left out at the top of a page.</summary>
    public bool IsSpace { get; init; }

    /// <summary>What is set in its place where it does not fit below what is already on the page; null for nothing else.</summary>
    public IReadOnlyList<Fragment>? Alternative { get; init; }

    /// <summary>The page that it has for itself; null for a fragment among others.</summary>
    public PageSize? OwnPage { get; init; }

    /// <summary>What follows begins a new page.</summary>
    public bool EndsPage { get; init; }

    /// <summary>Nothing, so high.</summary>
    public static Fragment Space(double height) => new(height, static (_, _, _) => { }) { IsSpace = true };

    /// <summary>Nothing, so high, between a heading and what it heads.</summary>
    public static Fragment Gap(double height) => Space(height) with { KeepsWithNext = true, IsSpace = false };

    /// <summary>A level line so far below the top.</summary>
    public static Fragment Rule(double height, double below, double width, XPen pen) =>
        new(height, (page, x, y) => page.DrawLine(pen, x, y + below, x + width, y + below));

    /// <summary>Fragments one under the other, drawn as one.</summary>
    public static Fragment Stack(params IEnumerable<Fragment> fragments)
    {
        List<Fragment> parts = [.. fragments];
        return new(
            parts.Sum(p => p.Height),
            (page, x, y) =>
            {
                foreach (var part in parts)
                {
                    part.Draw(page, x, y);
                    y += part.Height;
                }
            }
        );
    }

    /// <summary>Fragments beside each other, each so far from the left, drawn as one.</summary>
    public static Fragment Beside(params IEnumerable<(double Left, Fragment Fragment)> fragments)
    {
        List<(double Left, Fragment Fragment)> parts = [.. fragments];
        return new(
            parts.Max(p => p.Fragment.Height),
            (page, x, y) =>
            {
                foreach (var (left, part) in parts)
                    part.Draw(page, x + left, y);
            }
        );
    }
}
