using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
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
