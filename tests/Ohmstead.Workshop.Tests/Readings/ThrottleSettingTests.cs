using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Tests.Readings;

public class ThrottleSettingTests
{
    private static readonly UnitModel Model = new(OnTheBench.Sheet);

    private static ThrottleSetting Set(string id, double volts, double supply = 120)
    {
        var spec = OnTheBench.Sheet.FindReading(id)!;
        var state = BenchConditions.StateOf(Model, spec, BenchState.AsSheet with { SupplyVolts = supply }, OnTheBench.Shop);
        return ThrottleSetting.ByNoLoadVolts(Model, spec, state, "throttle-left", volts, Meter.Usual);
    }

    [Fact]
    public void The_position_is_the_share_of_the_way_between_the_volts_at_the_stops()
    {
        // With no load the volts are proportional to the turns touched, and the turns to the position.
        var ends = Set("left-first-dc", 0);
        Assert.Null(ends.Position);
        foreach (var share in new[] { 0.1, 0.45, 0.9 })
            Assert.Equal(share, Set("left-first-dc", ends.Least + (share * (ends.Most - ends.Least))).Position!.Value, 0.005);
    }

    [Fact]
    public void A_lower_line_means_that_the_same_volts_are_farther_up() =>
        Assert.True(Set("left-first-dc", 11, 110).Position > Set("left-first-dc", 11, 125).Position);

    [Fact]
    public void What_the_post_cannot_show_is_said_with_what_it_can()
    {
        var set = Set("left-first-dc", 40);
        Assert.Null(set.Position);
        Assert.InRange(set.Most, 16, 19);
    }

    [Fact]
    public void The_position_found_is_that_of_the_volts_read_before()
    {
        var spec = OnTheBench.Sheet.FindReading("left-full")!;
        var half = spec.State with { Controls = spec.State.Controls.SetItem("throttle-left", new(0.37, "")) };
        var volts = Expectation.Of(Model, spec, half, Meter.Usual).Value;
        Assert.Equal(0.37, Set("left-first-dc", volts).Position!.Value, 1e-6);
    }
}
