using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Wiring;

namespace Ohmstead.Workshop.Tests.Wiring;

/// <summary>An end recorded where it is not planned keeps the mains locked until somebody answers for it. Common practice, no source.</summary>
public class WrongEndTests
{
    private static readonly TypeSheet Sheet = OnTheBench.Sheet;
    private static readonly string Home = Sheet.Elements.First(e => e.Id == "w-5").To;
    private static readonly string Other = Sheet.Elements.First(e => e.Id == "w-17").To;

    private static JointSeen Seen(WiringState state, string terminal, params string[] ends) =>
        new(state, terminal, [.. ends.Select(e => new WireEnd(e, ""))], "", 0, 0);

    /// <summary>Soldered, and the check found passed.</summary>
    private static OnTheBench Passed()
    {
        var bench = new OnTheBench().Add(new PartChanged("w-5", PartChange.Rewired, null, "")).ColdGates().Read("lamp-60", 105);
        return bench.Add(new RewireChecked(WiringCheck.MarkOf(bench.Unit, Sheet), "J.", ""));
    }

    [Fact]
    public void A_check_that_passed_falls_with_an_end_left_on_the_wrong_terminal_and_comes_back_when_it_is_seen_at_home()
    {
        var bench = Passed();
        Assert.True(WiringCheck.IsOpen(bench.Unit, Sheet));
        bench.Add(Seen(WiringState.Left, Other, "w-5.to", "w-17.to"));
        Assert.Equal([new WrongEnd("w-5.to", Other, Home, WiringState.Left)], WrongEnd.Of(bench.Unit, Sheet));
        Assert.Null(WiringCheck.Standing(bench.Unit, Sheet));
        Assert.False(WiringCheck.IsOpen(bench.Unit, Sheet));
        Assert.True(bench.Offer("left-full").WaitsForCheck);
        // Soldering it again proves nothing: it has to be seen.
        bench.Add(Seen(WiringState.Left, Home, "w-5.to"));
        Assert.Empty(WrongEnd.Of(bench.Unit, Sheet));
        Assert.True(WiringCheck.IsOpen(bench.Unit, Sheet));
    }

    [Fact]
    public void An_end_that_is_meant_so_is_answered_for_and_asks_for_a_new_check()
    {
        var bench = Passed().Add(Seen(WiringState.Left, Other, "w-5.to")).Add(Seen(WiringState.Left, Home, "w-17.to"));
        foreach (var change in WireEnds.Keep(WrongEnd.Of(bench.Unit, Sheet).Select(w => (w.End, w.Seen)), bench.Own))
            bench.Add(change);
        Assert.Empty(WrongEnd.Of(bench.Unit, Sheet));
        Assert.Empty(WrongEnd.Of(bench.Unit, bench.Own));
        Assert.False(WiringCheck.IsOpen(bench.Unit, Sheet));
        bench.Add(new RewireChecked(WiringCheck.MarkOf(bench.Unit, Sheet), "J.", ""));
        Assert.True(WiringCheck.IsOpen(bench.Unit, bench.Own));
    }

    /// <summary>An earlier repair counts as much as the last one, until its part is soldered again or seen as left.</summary>
    [Fact]
    public void An_end_found_on_the_wrong_terminal_locks_the_mains_though_no_wire_was_moved()
    {
        var bench = new OnTheBench().Add(Seen(WiringState.Found, Other, "w-5.to"));
        Assert.False(WiringCheck.IsOpen(bench.Unit, Sheet));
        Assert.Equal(WiringState.Found, WrongEnd.Of(bench.Unit, Sheet).Single().As);
        Assert.Empty(WrongEnd.Of(new OnTheBench().Add(Seen(WiringState.Found, Home, "w-5.to")).Unit, Sheet));
        Assert.Empty(WrongEnd.Of(bench.Add(new PartChanged("w-5", PartChange.Rewired, null, "")).Unit, Sheet));
    }
}
