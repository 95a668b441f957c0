using System.Globalization;
using System.Text;
using Ohmstead.Workshop.Words;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using SkiaSharp;

namespace Ohmstead.App.Papers;

/// <summary>The typeface of the papers, handed to PDFsharp once per process: a regular, a bold, and one with more letters for both.</summary>
internal sealed class Typeface : IFontResolver
{
    /// <summary>Drawn for a letter that no face has.</summary>
    public const char Missing = '□';

    private const string RegularFamily = "Paper";
    private const string MoreFamily = "Paper more";
    private static readonly Lazy<Typeface> Only = new(() =>
    {
        var made = new Typeface();
        GlobalFontSettings.FontResolver = made;
        return made;
    });

    private readonly FontFace regular = new("paper-regular");
    private readonly FontFace bold = new("paper-bold");
    private readonly FontFace more = new("paper-more");

    private Typeface() { }

    /// <summary>The one of this process.</summary>
    public static Typeface Get() => Only.Value;

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) =>
        new(
            familyName == MoreFamily ? more.Name
            : bold ? this.bold.Name
            : regular.Name
        );

    /// <inheritdoc/>
    public byte[]? GetFont(string faceName) => new[] { regular, bold, more }.First(f => f.Name == faceName).Bytes;

    /// <summary>The words with what no paper can show made plain: control signs as blanks, unknown letters as <see cref="Missing"/>.</summary>
    public string Clean(string words)
    {
        var clean = new StringBuilder(words.Length);
        for (var n = 0; n < words.Length; n++)
        {
            var letter = words[n];
            if (char.IsSurrogatePair(words, n))
                n++;
            if (char.IsControl(letter) || letter is '\u2028' or '\u2029')
                clean.Append(' ');
            else if (char.GetUnicodeCategory(letter) == UnicodeCategory.Format)
                continue;
            else
                clean.Append(regular.Has(letter) || more.Has(letter) ? letter : Missing);
        }
        return clean.ToString();
    }

    /// <summary>The regular or the bold font, as pixels need it.</summary>
    public SKTypeface Pixels(bool isBold) => (isBold ? bold : regular).Pixels;

    /// <summary>Width of clean words [pt].</summary>
    public double WidthOf(string words, TextStyle style)
    {
        var width = 0.0;
        foreach (var letter in words)
            width += WidthOf(letter, style);
        return width * style.Points;
    }

    private double WidthOf(char letter, TextStyle style)
    {
        var own = style.IsBold ? bold : regular;
        return (own.Has(letter) ? own : more).WidthOf(letter);
    }

    /// <summary>Draws clean words on a base line.</summary>
    public void Draw(XGraphics page, string words, double x, double y, TextStyle style)
    {
        var own = style.IsBold ? bold : regular;
        var brush = new XSolidBrush(style.Ink);
        for (var start = 0; start < words.Length; )
        {
            var isOwn = own.Has(words[start]);
            var end = start + 1;
            while (end < words.Length && own.Has(words[end]) == isOwn)
                end++;
            var run = words[start..end];
            var font = new XFont(
                isOwn ? RegularFamily : MoreFamily,
                style.Points,
                style.IsBold && isOwn ? XFontStyleEx.Bold : XFontStyleEx.Regular
            );
            page.DrawString(run, font, brush, x, y);
            x += WidthOf(run, style);
            start = end;
        }
    }

    /// <summary>Draws clean words on a base line, half of them left and half right of a place.</summary>
    public void DrawCentered(XGraphics page, string words, double x, double y, TextStyle style) =>
        Draw(page, words, x - (WidthOf(words, style) / 2), y, style);

    /// <summary>
    /// Breaks words into lines of at most <paramref name="width"/>; a word that is wider is broken where it must be. Each letter is
    /// measured once, however long a word is.
    /// </summary>
    public List<string> Lines(string words, double width, TextStyle style)
    {
        var lines = new List<string>();
        var blank = WidthOf(" ", style);
        foreach (var part in words.ReplaceLineEndings("\n").Split('\n'))
        {
            var (line, used) = (new StringBuilder(), 0.0);
            foreach (var word in WordsOf(Clean(part)))
            {
                var (own, gap) = (WidthOf(word, style), line.Length > 0 ? blank : 0);
                if (line.Length > 0 && used + gap + own > width)
                {
                    lines.Add(line.ToString());
                    line.Clear();
                    (used, gap) = (0, 0);
                }
                if (gap > 0)
                    line.Append(' ');
                if (used + gap + own > width)
                    (line, used) = Break(word, lines, width, style);
                else
                {
                    line.Append(word);
                    used += gap + own;
                }
            }
            lines.Add(line.ToString());
        }
        while (lines.Count > 1 && lines[^1].Length == 0)
            lines.RemoveAt(lines.Count - 1);
        return lines;
    }

    /// <summary>What is not broken between two lines: a word, or a number with its unit.</summary>
    private static IEnumerable<string> WordsOf(string line) =>
        Unbroken.Of(line).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => word.Replace(Unbroken.Space, ' '));

    /// <summary>Breaks a word that is wider than a line; what is left of it begins the next line.</summary>
    private (StringBuilder Line, double Used) Break(string word, List<string> lines, double width, TextStyle style)
    {
        var (start, used) = (0, 0.0);
        for (var n = 0; n < word.Length; n++)
        {
            var own = WidthOf(word[n], style) * style.Points;
            if (n > start && used + own > width)
            {
                lines.Add(word[start..n]);
                (start, used) = (n, 0);
            }
            used += own;
        }
        return (new StringBuilder(word, start, word.Length - start, word.Length), used);
    }
}
