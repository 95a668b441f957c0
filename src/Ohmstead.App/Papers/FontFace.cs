using SkiaSharp;

namespace Ohmstead.App.Papers;

/// <summary>
/// A font file as far as breaking lines needs it: which letters it has and how wide they are. No kerning, as PDFsharp sets none.
/// </summary>
internal sealed class FontFace
{
    private readonly Dictionary<char, double> widths = [];

    /// <summary>Name under which PDFsharp knows it.</summary>
    public string Name { get; }

    /// <summary>The file.</summary>
    public byte[] Bytes { get; }

    /// <summary>The same for drawing on pixels.</summary>
    public SKTypeface Pixels { get; }

    /// <summary>Reads the embedded font <paramref name="name"/>.</summary>
    public FontFace(string name)
    {
        Name = name;
        using var stream =
            typeof(FontFace).Assembly.GetManifestResourceStream($"{name}.ttf")
            ?? throw new InvalidOperationException($"The font {name} is not embedded.");
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        Bytes = copy.ToArray();
        using var file = SKData.CreateCopy(Bytes);
        Pixels = SKTypeface.FromData(file);
        // As large as its own grid, so that every width is a whole number of the font's units.
        using var font = new SKFont(Pixels, Pixels.UnitsPerEm) { LinearMetrics = true, Hinting = SKFontHinting.None };
        var glyphs = font.GetGlyphs(Enumerable.Range(0, char.MaxValue).ToArray());
        var units = font.GetGlyphWidths(glyphs);
        for (var letter = 0; letter < glyphs.Length; letter++)
            if (glyphs[letter] != 0)
                widths[(char)letter] = units[letter] / (double)Pixels.UnitsPerEm;
    }

    /// <summary>True when the font has this letter.</summary>
    public bool Has(char letter) => widths.ContainsKey(letter);

    /// <summary>Width of a letter at size 1; 0 for one that it lacks.</summary>
    public double WidthOf(char letter) => widths.GetValueOrDefault(letter);
}
