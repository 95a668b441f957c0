using System.Collections.Immutable;

namespace Ohmstead.Workshop.Listening;

/// <summary>Finds the supply whose even lines a recording has.</summary>
internal static class HumSearch
{
    private const int Lines = 12;

    /// <summary>A supply, and the clock of a phone, may be off by so much.</summary>
    private const double OffHertz = 1;

    /// <summary>The supply (50 or 60) and what it was found at; null where no even line is above the noise.</summary>
    public static (int Supply, double Found)? Supply(HumSpectrum spectrum)
    {
        var best = new[] { 50, 60 }.Select(s => Best(spectrum, s)).MaxBy(b => b.Score);
        if (best.Score <= 0)
            return null;
        var found = Refined(spectrum, best.Hertz);
        return Of(spectrum, found, null).Any(l => l.Harmonic % 2 == 0 && l.IsThere) ? (best.Supply, found) : null;
    }

    /// <summary>The lines 1 to 12 of a supply.</summary>
    /// <param name="halfRate">Half the file's sample rate; lines within 50 Hz of it are left out.</param>
    public static ImmutableArray<HumLine> Of(HumSpectrum spectrum, double supply, double? halfRate) =>
        [
            .. Enumerable
                .Range(1, Lines)
                .Where(k => halfRate is null || k * supply < halfRate - 50)
                .Select(k =>
                {
                    var (hertz, power) = spectrum.Peak(k * supply, (0.6 * spectrum.Width) + (0.004 * k));
                    var level = 10 * Math.Log10(Math.Max(power, 1e-30));
                    return new HumLine(k, hertz, level, level - (10 * Math.Log10(spectrum.Floor(k * supply, supply))));
                }),
        ];

    /// <summary>Of all frequencies near a nominal one, that whose even lines together are farthest above the noise.</summary>
    private static (int Supply, double Hertz, double Score) Best(HumSpectrum spectrum, int supply)
    {
        var even = Enumerable.Range(1, Lines / 2).Select(h => 2 * h).ToArray();
        var floors = even.Select(k => 10 * Math.Log10(spectrum.Floor(k * supply, 1e9))).ToArray();
        // Steps at which no line is missed by more than a quarter of its width.
        var step = spectrum.Width / (2 * Lines);
        var (best, score) = ((double)supply, 0.0);
        for (var hertz = supply - OffHertz; hertz <= supply + OffHertz; hertz += step)
        {
            var sum = 0.0;
            for (var n = 0; n < even.Length; n++)
                sum += Math.Max(
                    0,
                    (10 * Math.Log10(Math.Max(spectrum.Peak(even[n] * hertz, 0.3 * spectrum.Width).Power, 1e-30))) - floors[n] - 12
                );
            if (sum > score)
                (best, score) = (hertz, sum);
        }
        return (supply, best, score);
    }

    /// <summary>The mean of what each line says, weighed by how well it says it.</summary>
    private static double Refined(HumSpectrum spectrum, double hertz)
    {
        var there = Of(spectrum, hertz, null).Where(l => l.IsThere).ToList();
        if (there.Count == 0)
            return hertz;
        double Weight(HumLine line) => Math.Pow(10, line.AboveFloorDb / 10) * line.Harmonic * line.Harmonic;
        return there.Sum(l => Weight(l) * l.Hertz / l.Harmonic) / there.Sum(Weight);
    }
}
