using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Units;

/// <summary>What "where was I" is made of.</summary>
public class OnABenchTests
{
    private static BenchUnit Told(params Fact[] facts) =>
        UnitHistory.Fold([
            .. facts
                .Prepend(new TakenIn("F-7", "twin-160", "an owner", "hums"))
                .Select(
                    (f, n) =>
                        new Entry(
                            new Guid(n + 1, 1, 0, new byte[8]),
                            new Guid(7, 0, 0, new byte[8]),
                            n + 1,
                            DateTimeOffset.UnixEpoch,
                            "bench",
                            f
                        )
                ),
        ]);

    private static Guid IdOf(int number) => new(number, 1, 0, new byte[8]);

    private static StageView StageOf(Stage stage, params Fact[] facts) =>
        StageView.All(Told(facts), OnTheBench.Sheet, UsualShop.Make(), []).Single(s => s.Stage == stage);

    [Fact]
    public void The_look_over_says_what_was_answered_what_is_open_and_what_is_to_be_renewed()
    {
        var sign = OnTheBench.Sheet.Observations[0].Id;
        var (signs, parts) = (OnTheBench.Sheet.Observations.Length, UsualShop.Make().LookOver.Length);
        var covered = UsualShop.Make().LookOver.Count(i => i.IsUnderCover);
        var stage = StageOf(
            Stage.LookOver,
            new SignAnswered(sign, Answer.Unsure),
            new ConditionNoted("cord", "cracked", Decision.Renew, ""),
            new PhotoAdded("a", "", ""),
            new PhotoAdded("a", "", "")
        );
        Assert.Equal(
            FormattableString.Invariant($"1 of {signs} symptoms asked; 1 of {parts} parts looked at; 1 photo; to replace: Cord"),
            stage.Done
        );
        // What lies under the cover waits until it is off.
        Assert.InRange(covered, 1, parts - 2);
        Assert.Equal(FormattableString.Invariant($"{signs - 1} symptoms, {parts - 1 - covered} parts"), stage.Open);
        Assert.False(stage.IsClosed);
    }

    [Fact]
    public void A_part_that_was_renewed_is_no_longer_to_be_renewed_and_findings_wait_for_readings()
    {
        var stage = StageOf(
            Stage.LookOver,
            new ConditionNoted("cord", "cracked", Decision.Renew, ""),
            new ConditionNoted("cord", "cracked", Decision.Renewed, "")
        );
        Assert.DoesNotContain("to replace", stage.Done, StringComparison.Ordinal);
        Assert.Equal("readings to go by", StageOf(Stage.Findings).Open);
    }

    [Fact]
    public void A_stage_closed_and_opened_again_is_open()
    {
        Assert.True(StageOf(Stage.LookOver, new StageClosed(Stage.LookOver, true, "")).IsClosed);
        Assert.False(
            StageOf(Stage.LookOver, new StageClosed(Stage.LookOver, true, ""), new StageClosed(Stage.LookOver, false, "")).IsClosed
        );
    }

    /// <summary>Nothing can be said by hand where a check or a part says it: the readings wait for their checks, the rest is no question.</summary>
    [Fact]
    public void A_stage_is_not_marked_as_done_around_a_check()
    {
        var shut = StillShut.Of(Told(), OnTheBench.Sheet, OnTheBench.Shop);
        var stages = StageView.All(Told(), OnTheBench.Sheet, OnTheBench.Shop, shut);
        Assert.Contains("Between the plug blades", stages.Single(s => s.Stage == Stage.Readings).Locked, StringComparison.Ordinal);
        Assert.Equal([Stage.LookOver, Stage.Readings, Stage.Findings], stages.Where(s => s.IsByHand).Select(s => s.Stage));
        Assert.Empty(StageView.All(Told(), OnTheBench.Sheet, OnTheBench.Shop, []).Single(s => s.Stage == Stage.Readings).Locked);
        var off = new TakenOff(OnTheBench.Sheet.TakeApart[0].Id, 1, 2, "");
        Assert.False(StageOf(Stage.TakingApart, off, new StageClosed(Stage.TakingApart, true, "")).IsClosed);
        Assert.True(StageOf(Stage.TakingApart, off, new PutBack(off.Step, 2, 0, "", "")).IsClosed);
        Assert.False(
            StageOf(Stage.Wiring, new PartChanged("w-5", PartChange.Rewired, null, ""), new StageClosed(Stage.Wiring, true, "")).IsClosed
        );
    }

