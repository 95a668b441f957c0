using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>Sets what frames a page: its title with the unit's tag, and the lines to sign on.</summary>
internal sealed class MastheadLayout(TextLayout text)
{
    private readonly Typeface type = Typeface.Get();

    public Fragment Set(Masthead head, double width)
    {
        var style = new TextStyle(18, true, Inks.Text);
        var tag = type.Clean(head.Tag);
        var tagWidth = Math.Min(type.WidthOf(tag, style), width / 3);
        var title = Fragment.Stack(text.Paragraph(head.Title, width - tagWidth - 50, new(27, true, Inks.Text)));
        return new Fragment(
            title.Height + 12,
            (page, x, y) =>
            {
                title.Draw(page, x, y);
                var left = x + width - tagWidth - 28;
                page.DrawRectangle(new XPen(Inks.Text, 1.2), left, y + 3, tagWidth + 28, 29);
                page.DrawRectangle(new XSolidBrush(Inks.Text), left, y + 3, 8, 29);
                type.Draw(page, type.Lines(tag, tagWidth + 1, style)[0], left + 17, y + 24, style);
                page.DrawLine(new XPen(Inks.Text, 2.2), x, y + title.Height + 5, x + width, y + title.Height + 5);
            }
        );
    }

    public Fragment Sign(Signatures block, double width)
    {
        const double gutter = 24;
        var column = (width - (gutter * (block.Under.Length - 1))) / block.Under.Length;
        var style = new TextStyle(text.PointsOf(Size.Small), false, Inks.Soft);
        return new Fragment(
            44,
            (page, x, y) =>
            {
                for (var n = 0; n < block.Under.Length; n++)
                {
                    var left = x + (n * (column + gutter));
                    page.DrawLine(new XPen(Inks.Text, 0.9), left, y + 30, left + column, y + 30);
                    type.Draw(page, type.Clean(block.Under[n]), left, y + 42, style);
                }
            }
        );
    }
}
