using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;
using QRCoder;

namespace Ohmstead.App.Papers;

/// <summary>Where everything on a label is, 62 by 29 mm, black only: label printers know no gray.</summary>
internal static class LabelLayout
{
    private const double PointsPerMillimeter = 72 / 25.4;

    /// <summary>Width and height of a label [pt].</summary>
    public const double Wide = 62 * PointsPerMillimeter;
    public const double High = 29 * PointsPerMillimeter;

    private const double Edge = 5;

    /// <summary>The code with its margin: 57 squares of version 8 are 0.42 mm each.</summary>
    public const double CodeSize = 68;

    /// <summary>The smallest letters.</summary>
    private static readonly TextStyle Small = new(6, false, XColors.Black);

    private static readonly Typeface Type = Typeface.Get();

    /// <summary>Draws the whole label.</summary>
    public static void Set(ILabelSurface on, Label label)
    {
        if (label.MayBePluggedIn)
            Tested(on, label);
        else
            NotPlugged(on, label);
        Code(on, label.Code, Wide - CodeSize - Edge, (High - CodeSize) / 2);
    }

    private static void Tested(ILabelSurface on, Label label)
    {
        var room = Wide - CodeSize - (3 * Edge);
        var y = Edge + Line(on, label.Tag, Edge, Edge - 2, room, Bold(19));
        foreach (var line in Type.Lines(label.Title, room, Bold(7)).Take(2))
            y += Line(on, line, Edge, y, room, Bold(7));
        y += Line(on, $"Tested {label.Day}", Edge, y, room, Bold(8)) + 1;
        foreach (var line in Type.Lines(label.Words, room, Small).Take(2))
            y += Line(on, line, Edge, y, room, Small);
        on.Box(Edge, High - 10.9, room, 0.8);
        Line(on, Label.Foot, Edge, High - 9.5, room, Small);
    }

    private static void NotPlugged(ILabelSurface on, Label label)
    {
        const double black = 38;
        var room = Wide - CodeSize - (3 * Edge);
        var white = Bold(16) with { Ink = XColors.White };
        on.Box(0, 0, room + (2 * Edge), black);
        Line(on, "Do not", Edge, 0, room, white);
        Line(on, "plug this in", Edge, 17, room, white);
        var y = black + Line(on, label.Tag, Edge, black, room, Bold(12));
        foreach (var line in Type.Lines(label.Words, room, Bold(9)).Take(2))
            y += Line(on, line, Edge, y, room, Bold(9));
        Line(on, label.Day, Edge, High - 9, room, Small);
    }

    private static TextStyle Bold(double points) => new(points, true, XColors.Black);

    /// <summary>One line, its letters made smaller where it would not fit, and cut where even that is not enough; its height.</summary>
    private static double Line(ILabelSurface on, string words, double x, double y, double room, TextStyle style)
    {
        var clean = Type.Clean(words);
        while (style.Points > Small.Points && Type.WidthOf(clean, style) > room)
            style = style with { Points = style.Points - 0.5 };
        on.Text(Type.Lines(clean, room, style)[0], x, y + style.Points, style);
        return style.Points * 1.2;
    }

    private static void Code(ILabelSurface on, string text, double x, double y)
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
            on.Box(x + (start * cell), y + (row * cell), ((end - start) * cell) + 0.02, cell + 0.02);
            start = end;
        }
    }
}
