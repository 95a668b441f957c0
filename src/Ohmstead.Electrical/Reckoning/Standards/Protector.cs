using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Standards;

/// <summary>A fuse or a breaker of a standard: between which times it opens at so many times its rating.</summary>
/// <param name="Word">In a file: <c>iec-quick</c>.</param>
/// <param name="Title">For a person: "quick fuse (F)".</param>
/// <param name="FromAmps">The smallest rating that the gates hold for.</param>
/// <param name="ToAmps">The largest.</param>
/// <param name="Gates">By times the rating, rising.</param>
public sealed record Protector(string Word, string Title, double FromAmps, double ToAmps, ImmutableArray<ProtectorGate> Gates)
{
    /// <summary>What carries for so long carries for hours.</summary>
    private const double Hour = 3600;

    /// <summary>
    /// Gates that are tabled (docs/references.md: iec-60127 seen for F, from memory for T; ul-248-14; iec-60898; ul-1077 from memory). A
    /// miniature breaker opens at once above its magnetic band; one manual ends that of D at 15 times, we take 20, the slower.
    /// </summary>
    public static ImmutableArray<Protector> All { get; } =
    [
        new("iec-quick", "quick fuse (F)", 0.032, 0.1, [new(2.75, 0.010, 0.5), new(4, 0.003, 0.1), new(10, 0, 0.02)]),
        new(
            "iec-quick",
            "quick fuse (F)",
            0.125,
            10,
            [new(1.5, Hour, double.PositiveInfinity), new(2.1, 0, 1800), new(2.75, 0.05, 2), new(4, 0.01, 0.3), new(10, 0, 0.02)]
        ),
        new(
            "iec-time-lag",
            "slow fuse (T)",
            0.125,
            6.3,
            [new(1.5, Hour, double.PositiveInfinity), new(2.1, 0, 120), new(2.75, 0.6, 10), new(4, 0.15, 3), new(10, 0.02, 0.3)]
        ),
        new("us-fast", "fast-acting fuse", 0.125, 10, [new(1.1, 4 * Hour, double.PositiveInfinity), new(1.35, 0, Hour), new(2, 0, 120)]),
        new("us-time-lag", "slow-blow fuse", 0.125, 3, [new(2, 5, 120)]),
        new("us-time-lag", "slow-blow fuse", 3.15, 10, [new(2, 12, 120)]),
        Breaker("breaker-b", "B", 3, 5),
        Breaker("breaker-c", "C", 5, 10),
        Breaker("breaker-d", "D", 10, 20),
        new("supplementary", "supplementary breaker, manual reset", 0.5, 30, [new(1.35, 0, Hour), new(2, 0, 120)]),
    ];

    /// <summary>The words of <see cref="All"/>, each once.</summary>
    public static ImmutableArray<string> Words { get; } = [.. All.Select(p => p.Word).Distinct()];

    /// <summary>Opens at once: within this, above a magnetic band (IEC 60898, from memory) [s].</summary>
    private const double AtOnce = 0.1;

    private static Protector Breaker(string word, string letter, double from, double to) =>
        new(
            word,
            $"miniature breaker, curve {letter}",
            1,
            32,
            [
                new(1.13, Hour, double.PositiveInfinity),
                new(1.45, 0, Hour),
                new(2.55, 1, 60),
                new(from, AtOnce, double.PositiveInfinity),
                new(to, 0, AtOnce),
            ]
        );

    /// <summary>The row of a word that holds for a rating; null where none does.</summary>
    public static Protector? Of(string word, double ratedAmps) =>
        All.FirstOrDefault(p => p.Word == word && ratedAmps >= p.FromAmps && ratedAmps <= p.ToAmps);

    /// <summary>Opens within so long at so many times its rating [s]; infinite where no gate says that it opens.</summary>
    public double LatestSeconds(double times) =>
        Gates.Where(g => g.Times <= times).Select(g => g.MostSeconds).DefaultIfEmpty(double.PositiveInfinity).Min();

    /// <summary>Carries so many times its rating for at least so long [s]; up to its rating it carries for hours.</summary>
    public double EarliestSeconds(double times) =>
        times <= 1 ? double.PositiveInfinity : Gates.Where(g => g.Times >= times).Select(g => g.LeastSeconds).DefaultIfEmpty(0).Max();
}

/// <summary>At so many times the rating it opens no sooner and no later.</summary>
/// <param name="Times">Amps over the rating.</param>
/// <param name="LeastSeconds">Carries so long; 0 where nothing is said.</param>
/// <param name="MostSeconds">Opens within; infinite where nothing is said.</param>
public sealed record ProtectorGate(double Times, double LeastSeconds, double MostSeconds);
