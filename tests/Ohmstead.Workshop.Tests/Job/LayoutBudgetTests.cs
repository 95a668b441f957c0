using System.Collections.Immutable;
using Ohmstead.Electrical.Carrying;
using Ohmstead.Electrical.Reckoning;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Job;

/// <summary>What a unit can run. The amps by word are common practice, no source; figures are closed forms worked out beside them.</summary>
public class LayoutBudgetTests
{
    /// <summary>An invented pair of posts: 18 V idle, 17 V at its most.</summary>
    private static Outlet Pair(string from, string to, double amps, double idle = 18, double loaded = 17) =>
        new(
            $"Post {from} – post {to}",
            "",
            new OutletLimit(idle, loaded, amps, loaded / amps, HeldBy.Breaker, "b", amps, false, true),
            "its breaker",
            OnTheBench.Sheet.Readings[0] with
            {
                From = from,
                To = to,
            }
        );

    private static readonly Outlet Rail = Pair("u", "a", 6);
    private static readonly Outlet Lights = Pair("u", "d", 4, idle: 12, loaded: 11);

    private static ImmutableArray<PostSupply> Supplies => [new(Rail, 18, 0.25, false), new(Lights, 12, 0.25, false)];

    /// <summary>136 W at the 17 V of the rail are 8 A in all.</summary>
    private static readonly Rating Rating = new(200, 136, "type sheet");

    private static LayoutBudget Budget(params LayoutPost[] posts) => LayoutBudget.Of(Rating, Supplies, new([.. posts]))!;

    private static LayoutPost On(Outlet outlet, LayoutWire? wire, params (string What, int Count)[] items) =>
        new(outlet.Spec.From, outlet.Spec.To, [.. items.Select(i => new LayoutItem(i.What, i.Count))], wire);

    [Fact]
    public void Each_post_has_its_amps_its_fuse_and_what_it_has_room_for()
    {
        // 2 · 1.25 + 4 · 0.2 = 3.3 A; 1.2 · 3.3 = 3.96 A: a 4 A fuse. Lights 9 · 0.2 = 1.8 A, 2.16 A: a 3 A fuse.
        var budget = Budget(On(Rail, null, ("motor", 2), ("lamp", 4)), On(Lights, null, ("lamp", 9)));
        Assert.Equal([3.3, 1.8], budget.Posts.Select(p => Math.Round(p.Load.Amps, 9)));
        Assert.Equal(["fuse 4 A", "fuse 3 A"], budget.Posts.Select(LayoutWords.Fuse));
        Assert.Equal("3.3 of 6.0 A", LayoutWords.Amps(budget.Posts[0]));
        Assert.Equal("5.1 of 8.0 A used, 64 %", LayoutWords.Total(budget));
        // The unit keeps a tenth free: 7.2 − 5.1 = 2.1 A, less than the 2.7 A that the rail's post has left: one motor, ten lamps.
        Assert.Equal(1, budget.Posts[0].Room.Single(r => r.What == "motor").Count);
        Assert.Equal(10, budget.Posts[0].Room.Single(r => r.What == "lamp").Count);
        Assert.Contains("Room for 1 motor, or 1 older motor", LayoutWords.Room(budget.Posts[0]), StringComparison.Ordinal);
        // 18 V less 3.3 A in 0.25 Ω.
        Assert.Equal(18 - (3.3 * 0.25), budget.Posts[0].Load.VoltsAtTrain, 9);
    }

    /// <summary>76.5 W at the 17 V of the rail are 4.5 A in all: the rail's own 6 A are out of reach, the 4 A of the lights are not.</summary>
    [Fact]
    public void No_post_is_promised_more_than_the_whole_unit_may_carry()
    {
        var stated = new LayoutStated([On(Rail, null, ("motor", 4)), On(Lights, null, ("lamp", 1))]);
        var budget = LayoutBudget.Of(new(110, 76.5, "type sheet"), Supplies, stated)!;
        Assert.Equal(["5.0 of 4.5 A", "0.2 of 4.0 A"], budget.Posts.Select(LayoutWords.Amps));
        Assert.Equal("too much: take something off", LayoutWords.Fuse(budget.Posts[0]));
    }

