using System.Buffers.Binary;
using System.IO.Hashing;
using System.Text;

namespace Ohmstead.Storage.PhotoFiles;

/// <summary>
/// A photo without what its camera wrote beside the picture: place, make, model, serial number, software, notes. What the picture is
/// drawn by stays: color profile, and how the camera was held. Only what is known to be needed is let through (JPEG: ITU-T T.81; PNG:
/// ISO/IEC 15948; WebP: its container of RIFF chunks).
/// </summary>
internal static class BarePhoto
{
    private const byte StartOfScan = 0xDA,
        EndOfImage = 0xD9,
        Comment = 0xFE;

    private static readonly HashSet<string> PngKept =
    [
        "IHDR",
        "PLTE",
        "IDAT",
        "IEND",
        "tRNS",
        "gAMA",
        "cHRM",
        "sRGB",
        "iCCP",
        "sBIT",
        "bKGD",
        "pHYs",
    ];

    private static readonly HashSet<string> WebpKept = ["VP8 ", "VP8L", "VP8X", "ALPH", "ANIM", "ANMF", "ICCP"];

    /// <summary>The bare photo; the same bytes when nothing had to go.</summary>
    /// <param name="turn">How the camera was held, 1 to 8 as Exif counts; 1 is upright and needs no word.</param>
    /// <returns>Null when the parts of the file cannot be followed.</returns>
    public static byte[]? Of(byte[] photo, string mediaType, int turn)
    {
        try
        {
            using var bare = new MemoryStream(photo.Length);
            switch (mediaType)
            {
                case "image/jpeg":
                    Jpeg(photo, bare, turn);
                    break;
                case "image/png":
                    Png(photo, bare, turn);
                    break;
                case { } sound when sound.StartsWith("audio/", StringComparison.Ordinal):
                    return photo;
                default:
                    Webp(photo, bare, turn);
                    break;
            }
            return bare.Length == photo.Length && bare.GetBuffer().AsSpan(0, photo.Length).SequenceEqual(photo) ? photo : bare.ToArray();
        }
        catch (Exception odd) when (odd is ArgumentOutOfRangeException or IndexOutOfRangeException or OverflowException)
        {
            // A part says that it is longer than the file.
            return null;
        }
    }

    private static void Jpeg(ReadOnlySpan<byte> photo, MemoryStream to, int turn)
    {
        to.Write(photo[..2]);
        var (isTurnSaid, hasScan) = (turn == 1, false);
        for (var at = 2; at < photo.Length; )
        {
            if (photo[at] != 0xFF)
                throw new ArgumentOutOfRangeException(nameof(photo));
            while (photo[at + 1] == 0xFF)
                at++;
            var mark = photo[at + 1];
            if (mark == EndOfImage)
            {
                // What follows is not of the picture: films and second pictures that some cameras hang on.
                to.Write(photo.Slice(at, 2));
                return;
            }
            var end = at + 2 + BinaryPrimitives.ReadUInt16BigEndian(photo.Slice(at + 2, 2));
            if (mark == StartOfScan)
                (end, hasScan) = (ScanEnd(photo, end), true);
            if (!isTurnSaid && mark != 0xE0)
            {
                isTurnSaid = true;
                to.Write([0xFF, 0xE1, 0, 34, .. "Exif\0\0"u8, .. Turn(turn)]);
            }
            if (IsDrawnBy(mark, photo[(at + 4)..Math.Min(end, at + 16)]))
                to.Write(photo[at..end]);
            at = end;
        }
        if (!hasScan)
            throw new ArgumentOutOfRangeException(nameof(photo));
    }

    /// <summary>Where the next mark stands that is none of the scan's own. A file cut off in the middle ends there.</summary>
    private static int ScanEnd(ReadOnlySpan<byte> photo, int at)
    {
        for (; at < photo.Length; at++)
        {
            var next = photo[at..].IndexOf((byte)0xFF);
            if (next < 0 || at + next + 1 >= photo.Length)
                return photo.Length;
            at += next;
            if (photo[at + 1] is not (0 or 0xFF or (>= 0xD0 and <= 0xD7)))
                return at;
        }
        return photo.Length;
    }

    private static bool IsDrawnBy(byte mark, ReadOnlySpan<byte> begin) =>
        mark switch
        {
            0xE0 => begin.StartsWith("JFIF\0"u8),
            0xE2 => begin.StartsWith("ICC_PROFILE\0"u8),
            0xEE => begin.StartsWith("Adobe"u8),
            >= 0xE1 and <= 0xEF or Comment => false,
            _ => true,
        };

    private static void Png(ReadOnlySpan<byte> photo, MemoryStream to, int turn)
    {
        to.Write(photo[..8]);
        for (var at = 8; at < photo.Length; )
        {
            var length = BinaryPrimitives.ReadInt32BigEndian(photo.Slice(at, 4));
            var chunk = photo.Slice(at, checked(length + 12));
            var name = Encoding.ASCII.GetString(chunk.Slice(4, 4));
            if (PngKept.Contains(name))
                to.Write(chunk);
            if (name == "IHDR" && turn != 1)
                WriteChunk(to, [.. "eXIf"u8, .. Turn(turn)]);
            if (name == "IEND")
                return;
            at += chunk.Length;
        }
    }

    private static void WriteChunk(MemoryStream to, ReadOnlySpan<byte> nameAndBody)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, nameAndBody.Length - 4);
        to.Write(number);
        to.Write(nameAndBody);
        // CRC-32 as in ISO 3309.
        BinaryPrimitives.WriteUInt32BigEndian(number, Crc32.HashToUInt32(nameAndBody));
        to.Write(number);
    }

    private static void Webp(ReadOnlySpan<byte> photo, MemoryStream to, int turn)
    {
        const int exif = 8,
            notes = 4;
        to.Write(photo[..12]);
        // The size in the head counts; what hangs on behind it is not of the picture.
        var all = Math.Min(photo.Length, checked(BinaryPrimitives.ReadInt32LittleEndian(photo.Slice(4, 4)) + 8));
        for (var at = 12; at + 8 <= all; )
        {
            var length = BinaryPrimitives.ReadInt32LittleEndian(photo.Slice(at + 4, 4));
            var chunk = photo.Slice(at, Math.Min(all - at, checked(length + (length & 1) + 8))).ToArray();
            var name = Encoding.ASCII.GetString(chunk, 0, 4);
            if (name == "VP8X")
                chunk[8] = (byte)(chunk[8] & ~(exif | notes) | (turn == 1 ? 0 : exif));
            if (WebpKept.Contains(name))
                to.Write(chunk);
            at += chunk.Length;
        }
        if (turn != 1)
            to.Write([.. "EXIF"u8, 26, 0, 0, 0, .. Turn(turn)]);
        BinaryPrimitives.WriteInt32LittleEndian(to.GetBuffer().AsSpan(4), (int)to.Length - 8);
    }

    /// <summary>Exif that holds one tag, 0x0112, the orientation.</summary>
    private static byte[] Turn(int turn) => [.. "MM\0*"u8, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte)turn, 0, 0, 0, 0, 0, 0];
}
