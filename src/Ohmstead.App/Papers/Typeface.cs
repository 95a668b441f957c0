using Ohmstead.Workshop.Words;
using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace Ohmstead.App.Papers;

/// <summary>The faces of the papers, handed to PDFsharp once per process.</summary>
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

    private readonly Face regular = new("paper-regular");
    private readonly Face bold = new("paper-bold");
    private readonly Face more = new("paper-more");

    private Typeface() { }

    /// <summary>The faces.</summary>
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
        var clean = new System.Text.StringBuilder(words.Length);
        for (var n = 0; n < words.Length; n++)
        {
            var letter = words[n];
            if (char.IsSurrogatePair(words, n))
                n++;
            if (char.IsControl(letter) || letter is '\u2028' or '\u2029')
                clean.Append(' ');
            else if (char.GetUnicodeCategory(letter) == System.Globalization.UnicodeCategory.Format)
                continue;
            else
                clean.Append(regular.Has(letter) || more.Has(letter) ? letter : Missing);
        }
        return clean.ToString();
    }

    /// <summary>Width of clean words [pt].</summary>
    public double WidthOf(string words, double size, bool isBold)
    {
        var face = isBold ? bold : regular;
        var width = 0.0;
        foreach (var letter in words)
            width += face.Has(letter) ? face.WidthOf(letter) : more.WidthOf(letter);
        return width * size;
    }

    /// <summary>Draws clean words on a base line.</summary>
    public void Draw(XGraphics page, string words, double x, double y, double size, bool isBold, XColor ink)
    {
        var face = isBold ? bold : regular;
        var brush = new XSolidBrush(ink);
        for (var start = 0; start < words.Length; )
        {
            var isOwn = face.Has(words[start]);
            var end = start + 1;
            while (end < words.Length && face.Has(words[end]) == isOwn)
                end++;
            var run = words[start..end];
            page.DrawString(
                run,
                new XFont(isOwn ? RegularFamily : MoreFamily, size, isBold && isOwn ? XFontStyleEx.Bold : XFontStyleEx.Regular),
                brush,
                x,
                y
            );
            x += WidthOf(run, size, isBold);
            start = end;
        }
    }

    /// <summary>
    /// Breaks words into lines of at most <paramref name="width"/>; a word that is wider is broken where it must be. Each letter is
    /// measured once, however long a word is.
    /// </summary>
    public List<string> Lines(string words, double width, double size, bool isBold)
    {
        var lines = new List<string>();
        var blank = WidthOf(" ", size, isBold);
        foreach (var part in words.ReplaceLineEndings("\n").Split('\n'))
        {
            var (line, used) = (new System.Text.StringBuilder(), 0.0);
            foreach (var word in WordsOf(Clean(part)))
            {
                var (own, gap) = (WidthOf(word, size, isBold), line.Length > 0 ? blank : 0);
                if (line.Length > 0 && used + gap + own > width)
                {
                    lines.Add(line.ToString());
                    line.Clear();
                    (used, gap) = (0, 0);
                }
                if (gap > 0)
                    line.Append(' ');
                if (used + gap + own > width)
                    (line, used) = Break(word, lines, width, size, isBold);
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
    private (System.Text.StringBuilder Line, double Used) Break(string word, List<string> lines, double width, double size, bool isBold)
    {
        var face = isBold ? bold : regular;
        var (start, used) = (0, 0.0);
        for (var n = 0; n < word.Length; n++)
        {
            var own = (face.Has(word[n]) ? face.WidthOf(word[n]) : more.WidthOf(word[n])) * size;
            if (n > start && used + own > width)
            {
                lines.Add(word[start..n]);
                (start, used) = (n, 0);
            }
            used += own;
        }
        return (new System.Text.StringBuilder(word, start, word.Length - start, word.Length), used);
    }
}
