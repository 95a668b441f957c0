using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using QRCoder;

namespace Ohmstead.App.Papers;

/// <summary>A label as PDF, 62 by 29 mm, black only: label printers know no gray.</summary>
internal static class LabelPdf
{
    /// <summary>Width and height of the label [mm].</summary>
    private const double WideMillimeters = 62;
    private const double HighMillimeters = 29;

    private const double Edge = 5;
    private const double CodeSize = 68;

    private static readonly Typeface Type = Typeface.Get();

    /// <summary>Sets the label and writes it.</summary>
    public static byte[] Write(Label label, DateTimeOffset at)
    {
        using var document = new PdfDocument();
        document.Info.Title = Type.Clean($"Label, {label.Tag}");
        document.Info.CreationDate = at.UtcDateTime;
        document.Language = "en";
        var page = document.AddPage();
        (page.Width, page.Height) = (XUnit.FromMillimeter(WideMillimeters), XUnit.FromMillimeter(HighMillimeters));
        using (var graphics = XGraphics.FromPdfPage(page))
            if (label.MayBePluggedIn)
                Tested(graphics, label, page.Width.Point, page.Height.Point);
            else
                NotPlugged(graphics, label, page.Width.Point, page.Height.Point);
        using var stream = new MemoryStream();
        document.Save(stream);
        return stream.ToArray();
    }

    private static void Tested(XGraphics page, Label label, double width, double height)
    {
        var room = width - CodeSize - (3 * Edge);
        var y = Edge + Line(page, label.Tag, Edge, Edge - 2, room, 19, true);
        foreach (var line in Type.Lines(label.Title, room, 7, true).Take(2))
            y += Line(page, line, Edge, y, room, 7, true);
        y += Line(page, $"Tested {label.Day}", Edge, y, room, 8, true) + 1;
        foreach (var line in Type.Lines(label.Words, room, 6, false).Take(2))
            y += Line(page, line, Edge, y, room, 6, false);
        page.DrawLine(new XPen(XColors.Black, 0.8), Edge, height - 10.5, Edge + room, height - 10.5);
        Line(page, Label.Foot, Edge, height - 9.5, room, 6, false);
        Code(page, label.Code, width - CodeSize - Edge, (height - CodeSize) / 2);
    }

    private static void NotPlugged(XGraphics page, Label label, double width, double height)
    {
        var black = height * 0.68;
        page.DrawRectangle(XBrushes.Black, 0, 0, width, black);
        Line(page, "Do not", Edge + 2, 3, width, 21, true, isWhite: true);
        Line(page, "plug this in", Edge + 2, 26, width, 21, true, isWhite: true);
        var room = (width - (3 * Edge)) / 2;
        Line(page, label.Tag, Edge, black + 3, room, 17, true);
        var y = black + 2;
        foreach (var line in Type.Lines(label.Words, room, 6, false).Take(2))
            y += Line(page, line, width - Edge - room, y, room, 6, false);
        Line(page, label.Day, width - Edge - room, y, room, 6, false);
    }

    /// <summary>One line, its letters made smaller where it would not fit, and cut where even that is not enough; its height.</summary>
    private static double Line(XGraphics page, string words, double x, double y, double room, double points, bool isBold, bool isWhite = false)
    {
        const double least = 6;
        var clean = Type.Clean(words);
        while (points > least && Type.WidthOf(clean, points, isBold) > room)
            points -= 0.5;
        Type.Draw(page, Type.Lines(clean, room, points, isBold)[0], x, y + points, points, isBold, isWhite ? XColors.White : XColors.Black);
        return points * 1.2;
    }

    private static void Code(XGraphics page, string text, double x, double y)
    {
        using var code = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M, forceUtf8: true);
        var rows = code.ModuleMatrix;
        var cell = CodeSize / rows.Count;
        for (var row = 0; row < rows.Count; row++)
        for (var start = 0; start < rows.Count; start++)
        {
            if (!rows[row][start])
                continue;
            var end = start;
            while (end < rows.Count && rows[row][end])
                end++;
            // A hair more than the cell: no white line between two of them.
            page.DrawRectangle(XBrushes.Black, x + (start * cell), y + (row * cell), ((end - start) * cell) + 0.02, cell + 0.02);
            start = end;
        }
    }
}
