using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Perf.Experiments;
using Ohmstead.Perf.Experiments.Benches;

namespace Ohmstead.Electrical.Tests.Experiments;

/// <summary>A unit of one seed stands on a bench as noted and on another: only what that bench does to it may differ.</summary>
public class BenchTests
{
    private static readonly UnitModel Twin = new(Reference.Twin160);
    private static readonly UnitModel Solo = new(Reference.Sheet("demo/solo-110.sheet.json"));
    private static readonly UnitModel Step = new(Reference.Sheet("demo/step-230.sheet.json"));
    private static readonly Bench Exact = Bench.AsNoted with { MeterTimes = 0 };

    private static DrawnUnit Draw(UnitModel model, int seed, Bench bench) => DrawnUnit.Draw(model, seed, bench: bench);

    private static IEnumerable<(TakenReading One, TakenReading Other)> Pairs(DrawnUnit one, DrawnUnit other)
    {
        Assert.Equal(one.Readings.Readings.Select(r => r.Spec.Id), other.Readings.Readings.Select(r => r.Spec.Id));
        return one.Readings.Readings.Zip(other.Readings.Readings);
    }

    [Fact]
    public void The_same_seed_draws_the_same_unit_on_the_same_spoiled_bench()
    {
        var bench = new Bench
        {
            TrueType = OtherTypes.Sibling,
            SlipShare = 0.2,
            HasUnlisted = true,
            LineOffVolts = 4,
        };
        var (one, again, next) = (Draw(Solo, 7, bench), Draw(Solo, 7, bench), Draw(Solo, 8, bench));
        Assert.Equal(one.Readings.Readings.Select(r => r.Value), again.Readings.Readings.Select(r => r.Value));
        Assert.Equal(one.Slips.Select(s => (s.Id, s.By)), again.Slips.Select(s => (s.Id, s.By)));
        Assert.NotEqual(one.Readings.Readings[0].Value, next.Readings.Readings[0].Value);
    }

    [Fact]
    public void Leads_left_in_raise_every_number_of_the_ohmmeter_and_nothing_else()
    {
        for (var seed = 1; seed <= 10; seed++)
            foreach (var (clean, led) in Pairs(Draw(Twin, seed, Exact), Draw(Twin, seed, Exact with { LeadOhms = 0.3 })))
            {
                Assert.Equal(clean.Outcome, led.Outcome);
                if (clean.Outcome == Outcome.Value)
                    Assert.Equal(clean.Spec.Quantity == Quantity.Ohms ? 0.3 : 0, led.Value - clean.Value, 1e-6);
            }
    }

    [Fact]
    public void A_meter_three_times_worse_errs_three_times_as_far_at_every_number()
    {
        for (var seed = 1; seed <= 5; seed++)
        {
            var exact = Draw(Solo, seed, Exact);
            var (once, thrice) = (Draw(Solo, seed, Bench.AsNoted), Draw(Solo, seed, new Bench { MeterTimes = 3 }));
            foreach (var ((truth, one), (_, three)) in Pairs(exact, once).Zip(Pairs(exact, thrice)))
                if (truth.Outcome == Outcome.Value)
                    Assert.Equal(3 * (one.Value - truth.Value), three.Value - truth.Value, 1e-6 * Math.Max(1, Math.Abs(truth.Value)));
        }
    }

    [Theory]
    [InlineData(120, 4)]
    [InlineData(230, 8)]
    public void A_line_noted_wrongly_leaves_the_readings_and_moves_the_noted_mains_alone(double supply, double off)
    {
        var model = supply == 120 ? Twin : Step;
        var (clean, noted) = (Draw(model, 3, Exact), Draw(model, 3, Exact with { LineOffVolts = 4 }));
        Assert.Equal(off, Math.Abs(noted.Readings.SupplyVolts - clean.Readings.SupplyVolts), 1e-9);
        Assert.Equal(clean.Readings.SupplyVolts, noted.LineVolts);
        foreach (var (one, other) in Pairs(clean, noted))
        {
            Assert.Equal(one.Value, other.Value);
            var (true_, said) = (one.State.Source?.Volts ?? 0, other.State.Source?.Volts ?? 0);
            Assert.Equal(true_ > Bench.MainsVolts ? noted.Readings.SupplyVolts - clean.Readings.SupplyVolts : 0, said - true_, 1e-9);
        }
    }

    [Fact]
    public void Twice_the_spread_doubles_the_logarithm_of_what_a_part_is_off()
    {
        // The dropper is read end to end and nothing else joins its ends, so the reading is its own ohms: nominal times e to the sigma·g.
        const double nominal = 1.5;
        for (var seed = 1; seed <= 20; seed++)
        {
            double Off(double times)
            {
                var unit = DrawnUnit.Draw(Solo, seed, atNominal: true, bench: Exact with { SpreadTimes = times });
                return unit.Truth.Any(t => t.StartsWith("dropper:", StringComparison.Ordinal))
                    ? 0
                    : Math.Log(unit.Readings.Readings.Single(r => r.Spec.Id == "dropper").Value / nominal);
            }
            Assert.Equal(2 * Off(1), Off(2), 1e-4);
        }
    }

    [Fact]
    public void Before_the_mains_only_what_needs_none_is_taken()
    {
        var unit = DrawnUnit.Draw(Twin, 1, atNominal: true, bench: new Bench { IsCold = true });
        Assert.Equal(
            Twin.Sheet.Readings.Where(r => (r.State.Source?.Volts ?? 0) <= 30).Select(r => r.Id),
            unit.Readings.Readings.Select(r => r.Spec.Id)
        );
    }

    [Fact]
    public void The_faults_of_a_unit_do_not_depend_on_its_bench()
    {
        for (var seed = 1; seed <= 20; seed++)
            Assert.Equal(
                Draw(Twin, seed, Bench.AsNoted).Truth,
                Draw(Twin, seed, new Bench { TrueType = OtherTypes.AnotherBatch, SlipShare = 0.5 }).Truth
            );
    }
}
