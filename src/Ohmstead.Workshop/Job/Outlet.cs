using System.Globalization;
using Ohmstead.Electrical.Carrying;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Job;

/// <summary>What a pair of posts carries for hours, computed from the sheet of the unit.</summary>
/// <param name="Posts">The pair, in words.</param>
/// <param name="Setting">How the controls are set, in words.</param>
/// <param name="Limit">The amps, and what holds them.</param>
/// <param name="HeldBy">What holds them, in words: "its breaker".</param>
/// <param name="Spec">The reading at whose setting it was computed.</param>
public sealed record Outlet(string Posts, string Setting, OutletLimit Limit, string HeldBy, ReadingSpec Spec)
{
    /// <summary>Stands behind a figure that no sheet gives.</summary>
    public const string Estimated = "estimated, common practice, no source";

    /// <summary>A pair of less than this is put on the paper in hundredths [A].</summary>
    private const double Small = 1;

    /// <summary>What the whole unit carries for hours [A]: no pair of its posts is promised more.</summary>
    public double UnitAmps { get; init; } = double.PositiveInfinity;

    /// <summary>The most for hours, rounded down: "6.5 A".</summary>
    public string Most => Down(CappedAmps, CappedAmps < Small ? 100 : 10);

    /// <summary>The same as a number [A].</summary>
    public double MostAmps => DownTo(CappedAmps, CappedAmps < Small ? 100 : 10);

    /// <summary>What it is limited by: "limited by its breaker, 6.5 A".</summary>
    public string Held =>
        IsCapped ? "limited by the whole unit" : $"limited by {HeldBy}, {Down(Limit.PartMostAmps, Limit.PartMostAmps < Small ? 100 : 10)}";

    /// <summary>The same, and where the figure of that part is no sheet's, that it is not.</summary>
    public string HeldInFull => IsEstimated ? $"{Held} ({Estimated})" : Held;

    /// <summary>True where what limits it is a figure that no sheet gives.</summary>
    public bool IsEstimated => Limit.IsEstimated && !IsCapped;

    private double CappedAmps => Math.Min(Limit.Amps, UnitAmps);

    // Rounded down the two may be the same: then the part limits it.
    private bool IsCapped => MostAmps < DownTo(Limit.Amps, Limit.Amps < Small ? 100 : 10);

    /// <summary>The most that a breaker or fuse outside may be rated for, where none is inside: "7.5 A"; empty where one is.</summary>
    public string FuseOutside => Limit.IsProtected ? "" : Down(CappedAmps, CappedAmps < Small ? 10 : 2);

    /// <summary>What is to be put outside the unit, in full words; empty where a breaker is inside.</summary>
    public string Outside => Limit.IsProtected ? "" : $"No breaker inside. Put a breaker or fuse of at most {FuseOutside} in its lead.";

    private static string Down(double amps, int parts) => string.Create(CultureInfo.InvariantCulture, $"{DownTo(amps, parts):0.##} A");

    // A figure found to five digits is not to fall below the rating that it was found for.
    private static double DownTo(double amps, int parts) => Math.Floor((amps * parts) + 0.01) / parts;
}
