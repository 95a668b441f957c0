using System.Globalization;
using System.Net;
using System.Text;
using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>A label as SVG, its letters those of whatever opens it, held to the width they have on paper.</summary>
internal static class LabelSvg
{
    /// <summary>Sets the label and writes it.</summary>
    public static string Write(Label label)
    {
        var surface = new Surface();
        LabelLayout.Set(surface, label);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"62mm\" height=\"29mm\" viewBox=\"0 0 {LabelLayout.Wide:0.###} {LabelLayout.High:0.###}\" font-family=\"Arial, sans-serif\">\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n{surface.Drawn}</svg>\n"
        );
    }

    private sealed class Surface : ILabelSurface
    {
        public StringBuilder Drawn { get; } = new();

        public void Box(double x, double y, double width, double height) =>
            Drawn.Append(
                CultureInfo.InvariantCulture,
                $"<rect x=\"{x:0.###}\" y=\"{y:0.###}\" width=\"{width:0.###}\" height=\"{height:0.###}\"/>\n"
            );

        public void Text(string words, double x, double y, TextStyle style)
        {
            if (words.Length == 0)
                return;
            var width = Typeface.Get().WidthOf(words, style);
            Drawn.Append(
                CultureInfo.InvariantCulture,
                $"<text x=\"{x:0.###}\" y=\"{y:0.###}\" font-size=\"{style.Points:0.#}\" textLength=\"{width:0.##}\" lengthAdjust=\"spacingAndGlyphs\"{(style.IsBold ? " font-weight=\"bold\"" : "")}{(style.Ink == XColors.White ? " fill=\"#fff\"" : "")}>{WebUtility.HtmlEncode(words)}</text>\n"
            );
        }
    }
}
