using System.Text.Json;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.LookOver;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.LookOver;

/// <summary>
/// Bare wire, live screws, something live in reach: no mains until it is replaced or made good and looked at again. Common practice, no
/// source.
/// </summary>
public class EndangeringTests
{
    private static readonly Shop Shop = OnTheBench.Shop with { LookOver = UsualShop.Make().LookOver };

    private static ConditionNoted Cord(string words, Decision decision = Decision.Open) => new("cord", words, decision, "");

    /// <summary>All that can endanger looked at and good, the cold gates passed.</summary>
    private static OnTheBench LookedOver()
    {
        var bench = new OnTheBench().ColdGates().Read("lamp-60", 105);
        foreach (var item in Shop.LookOver)
            bench.Add(new ConditionNoted(item.Id, "good", Decision.Leave, ""));
        return bench;
    }

    private static Danger? State(OnTheBench bench, string item = "cord") =>
        Endangering.All(bench.Unit, OnTheBench.Sheet, Shop).FirstOrDefault(e => e.Item.Id == item)?.State;

    private static ReadingOffer Offer(OnTheBench bench, string id) =>
        ReadingOffer.All(bench.Unit, bench.Model, bench.Readings, Shop).Single(o => o.Spec.Id == id);

    [Theory]
    [InlineData("cord", "sticky or gummy")]
    [InlineData("cord", "cracked; near the plug")]
    [InlineData("cord", "crumbling, bare wire showing")]
    [InlineData("plug", "screws exposed")]
    [InlineData("sleeves", "bare wire showing")]
    [InlineData("case", "a crack, something live in reach")]
    [InlineData("case", "a piece missing, something live in reach; at the back")]
    [InlineData("cord", "crumbles, wire to be seen")]
    [InlineData("plug", "screws open to the touch")]
    [InlineData("case", "piece missing")]
    public void What_can_be_touched_or_soon_will_be_locks_every_reading_on_the_mains_and_no_other(string item, string words)
    {
        var bench = LookedOver();
        Assert.All(OnTheBench.Sheet.Readings, r => Assert.Empty(Offer(bench, r.Id).Endangering));
        Assert.True(Offer(bench, "left-full").IsOpen);
        bench.Add(new ConditionNoted(item, words, Decision.Leave, ""));
        Assert.All(
            OnTheBench.Sheet.Readings,
            r => Assert.Equal(r.State.Source is { Volts: > 30 }, Offer(bench, r.Id).Endangering.Length == 1)
        );
        Assert.False(Offer(bench, "left-full").IsOpen);
        Assert.False(Offer(bench, "lamp-60").IsOpen);
        Assert.True(Offer(bench, "low-17").IsOpen);
    }

    [Theory]
    [InlineData("cord", "stiff")]
    [InlineData("case", "a crack, nothing live in reach")]
    [InlineData("case", "a piece missing, nothing live in reach")]
    [InlineData("sleeves", "brittle")]
    [InlineData("plug", "body cracked")]
    public void What_is_only_worn_locks_nothing(string item, string words) =>
        Assert.True(Offer(LookedOver().Add(new ConditionNoted(item, words, Decision.Renew, "")), "left-full").IsOpen);

    /// <summary>Replaced or made good, and looked at again: either alone opens nothing.</summary>
    [Theory]
    [InlineData(Decision.Renewed)]
    [InlineData(Decision.MadeGood)]
    public void It_opens_when_the_part_was_mended_and_looked_at_again(Decision mended)
    {
        const string bare = "crumbling, bare wire showing";
        var bench = LookedOver().Add(Cord(bare, Decision.Renew));
        Assert.Equal(Danger.Found, State(bench));
        Assert.Equal(Danger.SaidGood, State(bench.Add(Cord("good", Decision.Renew))));
        Assert.Equal(Danger.Found, State(bench.Add(Cord(bare, Decision.Renew))));
        Assert.Equal(Danger.LookAgain, State(bench.Add(Cord(bare, mended))));
        Assert.False(Offer(bench, "left-full").IsOpen);
        Assert.Null(State(bench.Add(Cord("good", mended))));
        Assert.True(Offer(bench, "left-full").IsOpen);
        // The new one is as bad: found again, whatever was mended before.
        Assert.Equal(Danger.Found, State(bench.Add(Cord(bare, Decision.Open))));
    }

    [Fact]
    public void A_cord_put_in_new_is_looked_at_again_and_not_before_it_was_found()
    {
        var bench = LookedOver().Add(new PartChanged("cord-1", PartChange.Renewed, null, "")).Add(Cord("crumbling, bare wire showing"));
        Assert.Equal(Danger.Found, State(bench));
        Assert.Equal(Danger.LookAgain, State(bench.Add(new PartChanged("cord-1", PartChange.Renewed, null, ""))));
        Assert.Null(State(bench.Add(Cord("good"))));
    }

    [Fact]
    public void Nobody_can_sign_for_what_was_found()
    {
        var bench = LookedOver().Add(Cord("crumbling, bare wire showing")).Add(new NotLookedAt("cord", "no time", "A. B."));
        Assert.Equal(Danger.Found, State(bench));
        Assert.False(Offer(bench, "left-full").IsOpen);
    }

