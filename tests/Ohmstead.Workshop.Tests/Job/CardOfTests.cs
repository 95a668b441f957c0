using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Job;

public class CardOfTests
{
    private static readonly Guid Unit = new(1, 0, 0, new byte[8]);
    private static readonly DateTimeOffset Noon = new(2026, 1, 5, 12, 0, 0, TimeSpan.Zero);

    // A gate that the second reading needs; the third needs the case open.
    private static readonly TypeSheet Sheet = TypeSheetFile
        .Read(
            """
            { "ohmstead": "type-sheet/1", "id": "s", "title": "A kind", "supply": { "volts": 20, "hertz": 60 },
              "elements": [ { "id": "r", "kind": "resistor", "from": "a", "to": "b", "ohms": 10 } ],
              "takeApart": [ { "id": "lid", "title": "Lid off", "minutesOut": 5 } ],
              "readings": [
                { "id": "inside", "title": "Inside", "quantity": "ohms", "between": ["a", "b"], "access": "lid" },
                { "id": "cold", "title": "Cold check", "quantity": "ohms", "between": ["a", "b"], "limits": { "min": 5, "max": 20 } },
                { "id": "live", "title": "Under power", "quantity": "ac-volts", "between": ["a", "b"], "needs": ["cold"], "minutes": 3,
                  "state": { "source": { "from": "a", "to": "b", "volts": 20 } } } ] }
            """
        )
        .Required;

    private static readonly Fact LookedOver = new StageClosed(Stage.LookOver, true, "");

    private static UnitCard Card(params Fact[] facts) => CardOf.Make(Told(facts), Sheet, Shop.Usual);

    private static BenchUnit Told(Fact[] facts) =>
        UnitHistory.Fold([
            .. facts
                .Prepend(new TakenIn("12", "s", "A. Brass", "hums"))
                .Select((f, n) => new Entry(new Guid(n + 1, 1, 0, new byte[8]), Unit, n + 1, Noon.AddMinutes(n), "bench", f)),
        ]);

    private static Fact Read(string id, double value) => new ReadingEntered(id, Shown.Number(value), BenchState.AsSheet);

    private static (NextAction, string) Next(params Fact[] facts) => (Card(facts).Next.Action, Card(facts).Next.About);

    [Fact]
    public void Without_a_sheet_the_kind_is_asked_first() =>
        Assert.Equal(NextAction.NameKind, CardOf.Make(Told([LookedOver]), null, Shop.Usual).Next.Action);

    [Fact]
    public void The_look_over_comes_before_readings() => Assert.Equal((NextAction.LookOver, ""), Next());

    [Fact]
    public void A_reading_waits_for_its_needs_and_the_closed_case_comes_first()
    {
        Assert.Equal((NextAction.TakeReading, "cold"), Next(LookedOver));
        Assert.Equal((NextAction.TakeReading, "live"), Next(LookedOver, Read("cold", 10)));
        Assert.Equal(
            ("Take the reading: Under power", 3.0),
            (Card(LookedOver, Read("cold", 10)).Next.Words, Card(LookedOver, Read("cold", 10)).Next.Minutes)
        );
        Assert.Equal((NextAction.TakeReading, "inside"), Next(LookedOver, Read("cold", 10), Read("live", 20)));
        Assert.Equal((NextAction.JudgeFindings, ""), Next(LookedOver, Read("cold", 10), Read("live", 20), Read("inside", 10)));
    }

    /// <summary>
    /// The usual hand meter errs by 0.8 % and 0.05 Ω, its leads are 0.2 Ω (common practice, no source): 5.22 Ω on it is 5.02 ± 0.09,
    /// and 20.15 Ω is 19.95 ± 0.21, either too close to the limits of 5 and 20.
    /// </summary>
    [Fact]
    public void What_needs_a_check_that_is_too_close_for_the_meter_is_not_proposed()
    {
        Assert.Equal((NextAction.TakeReading, "inside"), Next(LookedOver, Read("cold", 5.22)));
        Assert.Equal((NextAction.TakeReading, "inside"), Next(LookedOver, Read("cold", 20.15)));
        Assert.Equal((NextAction.TakeReading, "live"), Next(LookedOver, Read("cold", 7)));
    }

