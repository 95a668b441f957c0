using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Job;

/// <summary>What a unit that is to go back lists, and which of it is a bar. Common practice, no source.</summary>
public class OpenThingTests
{
    private static readonly Shop Shop = OnTheBench.Shop with { LookOver = UsualShop.Make().LookOver };

    /// <summary>Looked over, every check of the sheet passed: nothing is open.</summary>
    private static OnTheBench Sound()
    {
        var bench = new OnTheBench();
        foreach (var item in Shop.LookOver)
            bench.Add(new ConditionNoted(item.Id, "good", Decision.Leave, ""));
        bench.ColdGates();
        foreach (
            var gate in OnTheBench.Sheet.Readings.Where(r => r.IsGate && !bench.Unit.CurrentReadings.Any(c => c.Fact.ReadingId == r.Id))
        )
            bench.Read(
                gate.Id,
                gate.Limits is { } l
                    ? double.IsPositiveInfinity(l.Max)
                        ? 10 * l.Min
                        : double.IsNegativeInfinity(l.Min)
                            ? l.Max / 10
                            : (l.Min + l.Max) / 2
                    : 1
            );
        return bench;
    }

    private static JudgedUnit Matter(OnTheBench bench) => UnitJudge.Make(bench.Unit, OnTheBench.Sheet, Shop, DateTimeOffset.UnixEpoch);

    private static string[] Open(OnTheBench bench) => [.. Matter(bench).Open.Select(o => $"{o.Weight} {o.Title}: {o.Words}")];

    [Fact]
    public void A_unit_that_passed_everything_has_nothing_open_and_may_be_plugged_in()
    {
        Assert.Empty(Open(Sound()));
        Assert.True(Matter(Sound()).MayBePluggedIn);
    }

    [Fact]
    public void A_doubted_check_and_heat_without_a_cause_keep_a_unit_from_going_back_as_working()
    {
        var doubted = Sound().Doubt(SlipKind.TimesTen, ["blades"], 0, new Doubt(DoubtAbout.Internal, 0.9, 11.2, [], []));
        Assert.Equal(
            [
                "ToDo Between the plug blades: To be read again. It read 4.2 Ω: possible slip, ten times too high.",
                "ToDo Find what makes the extra heat: This unit makes about 11 W more heat than it should. Do not return it until you find the cause.",
            ],
            Open(doubted)
        );
        Assert.False(Matter(doubted).MayBePluggedIn);
        var line = Matter(doubted).Lines.Single(l => l.Id == "blades");
        Assert.Equal((CheckEnd.Doubted, Weight.Look), (line.End, line.Weight));
    }

    [Fact]
    public void A_doubt_about_the_bench_is_to_be_known_and_no_bar()
    {
        var bench = Sound()
            .Doubt(
                SlipKind.Unknown,
                [],
                0,
                new Doubt(DoubtAbout.Line, 0.9, 116, ["left-full"], []),
                new Doubt(DoubtAbout.Unit, 0.6, 4, [], [])
            );
        Assert.Equal(
            [
                "ToKnow The line voltage was probably 116 V, not 120 V: Read the outlet again with the unit running. Enter it as line voltage. Then take the mains readings again. Findings count less until then.",
                "ToKnow Probably another batch: this unit differs from its type sheet: Look for a different coil, disc or plate. Use another type sheet, or let this one learn from sound units. Findings count less until then.",
            ],
            Open(bench)
        );
        Assert.True(Matter(bench).MayBePluggedIn);
    }

