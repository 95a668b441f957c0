using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Fitting;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>
/// What a rectifier makes of the source's current is predicted and never judged while a winding carries direct current; behind a
/// full-wave bridge none does, and it is predicted with a band.
/// </summary>
public class JudgingTests
{
    /// <summary>Line voltage on the plug, 8 Ω on the rails.</summary>
    private static object Loaded { get; } = new
    {
        source = new
        {
            from = "line",
            to = "neutral",
            volts = 120,
        },
        loads = new[]
        {
            new
            {
                from = "plus",
                to = "minus",
                ohms = 8,
            },
        },
    };

    private static readonly TypeSheet Sheet = WithWhistleAmps();

    /// <summary>The sample sheet, with the mains current and power while the left whistle's first step is pressed.</summary>
    private static TypeSheet WithWhistleAmps()
    {
        var pressed = Reference.Twin160.FindReading("left-first-dc")!;
        return Reference.Twin160 with
        {
            Readings =
            [
                .. Reference.Twin160.Readings,
                pressed with
                {
                    Id = "whistle-amps",
                    Quantity = Quantity.AcAmps,
                },
                pressed with
                {
                    Id = "whistle-watts",
                    Quantity = Quantity.Watts,
                },
            ],
        };
    }

    private static TakenReading Taken(string id, double value)
    {
        var spec = Sheet.FindReading(id)!;
        return new TakenReading(spec, Outcome.Value, value, [], "", "", spec.State);
    }

    private static DiagnosisResult Diagnose(params TakenReading[] taken) =>
        Diagnoser.Run(
            new UnitModel(Sheet),
            new UnitReadings(Sheet.Id, Sheet.SupplyVolts, 2, Meter.Usual, [.. taken], []),
            new DiagnosisOptions()
        );

    [Theory]
    [InlineData("amps-idle", true)]
    [InlineData("watts-idle", true)]
    [InlineData("left-first-dc", true)]
    [InlineData("whistle-amps", false)]
    [InlineData("whistle-watts", false)]
    public void Only_the_source_is_not_judged_and_only_while_a_rectifier_conducts(string id, bool can)
    {
        var spec = Sheet.FindReading(id)!;
        Assert.Equal(can, Judging.CanJudge(new UnitModel(Sheet), spec, spec.State));
        Assert.Equal(can, Prediction.Run(new UnitModel(Sheet), [(spec, spec.State)], [])[0].CanJudge);
    }

    private static BenchUnit Controller(bool isBridge, double mismatch = 1)
    {
        object Cell(double times = 1) =>
            new
            {
                saturationAmps = 1e-3 * times,
                slopeVolts = 0.13,
                seriesOhms = 0.1 / times,
                leakageOhms = 300,
            };
        var draft = new SheetDraft()
            .Core("core", "primary", 1500, 3)
            .Winding("primary", "line", "neutral", 600, 8, 0.01)
            .Winding("main", "low", "high", 90, 0.2, 1e-4)
            .Winding("spare", "spare-1", "spare-2", 30, 0.1)
            .Element("rectifier", "cell-1", "high", "plus", Cell(mismatch));
        return (
            isBridge
                ? draft
                    .Element("rectifier", "cell-2", "low", "plus", Cell())
                    .Element("rectifier", "cell-3", "minus", "high", Cell())
                    .Element("rectifier", "cell-4", "minus", "low", Cell())
                : draft.Wire("back", "minus", "low", 0.01)
        ).Unit();
    }

    /// <summary>By symmetry the half-waves of a bridge cancel in its winding; one cell alone lets one half-wave through.</summary>
    [Theory]
    [InlineData(true, 1, "ac-amps", true)]
    [InlineData(true, 1, "watts", true)]
    [InlineData(false, 1, "ac-amps", false)]
    [InlineData(false, 1, "watts", false)]
    [InlineData(true, 0.05, "ac-amps", false)]
    public void Behind_a_full_wave_bridge_the_source_is_judged(bool isBridge, double mismatch, string quantity, bool can)
    {
        var unit = Controller(isBridge, mismatch);
        var spec = unit.Spec(quantity, [], Loaded);
        unit.ReadSource(quantity, Loaded);
        Assert.True(unit.WasPeriodic);
        Assert.Equal(can, Judging.CanJudge(unit.Model, spec, spec.State));
    }

    /// <summary>An open plate leaves direct current in the winding, which the model's core does not feel: so no fault is told by it.</summary>
    [Theory]
    [InlineData("ac-amps", 9)]
    [InlineData("watts", 600)]
    public void Behind_a_bridge_the_source_has_its_band_and_moves_no_chance(string quantity, double absurd)
    {
        var unit = Controller(isBridge: true);
        var spec = unit.Spec(quantity, [], Loaded);
        var sheet = unit.Model.Sheet with { Readings = [spec] };
        var model = new UnitModel(sheet);
        UnitReadings Readings(params TakenReading[] taken) => new(sheet.Id, sheet.SupplyVolts, 2, Meter.Usual, [.. taken], []);
        DiagnosisResult Of(params TakenReading[] taken) => Diagnoser.Run(model, Readings(taken), new DiagnosisOptions());
        var (wrong, nothing) = (new TakenReading(spec, Outcome.Value, absurd, [], "", "", spec.State), Of());
        Assert.True(Prediction.Run(model, [(spec, spec.State)], [])[0].CanJudge);
        Assert.Equal(nothing.SoundProbability, Of(wrong).SoundProbability, 12);
        Assert.Null(Of(wrong).Readings[0].Deviation);
        Assert.Empty(nothing.Next);
        Assert.Equal(Fit.Run(model, [Readings()]).Parameters.AsEnumerable(), Fit.Run(model, [Readings(wrong)]).Parameters.AsEnumerable());
    }

    [Fact]
    public void An_absurd_current_with_a_rectifier_moves_no_chance_and_is_not_called_unexplained()
    {
        var cold = Diagnose(Taken("ohms-left", 0.3));
        var absurd = Diagnose(Taken("ohms-left", 0.3), Taken("whistle-amps", 40));
        Assert.Equal(cold.SoundProbability, absurd.SoundProbability, 12);
        Assert.Empty(absurd.Unexplained);
        Assert.Null(absurd.Readings[1].Deviation);
        Assert.NotNull(absurd.Readings[0].Deviation);
    }

    [Fact]
    public void The_same_current_without_a_rectifier_is_judged() =>
        Assert.True(Diagnose(Taken("amps-idle", 0.5)).SoundProbability < 0.5 * Diagnose().SoundProbability);

    [Fact]
    public void It_is_never_proposed() =>
        Assert.DoesNotContain(Diagnose().Next, n => n.Spec.Id.StartsWith("whistle-", StringComparison.Ordinal));

    [Fact]
    public void A_fit_takes_nothing_from_it()
    {
        static FitResult Of(params TakenReading[] taken) =>
            Fit.Run(new UnitModel(Sheet), [new UnitReadings(Sheet.Id, Sheet.SupplyVolts, null, Meter.Usual, [.. taken], [])]);
        var cold = Of(Taken("ohms-left", 0.3));
        Assert.Equal(cold.Parameters.AsEnumerable(), Of(Taken("ohms-left", 0.3), Taken("whistle-amps", 40)).Parameters);
        Assert.NotEqual(cold.Parameters.AsEnumerable(), Of(Taken("ohms-left", 0.3), Taken("amps-idle", 0.5)).Parameters);
    }
}
