using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.LookingBack;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Findings;

/// <summary>The shop's own chances in diagnosis: offered, taken, and undone by taking none.</summary>
public class ShopChancesTests
{
    private static Dictionary<string, double> Percents(TypeSheet sheet) =>
        new FaultCatalogue(new UnitModel(sheet)).Modes.ToDictionary(m => m.Name, m => m.Percent, StringComparer.Ordinal);

    /// <summary>20 % are odds of 1 to 4; twice as high, 1 to 2: a third.</summary>
    [Theory]
    [InlineData(20, 2, 100.0 / 3)]
    [InlineData(20, 0.5, 100.0 / 9)]
    [InlineData(20, 1, 20)]
    [InlineData(20, 1e9, 60)]
    [InlineData(20, 1e-9, 0.01)]
    [InlineData(0, 5, 0)]
    public void Odds_are_multiplied_within_bounds(double percent, double times, double expected) =>
        Assert.Equal(expected, ShopChances.Times(percent, times), 9);

    [Fact]
    public void Only_the_faults_that_the_shop_learned_of_are_moved_and_none_to_nothing_or_certain()
    {
        ShopChance[] learned = [new("slider", "worn", 3, 9, 60), new("rectifier", "open", 0.2, 0, 60)];
        var (before, after) = (Percents(OnTheBench.Sheet), Percents(ShopChances.In(OnTheBench.Sheet, [.. learned])));
        var kinds = new FaultCatalogue(new UnitModel(OnTheBench.Sheet)).Modes.ToDictionary(m => m.Name, m => (m.Kind.Word(), m.Mode));
        Assert.Contains(kinds.Values, k => k == ("slider", "worn"));
        foreach (var (name, percent) in before)
        {
            if (kinds[name] == ("slider", "worn"))
                Assert.True(after[name] > percent);
            else if (kinds[name] == ("rectifier", "open"))
                Assert.True(after[name] < percent);
            else
                Assert.Equal(percent, after[name]);
            Assert.InRange(after[name], percent > 0 ? ShopChances.LeastPercent : 0, ShopChances.MostPercent);
        }
    }

    /// <summary>
    /// A made shop finds worn rollers in one of three and never an open disc. Of a unit that reads high on one track its findings go that
    /// way, and none is impossible or certain.
    /// </summary>
    [Fact]
    public void Learned_from_a_made_shop_they_move_the_findings_its_way_and_none_to_0_or_1()
    {
        var bench = new OnTheBench().Read("ohms-left", 1.0);
        var units = Enumerable
            .Range(0, 90)
            .Select(n => new UnitYear(
                DateTimeOffset.UnixEpoch,
                null,
                0,
                0,
                n % 3 == 0 ? [("slider", "worn", DateTimeOffset.UnixEpoch)] : [],
                [("slider", "worn", 8), ("rectifier", "open", 4), ("joint", "cold", 1)]
            ));
        ImmutableArray<ShopChance> learned =
        [
            .. LearnedChance.Of(units, 40, 0.1).Select(l => new ShopChance(l.Kind, l.Mode, l.Odds, l.Found, l.Parts)),
        ];
        Dictionary<string, double> Found(ImmutableArray<ShopChance> chances) =>
            Diagnoser
                .Run(
                    new UnitModel(JudgedSheet.Of(bench.Unit, bench.Own, chances)),
                    bench.Readings,
                    new DiagnosisOptions { MostExpanded = 4, RankNext = false }
                )
                .Faults.ToDictionary(f => f.Mode.Name, f => f.Probability, StringComparer.Ordinal);
        var (usual, own) = (Found([]), Found(learned));
        Assert.True(own["roller-left:worn"] > usual["roller-left:worn"]);
        Assert.True(own["roller-right:worn"] > usual["roller-right:worn"]);
        Assert.True(own["disc-left:open"] < usual["disc-left:open"]);
        Assert.All(own.Values, p => Assert.InRange(p, 1e-9, 1 - 1e-9));
    }

    [Fact]
    public void Undone_the_sheet_is_the_very_same_and_what_was_found_by_hand_still_counts_over_it()
    {
        Assert.Same(OnTheBench.Sheet, ShopChances.In(OnTheBench.Sheet, []));
        var slider = OnTheBench.Sheet.Windings.SelectMany(w => w.Sliders).First().Id;
        var bench = new OnTheBench().Add(new FindingJudged(slider, "worn", Judgement.Dismissed, ""));
        Assert.Equal(0, Percents(JudgedSheet.Of(bench.Unit, bench.Own, [new("slider", "worn", 3, 9, 60)]))[$"{slider}:worn"]);
    }

    [Fact]
    public void With_other_chances_what_was_worked_out_before_is_out_of_date()
    {
        var unit = new OnTheBench().Unit;
        var shop = OnTheBench.Shop with { Chances = [new("slider", "worn", 3, 9, 60)] };
        Assert.Equal(
            JudgedKey.Of(unit, OnTheBench.Sheet, shop),
            JudgedKey.Of(unit, OnTheBench.Sheet, shop with { Chances = [new("slider", "worn", 3, 9, 60)] })
        );
        Assert.NotEqual(JudgedKey.Of(unit, OnTheBench.Sheet, shop), JudgedKey.Of(unit, OnTheBench.Sheet, OnTheBench.Shop));
    }
}
