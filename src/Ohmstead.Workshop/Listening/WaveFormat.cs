using System.Buffers.Binary;

namespace Ohmstead.Workshop.Listening;

/// <summary>How a WAV file holds its sound.</summary>
/// <param name="Channels">Side by side.</param>
/// <param name="SampleRate">Frames a second.</param>
/// <param name="Bits">Of one sample.</param>
/// <param name="IsFloat">32-bit floating point; whole numbers otherwise.</param>
/// <param name="DataBytes">Of sound; beyond the end of the file where the length was never written.</param>
internal sealed record WaveFormat(int Channels, int SampleRate, int Bits, bool IsFloat, long DataBytes)
{
    private const int MostChannels = 64;
    private const int Extensible = 0xFFFE;

    /// <summary>Bytes of one sample of every channel.</summary>
    public int FrameBytes => Channels * Bits / 8;

    /// <summary>Reads up to the first byte of sound; null where this is no WAV that can be read here.</summary>
    internal static WaveFormat? Read(Stream from)
    {
        Span<byte> head = stackalloc byte[12];
        if (from.ReadAtLeast(head, 12, throwOnEndOfStream: false) < 12)
            return null;
        if (!(head[..4].SequenceEqual("RIFF"u8) || head[..4].SequenceEqual("RF64"u8)) || !head[8..12].SequenceEqual("WAVE"u8))
            return null;
        WaveFormat? format = null;
        Span<byte> chunk = stackalloc byte[8];
        while (from.ReadAtLeast(chunk, 8, throwOnEndOfStream: false) == 8)
        {
            var length = BinaryPrimitives.ReadUInt32LittleEndian(chunk[4..]);
            if (chunk[..4].SequenceEqual("data"u8))
                return format is null ? null : format with { DataBytes = length == uint.MaxValue ? long.MaxValue : length };
            if (chunk[..4].SequenceEqual("fmt "u8))
            {
                format = OfChunk(from, length);
                if (format is null)
                    return null;
            }
            // Chunks begin at even places.
            else if (!Skip(from, length + (length & 1)))
                return null;
        }
        return null;
    }

    private static WaveFormat? OfChunk(Stream from, uint length)
    {
        if (length is < 16 or > 4096)
            return null;
        var body = new byte[length + (length & 1)];
        if (from.ReadAtLeast(body, body.Length, throwOnEndOfStream: false) < body.Length)
            return null;
        int Word(int at) => BinaryPrimitives.ReadUInt16LittleEndian(body.AsSpan(at));
        var (kind, channels, rate, bits) = (Word(0), Word(2), BinaryPrimitives.ReadUInt32LittleEndian(body.AsSpan(4)), Word(14));
        if (kind == Extensible)
            kind = length >= 26 ? Word(24) : 0;
        var isKnown = (kind, bits) is (1, 8 or 16 or 24 or 32) or (3, 32);
        return isKnown && channels is >= 1 and <= MostChannels && Word(12) == channels * bits / 8 && rate <= int.MaxValue
            ? new(channels, (int)rate, bits, kind == 3, 0)
            : null;
    }

    private static bool Skip(Stream from, long bytes)
    {
        var part = new byte[(int)Math.Min(bytes, 65536)];
        while (bytes > 0)
        {
            var read = from.Read(part, 0, (int)Math.Min(bytes, part.Length));
            if (read <= 0)
                return false;
            bytes -= read;
        }
        return true;
    }
}
