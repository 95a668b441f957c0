using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Tests.Readings;

/// <summary>A throttle swept from stop to stop: what it should read on the way, and how the table is entered.</summary>
public class ThrottleSweepTests
{
    private static readonly OnTheBench Ready = new OnTheBench().ColdGates().Read("lamp-60", 106);

    private static string[] Table(params (int Row, string Volts)[] rows)
    {
        var table = Enumerable.Repeat("", ThrottleSweep.Rows).ToArray();
        foreach (var (row, volts) in rows)
            table[row] = volts;
        return table;
    }

    private static double At(double position) =>
        ThrottleSweep
            .Expected(Ready.Model, OnTheBench.Sheet.FindReading("left-full")!, "throttle-left", Ready.Unit.Bench, OnTheBench.Shop)[
                (int)Math.Round(position * 10)
            ]
            .Value;

    [Fact]
    public void Each_throttle_is_swept_at_its_own_post_with_nothing_connected() =>
        Assert.Equal(
            [("throttle-left", "left-full"), ("throttle-right", "right-full")],
            ThrottleSweep.Of(OnTheBench.Sheet).Select(s => (s.Control, s.Spec.Id))
        );

    /// <summary>With nothing connected the volts go with the turns, and these with the way: half way lies half between the stops.</summary>
    [Fact]
    public void What_it_should_read_rises_evenly_from_stop_to_stop()
    {
        Assert.True(At(1) > At(0));
        Assert.Equal((At(0) + At(1)) / 2, At(0.5), 0.005 * At(1));
        Assert.Equal(At(0) + (0.3 * (At(1) - At(0))), At(0.3), 0.005 * At(1));
    }

    [Fact]
    public void Rows_left_empty_are_left_out_and_each_other_stands_at_its_tenth()
    {
        var sweep = Assert.IsType<SweepTaken>(
            ThrottleSweep
                .Enter(Ready.Offer("left-full"), "throttle-left", Table((0, "6.2"), (3, "10,1"), (10, "19.9")), Ready.Unit.Bench)
                .Fact
        );
        Assert.Equal([(0, 6.2), (0.3, 10.1), (1, 19.9)], sweep.Points.Select(p => (p.Position, p.Volts)));
    }

    [Theory]
    [InlineData("6.2", "", "two positions or more")]
    [InlineData("6.2", "nine", "100 %")]
    [InlineData("6.2", "-3", "less than nothing")]
    [InlineData("6.2", "1200", "must be 0 to 1000 V")]
    public void What_is_no_sweep_is_refused_with_the_row(string first, string last, string why)
    {
        var taken = ThrottleSweep.Enter(Ready.Offer("left-full"), "throttle-left", Table((0, first), (10, last)), Ready.Unit.Bench);
        Assert.Null(taken.Fact);
        Assert.Contains(why, taken.Refused, StringComparison.Ordinal);
    }

    [Fact]
    public void Before_the_cold_checks_pass_no_mains_is_swept() =>
        Assert.Null(
            ThrottleSweep.Enter(new OnTheBench().Offer("left-full"), "throttle-left", Table((0, "6"), (10, "20")), BenchState.AsSheet).Fact
        );

    [Fact]
    public void A_sweep_counts_until_its_post_is_repaired()
    {
        var bench = new OnTheBench().Add(new SweepTaken("left-full", "throttle-left", [new(0, 6), new(1, 20)], BenchState.AsSheet));
        Assert.NotNull(ThrottleSweep.Last(bench.Unit, "throttle-left"));
        Assert.Null(ThrottleSweep.Last(bench.Unit, "throttle-right"));
        bench.Add(new PartChanged("disc-right", PartChange.Renewed, null, "") { Keeps = ["left-full"] });
        Assert.NotNull(ThrottleSweep.Last(bench.Unit, "throttle-left"));
        bench.Add(new PartChanged("roller-left", PartChange.Renewed, null, ""));
        Assert.Null(ThrottleSweep.Last(bench.Unit, "throttle-left"));
    }

    [Fact]
    public void A_sweep_stands_in_its_rows_again_and_its_picture_is_as_high_as_the_highest()
    {
        var sweep = new SweepTaken("left-full", "throttle-left", [new(0.3, 10.1), new(1, 30)], BenchState.AsSheet);
        Assert.Equal(Table((3, "10.1"), (10, "30")), ThrottleSweep.Typed(sweep));
        Assert.All(ThrottleSweep.Typed(null), text => Assert.Equal("", text));
        Assert.Equal([0.0, 0.5, 1.0], new[] { 0, 5, 10 }.Select(ThrottleSweep.PositionOf));
        Assert.Equal((3, 10), (ThrottleSweep.RowOf(sweep.Points[0]), ThrottleSweep.RowOf(sweep.Points[1])));
        var expected = ThrottleSweep.Expected(
            Ready.Model,
            OnTheBench.Sheet.FindReading("left-full")!,
            "throttle-left",
            Ready.Unit.Bench,
            OnTheBench.Shop
        );
        Assert.Equal(
            (30, expected.Max(e => e.High), 1),
            (ThrottleSweep.MostVolts(expected, sweep), ThrottleSweep.MostVolts(expected, null), ThrottleSweep.MostVolts([], null))
        );
    }
}
