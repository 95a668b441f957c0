using System.Collections.Immutable;

namespace Ohmstead.Workshop.Listening;

/// <summary>What is heard in one recording.</summary>
/// <param name="Seconds">It lasts.</param>
/// <param name="SupplyHertz">50 or 60; null where no hum is above the noise.</param>
/// <param name="FoundHertz">The supply as the lines have it.</param>
/// <param name="Lines">Lines 1 to 12; none where no hum is above the noise.</param>
/// <param name="Verdict">nothing above the noise; or hum, with odd lines, with buzz.</param>
/// <param name="Words">The same for a person.</param>
public sealed record HumRecording(
    double Seconds,
    int? SupplyHertz,
    double? FoundHertz,
    ImmutableArray<HumLine> Lines,
    ImmutableArray<string> Verdict,
    ImmutableArray<string> Words
)
{
    internal const int LeastSampleRate = 4000;
    private const int MostSampleRate = 768_000;
    internal const double LeastSeconds = 4;

    /// <summary>How loud the hum is to an ear [dB(A) of a sine of full scale]; null without hum. A phone's gain is not known: only differences count.</summary>
    public double? HeardDb => EarWeight.LevelOf(Lines);

    private HumSpectrum Spectrum { get; init; } = null!;

    /// <summary>Listens to a WAV file; never the whole of it in memory.</summary>
    /// <param name="open">Opens the file at its beginning; called twice.</param>
    public static HumHeard Listen(Func<Stream> open)
    {
        using var first = open();
        if (WaveFormat.Read(first) is not { } format)
            return HumHeard.Not("not a WAV", "a WAV file of PCM 8, 16 or 24 bit or 32-bit float is expected");
        if (format.SampleRate is < LeastSampleRate or > MostSampleRate)
            return HumHeard.Not("sample rate", "record at 4,000 samples a second or more; 44,100 or 48,000 is usual");
        var channels = Enumerable.Range(0, format.Channels).Select(_ => new ChannelSurvey()).ToArray();
        WaveFrames.Each(
            first,
            format,
            (samples, frames) =>
            {
                for (var c = 0; c < channels.Length; c++)
                    channels[c].Add(samples.AsSpan(0, frames * format.Channels), c, format.Channels);
            }
        );
        var loudest = Array.IndexOf(channels, channels.MaxBy(c => c.Power));
        var seconds = channels[loudest].Count / (double)format.SampleRate;
        if (seconds < LeastSeconds)
            return HumHeard.Not("too short", "record for 4 seconds or more; ten is better");
        if (channels[loudest].IsClipped)
            return HumHeard.Not("clipped", "hold the phone farther away, and record again");
        using var second = open();
        return new(Analyze(second, WaveFormat.Read(second)!, loudest, seconds), "", "");
    }

    private static HumRecording Analyze(Stream from, WaveFormat format, int channel, double seconds)
    {
        var thinning = new Thinning(format.SampleRate);
        var spectrum = new HumSpectrum(thinning.Rate, seconds);
        WaveFrames.Each(
            from,
            format,
            (samples, frames) =>
            {
                thinning.Add(samples.AsSpan(0, frames * format.Channels), channel, format.Channels, spectrum.Waiting);
                spectrum.Work();
            }
        );
        if (HumSearch.Supply(spectrum) is not { } supply)
            return new(seconds, null, null, [], [HumWords.Nothing], HumWords.Of([HumWords.Nothing])) { Spectrum = spectrum };
        var lines = HumSearch.Of(spectrum, supply.Found, format.SampleRate / 2.0);
        var verdict = HumWords.VerdictOf(lines);
        return new(seconds, supply.Supply, supply.Found, lines, verdict, HumWords.Of(verdict)) { Spectrum = spectrum };
    }

    /// <summary>The spectrum for a picture: the strongest of each of so many equal stretches up to 800 Hz [dB of a sine of full scale].</summary>
    internal double[] Curve(int count) => Spectrum.Strongest(HumPlot.MostHertz, count);

    /// <summary>Line 2 of a supply in this recording, whether it is above the noise or not.</summary>
    internal HumLine LineTwo(double supplyHertz) => HumSearch.Of(Spectrum, supplyHertz, null)[1];
}

/// <summary>A recording, or the word why it cannot be listened to.</summary>
/// <param name="Recording">Null with a word.</param>
/// <param name="Word">not a WAV, sample rate, too short, clipped.</param>
/// <param name="Right">What would be right.</param>
public sealed record HumHeard(HumRecording? Recording, string Word, string Right)
{
    internal static HumHeard Not(string word, string right) => new(null, word, right);
}
