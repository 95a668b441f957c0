using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Perf.Listening;
using Ohmstead.Workshop.Listening;

namespace Ohmstead.Workshop.Tests.Listening;

/// <summary>The picture of the spectra: where the lines are, and that the gain of the phone is not in it.</summary>
public class HumPlotTests
{
    private static HumRecording Made(int supply)
    {
        var random = new Random(5);
        var wave = new MadeRecording(random, 8, supply, MadeRecording.DrawLevels(random, false, false), -65, 0, false, false).ToWave();
        return HumRecording.Listen(() => new MemoryStream(wave)).Recording!;
    }

    private static List<(double X, double Y)> Places(HumCurve curve) =>
        [
            .. curve
                .Path[1..]
                .Split('L')
                .Select(p => p.Split(' '))
                .Select(p => (double.Parse(p[0], CultureInfo.InvariantCulture), double.Parse(p[1], CultureInfo.InvariantCulture))),
        ];

    /// <summary>Line 2 of a supply is the greatest of what an iron core makes; closed form: 2 · 50 and 2 · 60 Hz.</summary>
    [Theory]
    [InlineData(50, "50,100,200,300,400,500,600")]
    [InlineData(60, "60,120,240,360,480,600,720")]
    public void The_highest_place_of_a_curve_is_at_twice_the_supply(int supply, string ticks)
    {
        var plot = HumPlot.Of([("no load", Made(supply))]);
        var places = Places(Assert.Single(plot.Curves));
        var top = places.MinBy(p => p.Y);
        Assert.InRange(top.X, (2 * supply) - 2.5, (2 * supply) + 2.5);
        Assert.All(places, p => Assert.InRange(p.Y, 0, HumPlot.Height));
        Assert.Equal(ticks, string.Join(',', plot.Lines.Select(l => l.Words)));
        // Half of all places are noise, at the foot.
        Assert.InRange(places.Count(p => p.Y > HumPlot.Height * 0.85), places.Count / 2, places.Count);
    }

    [Fact]
    public void Two_recordings_are_two_curves_of_one_scale()
    {
        ImmutableArray<(string, HumRecording)> both = [("no load", Made(60)), ("with a load", Made(60))];
        var plot = HumPlot.Of(both);
        Assert.Equal(["no load", "with a load"], plot.Curves.Select(c => c.Label));
        Assert.Equal(plot.Curves[0].Path, plot.Curves[1].Path);
    }
}