    [Fact]
    public void What_nobody_looked_at_locks_the_mains_until_somebody_looks_or_signs()
    {
        var bench = new OnTheBench().ColdGates().Read("lamp-60", 105);
        Assert.Equal(["cord", "plug", "sleeves", "case"], Offer(bench, "left-full").Endangering.Select(e => e.Item.Id));
        foreach (var item in new[] { "cord", "plug", "case" })
            bench.Add(new ConditionNoted(item, "good", Decision.Leave, ""));
        bench.Add(new ConditionNoted("sleeves", UsualShop.NotOpened, Decision.Open, ""));
        Assert.Equal(Danger.NotLookedAt, State(bench, "sleeves"));
        Assert.False(Offer(bench, "left-full").IsOpen);
        bench.Add(new NotLookedAt("sleeves", "the cover is riveted", "A. B."));
        Assert.True(Offer(bench, "left-full").IsOpen);
        var signed = Endangering.All(bench.Unit, OnTheBench.Sheet, Shop).Single();
        Assert.Equal((Danger.SignedFor, "A. B.", "the cover is riveted"), (signed.State, signed.SignedBy, signed.Why));
        Assert.Empty(Endangering.Open(bench.Unit, OnTheBench.Sheet, Shop));
        Assert.Equal(Danger.Found, State(bench.Add(new ConditionNoted("sleeves", "bare wire showing", Decision.Open, "")), "sleeves"));
    }

    /// <summary>An invented unit lies on no bench: only what is said of it counts.</summary>
    [Fact]
    public void A_unit_to_practice_on_need_not_be_looked_at()
    {
        var bench = new OnTheBench().Add(new PracticeBegun(7)).ColdGates().Read("lamp-60", 105);
        Assert.True(Offer(bench, "left-full").IsOpen);
        Assert.False(Offer(bench.Add(Cord("crumbling, bare wire showing")), "left-full").IsOpen);
    }

    [Fact]
    public void What_was_marked_by_mistake_is_withdrawn_by_the_entries_that_marked_it()
    {
        var bench = LookedOver().Add(Cord("crumbling, bare wire showing")).Add(Cord("crumbling, bare wire showing; at the plug"));
        foreach (var entry in Endangering.All(bench.Unit, OnTheBench.Sheet, Shop).Single().Entries)
            bench.Add(new Corrected(entry, null));
        Assert.Null(State(bench));
    }

    /// <summary>The marks are the shop's; a shop kept before there were marks has those of the trade.</summary>
    [Fact]
    public void The_shop_says_which_answers_endanger_and_an_older_shop_is_read_as_it_was()
    {
        var at = Shop.LookOver.ToList().FindIndex(i => i.Id == "handles");
        Assert.Equal("“loose” is not one of the usual answers above.", ShopEdit.Endangering(Shop, at, "loose").Problem);
        var strict = ShopEdit.Endangering(Shop, at, "cracked").Shop!;
        Assert.True(strict.LookOver[at].Endangers("cracked"));
        Assert.False(Shop.LookOver[at].CanEndanger);
        var cord = Shop.LookOver.ToList().FindIndex(i => i.Id == "cord");
        Assert.False(ShopEdit.Endangering(Shop, cord, "").Shop!.LookOver[cord].CanEndanger);
        var text = JsonSerializer.Serialize(Shop.LookOver[cord], FactText.Options);
        var old = JsonSerializer.Deserialize<LookOverItem>(
            text.Replace(",\"endanger\":null", "", StringComparison.Ordinal),
            FactText.Options
        )!;
        Assert.True(old.Endangers("crumbling, bare wire showing"));
        Assert.True(
            JsonSerializer
                .Deserialize<LookOverItem>(JsonSerializer.Serialize(strict.LookOver[at], FactText.Options), FactText.Options)!
                .Endangers("cracked")
        );
    }

    [Fact]
    public void The_next_thing_is_to_mend_it_before_a_reading_on_the_mains()
    {
        var sheet = OnTheBench.Sheet;
        var bench = new OnTheBench().Add(new StageClosed(Stage.LookOver, true, "")).Add(Cord("crumbling, bare wire showing"));
        Assert.Equal(NextAction.TakeReading, CardOf.Make(bench.Unit, sheet, Shop.Usual).Next.Action);
        foreach (var cold in sheet.Readings.Where(r => r.State.Source is not { Volts: > 30 }))
            bench.Read(
                cold.Id,
                cold.Limits is { } l
                    ? double.IsPositiveInfinity(l.Max)
                        ? 2 * l.Min
                        : (l.Min + l.Max) / 2
                    : 1
            );
        var next = CardOf.Make(bench.Unit, sheet, Shop.Usual).Next;
        Assert.Equal((NextAction.LookOver, "cord"), (next.Action, next.About));
        Assert.StartsWith("Cord: crumbling, bare wire showing. Replace it", next.Words, StringComparison.Ordinal);
    }
}
