using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Readings;

/// <summary>The readings of a journal are those that a readings file of it would give, and are refused where that file would be.</summary>
public class ReadingsOnFileTests
{
    private static readonly BenchState Line = BenchState.AsSheet with { SupplyVolts = 118.5 };

    [Fact]
    public void A_bench_with_everything_on_it_says_what_its_file_says()
    {
        var asked = OnTheBench.Sheet.Observations;
        var bench = new OnTheBench()
            .Read("blades", 4.2)
            .Read("blades-posts", Shown.OverRange)
            .Read("ohms-17", Shown.Jumps(0.4, null, 3))
            .Read("ohms-5", Shown.NotTaken("cannot reach it"))
            .Add(new ReadingWaived("insulation-core", "no tester", "J. Example", "ohmmeter OL"))
            .Add(new SignAnswered(asked[1].Id, Answer.No))
            .Add(new SignAnswered(asked[0].Id, Answer.Yes))
            .Add(new SignAnswered(asked[2].Id, Answer.Unsure))
            .Add(new SignAnswered("of another type", Answer.Yes))
            .Read("of another type", 3)
            .Read("volts-17", Shown.OverRange, Line)
            .Read("volts-5", 5.1, Line with { SupplyVolts = 121, Celsius = 45, MeterId = "good" })
            .Read("low-17", 1.7, Line with { LowVolts = 12.3 })
            .Read("low-5", 0.6, Line with { LowVolts = 24 })
            .Read("left-load", 15, Line with { LoadId = "r-4" })
            .Read("left-load", 15.2, Line with { LoadId = "lamps" })
            .Read(
                "left-first-dc",
                6,
                Line with
                {
                    Throttles = ImmutableSortedDictionary<string, double>.Empty.Add("throttle-left", 0.52),
                    MeterId = "fine",
                }
            )
            .Read("volts-17", 17.25, Line with { SupplyVolts = 119 });
        var readings = IsAsFile(bench.Unit, OnTheBench.Shop).Required;
        Assert.Equal(13, readings.Readings.Length);
        Assert.Equal(2, readings.Symptoms.Length);
        Assert.Equal([2], readings.Readings.Where(r => r.Outcome == Outcome.Jumps).Select(r => r.JumpValues.Count(double.IsFinite)));
    }

    [Fact]
    public void So_does_one_after_a_change_and_a_correction()
    {
        var bench = new OnTheBench().Read("blades", 4.2).Read("ohms-17", 0.4).Read("volts-17", 17.2, Line);
        var wrong = bench.Unit.Last.Id;
        bench
            .Add(new Corrected(wrong, new ReadingEntered("volts-17", Shown.Number(17.9), Line)))
            .Add(new PartChanged("roller-left", PartChange.Renewed, null, "") { Keeps = ["volts-17", "blades"] });
        Assert.Equal(["blades", "volts-17"], IsAsFile(bench.Unit, OnTheBench.Shop).Required.Readings.Select(r => r.Spec.Id));
    }

    public static TheoryData<string> Spoiled { get; } = [.. Spoilt.Keys];

    private static readonly string Long = new('x', 401);

    private static Dictionary<string, Func<OnTheBench, OnTheBench>> Spoilt =>
        new(StringComparer.Ordinal)
        {
            ["line"] = b => b.Add(new BenchSet(BenchState.AsSheet with { SupplyVolts = 0.5 })),
            ["line of a reading"] = b => b.Read("volts-17", 17, Line with { SupplyVolts = 1001 }),
            ["heat"] = b => b.Read("blades", 4, Line with { Celsius = 300 }),
            ["cold"] = b => b.Read("blades", 4, Line with { Celsius = -61 }),
            ["throttle"] = b =>
                b.Read(
                    "left-first-dc",
                    6,
                    Line with
                    {
                        Throttles = ImmutableSortedDictionary<string, double>.Empty.Add("throttle-left", 1.2),
                    }
                ),
            ["value"] = b => b.Read("blades", 2e15),
            ["jumps"] = b => b.Read("blades", Shown.Jumps(1, -2e15, null)),
            ["many jumps"] = b => b.Read("blades", Shown.Jumps([.. Enumerable.Repeat<double?>(1, 21)])),
            ["why"] = b => b.Read("blades", Shown.NotTaken(Long)),
            ["waived"] = b => b.Add(new ReadingWaived("insulation-core", Long, Long, Long)),
            ["load"] = b => b.Read("left-load", 15, Line with { LoadId = "loose" }),
        };

    [Theory]
    [MemberData(nameof(Spoiled))]
    public void What_no_file_may_hold_is_refused_in_the_same_words(string what)
    {
        var bench = Spoilt[what](new OnTheBench().Read("blades-posts", Shown.OverRange));
        var read = IsAsFile(bench.Unit, OnTheBench.Shop with { Loads = [new("loose", "Loose", 4, 12, 1e-13), .. OnTheBench.Shop.Loads] });
        Assert.NotEmpty(read.Problems);
    }

    [Theory]
    [InlineData(60, 0.05, 0, 0)]
    [InlineData(0.8, 2e9, 0, 0)]
    [InlineData(2, -1, 0, 0)]
    [InlineData(0.8, 0.05, 1.5, 0)]
    [InlineData(0.8, 0.05, 0, 101)]
    public void So_is_a_meter_that_cannot_be(double percent, double floor, double shared, double leadOhms)
    {
        var (shop, hand) = (OnTheBench.Shop, OnTheBench.Shop.Meters[0]);
        var spoiled = hand with { Id = "spoiled", Errors = hand.Errors.SetItem("ohms", new(percent, floor, shared, leadOhms)) };
        var bench = new OnTheBench().Read("blades", 4.2).Read("ohms-17", 0.4, BenchState.AsSheet with { MeterId = "spoiled" });
        Assert.NotEmpty(IsAsFile(bench.Unit, shop with { Meters = [.. shop.Meters, spoiled] }).Problems);
        bench.Read("ohms-5", 0.4, BenchState.AsSheet);
        Assert.NotEmpty(IsAsFile(bench.Unit, shop with { Meters = [.. shop.Meters, spoiled] }).Problems);
    }

    private static Parsed<UnitReadings> IsAsFile(BenchUnit unit, Shop shop)
    {
        var model = new Ohmstead.Electrical.Circuits.UnitModel(OwnSheet.Of(unit, OnTheBench.Sheet).Required);
        var typed = BenchReadings.Of(unit with { Doubts = UnitDoubts.None }, model, shop);
        var file = ReadingsAsFile.Read(unit, model, shop);
        Assert.Equal(file.Problems, typed.Problems);
        Assert.Equal(file.Value, typed.Value);
        return typed;
    }
}