    [Fact]
    public void Too_much_on_a_post_is_said_with_what_to_do_and_has_no_fuse()
    {
        // 5 · 1.25 = 6.25 A of 6.
        var over = Budget(On(Rail, null, ("motor", 5)));
        Assert.False(over.Answer.Fits);
        Assert.Equal("too much: take something off", LayoutWords.Fuse(over.Posts[0]));
        // 4 · 1.25 + 0.4 = 5.4 A would want 6.48 A, and the post carries 6: no rating lies between.
        var near = Budget(On(Rail, null, ("motor", 4), ("lit car", 1)));
        Assert.True(near.Answer.Fits);
        Assert.Equal("no fuse fits: take something off", LayoutWords.Fuse(near.Posts[0]));
        Assert.Equal("", LayoutWords.Fuse(Budget().Posts[0]));
    }

    /// <summary>18 AWG is 6.385 mΩ/ft (ASTM B258): 3.65 A over 20 ft and back lose 0.93 V, more than 5 % of 18 V.</summary>
    [Theory]
    [InlineData(18, 20, "18 AWG, 20 ft one way, loses 0.93")]
    [InlineData(18, 20, "Too thin: use 16 AWG.")]
    [InlineData(14, 20, "Thick enough.")]
    [InlineData(18, 19, "Thick enough.")]
    [InlineData(10, 900, "No wire of the usual sizes is thick enough so far.")]
    public void The_owners_wire_is_judged(int gauge, double feet, string words) =>
        Assert.Contains(
            words,
            LayoutWords.Wire(Budget(On(Rail, new(gauge, feet), ("motor", 1), ("smoke", 4))).Posts[0]),
            StringComparison.Ordinal
        );

    [Fact]
    public void The_question_file_asks_what_the_screen_asked()
    {
        var budget = Budget(On(Rail, new(18, 20), ("motor", 2), ("coil", 1)), On(Lights, null, ("lamp", 9)));
        var read = QuestionFile.Read(LayoutQuestion.Write(budget), null);
        Assert.Empty(read.Problems);
        Assert.Empty(read.Remarks);
        Assert.Equal(budget.Answer.ToJson("load-budget").ToJsonString(), read.Question!.Answer().ToJson("load-budget").ToJsonString());
    }

    [Fact]
    public void A_tap_changes_one_thing_on_one_pair_and_an_empty_pair_goes()
    {
        var stated = LayoutEdit.Count(new([]), Rail, "lamp", 2);
        stated = LayoutEdit.Count(stated, Lights, "lamp", 1);
        stated = LayoutEdit.Count(stated, Rail, "motor", 1);
        stated = LayoutEdit.Wire(stated, Lights, new(16, 6));
        Assert.Equal([new LayoutItem("motor", 1), new("lamp", 2)], stated.Posts[0].Items);
        stated = LayoutEdit.Count(stated, Lights, "lamp", 0);
        Assert.Equal(new LayoutWire(16, 6), LayoutBudget.PostOf(stated, Lights)!.Wire);
        stated = LayoutEdit.Wire(stated, Lights, null);
        Assert.Equal(["a"], stated.Posts.Select(p => p.To));
        Assert.Equal(["a"], LayoutEdit.Count(stated, Rail, "motor", -3).Posts.Select(p => p.To));
        Assert.Equal([new LayoutItem("lamp", 2)], LayoutEdit.Count(stated, Rail, "motor", -3).Posts[0].Items);
    }

    [Fact]
    public void Without_posts_or_a_rating_nothing_is_promised()
    {
        Assert.Null(LayoutBudget.Of(Rating, [], new([])));
        Assert.Null(LayoutBudget.Of(new(0, 0, ""), Supplies, new([])));
    }

    [Fact]
    public void Two_pairs_of_one_name_are_told_apart() =>
        Assert.Equal(
            ["Post u – post a", "Post u – post a (2)"],
            LayoutBudget.Of(Rating, [new(Rail, 18, 0, false), new(Rail, 17, 0, false)], new([]))!.Posts.Select(p => p.Load.Id)
        );

    [Fact]
    public void The_rails_are_the_posts_of_the_highest_volts_and_a_share_is_of_what_a_post_may_carry()
    {
        Assert.Equal(Rail, PostSupply.Rails(Supplies.Reverse())!.Outlet);
        Assert.Null(PostSupply.Rails([]));
        // 9 · 0.2 = 1.8 A of 4 A.
        Assert.Equal(0.45, Budget(On(Lights, null, ("lamp", 9))).Posts[1].UsedShare, 9);
    }
}
