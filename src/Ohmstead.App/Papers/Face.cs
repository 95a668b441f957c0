using System.Buffers.Binary;
using System.Text;

namespace Ohmstead.App.Papers;

/// <summary>
/// A TrueType face as far as setting lines needs it: which letters it has and how wide they are. Reads a Unicode map of
/// format 4 (letters up to U+FFFF) and the advance widths; no kerning, as PDFsharp sets none.
/// </summary>
internal sealed class Face
{
    private readonly Dictionary<char, double> widths = [];

    /// <summary>Name under which PDFsharp knows it.</summary>
    public string Name { get; }

    /// <summary>The file.</summary>
    public byte[] Bytes { get; }

    /// <summary>Reads the embedded face <paramref name="name"/>.</summary>
    public Face(string name)
    {
        Name = name;
        using var stream =
            typeof(Face).Assembly.GetManifestResourceStream($"{name}.ttf")
            ?? throw new InvalidOperationException($"The face {name} is not embedded.");
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        Bytes = copy.ToArray();
        ReadWidths();
    }

    /// <summary>True when the face has this letter.</summary>
    public bool Has(char letter) => widths.ContainsKey(letter);

    /// <summary>Width of a letter at size 1; 0 for one that it lacks.</summary>
    public double WidthOf(char letter) => widths.GetValueOrDefault(letter);

    private int Word(int at) => BinaryPrimitives.ReadUInt16BigEndian(Bytes.AsSpan(at));

    private int Table(string tag)
    {
        for (var n = 0; n < Word(4); n++)
        {
            var at = 12 + (16 * n);
            if (Encoding.ASCII.GetString(Bytes, at, 4) == tag)
                return BinaryPrimitives.ReadInt32BigEndian(Bytes.AsSpan(at + 8));
        }
        throw new InvalidOperationException($"The face {Name} has no table {tag}.");
    }

    private int UnicodeMap()
    {
        var map = Table("cmap");
        for (var n = 0; n < Word(map + 2); n++)
        {
            var at = map + BinaryPrimitives.ReadInt32BigEndian(Bytes.AsSpan(map + 4 + (8 * n) + 4));
            if (Word(at) == 4)
                return at;
        }
        throw new InvalidOperationException($"The face {Name} has no map of format 4.");
    }

    private void ReadWidths()
    {
        var (map, advances, perEm) = (UnicodeMap(), Table("hmtx"), (double)Word(Table("head") + 18));
        var (count, last) = (Word(map + 6) / 2, Word(Table("hhea") + 34) - 1);
        for (var n = 0; n < count; n++)
        {
            var (end, start) = (Word(map + 14 + (2 * n)), Word(map + 16 + (2 * count) + (2 * n)));
            var delta = Word(map + 16 + (4 * count) + (2 * n));
            var offsetAt = map + 16 + (6 * count) + (2 * n);
            for (var letter = start; letter <= end && letter < 0xFFFF; letter++)
            {
                var glyph = Word(offsetAt) == 0 ? letter + delta : Word(offsetAt + Word(offsetAt) + (2 * (letter - start)));
                glyph &= 0xFFFF;
                if (glyph != 0)
                    widths[(char)letter] = Word(advances + (4 * Math.Min(glyph, last))) / perEm;
            }
        }
    }
}
