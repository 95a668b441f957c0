using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>Sets what frames a page: its title with the unit's tag, and the lines to sign on.</summary>
internal sealed class MastheadSetter(Setter setter)
{
    private readonly Typeface type = Typeface.Get();

    public Piece Set(Masthead head, double width)
    {
        const double points = 27;
        const double tagPoints = 18;
        var tag = type.Clean(head.Tag);
        var tagWidth = Math.Min(type.WidthOf(tag, tagPoints, true), width / 3);
        var title = Setter.Stack([.. setter.Paragraph(head.Title, width - tagWidth - 50, points, true, Sheet.Ink)]);
        return new Piece(
            title.Height + 12,
            (page, x, y) =>
            {
                title.Draw(page, x, y);
                var left = x + width - tagWidth - 28;
                page.DrawRectangle(new XPen(Sheet.Ink, 1.2), left, y + 3, tagWidth + 28, 29);
                page.DrawRectangle(new XSolidBrush(Sheet.Ink), left, y + 3, 8, 29);
                type.Draw(page, type.Lines(tag, tagWidth + 1, tagPoints, true)[0], left + 17, y + 24, tagPoints, true, Sheet.Ink);
                page.DrawLine(new XPen(Sheet.Ink, 2.2), x, y + title.Height + 5, x + width, y + title.Height + 5);
            }
        );
    }

    public Piece Sign(Signatures block, double width)
    {
        const double gutter = 24;
        var column = (width - (gutter * (block.Under.Length - 1))) / block.Under.Length;
        return new Piece(
            44,
            (page, x, y) =>
            {
                for (var n = 0; n < block.Under.Length; n++)
                {
                    var left = x + (n * (column + gutter));
                    page.DrawLine(new XPen(Sheet.Ink, 0.9), left, y + 30, left + column, y + 30);
                    type.Draw(page, type.Clean(block.Under[n]), left, y + 42, setter.PointsOf(Size.Small), false, Sheet.Soft);
                }
            }
        );
    }
}
