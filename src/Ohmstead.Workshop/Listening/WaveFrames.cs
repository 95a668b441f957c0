using System.Buffers.Binary;

namespace Ohmstead.Workshop.Listening;

/// <summary>The sound of a WAV file, a block at a time, so that a long one is never in memory as a whole.</summary>
internal static class WaveFrames
{
    private const int FramesAtOnce = 16384;

    /// <summary>Beyond this no sample of floating point is taken at its word.</summary>
    private const float MostLevel = 16;

    /// <summary>Hands over blocks of samples, channels side by side, 1 being full scale.</summary>
    public static void Each(Stream from, WaveFormat format, Action<float[], int> block)
    {
        var (bytes, samples, left, kept) = (
            new byte[FramesAtOnce * format.FrameBytes],
            new float[FramesAtOnce * format.Channels],
            format.DataBytes,
            0
        );
        while (left > 0)
        {
            var read = from.Read(bytes, kept, (int)Math.Min(bytes.Length - kept, left));
            if (read <= 0)
                return;
            left -= read;
            var frames = (kept + read) / format.FrameBytes;
            Convert(bytes.AsSpan(0, frames * format.FrameBytes), format, samples);
            if (frames > 0)
                block(samples, frames);
            kept = kept + read - (frames * format.FrameBytes);
            bytes.AsSpan(frames * format.FrameBytes, kept).CopyTo(bytes);
        }
    }

    private static void Convert(ReadOnlySpan<byte> bytes, WaveFormat format, float[] to)
    {
        var count = bytes.Length * 8 / format.Bits;
        switch (format.Bits)
        {
            case 8:
                for (var n = 0; n < count; n++)
                    to[n] = (bytes[n] - 128) / 128f;
                break;
            case 16:
                for (var n = 0; n < count; n++)
                    to[n] = BinaryPrimitives.ReadInt16LittleEndian(bytes[(2 * n)..]) / 32768f;
                break;
            case 24:
                for (var n = 0; n < count; n++)
                    to[n] = ((bytes[3 * n] << 8 | bytes[(3 * n) + 1] << 16 | bytes[(3 * n) + 2] << 24) >> 8) / 8388608f;
                break;
            default:
                for (var n = 0; n < count; n++)
                    to[n] = format.IsFloat
                        ? Sane(BinaryPrimitives.ReadSingleLittleEndian(bytes[(4 * n)..]))
                        : BinaryPrimitives.ReadInt32LittleEndian(bytes[(4 * n)..]) / 2147483648f;
                break;
        }
    }

    private static float Sane(float sample) => float.IsFinite(sample) ? Math.Clamp(sample, -MostLevel, MostLevel) : 0;
}
