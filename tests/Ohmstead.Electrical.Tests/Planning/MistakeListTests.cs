using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>Every mistake of a small unit counted out by hand, what each makes of the circuit, and its share of the chances (common practice, no source).</summary>
public class MistakeListTests
{
    /// <summary>Two wires in a row, a joint, a breaker, a winding and a rectifier: five terminals, all neighbours.</summary>
    private static readonly TypeSheet Sheet = new SheetDraft()
        .Core("core", "coil", 1000, 1)
        .Wire("w-1", "a", "b", 0.1)
        .Wire("w-2", "b", "c", 0.2)
        .Element("joint", "j", "c", "d", new { ohms = 0.01 })
        .Element("breaker", "cut", "d", "e", new { ohms = 0.04 })
        .Winding("coil", "e", "a", 100, 2)
        .Element(
            "rectifier",
            "disc",
            "a",
            "c",
            new
            {
                saturationAmps = 1e-3,
                slopeVolts = 0.1,
                seriesOhms = 0.1,
                leakageOhms = 100,
            }
        )
        .Reading("r", "ohms", ["a", "e"])
        .Sheet();

    private static readonly ImmutableArray<Mistake> All = MistakeList.Of(Sheet);

    private static List<Mistake> Of(string begin) => [.. All.Where(m => m.Id.StartsWith(begin + ":", StringComparison.Ordinal))];

    /// <remarks>
    /// Swaps: four pairs of ends on two wires; two leave the same circuit: of the ends on b, and of the two outer ends. Moves: each of four ends to
    /// any of five terminals but the wire's own two. Bridges: pairs of five terminals.
    /// </remarks>
    [Theory]
    [InlineData("swap", 2, 10)]
    [InlineData("moved", 4 * 3, 8)]
    [InlineData("bridge", 5 * 4 / 2, 5)]
    [InlineData("off", 2, 2 * 2)]
    [InlineData("reversed", 2, 2 * 8)]
    [InlineData("bypassed", 1, 1)]
    [InlineData("cold", 3, 3 * 3)]
    public void Each_sort_has_so_many_with_so_much_chance_in_all(string sort, int count, double percent)
    {
        Assert.Equal(count, Of(sort).Count);
        Assert.Equal(percent, Of(sort).Sum(m => m.Percent), 9);
        Assert.All(Of(sort), m => Assert.Equal(percent / count, m.Percent, 9));
    }

    [Fact]
    public void Whatever_can_be_bypassed_may_be_left_out_and_that_is_dangerous()
    {
        var kinds = ElementKinds.All.Where(k => k.Faults().Any(f => f.Does == FaultChange.Bypasses)).ToList();
        Assert.Contains(ElementKind.Breaker, kinds);
        foreach (var kind in kinds)
        {
            var at = Sheet.Elements.IndexOf(Sheet.Elements.Single(e => e.Id == "cut"));
            var sheet = Sheet with { Elements = Sheet.Elements.SetItem(at, Sheet.Elements[at] with { Kind = kind }) };
            var without = MistakeList.Of(sheet).Single(m => m.Id == "bypassed:cut");
            Assert.True(new Wiring(sheet).IsDangerous(without.Make(sheet, without.Sizes[0])), kind.Word());
        }
    }

    [Fact]
    public void Nothing_is_listed_twice_and_nothing_beside()
    {
        Assert.Equal(2 + 12 + 10 + 2 + 2 + 1 + 3, All.Length);
        Assert.Equal(All.Length, All.Select(m => m.Id).Distinct().Count());
        Assert.Equal(["swap:w-1.from~w-2.from", "swap:w-1.to~w-2.to"], Of("swap").Select(m => m.Id).Order());
        Assert.Equal(["reversed:coil", "reversed:disc"], Of("reversed").Select(m => m.Id).Order());
        Assert.Equal([0.4, 1.2, 3.5, 10, 30], Of("cold")[0].Sizes);
        Assert.Equal((0.1, 1e-3), (Of("bridge")[0].Sizes.Single(), Of("bypassed")[0].Sizes.Single()));
        Assert.InRange(Of("off")[0].Sizes.Single(), 1e6, double.MaxValue);
    }

    [Fact]
    public void A_shop_may_set_its_own_chances()
    {
        var own = MistakeList.Of(Sheet, new RewireChances(1, 2, 3, 4, 5, 6, 7));
        double Sum(string sort) => own.Where(m => m.Id.StartsWith(sort + ":", StringComparison.Ordinal)).Sum(m => m.Percent);
        Assert.Equal(
            [1, 2, 3, 8, 10, 6, 21],
            new[] { "swap", "moved", "bridge", "off", "reversed", "bypassed", "cold" }.Select(s => Math.Round(Sum(s), 9))
        );
    }

    /// <summary>ln(p/(1 − p)).</summary>
    [Theory]
    [InlineData(50, 0)]
    [InlineData(20, -1.386294)]
    [InlineData(1, -4.595120)]
    public void The_odds_are_those_of_the_chance(double percent, double logOdds) =>
        Assert.Equal(logOdds, new Mistake("off:w-1", percent, [0]).LogOdds, 1e-6);

