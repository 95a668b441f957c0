namespace Ohmstead.App.Tests;

/// <summary>A made recording: hum of a 60 Hz supply over the noise of a room, as WAV of 8,000 samples a second, 16 bit.</summary>
internal static class MadeHum
{
    /// <param name="line2">Height of the line at 120 Hz, of 32,768.</param>
    /// <param name="line8">Height of that at 480 Hz.</param>
    public static byte[] Wav(double line2, double line8 = 0, double seconds = 5, int seed = 3)
    {
        var random = new Random(seed);
        var sound = Enumerable
            .Range(0, (int)(8000 * seconds))
            .SelectMany(n =>
                BitConverter.GetBytes(
                    (short)(
                        (line2 * Math.Sin(2 * Math.PI * 120 * n / 8000))
                        + (line8 * Math.Sin(2 * Math.PI * 480 * n / 8000))
                        + random.Next(-40, 40)
                    )
                )
            )
            .ToArray();
        return
        [
            .. "RIFF"u8,
            .. BitConverter.GetBytes(36 + sound.Length),
            .. "WAVEfmt "u8,
            .. BitConverter.GetBytes(16),
            .. BitConverter.GetBytes((short)1),
            .. BitConverter.GetBytes((short)1),
            .. BitConverter.GetBytes(8000),
            .. BitConverter.GetBytes(16000),
            .. BitConverter.GetBytes((short)2),
            .. BitConverter.GetBytes((short)16),
            .. "data"u8,
            .. BitConverter.GetBytes(sound.Length),
            .. sound,
        ];
    }
}
