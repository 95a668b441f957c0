namespace Ohmstead.Perf.Listening;

/// <summary>A recording that was never made: hum, a room, traffic, talk and a microphone, written as a WAV, with what is true of it.</summary>
internal sealed class MadeRecording
{
    public const int Rate = 8000;

    private static readonly double[] UsualLevels =
    [
        double.NegativeInfinity,
        -24,
        double.NegativeInfinity,
        -35,
        double.NegativeInfinity,
        -42,
    ];

    private readonly float[] samples;

    /// <param name="random">Draws noise and phases.</param>
    /// <param name="supply">Hertz, as it really is.</param>
    /// <param name="levels">Of lines 1, 2, … at the microphone [dB of a full-scale sine].</param>
    /// <param name="floorDb">Noise in 1 Hz, in the same decibels.</param>
    /// <param name="lowCutHertz">Below it the microphone loses 6 dB an octave; 0 for none.</param>
    public MadeRecording(
        Random random,
        double seconds,
        double supply,
        double[] levels,
        double floorDb,
        double lowCutHertz = 0,
        bool traffic = false,
        bool talk = false
    )
    {
        samples = new float[(int)(seconds * Rate)];
        Supply = supply;
        Levels = [.. levels.Select((l, n) => l + (10 * Math.Log10(Cut((n + 1) * supply, lowCutHertz))))];
        // White noise of density N0 in power over 1 Hz: as a sine of full scale has a power of a half.
        var deviation = Math.Sqrt(0.5 * Math.Pow(10, floorDb / 10) * Rate / 2);
        for (var n = 0; n < samples.Length; n++)
            samples[n] = (float)(deviation * Gauss(random));
        for (var k = 0; k < levels.Length; k++)
        {
            if (double.IsNegativeInfinity(levels[k]))
                continue;
            var (amplitude, phase) = (Math.Pow(10, Levels[k] / 20), 2 * Math.PI * random.NextDouble());
            for (var n = 0; n < samples.Length; n++)
                samples[n] += (float)(amplitude * Math.Sin((2 * Math.PI * (k + 1) * supply * n / Rate) + phase));
        }
        if (traffic)
            AddTraffic(random, deviation);
        if (talk)
            AddTalk(random);
    }

    public double Supply { get; }

    /// <summary>As the microphone gives them.</summary>
    public double[] Levels { get; }

    /// <summary>A usual hum, drawn within so many decibels.</summary>
    public static double[] DrawLevels(Random random, bool odd, bool buzz)
    {
        var levels = Enumerable.Repeat(double.NegativeInfinity, 12).ToArray();
        for (var n = 0; n < UsualLevels.Length; n++)
            levels[n] = UsualLevels[n] + (6 * random.NextDouble()) - 3;
        if (odd)
            levels[random.Next(2) == 0 ? 0 : 2] = levels[1] - 6;
        if (buzz)
            (levels[7], levels[9]) = (levels[1] - 6, levels[1] - 8);
        return levels;
    }

    /// <summary>As a file of PCM 16 bit.</summary>
    public byte[] ToWave() =>
        Wave([.. samples.SelectMany(s => BitConverter.GetBytes((short)Math.Clamp(Math.Round(s * 32767), -32768, 32767)))], Rate, 1, 16, 1);

    /// <summary>The samples, 1 being full scale.</summary>
    public IReadOnlyList<float> Samples => samples;

    /// <summary>Bytes of sound with their header.</summary>
    public static byte[] Wave(byte[] sound, int rate, int channels, int bits, int kind, uint? length = null)
    {
        using var to = new MemoryStream();
        using var write = new BinaryWriter(to);
        write.Write("RIFF"u8);
        write.Write(length ?? (uint)(36 + sound.Length));
        write.Write("WAVEfmt "u8);
        write.Write(16);
        write.Write((short)kind);
        write.Write((short)channels);
        write.Write(rate);
        write.Write(rate * channels * bits / 8);
        write.Write((short)(channels * bits / 8));
        write.Write((short)bits);
        write.Write("data"u8);
        write.Write(length ?? (uint)sound.Length);
        write.Write(sound);
        return to.ToArray();
    }

    private static double Cut(double hertz, double cut) => 1 / (1 + (cut * cut / (hertz * hertz)));

    /// <summary>Rumble below some hundred hertz that swells and fades.</summary>
    private void AddTraffic(Random random, double deviation)
    {
        var (low, swell) = (0.0, 2 * Math.PI * random.NextDouble());
        for (var n = 0; n < samples.Length; n++)
        {
            low += 0.06 * (Gauss(random) - low);
            samples[n] += (float)(8 * deviation * low * (1 + Math.Sin((2 * Math.PI * 0.3 * n / Rate) + swell)));
        }
    }

    /// <summary>A voice: a pitch that glides, in syllables.</summary>
    private void AddTalk(Random random)
    {
        var (phase, pitch, aim, loud) = (0.0, 130.0, 130.0, 0.0);
        for (var n = 0; n < samples.Length; n++)
        {
            if (n % 1600 == 0)
                (aim, loud) = (95 + (110 * random.NextDouble()), random.Next(3) == 0 ? 0 : 0.02 + (0.03 * random.NextDouble()));
            pitch += (aim - pitch) / 800;
            phase += 2 * Math.PI * pitch / Rate;
            for (var k = 1; k <= 8; k++)
                samples[n] += (float)(loud / k * Math.Sin(k * phase));
        }
    }

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
