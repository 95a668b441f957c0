using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Plans;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Tests.Units;

namespace Ohmstead.Workshop.Tests.Plans;

/// <summary>Estimate, go-ahead, bill, and what it took: plain sums of what is entered here.</summary>
public class EstimateTests
{
    private static readonly DateOnly Today = new(2026, 11, 27);

    private static readonly UnitPlan Plan = new(
        [new(PlanLineKind.Done, "Cord: replaced", "", [], [new("cord", 7.50m, 100)]) { TookMinutes = 18 }],
        [
            new(PlanLineKind.Work, "Roller: clean", "", [new("work a", "k", 14, [], 71)], [new("roller", 4.50m, 71), new("pin", 0.60m, 71)])
            {
                Stop = new("the arm breaks", 3, 20),
            },
            new(PlanLineKind.Looks, "Looks, lettering", "worn", [new("looks", "l", 20, [], 100)], []),
        ],
        []
    );

    private static readonly PlanPrice Price = new(79.4, 105.6, 72, 104, 12.6, 110, 8, 3, []);

    private static EstimateMade Made(string ask = "", string until = "2026-12-27") =>
        Assert.IsType<EstimateMade>(EstimateDraft.Make(Plan, Price, ask, until, Today).Fact);

    [Fact]
    public void An_estimate_keeps_what_is_included_as_it_is_now_in_whole_money()
    {
        var made = Made();
        Assert.Equal((79m, 106m, 110m), (made.Low, made.High, made.AskAbove));
        Assert.Equal(new DateOnly(2026, 12, 27), made.HoldsUntil);
        Assert.Equal(
            [
                ("Cord: replaced", 18.0, 7.50m, 100.0, false),
                ("Roller: clean", 14.0, 5.10m, 71.0, false),
                ("Looks, lettering", 20.0, 0m, 100.0, true),
            ],
            made.Lines.Select(l => (l.Words, Math.Round(l.Minutes, 6), l.Parts, l.Percent, l.IsLooks))
        );
        Assert.Equal([new EstimateStop("the arm breaks", 20)], made.Stops);
        Assert.Equal(120.50m, Made("120,50").AskAbove);
    }

    [Theory]
    [InlineData("x", "2026-12-27", "Ask above:")]
    [InlineData("-1", "2026-12-27", "Ask above:")]
    [InlineData("", "2026-11-26", "Holds until:")]
    [InlineData("", "soon", "Holds until:")]
    public void An_estimate_that_cannot_be_is_refused(string ask, string until, string problem) =>
        Assert.StartsWith(problem, EstimateDraft.Make(Plan, Price, ask, until, Today).Refused, StringComparison.Ordinal);

    [Fact]
    public void The_owners_word_has_a_day_a_limit_or_none_and_their_own_words()
    {
        Assert.Equal(
            new GoAheadGiven(Today, "by phone", 120, "keep the old knobs"),
            EstimateDraft.GoAhead("2026-11-27", "by phone", "120", " keep the old knobs ").Fact
        );
        Assert.Null(((GoAheadGiven)EstimateDraft.GoAhead("2026-11-27", "by mail", " ", "").Fact!).Limit);
        Assert.StartsWith("Date:", EstimateDraft.GoAhead("27 Nov", "by mail", "", "").Refused, StringComparison.Ordinal);
        Assert.StartsWith("Up to:", EstimateDraft.GoAhead("2026-11-27", "by mail", "lots", "").Refused, StringComparison.Ordinal);
        Assert.Equal(new Billed(93.46m, ""), EstimateDraft.Bill("93.456", "").Fact);
        Assert.StartsWith("Bill:", EstimateDraft.Bill("", "").Refused, StringComparison.Ordinal);
    }

    [Fact]
    public void A_repair_that_ends_at_a_stop_point_is_billed_its_fee_with_the_reason() =>
        Assert.Equal(new Billed(20, "Ended: the arm breaks"), EstimateDraft.Ended(Plan.Lines[0].Stop!));

