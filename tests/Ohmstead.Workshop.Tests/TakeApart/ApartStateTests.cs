using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.TakeApart;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Wiring;

namespace Ohmstead.Workshop.Tests.TakeApart;

/// <summary>The log of taking apart: what is off, what goes back and when, and the count of the cups. Common practice, no source.</summary>
public class ApartStateTests
{
    private static readonly TypeSheet Sheet = OnTheBench.SheetOf("demo/twin-175.sheet.json");

    private static ApartState StateOf(OnTheBench bench) => ApartState.Of(bench.Unit, Sheet);

    private static TakenOff Off(string step, int pieces = 1) => new(step, 1, pieces, "");

    /// <summary>A unit open as far as the way to a step goes, as the log proposes it.</summary>
    private static OnTheBench OpenTo(string step)
    {
        var bench = new OnTheBench().Add(new WayChosen([step]));
        while (StateOf(bench).NextOff() is { } next)
            bench.Add(Off(next.Id));
        return bench;
    }

    [Fact]
    public void The_way_is_walked_in_an_order_that_can_be_done()
    {
        var off = StateOf(OpenTo("disc-out")).Off.Select(o => o.Step).ToList();
        Assert.Equal("disc-out", off[^1].Id);
        for (var n = 0; n < off.Count; n++)
        {
            var before = off.Take(n).Select(s => s.Id).ToHashSet();
            Assert.All(off[n].After, id => Assert.Contains(id, before));
            Assert.True(off[n].AfterAny.IsEmpty || off[n].AfterAny.Any(g => g.All(before.Contains)), off[n].Id);
        }
    }

    [Fact]
    public void Putting_back_undoes_it_and_never_shuts_in_what_is_still_off()
    {
        var bench = OpenTo("disc-out");
        var order = StateOf(bench).BackOrder();
        Assert.Equal(StateOf(bench).Off.Length, order.Length);
        Assert.Equal("disc-out", order[0].Step.Id);
        foreach (var next in order)
        {
            Assert.Equal(next.Step.Id, StateOf(bench).NextBack()!.Step.Id);
            bench.Add(new PutBack(next.Step.Id, 1, 0, "", ""));
            Assert.Null(StateOf(bench).NextOff());
        }
        Assert.Empty(StateOf(bench).Off);
    }

    /// <summary>Where two ways lead to a step and both are open, either may be shut first, but not both.</summary>
    [Fact]
    public void One_of_two_open_ways_may_be_shut_while_the_step_is_off()
    {
        var bench = OpenTo("cover");
        var other = StateOf(bench).Off.Any(o => o.Step.Id == "post-nuts") ? "panel-rivets" : "post-nuts";
        bench.Add(Off(other));
        OffStep Of(string id) => StateOf(bench).Off.Single(o => o.Step.Id == id);
        Assert.Null(StateOf(bench).WaitsFor(Of("post-nuts")));
        Assert.Null(StateOf(bench).WaitsFor(Of("panel-rivets")));
        bench.Add(new PutBack(other, 1, 0, "", ""));
        Assert.Equal("cover", StateOf(bench).WaitsFor(Of(other == "post-nuts" ? "panel-rivets" : "post-nuts"))!.Step.Id);
    }

    [Fact]
    public void A_remainder_needs_a_reason_and_a_name()
    {
        var bench = new OnTheBench().Add(Off("knob-1", 3)).Add(new PieceNoted("knob-1", PieceFate.Lost, 1, "the spring"));
        var step = StateOf(bench).Off.Single();
        Assert.Equal(1, step.NotAsTheyCame);
        Assert.Contains("3 came off and 2 went in", StepEntry.Back(Sheet, step, "2", "0", "", "").Refused, StringComparison.Ordinal);
        Assert.Contains("no more old ones can go back", StepEntry.Back(Sheet, step, "4", "0", "x", "J.").Refused, StringComparison.Ordinal);
        Assert.Contains("not a whole number", StepEntry.Back(Sheet, step, "2,5", "0", "x", "J.").Refused, StringComparison.Ordinal);
        Assert.Empty(StepEntry.Back(Sheet, step, "2", "1", "", "").Refused);
        var (facts, refused) = StepEntry.Back(Sheet, step, "2", "0", "rolled under the bench", "J.");
        Assert.Empty(refused);
        bench.Add(facts.Single());
        Assert.Contains("1 piece left over, rolled under the bench. Signed by J.", CupsText.Of(StateOf(bench)), StringComparison.Ordinal);
    }

