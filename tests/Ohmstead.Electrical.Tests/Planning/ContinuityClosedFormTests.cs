using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>The continuity checks of units so small that ohms, minutes and what the meter can tell are worked out by hand.</summary>
public class ContinuityClosedFormTests
{
    private static readonly ImmutableDictionary<string, ControlPosition> AtRest = ImmutableDictionary<string, ControlPosition>.Empty;

    private static OhmmeterBench Bench(SheetDraft draft, ImmutableDictionary<string, ControlPosition>? controls = null) =>
        new(draft.Sheet(), controls ?? AtRest, Meter.Usual);

    private static SheetDraft Star() =>
        new SheetDraft().Resistor("r-1", "hub", "x", 6).Resistor("r-2", "hub", "y", 3).Resistor("r-3", "hub", "z", 2);

    /// <summary>6 and 3 Ω side by side are 2 Ω, and 1 Ω with 2 Ω beside them.</summary>
    [Fact]
    public void The_terminals_of_a_gang_are_one()
    {
        var bench = Bench(Star());
        Assert.Equal(9, bench.Ohms(["x"], ["y"]), 1e-6);
        Assert.Equal(2, bench.Ohms(["hub"], ["x", "y"]), 1e-6);
        Assert.Equal(1, bench.Ohms(["x", "y", "z"], ["hub"]), 1e-6);
        Assert.Equal(4, bench.Ohms(["x", "y"], ["z"]), 1e-6);
        Assert.Equal(double.PositiveInfinity, bench.Ohms(["x"], ["y"], "r-1"));
        Assert.Equal(5, bench.Solutions);
    }

    /// <summary>Four nets in a star of 2 to 6 Ω have six pairs; gangs of two and more put them on both leads in two checks, as words of two letters do.</summary>
    [Fact]
    public void Gangs_grow_as_long_as_a_bridge_shows()
    {
        var plan = ContinuityPlanner.Plan(Star().Sheet(), AtRest, Meter.Usual);
        Assert.InRange(plan.Checks.Length, 2, 3);
        Assert.Equal(6, plan.Pairs);
        Assert.Empty(plan.LeftToOthers);
        string[] nets = ["hub", "x", "y", "z"];
        foreach (var a in nets)
        foreach (var b in nets.Where(b => string.CompareOrdinal(a, b) < 0))
            Assert.Contains(
                plan.Checks,
                c => (c.First.Contains(a) && c.Second.Contains(b)) || (c.First.Contains(b) && c.Second.Contains(a))
            );
    }

    /// <remarks>
    /// A bridge of 0.1 Ω shows at most 0.1 + 0.8 % of it + 0.05 = 0.1508 Ω. What is there shows at least R − 20 % − (0.8 % of R + 0.05): more than
    /// that from R = (0.1508 + 0.05)/0.792 = 0.25354 Ω on.
    /// </remarks>
    [Theory]
    [InlineData(0.2530, false)]
    [InlineData(0.2540, true)]
    [InlineData(0, false)]
    [InlineData(double.PositiveInfinity, true)]
    public void A_bridge_shows_across_a_quarter_of_an_ohm_and_more(double ohms, bool shows) =>
        Assert.Equal(shows, Bench(Star()).ShowsBridge(ohms));

    /// <remarks>
    /// Terminal t hangs on the hub by a wire and by a part of R beside it. With the wire: 0.0099 Ω at most, so at most 1.2·0.0099 + 0.05 + …
    /// = 0.0620 Ω; without it at least 0.792·R − 0.05: more from R = 0.1414 Ω on.
    /// </remarks>
    [Theory]
    [InlineData(0.13, false)]
    [InlineData(0.15, true)]
    [InlineData(1e9, true)]
    public void A_loose_terminal_shows_where_nothing_else_holds_it(double beside, bool shows)
    {
        var bench = Bench(new SheetDraft().Wire("w", "hub", "t", 0.01).Resistor("r", "hub", "t", beside).Resistor("s", "t", "u", 5));
        Assert.Equal(shows, bench.ShowsLoose("hub", "t"));
    }

