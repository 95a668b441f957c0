using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Tests.Readings;

public class PictureTests
{
    private static void IsInOrder(IEnumerable<double> places)
    {
        var all = places.ToList();
        Assert.Equal(all.Order(), all);
        Assert.All(all, p => Assert.InRange(p, 0, 1));
    }

    [Theory]
    [InlineData(15.9, 17.0, 14.9)]
    [InlineData(15.9, 17.0, 400)]
    [InlineData(0.0, 0.02, 0.01)]
    [InlineData(-0.4, 0.3, 0.1)]
    [InlineData(86e6, 649e6, 2e5)]
    public void The_value_stands_on_its_side_of_the_band(double low, double high, double value)
    {
        var picture = BandPicture.Of(new Expectation(Quantity.AcVolts, (low + high) / 2, low, high), value);
        IsInOrder(picture.Ticks.Select(t => t.Place));
        IsInOrder([picture.Low, picture.High]);
        Assert.InRange(picture.Ticks.Length, 2, 9);
        Assert.True(picture.High > picture.Low);
        Assert.Equal(value < low, picture.Value < picture.Low);
        Assert.Equal(value > high, picture.Value > picture.High);
    }

    [Theory]
    [InlineData(Quantity.DcVolts, 0.001, 0.09)]
    [InlineData(Quantity.AcVolts, 1, 18)]
    [InlineData(Quantity.AcAmps, 0.001, 0.5)]
    [InlineData(Quantity.Ohms, 0.01, 2)]
    [InlineData(Quantity.Ohms, 2, 900)]
    [InlineData(Quantity.Ohms, 900, 2e6)]
    [InlineData(Quantity.InsulationOhms, 0, 500)]
    [InlineData(Quantity.Watts, 0, 40)]
    public void A_band_of_any_width_is_drawn_for_every_quantity(Quantity quantity, double low, double high)
    {
        foreach (double? value in (double?[])[null, 0, high * 1.5, double.PositiveInfinity])
        {
            var picture = BandPicture.Of(new Expectation(quantity, (low + high) / 2, low, high), value);
            IsInOrder(picture.Ticks.Select(t => t.Place));
            Assert.NotEmpty(picture.Ticks);
            Assert.InRange(picture.High, picture.Low, 1);
        }
    }

    [Fact]
    public void OL_in_the_band_runs_on_to_the_end()
    {
        var open = BandPicture.Of(
            new Expectation(Quantity.Ohms, double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity),
            4000
        );
        Assert.True(open.IsOpenRight);
        Assert.Equal(1, open.High);
        Assert.True(open.Value < open.Low);
        Assert.Equal(1, BandPicture.Of(new Expectation(Quantity.Ohms, 3, 2, 4), double.PositiveInfinity).Value);
    }

    [Fact]
    public void Deviations_keep_their_order_and_their_side_and_none_leaves_the_plot()
    {
        var spec = OnTheBench.Sheet.Readings[0];
        double[] deviations = [-1e6, -50, -4, -1, 0, 1.9, 2, 4, 30, 1e9];
        var plot = DeviationPlot.Of([.. deviations.Select(d => new ReadingPoint(spec, "", d, "", false, false))]);
        IsInOrder(plot.Rows.Select(r => r.Place));
        Assert.Equal(0.5, plot.Rows[4].Place);
        Assert.True(plot.Rows[5].Place < plot.BandHigh && plot.Rows[6].Place > plot.BandHigh);
        Assert.Equal(1 - plot.BandHigh, plot.BandLow, 1e-12);
    }

    [Fact]
    public void A_set_up_is_said_across_the_bench()
    {
        var spec = OnTheBench.Sheet.FindReading("left-first-dc")!;
        var words = SetupWords.Of(OnTheBench.Sheet, spec, spec.State);
        Assert.Equal(("post left", "post common", "mains, 120 V AC"), (words.Red, words.Black, words.Feed));
        Assert.Contains(("left throttle", "45 %"), words.Controls);
        Assert.Contains(("left whistle", "first"), words.Controls);
        Assert.Equal("5 Ω across the leads", Assert.Single(words.Loads));
        Assert.Equal(
            "none, plug out",
            SetupWords.Of(OnTheBench.Sheet, OnTheBench.Sheet.Readings[0], OnTheBench.Sheet.Readings[0].State).Feed
        );
    }
}