    [Fact]
    public void A_part_whose_new_one_is_in_is_no_longer_to_be_replaced()
    {
        Fact[] worn =
        [
            new ConditionNoted("cord", "cracked", Decision.Renew, ""),
            new ConditionNoted("flats", "large flats", Decision.Renew, ""),
        ];
        Assert.Contains("to replace: Cord, Rollers", StageOf(Stage.LookOver, worn).Done, StringComparison.Ordinal);
        Assert.DoesNotContain(
            "to replace",
            StageOf(
                Stage.LookOver,
                [
                    .. worn,
                    new PartChanged("cord-1", PartChange.Renewed, null, ""),
                    new PartChanged("roller-left", PartChange.Renewed, null, ""),
                ]
            ).Done,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "to replace: Cord",
            StageOf(Stage.LookOver, [new PartChanged("cord-1", PartChange.Renewed, null, ""), .. worn]).Done,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_confirmed_fault_is_a_repair_to_do_until_its_part_is_changed()
    {
        Fact confirmed = new FindingJudged("disc", "leaky", Judgement.Confirmed, "");
        Assert.Equal("1 repair to do", StageOf(Stage.Findings, confirmed).Open);
        Assert.Equal("", StageOf(Stage.Findings, confirmed, new PartChanged("disc", PartChange.Renewed, null, "")).Open);
        Assert.Equal("1 repair to do", StageOf(Stage.Findings, new PartChanged("disc", PartChange.Renewed, null, ""), confirmed).Open);
    }

    [Fact]
    public void Gates_stay_shut_until_read_and_are_named_once()
    {
        var all = StillShut.Of(Told(), OnTheBench.Sheet, OnTheBench.Shop);
        Assert.Equal(all.Select(g => g.Gate.Id).Distinct(), all.Select(g => g.Gate.Id));
        Assert.Contains(all, g => g.Gate.Id == "blades");
        var read = Told(new ReadingEntered("blades", Shown.Number(3.2), BenchState.AsSheet));
        Assert.DoesNotContain(StillShut.Of(read, OnTheBench.Sheet, OnTheBench.Shop), g => g.Gate.Id == "blades");
        Assert.Empty(StillShut.Of(Told(), null, OnTheBench.Shop));
    }

    [Fact]
    public void A_correction_stands_with_what_it_corrects_and_can_be_put_back()
    {
        var lines = JournalLine.LastFirst(
            Told(new Noted("one"), new Noted("two"), new Corrected(IdOf(2), new Noted("uno")), new Corrected(IdOf(3), null)),
            null
        );
        Assert.Equal(["two", "one", "Taken in"], lines.Select(l => l.Words));
        Assert.Equal((true, false), (lines[0].IsTakenBack, lines[0].CanBeTakenBack));
        Assert.Equal(("uno", false), (lines[1].Now, lines[1].IsTakenBack));
        Assert.False(lines[2].CanBeTakenBack);

        var back = Told(new Noted("two"), new Corrected(IdOf(2), null), new Corrected(IdOf(2), new Noted("two")));
        var line = JournalLine.LastFirst(back, null)[0];
        Assert.Equal(("two", "", false), (line.Words, line.Now, line.IsTakenBack));
        Assert.Equal(line.Correct(null), new Corrected(IdOf(2), null));
    }

    [Theory]
    [InlineData("1")]
    [InlineData("F-045", "F-044", "F-9", "loan")]
    [InlineData("100", "99", "B7")]
    [InlineData("T010", "T009")]
    public void The_next_tag_goes_on_from_the_highest(string next, params string[] tags) => Assert.Equal(next, NextTag.After(tags));

    [Fact]
    public void What_is_half_done_comes_first_and_what_takes_too_long_last()
    {
        UnitCard Card(string tag, NextAction action, double minutes, int hour) =>
            new(
                IdOf(1),
                tag,
                "",
                "",
                "",
                "",
                "",
                DateTimeOffset.UnixEpoch.AddHours(hour),
                new NextThing(action, "", minutes, ""),
                action == NextAction.Nothing
            );
        UnitCard[] cards =
        [
            Card("gone", NextAction.Nothing, 0, 9),
            Card("long", NextAction.Repair, 90, 8),
            Card("look", NextAction.LookOver, 10, 7),
            Card("old reading", NextAction.TakeReading, 2, 1),
            Card("reading", NextAction.TakeReading, 2, 2),
            Card("repair", NextAction.Repair, 20, 0),
        ];
        Assert.Equal(["repair", "reading", "old reading", "look", "long"], HalfHour.Order(cards).Select(c => c.Tag));
    }
}