    [Fact]
    public void What_needs_a_failed_check_is_not_proposed_and_what_needs_a_waived_one_is()
    {
        Assert.Equal((NextAction.TakeReading, "inside"), Next(LookedOver, Read("cold", 2)));
        Assert.Equal((NextAction.JudgeFindings, ""), Next(LookedOver, Read("cold", 2), Read("inside", 2)));
        Assert.Equal((NextAction.TakeReading, "live"), Next(LookedOver, new ReadingWaived("cold", "no meter", "A. Brass", "")));
        Assert.Equal((NextAction.TakeReading, "inside"), Next(LookedOver, new ReadingEntered("cold", Shown.OverRange, BenchState.AsSheet)));
    }

    /// <summary>What the last diagnosis takes for a slip opens nothing on the card either.</summary>
    [Fact]
    public void What_needs_a_check_that_is_doubted_is_not_proposed()
    {
        var unit = Told([LookedOver, Read("cold", 10)]);
        var doubts = UnitDoubts.None with { Number = unit.LastNumber, Checks = CheckDoubts.None with { Readings = ["cold"] } };
        var next = CardOf.Make(unit with { Doubts = doubts }, Sheet, Shop.Usual).Next;
        Assert.Equal((NextAction.TakeReading, "inside"), (next.Action, next.About));
    }

    /// <summary>The shop's own meter decides whether a check is too close: one with 10 % cannot tell 18.5 Ω from 20.</summary>
    [Fact]
    public void The_checks_of_the_card_go_by_the_meter_of_the_shop()
    {
        var unit = Told([LookedOver, Read("cold", 18.5)]);
        var coarse = Shop.Usual with
        {
            Meters =
            [
                Shop.Usual.Meters[0] with
                {
                    Errors = Shop.Usual.Meters[0].Errors.SetItem("ohms", Shop.Usual.Meters[0].Errors["ohms"] with { Percent = 10 }),
                },
            ],
        };
        Assert.Equal("live", CardOf.Make(unit, Sheet, Shop.Usual).Next.About);
        Assert.Equal("inside", CardOf.Make(unit, Sheet, coarse).Next.About);
    }

    [Fact]
    public void A_changed_part_makes_the_readings_due_again() =>
        Assert.Equal(
            (NextAction.TakeReading, "cold"),
            Next(LookedOver, Read("cold", 10), new PartChanged("r", PartChange.Renewed, null, ""))
        );

    [Fact]
    public void A_confirmed_finding_asks_for_its_repair_until_the_part_was_changed()
    {
        Fact[] done = [LookedOver, new StageClosed(Stage.Readings, true, ""), new FindingJudged("r", "open", Judgement.Confirmed, "")];
        Assert.Equal((NextAction.Repair, "r"), Next(done));
        Assert.Equal((NextAction.JudgeFindings, ""), Next([.. done, new PartChanged("r", PartChange.Renewed, null, "")]));
        Assert.Equal((NextAction.JudgeFindings, ""), Next([.. done, new FindingJudged("r", "open", Judgement.Dismissed, "")]));
    }

    [Fact]
    public void The_last_stage_hands_it_back_until_it_is_opened_again()
    {
        Fact closed = new StageClosed(Stage.Papers, true, "");
        Assert.True(Card(closed).IsHandedBack);
        Assert.Equal(NextAction.Nothing, Card(closed).Next.Action);
        Assert.False(Card(closed, new StageClosed(Stage.Papers, false, "")).IsHandedBack);
    }

    [Fact]
    public void The_card_tells_the_last_thing_done_and_shows_the_first_photo_of_the_unit()
    {
        var card = Card(new PhotoAdded("of-a-part", "", "r"), new PhotoAdded("of-the-unit", "", ""), Read("live", 18.6));
        Assert.Equal(("A kind", "of-the-unit", Noon.AddMinutes(3)), (card.Kind, card.Photo, card.LastAt));
        Assert.Equal("Under power: 18.6 V", card.LastDone);
    }
}
