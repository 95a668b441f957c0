using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>What joins the mains side to a post or to the core, or goes around a breaker.</summary>
public class WiringTests
{
    /// <summary>A primary on the plug, a secondary with a breaker before its post, and insulation from both to the core's iron.</summary>
    private static readonly TypeSheet Sheet = new SheetDraft()
        .Core("core", "primary", 1000, 1)
        .Wire("cord", "blade-1", "lug", 0.1)
        .Winding("primary", "lug", "blade-2", 400, 3)
        .Winding("low", "common", "end", 40, 0.1)
        .Element("breaker", "cut", "end", "post", new { ohms = 0.04 })
        .Wire("hub-wire", "common", "hub", 0.1)
        .Element("insulation", "ins-1", "lug", "iron", new { ohms = 1e8 })
        .Element("insulation", "ins-2", "common", "iron", new { ohms = 1e8 })
        .Reading(
            "volts",
            "ac-volts",
            ["common", "post"],
            new
            {
                source = new
                {
                    from = "blade-1",
                    to = "blade-2",
                    volts = 120,
                },
            }
        )
        .Sheet();

    private static readonly Wiring Wiring = new(Sheet);

    private static TypeSheet With(params (string From, string To, double Ohms)[] more) =>
        Sheet with
        {
            Elements = Sheet.Elements.AddRange(
                more.Select(
                    (m, n) =>
                        new Resistive(
                            FormattableString.Invariant($"more-{n}"),
                            ElementKind.Wire,
                            m.From,
                            m.To,
                            m.Ohms,
                            SpreadOverrides.None,
                            ImmutableDictionary<string, double>.Empty
                        )
                )
            ),
        };

    private static TypeSheet Cut(double ohms) =>
        Sheet with
        {
            Elements = [.. Sheet.Elements.Select(e => e.Id == "cut" ? (Resistive)e with { Ohms = ohms } : e)],
        };

    [Fact]
    public void As_planned_it_is_no_danger() => Assert.False(Wiring.IsDangerous(Sheet));

    [Theory]
    [InlineData("lug", "post", true)]
    [InlineData("blade-2", "hub", true)]
    [InlineData("blade-1", "iron", true)]
    [InlineData("blade-1", "lug", false)]
    [InlineData("hub", "post", false)]
    [InlineData("common", "iron", false)]
    public void Metal_from_the_plug_to_a_post_or_to_the_iron_is_a_danger_whatever_its_ohms(string from, string to, bool isDangerous)
    {
        Assert.Equal(isDangerous, Wiring.IsDangerous(With((from, to, 0.1))));
        Assert.Equal(isDangerous, Wiring.IsDangerous(With((from, to, 1e6))));
    }

    /// <summary>Less than one ohm around a breaker carries its current; the winding between hub and end is no way around.</summary>
    [Theory]
    [InlineData(0.99, true)]
    [InlineData(1.01, false)]
    public void What_goes_around_a_breaker_with_less_than_an_ohm_is_a_danger(double ohms, bool isDangerous)
    {
        Assert.Equal(isDangerous, Wiring.IsDangerous(With(("post", "end", ohms))));
        Assert.Equal(isDangerous, Wiring.IsDangerous(With(("post", "x", ohms), ("x", "end", ohms))));
        Assert.False(Wiring.IsDangerous(With(("post", "x", ohms))));
    }

    /// <summary>A hundredth of an ohm: a breaker below it is bypassed, unless it is so by itself.</summary>
    [Theory]
    [InlineData(0.0099, true)]
    [InlineData(0.0101, false)]
    [InlineData(0.04, false)]
    [InlineData(30, false)]
    public void A_breaker_of_hardly_any_ohms_is_bypassed(double ohms, bool isDangerous)
    {
        Assert.Equal(isDangerous, Wiring.IsDangerous(Cut(ohms)));
        Assert.False(new Wiring(Cut(ohms)).IsDangerous(Cut(ohms)));
    }
}
