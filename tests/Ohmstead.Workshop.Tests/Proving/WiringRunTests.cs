using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Proving;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Proving;

/// <summary>The wiring check as one run: in order, left and taken up again anywhere, and of this wiring alone.</summary>
public class WiringRunTests
{
    private static readonly Lazy<RewireResult> Planned = new(() =>
        RewireCheck.Run(
            OnTheBench.Sheet,
            new UnitReadings(OnTheBench.Sheet.Id, OnTheBench.Sheet.SupplyVolts, null, Meter.Usual, [], []),
            cancellation: TestContext.Current.CancellationToken
        )
    );

    private static WiringRun Of(OnTheBench bench) => WiringRun.Of(bench.Unit, bench.Model, OnTheBench.Shop, Planned.Value.ToRead);

    private static OnTheBench Moved() => new OnTheBench().Add(new PartChanged("w-5", PartChange.Rewired, null, ""));

    [Fact]
    public void Every_reading_comes_after_the_checks_that_it_waits_for_and_none_twice()
    {
        var order = Of(Moved()).Steps.Select(s => s.Offer.Spec).ToList();
        Assert.Equal(order.Count, order.Select(s => s.Id).Distinct().Count());
        Assert.All(order, s => Assert.All(s.Needs, n => Assert.InRange(order.FindIndex(o => o.Id == n), 0, order.IndexOf(s) - 1)));
        Assert.All(Planned.Value.ToRead, t => Assert.Contains(order, o => o.Id == t.Spec.Id));
    }

    /// <summary>The boost winding lies nowhere near the mains: its insulation checks of before still count, and are not asked for again.</summary>
    [Fact]
    public void A_check_that_mains_waits_for_is_in_the_run_where_none_counts_from_before()
    {
        string[] Insulation(OnTheBench bench) =>
            [.. Of(bench).Steps.Select(s => s.Offer.Spec.Id).Where(id => id.StartsWith("insulation", StringComparison.Ordinal))];
        Assert.Equal(["insulation-core", "insulation-posts"], Insulation(Moved()));
        Assert.Equal(["insulation-core", "insulation-posts"], Insulation(Moved().Read("insulation-core", 300e6)));
        var kept = new OnTheBench()
            .ColdGates()
            .Add(new PartChanged("boost-left", PartChange.Rewired, null, "") { Keeps = ["insulation-core", "insulation-posts"] });
        Assert.Empty(Insulation(kept));
    }

    [Fact]
    public void It_is_taken_up_again_at_the_first_reading_that_is_missing()
    {
        var bench = Moved();
        var all = Of(bench).Steps;
        bench.Read(all[0].Offer.Spec.Id, 4.2).Read(all[2].Offer.Spec.Id, 1);
        var run = Of(bench);
        Assert.Equal(1, run.Next);
        Assert.False(run.IsThrough);
        Assert.Equal(run.MinutesLeft, run.Steps.Where((_, n) => n is not (0 or 2)).Sum(s => s.Offer.Spec.Minutes));
        Assert.Equal([all[2].Offer.Spec.Id, all[0].Offer.Spec.Id], run.Last(2).Select(s => s.Offer.Spec.Id));
    }

    [Fact]
    public void A_doubted_check_is_to_be_read_again_in_the_run()
    {
        var bench = Moved();
        Assert.Equal("blades", Of(bench).Steps[0].Offer.Spec.Id);
        bench.Read("blades", 4.2);
        Assert.Equal(1, Of(bench).Next);
        Assert.Equal(0, Of(bench.Doubt(SlipKind.TimesTen, ["blades"])).Next);
    }

    /// <summary>A reading of before is of another wiring, also where the change leaves it standing for the findings.</summary>
    [Fact]
    public void What_was_read_before_the_wire_was_moved_is_not_in_it()
    {
        var first = Of(Moved()).Steps[0].Offer.Spec.Id;
        var bench = new OnTheBench().Read(first, 4.2).Add(new PartChanged("w-5", PartChange.Rewired, null, "") { Keeps = [first] });
        Assert.Contains(bench.Unit.CurrentReadings, r => r.Fact.ReadingId == first);
        Assert.Equal(0, Of(bench).Next);
        Assert.Empty(WiringRun.Since(bench.Unit, OnTheBench.Sheet).All<ReadingEntered>());
    }

    [Fact]
    public void A_reading_that_jumped_or_could_not_be_taken_is_still_to_do()
    {
        var bench = Moved();
        var first = Of(bench).Steps[0].Offer.Spec.Id;
        Assert.Equal(0, Of(bench.Read(first, Shown.Jumps(3.1, null))).Next);
        Assert.Equal(0, Of(bench.Read(first, Shown.NotTaken("no clip"))).Next);
    }

    [Theory]
    [InlineData("swap:w-5.to~w-17.to", "w-5 w-17", "lead-5 post-5 lead-17 post-17", "Tag both")]
    [InlineData("off:w-5", "w-5", "lead-5 post-5", "Find its free end")]
    [InlineData("moved:w-5.to>post-17", "w-5", "post-17 lead-5 post-5", "Move it")]
    [InlineData("reversed:boost-left", "boost-left", "boost-left-start boost-left-end", "Swap its two ends")]
    public void A_mistake_is_shown_where_it_lies_and_says_what_to_do(string mistake, string elements, string terminals, string act)
    {
        var place = MistakePlace.Of(new Mistake(mistake, 1, [0]), OnTheBench.Sheet);
        Assert.Equal(elements.Split(' '), place.Elements.AsEnumerable());
        Assert.Equal(terminals.Split(' '), place.Terminals.AsEnumerable());
        Assert.StartsWith(act, place.Remedy.Act, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_mistake_of_a_sheet_has_a_place_and_a_remedy()
    {
        foreach (var mistake in MistakeList.Of(OnTheBench.Sheet))
        {
            var place = MistakePlace.Of(mistake, OnTheBench.Sheet);
            Assert.NotEmpty(place.Elements);
            Assert.NotEmpty(place.Terminals);
        }
    }
}