    [Theory]
    [InlineData("swap:w-1.from~w-2.to", "w-1", "c", "b")]
    [InlineData("swap:w-1.from~w-2.to", "w-2", "b", "a")]
    [InlineData("swap:w-1.to~w-2.to", "w-1", "a", "c")]
    [InlineData("moved:w-1.to>e", "w-1", "a", "e")]
    [InlineData("moved:w-2.from>e", "w-2", "e", "c")]
    [InlineData("reversed:coil", "coil", "a", "e")]
    public void A_mistake_of_ends_moves_those_ends_and_no_others(string id, string element, string from, string to)
    {
        var made = new Mistake(id, 1, [0]).Make(Sheet, 0);
        var e = made.Elements.Single(x => x.Id == element);
        Assert.Equal((from, to), (e.From, e.To));
        var touched = id.StartsWith("swap", StringComparison.Ordinal) ? 2 : 1;
        Assert.Equal(touched, made.Elements.Zip(Sheet.Elements).Count(p => (p.First.From, p.First.To) != (p.Second.From, p.Second.To)));
    }

    [Fact]
    public void A_mistake_of_ohms_sets_them_exactly()
    {
        var cold = (Resistive)new Mistake("cold:j", 3, [3.5]).Make(Sheet, 3.5).Elements.Single(e => e.Id == "j");
        Assert.Equal((3.5, 0.0), (cold.Ohms, cold.Spread.Of("ohms", 1)));
        var made = new Mistake("bridge:a~e", 1, [0.1]).Make(Sheet, 0.1);
        Assert.Equal(Sheet.Elements.Length + 1, made.Elements.Length);
        var bridge = (Resistive)made.Elements[^1];
        Assert.Equal(("a", "e", 0.1, 0.0), (bridge.From, bridge.To, bridge.Ohms, bridge.Spread.Of("ohms", 1)));
    }

    /// <summary>
    /// Counts by the bound's own terms: 2·2·1 swaps, four ends with four other places each, ten bridges, two wires off and two for each of six
    /// parts; times six parts; times ten for the building and one reading.
    /// </summary>
    [Fact]
    public void The_work_of_a_rewire_is_bounded_by_these_counts()
    {
        Assert.Equal((4 + 16 + 10 + 2 + 12) * 6 * (10 + 1), PlanningBound.OfRewire(Sheet));
        Assert.True(4 + 16 + 10 + 2 + 12 >= All.Length);
    }

    private static SeenEnd Seen(string end, string terminal) => new(end, terminal);

    private static double Nats(string mistake, params SeenEnd[] seen) =>
        SeenEnd.Nats([.. seen], All.Single(m => m.Id == mistake), Sheet) / Math.Log(50);

    /// <summary>Each end seen where a mistake puts it counts once, ln 50 of it (common practice, no source).</summary>
    [Fact]
    public void An_end_seen_speaks_for_every_mistake_that_puts_it_there()
    {
        Assert.Equal(1, Nats("moved:w-1.to>e", Seen("w-1.to", "e")), 9);
        Assert.Equal(0, Nats("moved:w-1.to>e", Seen("w-1.to", "d")), 9);
        Assert.Equal(0, Nats("moved:w-1.to>e", Seen("w-1.from", "e")), 9);
        Assert.Equal(1, Nats("swap:w-1.to~w-2.to", Seen("w-1.to", "c")), 9);
        Assert.Equal(2, Nats("swap:w-1.to~w-2.to", Seen("w-1.to", "c"), Seen("w-2.to", "b")), 9);
        Assert.Equal(1, Nats("reversed:coil", Seen("coil.to", "e")), 9);
        Assert.Equal(0, Nats("reversed:coil", Seen("coil.tap-1", "e")), 9);
        Assert.Equal(0, Nats("cold:w-1", Seen("w-1.to", "b")), 9);
        Assert.Equal(0, Nats("off:w-1", Seen("w-1.to", "b")), 9);
    }

    [Fact]
    public void An_end_seen_that_no_mistake_explains_adds_one_with_the_least_chance_of_a_move()
    {
        Mistake[] With(params SeenEnd[] seen) => [.. SeenEnd.With([.. seen], All, Sheet, null).Skip(All.Length)];
        var added = Assert.Single(With(Seen("coil.from", "c")));
        Assert.Equal(("moved:coil.from>c", 8.0 / 12), (added.Id, added.Percent));
        Assert.Equal([0.0], added.Sizes);
        Assert.Empty(With(Seen("w-1.to", "e")));
        Assert.Empty(With(Seen("coil.tap-1", "c")));
        // Both ends of a part on one terminal are no circuit.
        Assert.Empty(With(Seen("j.from", "d")));
        Assert.Equal(8, SeenEnd.With([Seen("coil.from", "c")], [], Sheet, null).Single().Percent);
        Assert.Equal(2, SeenEnd.With([Seen("coil.from", "c")], [], Sheet, new RewireChances(1, 2, 3, 4, 5, 6, 7)).Single().Percent);
    }

    /// <summary>Three wires whose six ends all lie on something else: of the fifteen pairs the three of one wire's own ends leave the circuit as it was.</summary>
    [Fact]
    public void Every_end_can_be_exchanged_with_every_end_of_another_wire()
    {
        var draft = new SheetDraft().Wire("w-0", "a", "b", 0.01).Wire("w-1", "c", "d", 0.01).Wire("w-2", "e", "f", 0.01);
        foreach (var (at, ohms) in new[] { ("a", 10), ("b", 20), ("c", 30), ("d", 40), ("e", 50), ("f", 60) })
            draft = draft.Resistor("r-" + at, at, "g", ohms);
        string[] ends = ["w-0.from", "w-0.to", "w-1.from", "w-1.to", "w-2.from", "w-2.to"];
        var pairs = ends.SelectMany((a, n) => ends.Skip(n + 1).Where(b => a[..3] != b[..3]).Select(b => $"swap:{a}~{b}"));
        Assert.Equal(pairs, MistakeList.Of(draft.Sheet()).Select(m => m.Id).Where(id => id.StartsWith("swap:", StringComparison.Ordinal)));
    }
}
