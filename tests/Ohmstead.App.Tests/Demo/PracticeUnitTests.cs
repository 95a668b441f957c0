using Ohmstead.App.Demo;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Kinds;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Tests.Demo;

/// <summary>Units to practice on.</summary>
public class PracticeUnitTests
{
    private static BenchUnit Unit(string type, int seed, params Fact[] more) =>
        UnitHistory.Fold([
            .. new Fact[] { new TakenIn("1", type, "", ""), new PracticeBegun(seed) }
                .Concat(more)
                .Select((f, n) => new Entry(new Guid(n + 1, 0, 0, new byte[8]), Guid.Empty, n + 1, default, "bench", f)),
        ]);

    public static TheoryData<string, int> Stories() =>
        new()
        {
            { "solo-110", 0 },
            { "solo-110", 1 },
            { "twin-175", 0 },
            { "twin-175", 2 },
            // The largest sheet takes longer than all the others.
            new TheoryDataRow<string, int>("step-230", 0).WithTrait("kind", "long"),
        };

    /// <summary>The usual round of a practice unit, played, names what was planted: the first finding of ten minutes is a right one. The shortest search is enough.</summary>
    [Theory]
    [MemberData(nameof(Stories))]
    public void What_is_planted_comes_first_after_the_usual_round(string type, int seed) =>
        HoldPlanted(type, seed, new DiagnosisOptions { RankNext = false, MostWork = 0 });

    [Theory]
    [MemberData(nameof(Stories))]
    [Trait("kind", "long")]
    public void What_is_planted_comes_first_when_the_search_is_whole(string type, int seed) =>
        HoldPlanted(type, seed, new DiagnosisOptions { RankNext = false });

    private static void HoldPlanted(string type, int seed, DiagnosisOptions options)
    {
        var sheet = CarriedTypes.Of(type);
        var model = new UnitModel(sheet);
        var unit = Unit(type, seed);
        var played = PracticeUnit.Of(unit, sheet)!;
        var round = UsualRound.Choose(model, Meter.Usual);
        Fact[] read = [.. round.Select(r => new ReadingEntered(r.Id, played.Read(r.Id, BenchState.AsSheet), BenchState.AsSheet))];
        var readings = BenchReadings.Of(Unit(type, seed, read), model, Shop.Usual).Required;
        var result = Diagnoser.Run(new ReadingLibrary(model), readings, options);
        Assert.Contains(result.Faults[0].Mode.Name, played.Planted.Select(m => m.Name));
    }

    [Fact]
    public void The_same_seed_plays_the_same_meter_and_a_repair_mends_it()
    {
        var sheet = CarriedTypes.Of("solo-110");
        var (first, again) = (PracticeUnit.Of(Unit("solo-110", 0), sheet)!, PracticeUnit.Of(Unit("solo-110", 0), sheet)!);
        var before = first.Read("ohms-track", BenchState.AsSheet);
        Assert.Equal(before.Value, again.Read("ohms-track", BenchState.AsSheet).Value);
        var planted = first.Planted[0];
        var mended = PracticeUnit.Of(Unit("solo-110", 0, new PartChanged(planted.Element, PartChange.Renewed, null, "")), sheet)!;
        // A worn shoe is 0.9 Ω, a sound one about 0.05 Ω (demo/solo-110.sheet.json).
        Assert.InRange(before.Value - mended.Read("ohms-track", BenchState.AsSheet).Value, 0.5, 1.3);
    }

    [Fact]
    public void A_real_unit_is_never_played()
    {
        var sheet = CarriedTypes.Of("solo-110");
        var real = UnitHistory.Fold([
            new Entry(new Guid(1, 0, 0, new byte[8]), Guid.Empty, 1, default, "bench", new TakenIn("1", "solo-110", "", "")),
        ]);
        Assert.Null(PracticeUnit.Of(real, sheet));
    }

    [Fact]
    public void Every_type_that_comes_along_is_carried_inside_the_program_and_is_marked()
    {
        Assert.All(PracticeTypes.Ids, id => Assert.Equal(id, CarriedTypes.Of(id).Id));
        Assert.All(PracticeTypes.Ids, id => Assert.DoesNotContain("invented", CarriedTypes.TitleOf(id), StringComparison.Ordinal));
        Assert.False(PracticeTypes.IsOne(""));
        Assert.False(PracticeTypes.IsOne("twin-175-2"));
    }
}