    [Fact]
    public void A_slip_that_is_no_check_is_to_be_known()
    {
        var bench = Sound().Read("left-full", 173);
        Assert.Empty(Open(bench));
        bench.Doubt(SlipKind.TimesTen, ["left-full"]);
        var title = OnTheBench.Sheet.FindReading("left-full")!.Title;
        Assert.Equal(
            [$"ToKnow {title}: To be read again. It read 173 V: possible slip, ten times too high."],
            Open(bench).Select(o => o.Replace('\u00a0', ' '))
        );
        Assert.Equal([title], Matter(bench).InDoubt);
        Assert.Contains(
            $"To be read again: {title}. It read 173",
            ServiceRecord.Make(Matter(bench)).Text.Replace('\u00a0', ' '),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_unit_fresh_on_the_bench_lists_every_check_and_every_part_nobody_looked_at()
    {
        var open = Matter(new OnTheBench()).Open;
        Assert.All(open, o => Assert.True(o.IsOpen));
        Assert.Equal(OnTheBench.Sheet.Readings.Count(r => r.IsGate) + Shop.LookOver.Count(i => i.CanEndanger), open.Length);
    }

    [Fact]
    public void What_failed_what_is_loose_what_is_left_over_and_what_endangers_are_listed_with_who_signed()
    {
        var step = OnTheBench.Sheet.TakeApart[0].Id;
        var lifting = OnTheBench.Sheet.TakeApart.First(s => !s.Lifts.IsEmpty);
        var bench = Sound()
            .Read("insulation-core", 20e3)
            .Add(new ConditionNoted("cord", "crumbling, bare wire showing", Decision.Renew, ""))
            .Add(new TakenOff(step, 4, 4, ""))
            .Add(new PutBack(step, 2, 0, "two were rusted through", "A. B."))
            .Add(new TakenOff(lifting.Id, 5, 1, ""));
        var open = Open(bench);
        Assert.Contains(open, o => o.StartsWith("Failed Cord: crumbling, bare wire showing.", StringComparison.Ordinal));
        Assert.Contains(open, o => o.StartsWith("Failed ", StringComparison.Ordinal) && o.Contains("20 kΩ", StringComparison.Ordinal));
        Assert.Contains(
            open,
            o =>
                o.StartsWith("Waived 2 pieces left over", StringComparison.Ordinal)
                && o.EndsWith("signed by A. B.: two were rusted through", StringComparison.Ordinal)
        );
        Assert.Contains(open, o => o.StartsWith("ToDo Loose wires", StringComparison.Ordinal));
        Assert.Contains(
            open,
            o =>
                o.StartsWith(
                    $"ToDo {Workshop.Words.Sentences.Large(Workshop.Words.PartNames.Step(OnTheBench.Sheet, lifting.Id))}: still off",
                    StringComparison.Ordinal
                )
        );
        Assert.Contains("ToDo Wiring check: A wire was moved. The check has not passed.", open);
        Assert.False(Matter(bench).MayBePluggedIn);
        // Nobody signed: it is a bar.
        var unsigned = Sound().Add(new TakenOff(step, 4, 4, "")).Add(new PutBack(step, 2, 0, "", ""));
        Assert.Equal([OpenWeight.ToDo], Matter(unsigned).Open.Select(o => o.Weight));
    }

    [Fact]
    public void What_somebody_signed_for_is_listed_and_no_bar()
    {
        var waived = new OnTheBench().Add(new ReadingWaived("insulation-posts", "no tester", "A. B.", "ohmmeter: OL"));
        Assert.Contains(Matter(waived).Open, o => o is { Weight: OpenWeight.Waived, IsOpen: false, Words: "waived by A. B.: no tester" });
        var found = Sound().Add(new FindingJudged("disc-left", "leaky", Judgement.Confirmed, ""));
        Assert.Equal([(OpenWeight.ToKnow, false)], Matter(found).Open.Select(o => (o.Weight, o.IsOpen)));
    }

    [Fact]
    public void Returned_says_how_and_the_card_keeps_it_and_back_on_the_bench_ends_it()
    {
        var bench = Sound();
        CardOfIs(bench, false, null);
        CardOfIs(bench.Add(new Returned(ReturnManner.Working, "A. B.")), true, "Returned working, as tested");
        Assert.True(Matter(bench).MayBePluggedIn);
        CardOfIs(bench.Add(new StageClosed(Stage.Papers, false, "")), false, null);
        CardOfIs(bench.Add(new Returned(ReturnManner.NotToBePluggedIn, "A. B.")), true, "Returned, not to be plugged in");
        var matter = Matter(bench);
        Assert.False(matter.MayBePluggedIn);
        foreach (var paper in PaperTable.All.SelectMany(p => p.Lengths(matter)))
            Assert.Matches("NOT TO BE PLUGGED IN|Do not plug this unit in", paper.Text);
        Assert.DoesNotContain("W for hours", ServiceRecord.Make(matter).Text, StringComparison.Ordinal);

        static void CardOfIs(OnTheBench bench, bool isBack, string? words)
        {
            var card = CardOf.Make(bench.Unit, OnTheBench.Sheet, Shop.Usual);
            Assert.Equal(isBack, card.IsHandedBack);
            if (words is not null)
                Assert.Equal((NextAction.Nothing, words), (card.Next.Action, card.Next.Words));
        }
    }

    /// <summary>A journal of the time when the last stage was closed by hand.</summary>
    [Fact]
    public void An_older_journal_that_closed_the_papers_is_returned_in_no_manner()
    {
        var unit = new OnTheBench().Add(new StageClosed(Stage.Papers, true, "")).Unit;
        Assert.Null(unit.HandedBack!.Manner);
        Assert.Equal("Returned", CardOf.Make(unit, OnTheBench.Sheet, Shop.Usual).Next.Words);
    }

    /// <summary>The owner's page promises nothing while a wire is bare, and says so on every paper.</summary>
    [Fact]
    public void No_paper_says_what_it_can_run_while_something_endangers()
    {
        var bench = Sound().Add(new ConditionNoted("plug", "screws exposed", Decision.Open, ""));
        var matter = Matter(bench);
        Assert.Contains("What it can run", ServiceRecord.Make(Matter(Sound())).Text, StringComparison.Ordinal);
        Assert.Contains("What it can run", OwnerPage.Make(Matter(Sound()), 5).Text, StringComparison.Ordinal);
        foreach (var paper in PaperTable.All.SelectMany(p => p.Lengths(matter)))
        {
            Assert.Contains("Plug: screws exposed.", paper.Text, StringComparison.Ordinal);
            Assert.DoesNotContain("What it can run", paper.Text, StringComparison.Ordinal);
            Assert.DoesNotContain(
                "for hours",
                paper.Text.Replace("Heat over hours", "", StringComparison.Ordinal),
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public void A_part_to_be_replaced_is_never_under_what_was_done_nor_replaced_and_to_be_replaced_at_once()
    {
        var bench = Sound()
            .Add(new ConditionNoted("flats", "large flats", Decision.Renew, ""))
            .Add(new ConditionNoted("handles", "cracked", Decision.Renew, ""));
        var text = ServiceRecord.Make(Matter(bench)).Text;
        var done = text.IndexOf("What was done", StringComparison.Ordinal);
        Assert.InRange(
            text.IndexOf("Rollers (large flats): to be replaced.", StringComparison.Ordinal),
            text.IndexOf("Still to do", StringComparison.Ordinal),
            text.Length
        );
        Assert.InRange(text.IndexOf("Still to do", StringComparison.Ordinal), done, text.Length);
        text = ServiceRecord.Make(Matter(bench.Add(new PartChanged("roller-left", PartChange.Renewed, null, "")))).Text;
        Assert.Contains("Handles (cracked): to be replaced.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("(large flats): to be replaced", text, StringComparison.Ordinal);
        Assert.Single(
            text.Split('\n'),
            l => l.Contains("Handles", StringComparison.Ordinal) && l.Contains("to be replaced.", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_repair_that_was_ended_keeps_the_unit_from_going_back_as_working_until_another_bill()
    {
        var bench = Sound();
        Assert.DoesNotContain(Matter(bench).Open, o => o.IsOpen && o.Title == "The repair was ended");
        bench.Add(new Billed(20, $"{Billed.Ended}insulation stays under 2 MΩ"));
        var ended = Assert.Single(Matter(bench).Open, o => o.Title == "The repair was ended");
        Assert.True(ended.IsOpen);
        Assert.Equal("Insulation stays under 2 MΩ. Do not plug it in.", ended.Words);
        bench.Add(new Billed(85, "repaired after all"));
        Assert.DoesNotContain(Matter(bench).Open, o => o.Title == "The repair was ended");
    }
}
