using Ohmstead.Workshop.Papers;

namespace Ohmstead.App.Papers;

/// <summary>Sets words as lines.</summary>
/// <param name="isLarge">No letter is smaller than <see cref="LeastLarge"/>.</param>
internal sealed class TextLayout(bool isLarge)
{
    /// <summary>The smallest letters of a page that is read without glasses [pt].</summary>
    public const double LeastLarge = 14;

    /// <summary>From line to line, in sizes of the letters.</summary>
    private const double Leading = 1.27;

    private readonly Typeface type = Typeface.Get();

    /// <summary>The page is read without glasses.</summary>
    public bool IsLarge => isLarge;

    /// <summary>Letters of a size [pt].</summary>
    public double PointsOf(Size size) =>
        AtLeast(
            size switch
            {
                Size.Large => 13.5,
                Size.Usual => 11,
                _ => 9.5,
            }
        );

    /// <summary>Letters as large as asked for, or as this page needs them [pt].</summary>
    public double AtLeast(double points) => isLarge ? Math.Max(points, LeastLarge) : points;

    /// <summary>Running words of a size.</summary>
    public TextStyle Plain(Size size) => new(PointsOf(size), false, Inks.Text);

    /// <summary>Lines of words, each a fragment.</summary>
    public IEnumerable<Fragment> Paragraph(string words, double width, TextStyle style)
    {
        var lines = type.Lines(words, width, style);
        // No line of a paragraph of two or three is left alone; of a longer one the first two hold together.
        return lines.Select((line, n) => Line(line, style) with { KeepsWithNext = lines.Count > 1 && (n == 0 || n == lines.Count - 2) });
    }

    /// <summary>One line of clean words.</summary>
    public Fragment Line(string line, TextStyle style) =>
        new(style.Points * Leading, (page, x, y) => type.Draw(page, line, x, y + style.Points, style));
}
