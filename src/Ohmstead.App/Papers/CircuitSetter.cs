using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>Sets a drawing list as vectors.</summary>
internal static class CircuitSetter
{
    /// <summary>Not drawn larger than this [pt a unit]: a small circuit stays a drawing, not a poster.</summary>
    private const double MostScale = 0.8;

    /// <summary>Height of the title over the drawing [pt].</summary>
    private const double TitleHeight = 40;

    /// <summary>The page with the drawing on it: on its side where that makes the drawing larger by more than a little.</summary>
    public static Piece Set(Setter setter, Circuit circuit, Sheet upright)
    {
        const double worthTurning = 1.1;
        var box = circuit.Drawing.Bounds;
        var sheet = ScaleOn(upright.OnItsSide, box) > worthTurning * ScaleOn(upright, box) ? upright.OnItsSide : upright;
        var title = Setter.Stack([.. setter.Set([new Heading(circuit.Title, 1)], sheet.Measure)]);
        var scale = ScaleOn(sheet, box);
        return new Piece(
            sheet.Bottom - sheet.Top,
            (page, x, y) =>
            {
                title.Draw(page, x, y);
                var state = page.Save();
                page.TranslateTransform(x + ((sheet.Measure - (box.Width * scale)) / 2), y + TitleHeight);
                page.ScaleTransform(scale);
                page.TranslateTransform(-box.X, -box.Y);
                foreach (var mark in circuit.Drawing.Marks)
                    Draw(page, mark);
                page.Restore(state);
            },
            Page: sheet
        );
    }

    private static double ScaleOn(Sheet sheet, Box box) =>
        Math.Min(Math.Min(sheet.Measure / box.Width, (sheet.Bottom - sheet.Top - TitleHeight) / box.Height), MostScale);

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
            case Rectangle r:
                if (Fill(r.Role) is { } brush)
                    page.DrawRoundedRectangle(brush, r.Box.X, r.Box.Y, r.Box.Width, r.Box.Height, 2 * r.Round, 2 * r.Round);
                else
                    page.DrawRoundedRectangle(
                        Pen(r.Role, r.IsDashed),
                        r.Box.X,
                        r.Box.Y,
                        r.Box.Width,
                        r.Box.Height,
                        2 * r.Round,
                        2 * r.Round
                    );
                break;
            case Circle c:
                var (left, top, across) = (c.Centre.X - c.Radius, c.Centre.Y - c.Radius, 2 * c.Radius);
                if (Fill(c.Role) is { } inside)
                    page.DrawEllipse(inside, left, top, across, across);
                else
                    page.DrawEllipse(
                        Pen(c.Role, false),
                        c.Role == Role.Terminal ? XBrushes.White : XBrushes.Transparent,
                        left,
                        top,
                        across,
                        across
                    );
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
        var isBold = text.Role is Role.Label or Role.Value or Role.ProbeText;
        var width = type.WidthOf(words, text.Size, isBold);
        var shift = text.Anchor switch
        {
            Anchor.Start => 0,
            Anchor.Middle => width / 2,
            _ => width,
        };
        type.Draw(
            page,
            words,
            text.At.X - shift,
            text.At.Y,
            text.Size,
            isBold,
            text.Role == Role.ProbeText ? XColors.White : Ink(text.Role)
        );
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
            Role.Small or Role.Dimmed => Sheet.Soft,
            Role.Tag or Role.TagEdge or Role.ProbeRed or Role.SuspectLow or Role.SuspectMedium or Role.SuspectHigh => Sheet.Copper,
            _ => Sheet.Ink,
        };
}
