using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>Sets the drawing of a circuit as vectors, on a page of its own.</summary>
internal static class CircuitPage
{
    /// <summary>Not drawn larger than this [pt a unit]: a small circuit stays a drawing, not a poster.</summary>
    private const double MostScale = 0.8;

    /// <summary>Height of the title over the drawing [pt].</summary>
    private const double TitleHeight = 40;

    /// <summary>The page with the drawing on it: on its side where that makes the drawing larger by more than a little.</summary>
    /// <param name="titleOf">The title, so wide.</param>
    public static Fragment Set(Circuit circuit, PageSize upright, Func<double, Fragment> titleOf)
    {
        const double worthTurning = 1.1;
        var box = circuit.Drawing.Bounds;
        var size = ScaleOn(upright.OnItsSide, box) > worthTurning * ScaleOn(upright, box) ? upright.OnItsSide : upright;
        var (title, scale) = (titleOf(size.TextWidth), ScaleOn(size, box));
        return new Fragment(
            size.TextHeight,
            (page, x, y) =>
            {
                title.Draw(page, x, y);
                var state = page.Save();
                page.TranslateTransform(x + ((size.TextWidth - (box.Width * scale)) / 2), y + TitleHeight);
                page.ScaleTransform(scale);
                page.TranslateTransform(-box.X, -box.Y);
                foreach (var mark in circuit.Drawing.Marks)
                    Draw(page, mark);
                page.Restore(state);
            }
        )
        {
            OwnPage = size,
        };
    }

    private static double ScaleOn(PageSize size, Box box) =>
        Math.Min(Math.Min(size.TextWidth / box.Width, (size.TextHeight - TitleHeight) / box.Height), MostScale);

    private static void Draw(XGraphics page, Mark mark)
    {
        if (mark.Role == Role.Hit)
            return;
        switch (mark)
        {
            case Group group:
                foreach (var inner in group.Marks)
                    Draw(page, inner);
                break;
            case Polyline line when line.Points.Length > 1:
                page.DrawLines(Pen(line.Role, line.IsDashed), [.. line.Points.Select(Point)]);
                break;
            case Rectangle { Box: var b } r:
                page.DrawRoundedRectangle(
                    Fill(r.Role) is null ? Pen(r.Role, r.IsDashed) : null,
                    Fill(r.Role),
                    b.X,
                    b.Y,
                    b.Width,
                    b.Height,
                    2 * r.Round,
                    2 * r.Round
                );
                break;
            case Circle c:
                var inside = Fill(c.Role) ?? (c.Role == Role.Terminal ? XBrushes.White : null);
                var edge = Fill(c.Role) is null ? Pen(c.Role, false) : null;
                page.DrawEllipse(edge, inside, c.Centre.X - c.Radius, c.Centre.Y - c.Radius, 2 * c.Radius, 2 * c.Radius);
                break;
            case Polygon p:
                page.DrawPolygon(Fill(p.Role) ?? new XSolidBrush(Ink(p.Role)), [.. p.Points.Select(Point)], XFillMode.Winding);
                break;
            case Curve c:
                page.DrawBeziers(
                    Pen(c.Role, c.IsDashed),
                    [Point(c.Start), .. c.Pieces.SelectMany(b => new[] { Point(b.Near), Point(b.Far), Point(b.End) })]
                );
                break;
            case Text t:
                DrawText(page, t);
                break;
        }
    }

    private static void DrawText(XGraphics page, Text text)
    {
        var type = Typeface.Get();
        var words = type.Clean(text.Words);
        var style = new TextStyle(
            text.Size,
            text.Role is Role.Label or Role.Value or Role.ProbeText,
            text.Role == Role.ProbeText ? XColors.White : Ink(text.Role)
        );
        var shift = text.Anchor switch
        {
            Anchor.Start => 0,
            Anchor.Middle => type.WidthOf(words, style) / 2,
            _ => type.WidthOf(words, style),
        };
        type.Draw(page, words, text.At.X - shift, text.At.Y, style);
    }

    private static XPoint Point(Spot spot) => new(spot.X, spot.Y);

    private static XPen Pen(Role role, bool isDashed)
    {
        var width = role switch
        {
            Role.Core => 3.2,
            Role.Symbol or Role.Solid or Role.Terminal => 1.9,
            Role.SuspectHigh => 3,
            Role.SuspectMedium => 2.4,
            _ => 1.5,
        };
        var pen = new XPen(Ink(role), width) { LineCap = XLineCap.Round, LineJoin = XLineJoin.Round };
        if (isDashed || role is Role.SuspectLow or Role.SuspectMedium)
            // Round ends would close the gaps, and a leakage path would look like a resistor.
            (pen.LineCap, pen.DashPattern) = (XLineCap.Flat, [2.6, 2]);
        return pen;
    }

    private static XSolidBrush? Fill(Role role) =>
        role switch
        {
            Role.Tag => XBrushes.White,
            Role.Solid or Role.ProbeRed or Role.ProbeBlack or Role.TagEdge => new XSolidBrush(Ink(role)),
            _ => null,
        };

    private static XColor Ink(Role role) =>
        role switch
        {
            Role.Small or Role.Dimmed => Inks.Soft,
            Role.Tag or Role.TagEdge or Role.ProbeRed or Role.SuspectLow or Role.SuspectMedium or Role.SuspectHigh => Inks.Copper,
            _ => Inks.Text,
        };
}
