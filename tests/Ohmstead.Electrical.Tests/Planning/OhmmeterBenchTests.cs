using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>
/// What shows on an ohmmeter of 1 % and 0.05 Ω, whatever a sound unit differs by (a fifth) and a bridge has (0.1 Ω; both common practice, no source).
/// </summary>
public class OhmmeterBenchTests
{
    private static readonly Meter Meter = new(Meter.Usual.Errors.SetItem(Quantity.Ohms, new(1, 0.05, 0, 0)));

    /// <summary>0.8·R − 0.01·R − 0.05 above 0.1 + 0.051: from 0.2544 Ω on.</summary>
    [Theory]
    [InlineData(0.253, false)]
    [InlineData(0.256, true)]
    [InlineData(double.PositiveInfinity, true)]
    public void A_bridge_shows_where_the_least_is_above_what_a_bridge_may_show(double ohms, bool shows) =>
        Assert.Equal(shows, new OhmmeterBench(Beside(1), Rest, Meter).ShowsBridge(ohms));

    /// <summary>1 Ω of wire, at most 1.26 Ω with what it may be and the meter's error; without it R beside, at least 0.79·R − 0.05.</summary>
    [Theory]
    [InlineData(1.64, false)]
    [InlineData(1.68, true)]
    public void An_end_that_came_off_shows_where_the_way_round_it_is_longer_by_more_than_the_spread(double round, bool shows)
    {
        // The wire beside the way round: 1 Ω together.
        var bench = new OhmmeterBench(Beside(round), Rest, Meter);
        Assert.Equal(1, bench.Ohms(["a"], ["b"]), 1e-9);
        Assert.Equal(round, bench.Ohms(["a"], ["b"], ["w"]), 1e-9);
        Assert.Equal(shows, bench.ShowsLoose("a", "b"));
        Assert.True(bench.Solutions >= 4);
    }

    [Fact]
    public void What_wires_join_is_one_net() =>
        Assert.Equal(
            ["a b", "c"],
            new OhmmeterBench(Beside(3), Rest, Meter).Nets.Select(n => string.Join(' ', n)).Order(StringComparer.Ordinal)
        );

    private static System.Collections.Immutable.ImmutableDictionary<string, ControlPosition> Rest =>
        System.Collections.Immutable.ImmutableDictionary<string, ControlPosition>.Empty;

    private static TypeSheet Beside(double round) =>
        new SheetDraft()
            .Wire("w", "a", "b", round > 1 ? 1 / (1 - (1 / round)) : 1)
            .Resistor("half", "a", "c", round / 2)
            .Resistor("rest", "c", "b", round / 2)
            .Sheet();
}
