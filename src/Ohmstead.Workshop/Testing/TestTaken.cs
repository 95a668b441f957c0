using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Testing;

/// <summary>What was read in a test.</summary>
/// <param name="At">When.</param>
/// <param name="Values">In the unit of the limit; of touch current volts. Empty for OL and for what was not taken.</param>
/// <param name="OverRangeAbove">Where the meter shows OL, when it did [unit of the limit].</param>
/// <param name="MeterPercent">Share of the reading in the meter's limit of error [%].</param>
/// <param name="MeterFloor">Fixed part of it [unit of the values].</param>
/// <param name="Read">The entry of the test itself; null where the reading was taken over.</param>
/// <param name="NotTaken">Why it was not taken; empty when it was.</param>
public sealed record TestTaken(
    DateTimeOffset At,
    ImmutableArray<double> Values,
    double? OverRangeAbove,
    double MeterPercent,
    double MeterFloor,
    TestRead? Read,
    string NotTaken
)
{
    /// <summary>An ohmmeter shows OL above this [Ω] (docs/formats.md, readings).</summary>
    public const double OhmsOverRange = 20e6;

    /// <summary>An insulation tester shows OL above this [Ω].</summary>
    public const double InsulationOverRange = 1e9;

    /// <summary>True where it was left out with a reason, and not because the unit is made so.</summary>
    public bool IsLeftOut { get; init; }

    /// <summary>True for a reading of the quick list or of one at a time: not asked twice.</summary>
    public bool IsTakenOver => Read is null && NotTaken.Length == 0;

    /// <summary>As it was read in the test.</summary>
    internal static TestTaken Of(Entry entry, TestRead read) =>
        new(entry.At, read.Values, read.OverRangeAbove, read.MeterPercent, read.MeterFloor, read, "");

    /// <summary>As a heat run ended.</summary>
    public static TestTaken OfHeat(HeatRunState run) => new(run.Begun.SwitchedOnAt, [run.Ended?.RiseKelvin ?? 0], null, 0, 0, null, "");

    /// <summary>As it was not taken.</summary>
    internal static TestTaken Of(Entry entry, TestNotTaken not) =>
        new(entry.At, [], null, 0, 0, null, not.Why) { IsLeftOut = !not.IsByDesign };

    /// <summary>As a reading, taken or left out with a reason; null for one that jumps, of which no test is made.</summary>
    internal static TestTaken? Of(BenchTest test, Entry entry, ReadingEntered reading, Shop shop)
    {
        var (unit, error) = (test.UnitsPerLimit, ErrorOf(test, reading.Bench, shop));
        return reading.Shown.Kind switch
        {
            ShownKind.Value => new(entry.At, [reading.Shown.Value / unit], null, error.Percent, error.Floor / unit, null, ""),
            ShownKind.OverRange => new(entry.At, [], OverRangeOf(test), error.Percent, error.Floor / unit, null, ""),
            ShownKind.NotTaken when reading.Shown.Why.Length > 0 => new(entry.At, [], null, 0, 0, null, reading.Shown.Why.TrimEnd('.'))
            {
                IsLeftOut = true,
            },
            _ => null,
        };
    }

    /// <summary>Where the meter of a test shows OL, in the unit of the limit.</summary>
    internal static double OverRangeOf(BenchTest test) =>
        (test.Quantity == Electrical.TypeSheets.Quantity.InsulationOhms ? InsulationOverRange : OhmsOverRange) / test.UnitsPerLimit;

    /// <summary>The error of the meter that a test is read with.</summary>
    internal static MeterError ErrorOf(BenchTest test, BenchState bench, Shop shop) =>
        Readings.MeterInHand.ErrorFor(test.Quantity, bench, shop);
}
