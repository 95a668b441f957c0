using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Findings;

public class PartDraftTests
{
    private static readonly string Disc = OnTheBench.Sheet.Elements.OfType<Rectifier>().First().Id;

    private static PartDraft Draft(OnTheBench bench) => PartDraft.Of(bench.Unit, OnTheBench.Sheet, Disc)!;

    [Fact]
    public void A_silicon_diode_takes_the_place_of_a_disc_between_the_same_ends()
    {
        var bench = new OnTheBench();
        var draft = Draft(bench);
        Assert.True(draft.IsRectifier);
        var (fact, problems) = draft.AsSilicon().With("seriesOhms", "0,03").Finish(bench.Unit, OnTheBench.Sheet, "diode, 6 A");
        Assert.Empty(problems);
        var (old, own) = (
            OnTheBench.Sheet.Elements.OfType<Rectifier>().First(),
            bench.Add(fact!).Own.Elements.OfType<Rectifier>().First(r => r.Id == Disc)
        );
        Assert.Equal((old.From, old.To, 0.03, 1e6), (own.From, own.To, own.SeriesOhms, own.LeakageOhms));
        // Some 0.8 V at 1 A: v = slope·ln(1 + i/saturation) + i·ohms.
        Assert.Equal(0.86, (own.SlopeVolts * Math.Log(1 + (1 / own.SaturationAmps))) + own.SeriesOhms, 0.05);
        // What is in the unit now is what the next draft starts from.
        Assert.Contains(("seriesOhms", "0.03"), Draft(bench).Fields);
    }

    [Fact]
    public void A_figure_that_is_none_or_makes_no_part_is_told()
    {
        var bench = new OnTheBench();
        var (none, words) = Draft(bench).With("slopeVolts", "much").Finish(bench.Unit, OnTheBench.Sheet, "");
        Assert.Null(none);
        Assert.Contains("much", Assert.Single(words), StringComparison.Ordinal);
        var (negative, problems) = Draft(bench).With("seriesOhms", "-4").Finish(bench.Unit, OnTheBench.Sheet, "");
        Assert.Null(negative);
        Assert.NotEmpty(problems);
    }

    [Fact]
    public void A_slider_has_no_part_of_its_own() => Assert.Null(PartDraft.Of(new OnTheBench().Unit, OnTheBench.Sheet, "roller-left"));
}
