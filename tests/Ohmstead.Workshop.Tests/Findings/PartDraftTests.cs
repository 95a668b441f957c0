using System.Text.Json;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Wiring;

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

    /// <summary>What this program does not know of a part, and where its ends were kept, comes along with other figures.</summary>
    [Fact]
    public void Other_figures_leave_all_else_of_a_part_as_it_was()
    {
        var (wire, there) = (OnTheBench.Sheet.Elements.First(e => e.Id == "w-5"), OnTheBench.Sheet.Elements.First(e => e.Id == "w-17").To);
        var json = JsonSerializer.SerializeToElement(
            new
            {
                id = "snubber",
                kind = "resistor",
                from = wire.From,
                to = wire.To,
                ohms = 470,
                faults = new { open = 9 },
                socket = "E10",
            }
        );
        var bench = new OnTheBench().Add(new PartChanged("snubber", PartChange.Added, json, ""));
        bench.Add(WireEnds.Keep([("snubber.to", there)], bench.Own).Single());
        PartChanged Changed(string ohms) =>
            PartDraft.Of(bench.Unit, OnTheBench.Sheet, "snubber")!.With("ohms", ohms).Finish(bench.Unit, OnTheBench.Sheet, "").Fact!;
        bench.Add(Changed("330"));
        Assert.Equal(
            $$"""{"id":"snubber","kind":"resistor","from":"{{wire.From}}","to":"{{there}}","ohms":220,"socket":"E10"}""",
            Changed("220").Part!.Value.GetRawText()
        );
    }

    /// <summary>A slider that was renewed is lowered once, whatever becomes of its winding after it.</summary>
    [Fact]
    public void A_winding_with_other_figures_leaves_its_sliders_as_new_as_they_were()
    {
        var bench = new OnTheBench().Add(new PartChanged("roller-left", PartChange.Renewed, null, ""));
        var winding = OnTheBench.Sheet.Windings.Single(w => w.Sliders.Any(s => s.Id == "roller-left"));
        var fact = PartDraft
            .Of(bench.Unit, OnTheBench.Sheet, winding.Id)!
            .With("ohms", "0.75")
            .Finish(bench.Unit, OnTheBench.Sheet, "")
            .Fact!;
        var own = bench.Add(fact).Own.Windings.Single(w => w.Id == winding.Id);
        // A tenth of the 25 % of docs/formats.md, and not a hundredth.
        Assert.Equal((0.75, 2.5), (own.Ohms, own.Sliders.Single(s => s.Id == "roller-left").Percents["worn"]));
    }

    [Fact]
    public void A_slider_has_no_part_of_its_own() => Assert.Null(PartDraft.Of(new OnTheBench().Unit, OnTheBench.Sheet, "roller-left"));
}