    /// <summary>5 + 12 + 4 + 2 minutes from the first step off on, one pause; at 50 an hour 19.17, with a cord of 7.50 that is 26.67.</summary>
    [Fact]
    public void What_it_took_is_the_log_from_the_first_work_on()
    {
        var unit = LoggedMinutesTests.Unit(
            (0, new TakenIn("1", "twin-160", "", "")),
            (9, new Noted("before any work")),
            (14, new TakenOff("cover", 1, 1, "")),
            (26, new PartChanged("cord-1", PartChange.Renewed, null, "")),
            (56, new Noted("lunch")),
            (60, new PutBack("cover", 1, 0, "", "")),
            (62, new PowerTried(24, null, null, true)),
            (62, Made() with { LowMinutes = 20, HighMinutes = 30 }),
            (62, new Billed(25, ""))
        );
        var took = WhatItTook.Of(unit, Plan, Shop.Usual)!;
        Assert.Equal((5, 12, 4, 2), (took.ApartMinutes, took.WorkMinutes, took.BackMinutes, took.OtherMinutes));
        Assert.Equal(1, took.Pauses);
        Assert.Equal((7.50m, 26.67m, 25m), (took.Parts, took.Worth, took.Billed!.Value));
        Assert.Equal(Made().Lines.Sum(l => l.Parts), took.EstimatedParts);
        Assert.Null((took with { Estimate = null }).EstimatedParts);
        Assert.Equal("within the estimate", took.Compared);
        Assert.Equal("longer than nine of ten such jobs", (took with { WorkMinutes = 20 }).Compared);
        Assert.Equal("shorter than half of such jobs", (took with { WorkMinutes = 2 }).Compared);
        Assert.Null(WhatItTook.Of(LoggedMinutesTests.Unit((0, new TakenIn("1", "twin-160", "", ""))), Plan, Shop.Usual));
    }

    /// <summary>The file asks the same question: the command line reads it without a problem.</summary>
    [Fact]
    public void The_price_can_be_asked_again_on_the_command_line()
    {
        var price = PlanPrice.Of(Plan, Shop.Usual, 120);
        var read = Ohmstead.Electrical.Reckoning.QuestionFile.Read(
            Ohmstead.Electrical.Reckoning.Deciding.QuoteText.Of(price.Question!),
            null
        );
        var quote = Assert.IsType<Ohmstead.Electrical.Reckoning.Deciding.Quote>(read.Question!);
        var answer = quote.Answer();
        // 18 minutes and the cord are done: 15 + 7.50.
        Assert.Equal(price.Low, 22.5 + answer.Finished.Bill.P50!.Value, 9);
        Assert.Equal(price.High, 22.5 + answer.Finished.Bill.P90!.Value, 9);
    }

    [Fact]
    public void Looks_have_the_usual_parts_and_those_that_were_named()
    {
        var bench = new OnTheBench()
            .Add(new LooksNoted("Lettering", "worn", true, 20, 3))
            .Add(new LooksNoted("Badge", "bent", false, 5, 0))
            .Add(new LooksNoted("Lettering", "worn", false, 20, 3));
        var looks = LooksPlan.Of(bench.Unit);
        Assert.Equal(["Case", "Lettering", "Posts", "Plating", "Knobs", "Badge"], looks.Select(l => l.Item));
        Assert.False(looks[1].IsToDo);
        Assert.Equal(new LooksNoted("Knobs", "chipped", true, 15, 8.50m), LooksPlan.Note("Knobs", " chipped ", true, "15", "8,50").Fact);
        Assert.StartsWith("Price:", LooksPlan.Note("Knobs", "", true, "15", "?").Refused, StringComparison.Ordinal);
    }

    [Fact]
    public void It_holds_for_the_days_of_the_shop() =>
        Assert.Equal("2026-03-05", EstimateDraft.UsuallyUntil(new DateOnly(2026, 2, 23), Shop.Usual with { EstimateDays = 10 }));
}
