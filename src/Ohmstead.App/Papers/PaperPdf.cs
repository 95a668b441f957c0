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
        var size = PageSize.Of(paperSize);
        using var pictures = new PhotoLayout(photos);
        using var document = new PdfDocument();
        document.Info.Title = Typeface.Get().Clean($"{paper.Title}, {paper.Tag}");
        document.Info.CreationDate = at.UtcDateTime;
        document.Language = paper.Language;
        var pages = Pages(paper, size, pictures);
        for (var n = 0; n < pages.Count; n++)
            Draw(document, size, paper, pages[n], n + 1, pages.Count);
        using var stream = new MemoryStream();
        document.Save(stream);
        return stream.ToArray();
    }

    /// <summary>How many pages a paper takes.</summary>
    public static int PagesOf(Paper paper, string paperSize)
    {
        using var pictures = new PhotoLayout(new Dictionary<string, byte[]>());
        return Pages(paper, PageSize.Of(paperSize), pictures).Count;
    }

    private static List<List<Fragment>> Pages(Paper paper, PageSize size, PhotoLayout photos) =>
        Pagination.Of(new BlockLayout(photos, size, new TextLayout(paper.IsLarge)).Set(paper.Blocks, size.TextWidth), size.TextHeight);

    private static void Draw(PdfDocument document, PageSize size, Paper paper, List<Fragment> fragments, int number, int count)
    {
        if (fragments is [{ OwnPage: { } own }])
            size = own;
        var page = document.AddPage();
        (page.Width, page.Height) = (XUnit.FromPoint(size.Width), XUnit.FromPoint(size.Height));
        using var graphics = XGraphics.FromPdfPage(page);
        Fragment.Stack(fragments).Draw(graphics, PageSize.Margin, PageSize.Top);
        DrawFoot(graphics, size, paper, number, count);
    }

    private static void DrawFoot(XGraphics graphics, PageSize size, Paper paper, int number, int count)
    {
        const double gap = 14;
        var type = Typeface.Get();
        var bold = new TextStyle(paper.IsLarge ? TextLayout.LeastLarge : 9, true, Inks.Text);
        var plain = new TextStyle(bold.Points, false, Inks.Soft);
        var (top, right) = (size.Bottom + gap, size.Width - PageSize.Margin);
        var line = top + bold.Points + 5;
        graphics.DrawLine(new XPen(Inks.Line, 0.8), PageSize.Margin, top, right, top);
        // A page for itself needs no number, and its name stands at its head.
        var end =
            paper.IsLarge && count == 1 ? ""
            : paper.Language == "en" ? string.Create(CultureInfo.InvariantCulture, $"page {number} of {count}")
            : string.Create(CultureInfo.InvariantCulture, $"{number} / {count}");
        var endWidth = type.WidthOf(end, plain);
        type.Draw(graphics, type.Clean(paper.Foot), PageSize.Margin, line, bold);
        type.Draw(graphics, end, right - endWidth, line, plain);
        if (paper.IsLarge)
            return;
        var room = size.TextWidth - type.WidthOf(paper.Foot, bold) - endWidth - 36;
        var middle = type.Lines($"{paper.Title} · {paper.Tag}", room, plain)[0];
        type.Draw(graphics, middle, right - endWidth - gap - type.WidthOf(middle, plain), line, plain);
    }
}
