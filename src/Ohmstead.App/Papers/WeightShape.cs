using Ohmstead.Workshop.Job;
using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>Shapes that stand before a word and say the same as it.</summary>
internal static class WeightShape
{
    /// <summary>Draws the shape of a weight, centered.</summary>
    public static void Draw(XGraphics page, Weight weight, double x, double y, double size)
    {
        var (half, brush) = (size / 2, new XSolidBrush(Inks.Of(weight)));
        switch (weight)
        {
            case Weight.Good:
                page.DrawEllipse(brush, x - half, y - half, size, size);
                break;
            case Weight.Look:
                page.DrawPolygon(brush, [new(x, y - half), new(x + half, y + half), new(x - half, y + half)], XFillMode.Winding);
                break;
            case Weight.Stop:
                page.DrawRectangle(brush, x - half, y - half, size, size);
                break;
            case Weight.Absent:
                page.DrawEllipse(new XPen(Inks.Of(weight), size / 7), x - half, y - half, size, size);
                break;
        }
    }
}
