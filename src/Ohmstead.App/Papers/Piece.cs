using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>A part of a page that is not broken: its height, and how it is drawn with its top left corner somewhere.</summary>
/// <param name="Height">Space it takes [pt].</param>
/// <param name="Draw">Draws it at a place on a page.</param>
/// <param name="HoldsNext">It does not stand last on a page: what follows it comes too.</param>
/// <param name="Header">Drawn again first when this piece begins a page; null for nothing.</param>
/// <param name="IsSpace">Left out at the top of a page.</param>
/// <param name="Instead">What is set in its place where it does not fit below what is already on the page; null for nothing else.</param>
/// <param name="Page">The page that it has for itself; null for a piece among others.</param>
/// <param name="EndsPage">What follows begins a new page.</param>
internal sealed record Piece(
    double Height,
    Action<XGraphics, double, double> Draw,
    bool HoldsNext = false,
    Piece? Header = null,
    bool IsSpace = false,
    IReadOnlyList<Piece>? Instead = null,
    Sheet? Page = null,
    bool EndsPage = false
)
{
    /// <summary>Nothing, so high.</summary>
    public static Piece Space(double height) => new(height, static (_, _, _) => { }, IsSpace: true);

    /// <summary>Nothing, so high, between a heading and what it heads.</summary>
    public static Piece Gap(double height) => Space(height) with { HoldsNext = true, IsSpace = false };
}

/// <summary>Shapes that stand before a word and say the same as it.</summary>
internal static class Shapes
{
    /// <summary>Draws the shape of a weight, centred.</summary>
    public static void Draw(XGraphics page, Workshop.Papers.Weight weight, double x, double y, double size)
    {
        var half = size / 2;
        switch (weight)
        {
            case Workshop.Papers.Weight.Good:
                page.DrawEllipse(new XSolidBrush(Sheet.Good), x - half, y - half, size, size);
                break;
            case Workshop.Papers.Weight.Look:
                page.DrawPolygon(
                    new XSolidBrush(Sheet.Look),
                    [new(x, y - half), new(x + half, y + half), new(x - half, y + half)],
                    XFillMode.Winding
                );
                break;
            case Workshop.Papers.Weight.Stop:
                page.DrawRectangle(new XSolidBrush(Sheet.Stop), x - half, y - half, size, size);
                break;
            case Workshop.Papers.Weight.Absent:
                page.DrawEllipse(new XPen(Sheet.Soft, size / 7), x - half, y - half, size, size);
                break;
        }
    }

    /// <summary>The ink that goes with a weight.</summary>
    public static XColor Ink(Workshop.Papers.Weight weight) =>
        weight switch
        {
            Workshop.Papers.Weight.Good => Sheet.Good,
            Workshop.Papers.Weight.Look => Sheet.Look,
            Workshop.Papers.Weight.Stop => Sheet.Stop,
            Workshop.Papers.Weight.Absent => Sheet.Soft,
            _ => Sheet.Ink,
        };
}
