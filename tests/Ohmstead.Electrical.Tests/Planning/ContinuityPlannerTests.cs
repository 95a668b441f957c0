using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>The continuity list: every bridge and every loose terminal is made in the model and must show on the list.</summary>
public class ContinuityPlannerTests
{
    private static readonly ImmutableDictionary<string, ControlPosition> AtRest = ImmutableDictionary<string, ControlPosition>.Empty;

    public static TheoryData<string> Sheets => [.. Reference.DemoSheets.Append("tests/Reference/sample/twin-160.sheet.json")];

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Every_bridge_between_two_nets_shows_or_is_left_to_others(string file)
    {
        var sheet = Reference.Sheet(file);
        var plan = ContinuityPlanner.Plan(sheet, AtRest, Meter.Usual);
        var nets = new OhmmeterBench(sheet, AtRest, Meter.Usual).Nets;
        var left = plan.LeftToOthers.Select(g => g.ToHashSet(StringComparer.Ordinal)).ToList();
        var missed = new List<string>();
        for (var a = 0; a < nets.Length; a++)
        for (var b = 0; b < a; b++)
        {
            var (x, y) = (nets[a][^1], nets[b][^1]);
            if (left.Exists(g => g.Contains(nets[a][0]) && g.Contains(nets[b][0])))
                continue;
            var bridge = new Resistive(
                "bridge",
                ElementKind.Resistor,
                x,
                y,
                0.1,
                SpreadOverrides.None,
                ImmutableDictionary<string, double>.Empty
            );
            if (!Shows(plan, sheet with { Elements = sheet.Elements.Add(bridge) }))
                missed.Add($"{x}~{y}");
        }
        Assert.Empty(missed);
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Every_terminal_that_is_off_its_net_shows_or_is_left_to_others(string file)
    {
        var sheet = Reference.Sheet(file);
        var plan = ContinuityPlanner.Plan(sheet, AtRest, Meter.Usual);
        var missed = new List<string>();
        foreach (var net in new OhmmeterBench(sheet, AtRest, Meter.Usual).Nets)
        foreach (var terminal in net.Skip(1))
        {
            if (plan.LeftToOthers.Any(g => g.Contains(net[0]) && g.Contains(terminal)))
                continue;
            var wires = sheet
                .Elements.Where(e => e.Kind is ElementKind.Wire or ElementKind.Joint && (e.From == terminal || e.To == terminal))
                .ToList();
            if (
                wires.Count > 0
                && !Shows(
                    plan,
                    sheet with
                    {
                        Elements = [.. sheet.Elements.Select(e => wires.Contains(e) ? (Resistive)e with { Ohms = 1e9 } : e)],
                    }
                )
            )
                missed.Add(terminal);
        }
        Assert.Empty(missed);
    }

    /// <summary>What is taken on ends after a bounded number of solutions; what was not reached by then is named, and nothing else is missing.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_sheet_of_many_resistors_is_refused_or_done_in_so_many_solutions(bool isChain)
    {
        Assert.Contains("too large", PlanningBound.RefuseContinuity(Resistors(400, isChain)), StringComparison.Ordinal);
        Assert.Contains("401 points", PlanningBound.RefuseContinuity(Resistors(400, isChain)), StringComparison.Ordinal);
        var sheet = Resistors(60, isChain);
        Assert.Equal("", PlanningBound.RefuseContinuity(sheet));
        // Two directions of every pair of 61 nets in 60 parts: a closed form.
        Assert.Equal(61 * 60 * 60, PlanningBound.OfContinuity(sheet));
        var plan = ContinuityPlanner.Plan(sheet, AtRest, Meter.Usual);
        Assert.InRange(plan.Solutions * sheet.Elements.Length, 61 * 60 * 60, 3 * PlanningBound.MostContinuity);
        var left = plan.LeftToOthers.Select(g => g.ToHashSet(StringComparer.Ordinal)).ToList();
        var nets = new OhmmeterBench(sheet, AtRest, Meter.Usual).Nets.Select(n => n[0]).ToList();
        foreach (var a in nets)
        foreach (var b in nets.Where(b => string.CompareOrdinal(a, b) < 0 && !left.Exists(g => g.Contains(a) && g.Contains(b))))
            Assert.Contains(
                plan.Checks,
                c => (c.First.Contains(a) && c.Second.Contains(b)) || (c.First.Contains(b) && c.Second.Contains(a))
            );
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void The_units_of_the_repository_are_far_below_the_bounds(string file)
    {
        var sheet = Reference.Sheet(file);
        Assert.InRange(PlanningBound.OfContinuity(sheet), 1, PlanningBound.MostContinuity / 20);
        Assert.InRange(PlanningBound.OfRewire(sheet), 1, PlanningBound.MostRewire / 20);
        Assert.InRange(PlanningBound.OfRewire(sheet), (long)MistakeList.Of(sheet).Length * sheet.Elements.Length, long.MaxValue);
    }

    [Fact]
    public void A_rewire_of_many_resistors_or_of_many_wires_is_refused()
    {
        Assert.Contains("too large", PlanningBound.RefuseRewire(Resistors(400, isChain: true)), StringComparison.Ordinal);
        Assert.Equal("", PlanningBound.RefuseRewire(Resistors(60, isChain: true)));
        var wires = new SheetDraft();
        for (var n = 0; n < 200; n++)
            wires.Wire(Name("w", n), Name("t", n), Name("t", n + 1), 0.1);
        wires.Reading("r", "ohms", [Name("t", 0), Name("t", 200)]);
        Assert.Contains("too large", PlanningBound.RefuseRewire(wires.Sheet()), StringComparison.Ordinal);
    }

    /// <summary>Resistors one after another, or all from one terminal.</summary>
    private static TypeSheet Resistors(int count, bool isChain)
    {
        var draft = new SheetDraft();
        for (var n = 0; n < count; n++)
            draft.Resistor(Name("r", n), Name("t", isChain ? n : 0), Name("t", n + 1), 10 + n);
        return draft.Reading("r", "ohms", [Name("t", 0), Name("t", count)]).Sheet();
    }

    private static string Name(string of, int number) => FormattableString.Invariant($"{of}{number}");

    /// <summary>The counts of a spanning tree, and of the words that differ (key kautz, from memory).</summary>
    [Fact]
    public void Eight_nets_of_twenty_points_take_twelve_joined_checks_and_few_apart()
    {
        var draft = new SheetDraft();
        for (var n = 0; n < 8; n++)
        for (var k = 1; k < (n < 4 ? 3 : 2); k++)
            draft.Wire(Name($"w-{n}-{k}"), Name($"n{n}"), Name($"n{n}-{k}"), 0.005);
        draft.Core("core", "w", 1000, 1).Winding("w", "n0", "n1", 100, 50);
        var plan = ContinuityPlanner.Plan(draft.Sheet(), AtRest, Meter.Usual);
        Assert.Equal(12, plan.Checks.Count(c => c.IsJoined));
        Assert.Equal(190, plan.Pairs);
        Assert.InRange(plan.Checks.Count(c => !c.IsJoined), 3, 5);
        Assert.Empty(plan.LeftToOthers);
    }

    [Fact]
    public void A_breaker_is_too_close_for_the_meter_and_a_winding_of_ten_ohms_is_not()
    {
        var plan = ContinuityPlanner.Plan(
            new SheetDraft()
                .Core("core", "w", 1000, 1)
                .Winding("w", "a", "b", 100, 10)
                .Element("breaker", "cut", "b", "c", new { ohms = 0.04 })
                .Sheet(),
            AtRest,
            Meter.Usual
        );
        Assert.Equal(["b", "c"], Assert.Single(plan.LeftToOthers));
        Assert.Equal(10, plan.Checks[0].Ohms, 1);
    }

    private static string Name(FormattableString text) => FormattableString.Invariant(text);

    private static bool Shows(ContinuityPlan plan, TypeSheet wrong)
    {
        var bench = new OhmmeterBench(wrong, AtRest, Meter.Usual);
        var meter = Meter.Usual.For(Quantity.Ohms);
        return plan.Checks.Any(c =>
        {
            var ohms = bench.Ohms(c.First, c.Second);
            return ohms != c.Ohms
                && (
                    double.IsInfinity(ohms)
                    || double.IsInfinity(c.Ohms)
                    || Math.Abs(ohms - c.Ohms) > meter.LimitAt(ohms) + meter.LimitAt(c.Ohms)
                );
        });
    }
}
