using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Ohmstead.App.Papers;

/// <summary>A label as PDF.</summary>
internal static class LabelPdf
{
    /// <summary>Sets the label and writes it.</summary>
    public static byte[] Write(Label label, DateTimeOffset at)
    {
        using var document = new PdfDocument();
        document.Info.Title = Typeface.Get().Clean($"Label, {label.Tag}");
        document.Info.CreationDate = at.UtcDateTime;
        document.Language = "en";
        var page = document.AddPage();
        (page.Width, page.Height) = (XUnit.FromPoint(LabelLayout.Wide), XUnit.FromPoint(LabelLayout.High));
        using (var graphics = XGraphics.FromPdfPage(page))
            LabelLayout.Set(new Surface(graphics), label);
        using var stream = new MemoryStream();
        document.Save(stream);
        return stream.ToArray();
    }

    private sealed class Surface(XGraphics page) : ILabelSurface
    {
        public void Box(double x, double y, double width, double height) => page.DrawRectangle(XBrushes.Black, x, y, width, height);

        public void Text(string words, double x, double y, TextStyle style) => Typeface.Get().Draw(page, words, x, y, style);
    }
}
