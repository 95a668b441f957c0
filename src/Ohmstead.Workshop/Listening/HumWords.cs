using System.Collections.Immutable;

namespace Ohmstead.Workshop.Listening;

/// <summary>What a recording says, and what it does not prove.</summary>
internal static class HumWords
{
    public const string Nothing = "nothing above the noise";
    private const string Hum = "hum";
    private const string Odd = "odd lines";
    private const string Buzz = "buzz";

    private const double OddDb = 15;
    private const double BuzzDb = 10;
    private const double SameDb = 3;
    private const double MuchDb = 6;

    /// <summary>Odd lines within 15 dB of line 2, and lines from 8 up that add to within 10 dB of it; common practice, no source.</summary>
    public static ImmutableArray<string> VerdictOf(ImmutableArray<HumLine> lines)
    {
        var two = lines.First(l => l.Harmonic == 2).LevelDb;
        var odd = lines
            .Where(l => l.Harmonic is 1 or 3 or 5 && l.IsThere)
            .Select(l => l.LevelDb)
            .DefaultIfEmpty(double.NegativeInfinity)
            .Max();
        var high = 10 * Math.Log10(lines.Where(l => l.Harmonic >= 8 && l.IsThere).Sum(l => Math.Pow(10, l.LevelDb / 10)));
        return
        [
            Hum,
            .. odd > two - OddDb ? [Odd] : ImmutableArray<string>.Empty,
            .. high > two - BuzzDb ? [Buzz] : ImmutableArray<string>.Empty,
        ];
    }

    public static ImmutableArray<string> Of(ImmutableArray<string> verdict) =>
        [
            .. verdict.Select(v =>
                v switch
                {
                    Nothing => "No hum above the noise of the room. Hold the phone nearer, or wait for a quiet minute.",
                    Odd => "Odd lines: DC in the core, a half-wave load, or a loose part.",
                    Buzz => "Buzz: loose laminations, band or case.",
                    _ => "Hum at twice the line’s frequency: every core does that.",
                }
            ),
            "How loud it is decides no fault. Watts do.",
        ];

    public static string OfChange(double? change, string label) =>
        change switch
        {
            null => "Neither has hum above the noise.",
            < -MuchDb when label.Contains("lift", StringComparison.OrdinalIgnoreCase) =>
                "Much quieter with the rollers lifted. A roller may bridge a turn: read the watts.",
            < -SameDb => "Quieter against the same noise.",
            > SameDb => "Louder against the same noise.",
            _ => "The same, within what a phone hears.",
        };
}
