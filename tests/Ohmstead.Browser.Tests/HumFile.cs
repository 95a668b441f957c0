using System.Buffers.Binary;

namespace Ohmstead.Browser.Tests;

/// <summary>
/// A made recording of hum, 120 Hz over a little noise, 5 s of 8,000 samples: as WAV, and as FLAC with bare samples, which a browser has to
/// decode; of the two channels of that the right one is the recording, the left a whisper of noise.
/// </summary>
internal static class HumFile
{
    private const int Rate = 8000;
    private const int Block = 4000;

    private static short[] Samples()
    {
        var random = new Random(3);
        return
        [
            .. Enumerable.Range(0, 5 * Rate).Select(n => (short)((8000 * Math.Sin(2 * Math.PI * 120 * n / Rate)) + random.Next(-40, 40))),
        ];
    }

    public static byte[] Wav()
    {
        var sound = Samples().SelectMany(BitConverter.GetBytes).ToArray();
        return
        [
            .. "RIFF"u8,
            .. BitConverter.GetBytes(36 + sound.Length),
            .. "WAVEfmt "u8,
            .. BitConverter.GetBytes(16),
            .. BitConverter.GetBytes(0x0001_0001),
            .. BitConverter.GetBytes(Rate),
            .. BitConverter.GetBytes(2 * Rate),
            .. BitConverter.GetBytes(0x0010_0002),
            .. "data"u8,
            .. BitConverter.GetBytes(sound.Length),
            .. sound,
        ];
    }

    /// <summary>RFC 9639: one block of stream information, then frames of one verbatim subframe each.</summary>
    public static byte[] Flac()
    {
        var samples = Samples();
        // Least and greatest block, no frame sizes, 20 bits of rate, 3 of channels less 1, 5 of bits less 1, 36 of the count, no MD5.
        var info = new byte[34];
        BinaryPrimitives.WriteUInt16BigEndian(info, Block);
        BinaryPrimitives.WriteUInt16BigEndian(info.AsSpan(2), Block);
        BinaryPrimitives.WriteUInt64BigEndian(info.AsSpan(10), ((ulong)Rate << 44) | (1UL << 41) | (15UL << 36) | (uint)samples.Length);
        List<byte> file = [.. "fLaC"u8, 0x80, 0, 0, 34, .. info];
        for (var n = 0; n * Block < samples.Length; n++)
        {
            // Fixed blocks; length in 16 bits after the number, rate and size as in the stream, two channels.
            List<byte> frame = [0xff, 0xf8, 0x70, 0x10, (byte)n, (Block - 1) >> 8, (Block - 1) & 0xff];
            frame.Add((byte)Remainder(frame, 0x07, 8));
            frame.Add(0x02);
            foreach (var sample in samples.AsSpan(n * Block, Block))
                frame.AddRange([0, (byte)(sample & 0x0f)]);
            frame.Add(0x02);
            foreach (var sample in samples.AsSpan(n * Block, Block))
                frame.AddRange([(byte)(sample >> 8), (byte)sample]);
            var check = Remainder(frame, 0x8005, 16);
            file.AddRange([.. frame, (byte)(check >> 8), (byte)check]);
        }
        return [.. file];
    }

    private static int Remainder(IEnumerable<byte> bytes, int polynomial, int bits)
    {
        var (rest, top) = (0, 1 << (bits - 1));
        foreach (var one in bytes)
        {
            rest ^= one << (bits - 8);
            for (var bit = 0; bit < 8; bit++)
                rest = (((rest & top) != 0 ? (rest << 1) ^ polynomial : rest << 1)) & ((top << 1) - 1);
        }
        return rest;
    }
}
