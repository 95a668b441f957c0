using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>Every figure of readings that come from no file is held to its bounds, and only where it says something (docs/formats.md).</summary>
public class ReadingsCheckBoundsTests
{
    private static readonly TypeSheet Sheet = Reference.Twin160;

    private static IEnumerable<string> Problems(UnitReadings readings) => ReadingsCheck.Run(Sheet, readings).Select(p => p.Path);

    private static UnitReadings Of(MeterError ohms, TakenReading? taken = null, MeterError? own = null) =>
        new(
            Sheet.Id,
            120,
            null,
            new(Meter.Usual.Errors.SetItem(Quantity.Ohms, ohms)),
            [(taken ?? Taken(Outcome.Value, 1.5)) with { OwnError = own }],
            []
        );

    private static TakenReading Taken(Outcome outcome, double value)
    {
        var spec = Sheet.FindReading("ohms-left")!;
        return new(spec, outcome, value, [], "", "", spec.State);
    }

    [Theory]
    [InlineData(50, 1e9, 1, 100, "")]
    [InlineData(50.01, 0, 0, 0, ".percent")]
    [InlineData(-0.1, 1, 0, 0, ".percent")]
    [InlineData(1, 1.01e9, 0, 0, ".floor")]
    [InlineData(1, -0.1, 0, 0, ".floor")]
    [InlineData(1, 0, 1.01, 0, ".shared")]
    [InlineData(1, 0, -0.01, 0, ".shared")]
    [InlineData(1, 0, 0, 100.1, ".leadOhms")]
    [InlineData(1, 0, 0, -0.1, ".leadOhms")]
    [InlineData(0, 0, 0, 0, "")]
    public void A_meters_error_lies_within_its_bounds_its_own_as_well(
        double percent,
        double floor,
        double shared,
        double leads,
        string ending
    )
    {
        var error = new MeterError(percent, floor, shared, leads);
        string[] wrong = ending.Length > 0 || percent == 0 ? [ending] : [];
        Assert.Equal(wrong.Select(w => "$.meter.ohms" + w), Problems(Of(error)));
        Assert.Equal(wrong.Select(w => "$.readings[0].meter" + w), Problems(Of(new(1, 1, 0, 0), own: error)));
    }

    /// <summary>A value is looked at where one was read, and not where the meter showed OL or nothing was taken.</summary>
    [Theory]
    [InlineData(Outcome.Value, 1e15, false)]
    [InlineData(Outcome.Value, 1.01e15, true)]
    [InlineData(Outcome.Value, double.NaN, true)]
    [InlineData(Outcome.OverRange, 1.01e15, false)]
    public void Only_a_value_that_was_read_is_held_to_its_bounds(Outcome outcome, double value, bool isWrong) =>
        Assert.Equal(isWrong ? ["$.readings[0].value"] : [], Problems(Of(new(1, 1, 0, 0), Taken(outcome, value))));
}
