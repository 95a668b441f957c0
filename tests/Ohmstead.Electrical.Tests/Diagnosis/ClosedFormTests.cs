using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>Figures of a diagnosis that can be worked out by hand on one or two parts.</summary>
public class ClosedFormTests
{
    /// <summary>A jump without a cause, and one by an open or dirty contact: common practice, no source (docs/methods/diagnosis.md).</summary>
    private const double JumpWithout = 0.005,
        JumpBy = 0.3;

    [Fact]
    public void A_jump_speaks_for_a_break_by_the_odds_of_a_jump_with_it_and_without()
    {
        var unit = One("wire", 1, 0.02, new() { ["open"] = 10, ["resistive"] = 0 });
        var spec = unit.Model.Sheet.Readings[0];
        var result = Diagnose(
            unit,
            Meter.Usual,
            new TakenReading(spec, Outcome.Jumps, 0, [1, double.PositiveInfinity], "", "", spec.State)
        );
        // Odds of 1 in 9, times a jump by either cause over a jump without one.
        var odds = 1 / 9.0 * (1 - ((1 - JumpWithout) * (1 - JumpBy))) / JumpWithout;
        Assert.Equal(odds / (1 + odds), result.Faults.Single(f => f.Mode.Mode == "open").Probability, 1e-6);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(0.01)]
    public void What_a_reading_says_of_a_fault_is_the_log_of_its_likelihood_with_it_over_without(double read)
    {
        // 10 Ω, or next to nothing where it is shorted; a meter that is good to 8 Ω.
        var (percent, floor) = (0.001, 8.0);
        var unit = One(
            "resistor",
            10,
            0.001,
            new()
            {
                ["open"] = 0,
                ["shorted"] = 50,
                ["drifted"] = 0,
            }
        );
        var result = Diagnose(unit, Ohms(new MeterError(100 * percent, floor, 0, 0)), WireBench.Value(unit, "ohms", read));
        double OnScale(double ohms) => Math.Log(1 + (percent * ohms / floor)) / percent;
        double Square(double centre) => Math.Pow(OnScale(read) - OnScale(centre), 2);
        // Rectangular errors of limit 1 have the variance 1/3; a slip of 1 in 1,000 hardly counts so near.
        var nats = (Square(10) - Square(unit.ReadListed("ohms", "r:shorted"))) / (2.0 / 3);
        var said = result.Weights.Single(s => s.Mode.Mode == "shorted").Readings.Single();
        Assert.InRange(Math.Abs(nats), 2, 3);
        Assert.Equal(nats, said.Nats, 0.01);
    }

    [Fact]
    public void Both_ends_of_a_size_lie_two_deviations_of_the_meter_from_it()
    {
        // A wire of a milliohm that became 5 Ω, on a meter that is good to 5 % and 0.05 Ω.
        var unit = One("wire", 0.001, 0.02, new() { ["open"] = 0, ["resistive"] = 10 });
        var result = Diagnose(unit, Ohms(new MeterError(5, 0.05, 0, 0)), WireBench.Value(unit, "ohms", 5));
        var fault = result.Faults.Single(f => f.Mode.Mode == "resistive");
        var deviation = ((0.05 * 5) + 0.05) / Math.Sqrt(3) / 5;
        Assert.Equal(5, fault.Size!.Value, 0.02);
        Assert.Equal(5 * Math.Exp(-1.96 * deviation), fault.Low!.Value, 0.02);
        Assert.Equal(5 * Math.Exp(1.96 * deviation), fault.High!.Value, 0.02);
    }

    [Fact]
    public void A_reading_tells_more_once_what_hides_its_fault_was_read()
    {
        // 2 Ω that may be shorted, behind 10 Ω that vary by three: only when these are known do the two together tell.
        var unit = new SheetDraft()
            .Element(
                "resistor",
                "wide",
                "a",
                "b",
                new
                {
                    ohms = 10,
                    spread = new { ohms = 0.3 },
                    faults = Faults(0),
                }
            )
            .Element(
                "resistor",
                "small",
                "b",
                "c",
                new
                {
                    ohms = 2,
                    spread = new { ohms = 0.01 },
                    faults = Faults(50),
                }
            )
            .Reading("wide", "ohms", ["a", "b"])
            .Reading("both", "ohms", ["a", "c"])
            .Unit();
        var meter = Ohms(new MeterError(0.5, 0.01, 0, 0));
        double Bits(params TakenReading[] taken) => Diagnose(unit, meter, taken).Next.Single(n => n.Spec.Id == "both").Bits;
        // A shift of two thirds of a deviation: an eighth of a bit at most. Known, the fault is seen or not: one bit.
        Assert.InRange(Bits(), 0.02, 0.13);
        Assert.Equal(1, Bits(WireBench.Value(unit, "wide", 12)), 0.02);
    }

    private static Dictionary<string, double> Faults(double shorted) =>
        new()
        {
            ["open"] = 0,
            ["shorted"] = shorted,
            ["drifted"] = 0,
        };

    private static Meter Ohms(MeterError error) => new(Meter.Usual.Errors.SetItem(Quantity.Ohms, error));

    private static BenchUnit One(string kind, double ohms, double spread, Dictionary<string, double> faults) =>
        new SheetDraft()
            .Element(
                kind,
                "r",
                "a",
                "b",
                new
                {
                    ohms,
                    spread = new { ohms = spread },
                    faults,
                }
            )
            .Reading("ohms", "ohms", ["a", "b"])
            .Unit();

    private static DiagnosisResult Diagnose(BenchUnit unit, Meter meter, params TakenReading[] taken) =>
        Diagnoser.Run(
            unit.Model,
            new UnitReadings("draft", 120, null, meter, [.. taken], []),
            new DiagnosisOptions { IsBenchAsNoted = true, WrongReadingChance = 1e-3 }
        );
}
