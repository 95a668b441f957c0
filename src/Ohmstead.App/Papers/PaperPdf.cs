using System.Globalization;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Shops;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Ohmstead.App.Papers;

/// <summary>A paper as PDF.</summary>
internal static class PaperPdf
{
    /// <summary>Sets the paper on pages and writes them.</summary>
    /// <param name="paperSize"><see cref="Shop.Letter"/> or <see cref="Shop.A4"/>.</param>
    /// <param name="photos">The photos by hash, as the store draws them for print; those left out are said to be missing.</param>
    /// <param name="at">When it was made; the same paper at the same time gives the same pages, PDFsharp's ids apart.</param>
    public static byte[] Write(Paper paper, string paperSize, IReadOnlyDictionary<string, byte[]> photos, DateTimeOffset at)
    {
        var sheet = SheetOf(paperSize);
        using var pictures = new Pictures(photos);
        using var document = new PdfDocument();
        document.Info.Title = Typeface.Get().Clean($"{paper.Title}, {paper.Tag}");
        document.Info.CreationDate = at.UtcDateTime;
        document.Language = "en";
        var pages = Pages(paper, sheet, pictures);
        for (var n = 0; n < pages.Count; n++)
            Draw(document, sheet, paper, pages[n], n + 1, pages.Count);
        using var stream = new MemoryStream();
        document.Save(stream);
        return stream.ToArray();
    }

    /// <summary>How many pages a paper takes.</summary>
    public static int PagesOf(Paper paper, string paperSize)
    {
        using var pictures = new Pictures(new Dictionary<string, byte[]>());
        return Pages(paper, SheetOf(paperSize), pictures).Count;
    }

    private static Sheet SheetOf(string paperSize) => paperSize == Shop.A4 ? Sheet.A4 : Sheet.Letter;

    private static List<List<Piece>> Pages(Paper paper, Sheet sheet, Pictures pictures) =>
        Paginate([.. new Setter(pictures, sheet, paper.IsLarge).Set(paper.Blocks, sheet.Measure)], sheet);

    /// <summary>Which pieces stand on which page: those that hold together stay together where a page can hold them.</summary>
    private static List<List<Piece>> Paginate(List<Piece> pieces, Sheet sheet)
    {
        List<List<Piece>> pages =
        [
            [],
        ];
        var room = sheet.Bottom - sheet.Top;
        var left = room;
        for (var n = 0; n < pieces.Count; n++)
        {
            while (pieces[n].Instead is { } others && HeldFrom(pieces, n) > left)
            {
                pieces.RemoveAt(n);
                pieces.InsertRange(n, others);
            }
            var held = HeldFrom(pieces, n);
            if (pages[^1].Count > 0 && held > left && (held <= room || pieces[n].Height > left))
            {
                pages.Add([]);
                left = room;
            }
            var piece = pieces[n];
            if (piece.Page is not null)
            {
                if (pages[^1].Count > 0)
                    pages.Add([]);
                pages[^1].Add(piece);
                pages.Add([]);
                left = room;
                continue;
            }
            if (piece.EndsPage)
            {
                if (pages[^1].Count > 0)
                    pages.Add([]);
                left = room;
                continue;
            }
            if (pages[^1].Count == 0)
            {
                if (piece.IsSpace)
                    continue;
                if (pages.Count > 1 && piece.Header is { } header)
                {
                    pages[^1].Add(header);
                    left -= header.Height;
                }
            }
            pages[^1].Add(piece);
            left -= piece.Height;
        }
        if (pages.Count > 1 && pages[^1].Count == 0)
            pages.RemoveAt(pages.Count - 1);
        return pages;
    }

    /// <summary>Height of a piece and of those that it holds.</summary>
    private static double HeldFrom(List<Piece> pieces, int first)
    {
        var end = first;
        while (end < pieces.Count - 1 && pieces[end].HoldsNext)
            end++;
        return pieces[first..(end + 1)].Sum(p => p.Height);
    }

    private static void Draw(PdfDocument document, Sheet sheet, Paper paper, List<Piece> pieces, int number, int count)
    {
        if (pieces.Count == 1 && pieces[0].Page is { } own)
            sheet = own;
        var page = document.AddPage();
        (page.Width, page.Height) = (XUnit.FromPoint(sheet.Width), XUnit.FromPoint(sheet.Height));
        using var graphics = XGraphics.FromPdfPage(page);
        var y = sheet.Top;
        foreach (var piece in pieces)
        {
            piece.Draw(graphics, sheet.Margin, y);
            y += piece.Height;
        }
        DrawFoot(graphics, sheet, paper, number, count);
    }

    private static void DrawFoot(XGraphics graphics, Sheet sheet, Paper paper, int number, int count)
    {
        var (type, points) = (Typeface.Get(), paper.IsLarge ? Setter.LeastLarge : 9);
        var y = sheet.Bottom + 14;
        graphics.DrawLine(new XPen(Sheet.Line, 0.8), sheet.Margin, y, sheet.Width - sheet.Margin, y);
        // A page for itself needs no number, and its name stands at its head.
        var end = paper.IsLarge && count == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $"page {number} of {count}");
        var endWidth = type.WidthOf(end, points, false);
        type.Draw(graphics, type.Clean(paper.Foot), sheet.Margin, y + points + 5, points, true, Sheet.Ink);
        type.Draw(graphics, end, sheet.Width - sheet.Margin - endWidth, y + points + 5, points, false, Sheet.Soft);
        if (paper.IsLarge)
            return;
        var middle = type.Lines(
            $"{paper.Title} · {paper.Tag}",
            sheet.Measure - type.WidthOf(paper.Foot, points, true) - endWidth - 36,
            points,
            false
        )[0];
        type.Draw(
            graphics,
            middle,
            sheet.Width - sheet.Margin - endWidth - 14 - type.WidthOf(middle, points, false),
            y + points + 5,
            points,
            false,
            Sheet.Soft
        );
    }
}