    /// <summary>A part replaced while it was off does not go back as it came off, whether its piece was noted or not; it is one piece, not two.</summary>
    [Fact]
    public void A_part_replaced_while_it_was_off_is_a_new_piece()
    {
        var step = Sheet.TakeApart.First(s => ReachFor.PartsOf(s.Id, Sheet).Any());
        var part = ReachFor.PartsOf(step.Id, Sheet).First();
        var bench = new OnTheBench().Add(Off(step.Id, 3));
        Assert.Equal(0, StateOf(bench).Off.Single().NotAsTheyCame);
        bench.Add(new PartChanged(part, PartChange.Renewed, null, ""));
        Assert.Equal(1, StateOf(bench).Off.Single().NotAsTheyCame);
        bench.Add(new PartChanged(part, PartChange.Renewed, null, "")).Add(new PieceNoted(step.Id, PieceFate.Renew, 1, ""));
        Assert.Equal(1, StateOf(bench).Off.Single().NotAsTheyCame);
        bench.Add(new PieceNoted(step.Id, PieceFate.Lost, 1, "the spring"));
        Assert.Equal(2, StateOf(bench).Off.Single().NotAsTheyCame);
        Assert.Equal(
            0,
            StateOf(new OnTheBench().Add(new PartChanged(part, PartChange.Renewed, null, "")).Add(Off(step.Id, 3)))
                .Off.Single()
                .NotAsTheyCame
        );
    }

    [Fact]
    public void No_more_pieces_are_noted_than_came_off()
    {
        var bench = new OnTheBench().Add(Off("knob-1", 2));
        Assert.NotEmpty(StepEntry.Note(StateOf(bench).Off[0], PieceFate.Broke, "3", "").Refused);
        bench.Add(StepEntry.Note(StateOf(bench).Off[0], PieceFate.Broke, "2", "").Fact!);
        Assert.Contains(
            "noted all its pieces",
            StepEntry.Note(StateOf(bench).Off[0], PieceFate.Lost, "1", "").Refused,
            StringComparison.Ordinal
        );
    }

    /// <summary>The mistake that kills is made here: a wire that was off counts as soldered anew, a new one too, and a check made while it hung loose falls.</summary>
    [Fact]
    public void Wires_that_were_off_shut_the_mains_while_loose_and_ask_for_the_check_when_back()
    {
        var bench = OpenTo("cord-joints");
        Assert.Equal(["cord-1", "cord-2"], StateOf(bench).LooseWires);
        Assert.False(WiringCheck.IsOpen(bench.Unit, Sheet));
        bench.Add(new PartChanged("cord-1", PartChange.Renewed, null, ""));
        bench.Add(new RewireChecked(WiringCheck.MarkOf(bench.Unit, Sheet), "J.", ""));
        Assert.False(WiringCheck.IsOpen(bench.Unit, Sheet));
        var (facts, _) = StepEntry.Back(Sheet, StateOf(bench).NextBack()!, "1", "0", "", "");
        Assert.Equal(["cord-1", "cord-2"], facts.OfType<PartChanged>().Select(p => p.Element));
        foreach (var fact in facts)
            bench.Add(fact);
        Assert.Empty(StateOf(bench).LooseWires);
        Assert.False(WiringCheck.IsOpen(bench.Unit, Sheet));
        Assert.Equal(
            NextAction.CheckWiring,
            CardOf.Make(bench.Add(new StageClosed(Stage.LookOver, true, "")).Unit, Sheet, Shop.Usual).Next.Action
        );
    }

