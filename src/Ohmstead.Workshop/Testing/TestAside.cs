using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Electrical.Reckoning.Standards;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Testing;

/// <summary>What else a person should know beside the limit of a test: what its figure is like, what the meter shows, what is done to new ones.</summary>
public static class TestAside
{
    /// <summary>The usual volts of an insulation tester [V DC].</summary>
    private const double TesterVolts = 500;

    /// <summary>The lines, none for most tests.</summary>
    /// <param name="limit">What the test is held against; null where nothing is.</param>
    public static ImmutableArray<string> Of(BenchTest test, TypeSheet sheet, TestBound? limit) =>
        test.Sort switch
        {
            TestSort.Insulation =>
            [
                Said($"500 V DC is as hard on insulation as {HighVolts.AcOf(TesterVolts):0} V AC."),
                Said(
                    $"Makers test new units, from memory, with {HighVolts.OfNewEquipment(sheet.SupplyVolts):0} V AC or {HighVolts.DcOf(HighVolts.OfNewEquipment(sheet.SupplyVolts)):0} V DC. Never do that to an old unit."
                ),
            ],
            TestSort.TouchCurrent =>
            [
                "An older service figure is 0.5 mA (ANSI C101, as listed). Which of the two counts is for the shop to say.",
                .. limit?.Max is { } most && Nanofarads(most, sheet) is { } nanofarads
                    ? [Said($"A capacitor of {nanofarads:0.#} nF from the line to the core lets {most:0.##} mA through.")]
                    : ImmutableArray<string>.Empty,
            ],
            TestSort.NoLoadVolts or TestSort.LoadedVolts when test.Quantity == Quantity.AcVolts =>
            [
                Said(
                    $"A toy transformer made today gives at most {Today("ac", ToyFigure.Volts):0} V AC and {Today("", ToyFigure.VoltAmperes):0} VA (EN 61558-2-7, as cited). An old unit was made before that."
                ),
            ],
            TestSort.WhistleFirst when limit?.Min is { } least => [Whistle(least)],
            TestSort.WhistleSecond => ["Set the meter to DC. On AC nearly the full post volts show."],
            _ => [],
        };

    private static double? Nanofarads(double milliamps, TypeSheet sheet) =>
        new TouchReading([0, 0], "1500-ohm", sheet.SupplyHertz, sheet.SupplyVolts, true).Nanofarads(milliamps);

    private static double Today(string current, ToyFigure figure) =>
        ToyRule.All.First(r => r.Of == figure && r.Current == current && !r.IsNominal).Most.GetValueOrDefault();

    private static string Whistle(double dcVolts)
    {
        var half = MeterWave.Of("half-wave", 50);
        var shows = half.At(dcVolts / half.DcVolts);
        return Said(
            $"Set the meter to DC. On AC a half wave of {dcVolts:0.#} V DC, at the limit, shows {shows.TrueRmsVolts:0.0} V with true RMS, {shows.AverageVolts:0.0} V on a meter that responds to the average."
        );
    }

    private static string Said(FormattableString words) => FormattableString.Invariant(words);
}