    /// <summary>Wires, joints and closed contacts make nets; breakers, windings and open contacts do not.</summary>
    [Fact]
    public void A_net_is_what_metal_joins()
    {
        SheetDraft Draft() =>
            new SheetDraft()
                .Core("core", "coil", 1000, 1)
                .Selector("lever", "off", "on")
                .Wire("w", "a", "b", 0.01)
                .Element("joint", "j", "b", "c", new { ohms = 0.01 })
                .Element("switch", "contact", "c", "d", new { control = "lever", closedIn = new[] { "on" } })
                .Element("breaker", "cut", "d", "e", new { ohms = 0.04 })
                .Winding("coil", "e", "a", 100, 2);
        static string[] Nets(OhmmeterBench bench) => [.. bench.Nets.Select(n => string.Join(' ', n)).Order(StringComparer.Ordinal)];
        Assert.Equal(["a b c", "d", "e"], Nets(Bench(Draft())));
        Assert.Equal(["a b c d", "e"], Nets(Bench(Draft(), AtRest.Add("lever", new(double.NaN, "on")))));
    }

    /// <summary>
    /// Half a minute a clip that is put on or changes leads, a quarter a check: b and c on a's lead take 2 clips and 1; the gang check after it
    /// turns d's net against a's.
    /// </summary>
    [Fact]
    public void Minutes_count_the_clips_that_move()
    {
        var plan = ContinuityPlanner.Plan(
            new SheetDraft().Wire("w-1", "a", "b", 0.01).Wire("w-2", "a", "c", 0.01).Resistor("r", "d", "e", 1).Sheet(),
            AtRest,
            Meter.Usual
        );
        var joined = plan.Checks.Where(c => c.IsJoined).ToList();
        Assert.Equal([("a", "b"), ("a", "c")], joined.Select(c => (c.First.Single(), c.Second.Single())));
        Assert.Equal([(2 * 0.5) + 0.25, 0.5 + 0.25], joined.Select(c => c.Minutes));
        Assert.All(joined, c => Assert.Equal(0.01, c.Ohms, 1e-6));
        Assert.Equal(5 * 4 / 2, plan.Pairs);
        Assert.Empty(plan.LeftToOthers);
        // a's net against both ends of the resistor, and the resistor's two ends against each other.
        var apart = plan.Checks.Where(c => !c.IsJoined).ToList();
        Assert.Equal(2, apart.Count);
        Assert.Equal(["a|d e", "d|e"], apart.Select(Sides).Order(StringComparer.Ordinal));
        Assert.Equal(double.PositiveInfinity, apart.Single(c => c.First.Length + c.Second.Length == 3).Ohms);
        Assert.Equal(1, apart.Single(c => c.First.Length + c.Second.Length == 2).Ohms, 1e-6);
        // From a and c: d and e come on (two clips); then d stays, e changes over (one).
        Assert.Equal([(2 * 0.5) + 0.25, 0.5 + 0.25], apart.Select(c => c.Minutes));
    }

    private static string Sides(ContinuityCheck check) =>
        string.Join('|', new[] { string.Join(' ', check.First), string.Join(' ', check.Second) }.Order(StringComparer.Ordinal));

    /// <summary>Two parts that a bridge does not show across are left to the low-voltage readings; what insulates is a mega-ohm and more.</summary>
    [Fact]
    public void What_this_meter_cannot_tell_is_named()
    {
        var plan = ContinuityPlanner.Plan(
            new SheetDraft()
                .Element("breaker", "cut", "a", "b", new { ohms = 0.04 })
                .Element("breaker", "cut-2", "b", "c", new { ohms = 0.04 })
                .Resistor("r", "c", "d", 5)
                .Wire("w", "d", "f", 0.1)
                .Resistor("beside", "d", "f", 0.11)
                .Sheet(),
            AtRest,
            Meter.Usual
        );
        Assert.Equal(["a b c", "d f"], plan.LeftToOthers.Select(g => string.Join(' ', g)).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(0.9e6, 1)]
    [InlineData(1.1e6, 1)]
    public void Two_nets_are_told_apart_across_any_insulation(double ohms, int checks)
    {
        var plan = ContinuityPlanner.Plan(new SheetDraft().Resistor("r", "a", "b", ohms).Sheet(), AtRest, Meter.Usual);
        Assert.Equal(checks, plan.Checks.Length);
        Assert.Equal(["a|b"], plan.Checks.Select(Sides));
        Assert.Equal(ohms, plan.Checks[0].Ohms, 1e-4 * ohms);
    }
}
