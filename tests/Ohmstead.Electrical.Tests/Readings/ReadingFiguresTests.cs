using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>Each figure of readings that come from no file is held within its bounds (docs/formats.md), and each at its own place.</summary>
public class ReadingFiguresTests
{
    private static readonly TypeSheet Sheet = Reference.Twin160;

    private static TakenReading Load(Func<TakenReading, TakenReading> change)
    {
        var spec = Sheet.FindReading("left-load")!;
        return change(new(spec, Outcome.Value, 15, [], "", "", UnitReadings.AtLine(Sheet, spec.State, 118)));
    }

    private static string[] Problems(Func<TakenReading, TakenReading> change, MeterError? watts = null)
    {
        var meter = watts is null ? Meter.Usual : new Meter(Meter.Usual.Errors.SetItem(Quantity.Watts, watts));
        return [.. ReadingsCheck.Run(Sheet, new(Sheet.Id, 118, null, meter, [Load(change)], [])).Select(p => p.Path)];
    }

    private static TakenReading In(TakenReading r, Func<ReadingState, ReadingState> change) => r with { State = change(r.State) };

    [Theory]
    [InlineData(50, 1e9, 1, 100, "")]
    [InlineData(0, 1, 0, 0, "")]
    [InlineData(1, 0, 0, 0, "")]
    [InlineData(50.1, 1, 0, 0, ".percent")]
    [InlineData(-1, 1, 0, 0, ".percent")]
    [InlineData(1, 1.1e9, 0, 0, ".floor")]
    [InlineData(1, -1, 0, 0, ".floor")]
    [InlineData(1, 1, 1.1, 0, ".shared")]
    [InlineData(1, 1, -0.1, 0, ".shared")]
    [InlineData(1, 1, 0, 101, ".leadOhms")]
    [InlineData(1, 1, 0, -1, ".leadOhms")]
    [InlineData(0, 0, 0, 0, "$")]
    public void A_meter(double percent, double floor, double shared, double leads, string at)
    {
        var error = new MeterError(percent, floor, shared, leads);
        string[] Expected(string meter) => at.Length == 0 ? [] : [meter + at.TrimStart('$')];
        Assert.Equal(Expected("$.meter.watts"), Problems(r => r, watts: error));
        Assert.Equal(Expected("$.readings[0].meter"), Problems(r => r with { OwnError = error }));
    }

    [Theory]
    [InlineData(1, true)]
    [InlineData(1000, true)]
    [InlineData(0.9, false)]
    [InlineData(1001, false)]
    public void The_line(double volts, bool isSound) =>
        Assert.Equal(
            isSound ? [] : ["$.supplyVolts"],
            ReadingsCheck.Run(Sheet, new(Sheet.Id, volts, null, Meter.Usual, [], [])).Select(p => p.Path)
        );

    /// <summary>The number counts where there is one, and the numbers between which it jumps, at most twenty.</summary>
    [Fact]
    public void A_value()
    {
        Assert.Empty(Problems(r => r with { Value = 1e15 }));
        Assert.Equal(["$.readings[0].value"], Problems(r => r with { Value = 1.1e15 }));
        Assert.Equal(["$.readings[0].value"], Problems(r => r with { Value = double.NaN }));
        Assert.Empty(Problems(r => r with { Outcome = Outcome.NotTaken, Value = double.NaN }));
        TakenReading Jumping(TakenReading r, params double[] values) => r with { Outcome = Outcome.Jumps, JumpValues = [.. values] };
        Assert.Empty(Problems(r => Jumping(r, [.. Enumerable.Repeat(1.0, 19), double.PositiveInfinity])));
        Assert.Equal(["$.readings[0].value.jumps"], Problems(r => Jumping(r, [.. Enumerable.Repeat(1.0, 21)])));
        Assert.Equal(["$.readings[0].value.jumps[1]"], Problems(r => Jumping(r, 1, -1.1e15, double.PositiveInfinity)));
    }

    [Fact]
    public void What_it_was_taken_in()
    {
        Assert.Empty(Problems(r => In(r, s => s with { Celsius = 250 })));
        Assert.Equal(["$.readings[0].celsius"], Problems(r => In(r, s => s with { Celsius = 251 })));
        Assert.Equal(["$.readings[0].supplyVolts"], Problems(r => In(r, s => s with { Source = s.Source! with { Volts = 1001 } })));
        LoadSpec With(ReadingState s, double ohms, double henries) => s.Loads[0] with { Ohms = ohms, Henries = henries };
        Assert.Equal(["$.readings[0].loads[0].ohms"], Problems(r => In(r, s => s with { Loads = [With(s, 0, 0)] })));
        Assert.Equal(["$.readings[0].loads[1].henries"], Problems(r => In(r, s => s with { Loads = [s.Loads[0], With(s, 4, -1)] })));
        Assert.Contains(
            "$.readings[0].controls.throttle-left",
            Problems(r => In(r, s => s with { Controls = s.Controls.SetItem("throttle-left", new(1.1, "")) }))
        );
        Assert.Empty(Problems(r => In(r, s => s with { Controls = s.Controls.SetItem("whistle-left", new(double.NaN, "first")) })));
    }

    [Fact]
    public void Its_words()
    {
        var tooLong = new string('x', 1_000_000);
        Assert.Equal(["$.readings[0].waived.by"], Problems(r => r with { WaivedBy = tooLong }));
        Assert.Equal(["$.readings[0].why"], Problems(r => r with { Why = tooLong }));
        Assert.Equal(["$.readings[0].waived.instead"], Problems(r => r with { Instead = tooLong }));
    }
}
