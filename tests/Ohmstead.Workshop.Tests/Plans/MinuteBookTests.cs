using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Plans;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Tests.Units;

namespace Ohmstead.Workshop.Tests.Plans;

/// <summary>What the shop's own units took, by the work.</summary>
public class MinuteBookTests
{
    private static MinuteBook BookOf(params (double Minute, Fact Fact)[] entries) =>
        MinuteBook.Of(
            MinuteBook.LoggedOn(LoggedMinutesTests.Unit([(0, new TakenIn("1", "twin-160", "", "")), .. entries]), OnTheBench.Sheet)
        );

    [Fact]
    public void Steps_and_parts_are_learned_each_under_its_own_work()
    {
        var book = BookOf(
            (4, new TakenOff("cover", 1, 2, "")),
            (16, new PartChanged("roller-left", PartChange.Renewed, null, "")),
            (23, new PartChanged("roller-right", PartChange.Serviced, null, "")),
            (29, new PutBack("cover", 2, 0, "", ""))
        );
        Assert.Equal([4], book[WorkKey.Off("twin-160", "cover")]);
        Assert.Equal([6], book[WorkKey.Back("twin-160", "cover")]);
        // A roller is a roller, whichever throttle it belongs to.
        Assert.Equal([12], book[WorkKey.Of(OnTheBench.Sheet, "roller-right", WorkSort.Replace)]);
        Assert.Equal([7], book[WorkKey.Of(OnTheBench.Sheet, "roller-left", WorkSort.Service)]);
        Assert.Empty(book[WorkKey.Off("another-type", "cover")]);
        Assert.Empty(book[WorkKey.Of(OnTheBench.Sheet, "disc-left", WorkSort.Replace)]);
    }

    [Fact]
    public void A_pause_and_what_was_entered_in_one_go_teach_nothing()
    {
        var book = BookOf(
            (20.5, new TakenOff("cap-left", 1, 1, "")),
            (22, new TakenOff("cap-right", 1, 1, "")),
            (22.05, new TakenOff("rings", 1, 1, ""))
        );
        Assert.Empty(book[WorkKey.Off("twin-160", "cap-left")]);
        Assert.Equal([1.5], book[WorkKey.Off("twin-160", "cap-right")]);
        Assert.Empty(book[WorkKey.Off("twin-160", "rings")]);
    }

    /// <summary>Wiring check and first power are one work of a unit: 3 + 5 + 2 minutes.</summary>
    [Fact]
    public void The_checks_of_a_unit_are_one_record()
    {
        var book = BookOf(
            (3, new WireChecked(["a"], ["b"], Shown.OverRange, true)),
            (8, new RewireChecked("0123456789abcdef", "A. B.", "")),
            (10, new PowerTried(24, null, null, true))
        );
        Assert.Equal([10], book[WorkKey.Check]);
    }

    [Theory]
    [InlineData("Clean, then replace", WorkSort.Replace)]
    [InlineData("Tighten or resolder", WorkSort.Resolder)]
    [InlineData("Clean", WorkSort.Service)]
    [InlineData("Leave it unplugged", WorkSort.Service)]
    public void The_words_of_a_remedy_say_which_work_it_is(string act, WorkSort sort) => Assert.Equal(sort, WorkKey.SortOf(act));
}