    [Fact]
    public void A_step_taken_back_is_on_again_and_one_that_no_sheet_knows_stays()
    {
        var bench = new OnTheBench().Add(Off("knob-1")).Add(Off("of-an-older-sheet"));
        Assert.Equal(2, StateOf(bench).Off.Length);
        bench.Add(new Corrected(StateOf(bench).Off[0].Entry.Id, null));
        Assert.Equal("A step that this type sheet does not have", StateOf(bench).Off.Single().Step.Title);
        Assert.NotNull(StateOf(bench).NextBack());
    }

    [Fact]
    public void What_was_found_says_what_to_reach()
    {
        var bench = new OnTheBench()
            .Add(new FindingJudged("disc", "leaky", Judgement.Confirmed, ""))
            .Add(new FindingJudged("roller-2", "worn", Judgement.Confirmed, ""))
            .Add(new ConditionNoted("cord", "cracked", Decision.Renew, ""));
        Assert.Equal(["disc-out", "roller-2-out", "cord-out"], ReachFor.Proposed(bench.Unit, Sheet));
        bench.Add(new PartChanged("disc", PartChange.Renewed, null, ""));
        Assert.DoesNotContain("disc-out", ReachFor.Proposed(bench.Unit, Sheet));
    }

    [Fact]
    public void A_part_within_reach_that_often_fails_pays_now_and_one_that_never_fails_does_not()
    {
        var state = StateOf(new OnTheBench());
        var plan = state.Plan(["bridge"], 50);
        WorthIt Roller(double percent) =>
            ReachFor.OnTheWay(state, ["bridge"], plan, Sheet, Shop.Usual with { Parts = [new("roller", "Roller", 5, percent)] }).First();
        Assert.True(Roller(60).Choice is { } often && often.Later > often.Now);
        Assert.True(Roller(1).Choice is { } seldom && seldom.Later < seldom.Now);
        Assert.InRange(Roller(1).Choice.BreakEvenPercent, 5, 40);
        Assert.Equal(10, Roller(1).ExtraMinutes, 9);
    }

    [Fact]
    public void The_rows_of_the_tree_stand_below_what_they_hang_on()
    {
        var rows = TreeRows.Of(Sheet.TakeApart, new HashSet<string>()).Rows.Select(r => r.Id).ToList();
        Assert.Equal(Sheet.TakeApart.Length, rows.Count);
        Assert.All(
            Sheet.TakeApart,
            s => Assert.All(s.After.Concat(s.AfterAny.SelectMany(g => g)), id => Assert.True(rows.IndexOf(id) < rows.IndexOf(s.Id)))
        );
    }

    /// <summary>A joint has no step of its own: it is reached where the nearest part with one comes within reach.</summary>
    [Theory]
    [InlineData("demo/twin-175.sheet.json", "joint-lug-1", "screen")]
    [InlineData("demo/twin-175.sheet.json", "joint-14", "cover")]
    [InlineData("demo/twin-175.sheet.json", "run-1", "cover")]
    [InlineData("demo/twin-175.sheet.json", "roller-1", "roller-1-out")]
    [InlineData("demo/twin-175.sheet.json", "w-14", "post-leads")]
    [InlineData("demo/solo-110.sheet.json", "dropper", "cover")]
    [InlineData("demo/step-230.sheet.json", "joint-run", "hood")]
    public void A_joint_or_a_switch_is_reached_by_way_of_the_parts_it_joins(string file, string part, string step) =>
        Assert.Equal(step, ReachFor.StepFor(part, OnTheBench.SheetOf(file)));

    [Fact]
    public void Every_part_of_every_sheet_can_be_got_to()
    {
        foreach (var file in (string[])["demo/twin-175.sheet.json", "demo/solo-110.sheet.json", "demo/step-230.sheet.json"])
        {
            var sheet = OnTheBench.SheetOf(file);
            Assert.All(sheet.Elements.Where(e => e.Kind != ElementKind.Insulation), e => Assert.NotNull(ReachFor.StepFor(e.Id, sheet)));
        }
    }
}
