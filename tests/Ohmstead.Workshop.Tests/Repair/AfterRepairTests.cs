using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Repair;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Repair;

/// <summary>What to measure again after a repair, and nothing else.</summary>
public class AfterRepairTests
{
    private static OnTheBench Repaired(string element, PartChange change)
    {
        var bench = new OnTheBench().ColdGates().Read("lamp-60", 106).Read("left-load", 14.6).Read("right-load", 17.5);
        return Changed(bench, element, change);
    }

    private static OnTheBench Changed(OnTheBench bench, string element, PartChange change) =>
        bench.Add(UnmovedReadings.In([new PartChanged(element, change, null, "")], bench.Unit, OnTheBench.Sheet, OnTheBench.Shop)[0]);

    private static AfterRepair? Of(OnTheBench bench) => AfterRepair.Of(bench.Unit, bench.Model, bench.Readings);

    [Fact]
    public void Nothing_is_asked_for_where_nothing_was_repaired() => Assert.Null(Of(new OnTheBench().ColdGates()));

    /// <summary>The table asks for the drop at 1 A and the loaded volts after a new roller; no check is shut by it.</summary>
    [Fact]
    public void After_a_new_roller_its_drop_and_its_loaded_volts_are_read_and_no_check_is_taken_again()
    {
        var after = Of(Repaired("roller-left", PartChange.Renewed))!;
        Assert.Contains(after.Readings, r => r.Spec.Id == "left-load" && !r.IsTaken);
        Assert.Contains(after.Readings, r => r.Spec.State.Source is { IsDirect: true });
        Assert.DoesNotContain(after.Readings, r => r.Spec.IsGate);
        Assert.DoesNotContain(after.Readings, r => r.Spec.Id.StartsWith("right", StringComparison.Ordinal));
        // While the case is open, what needs it open comes first.
        Assert.True(after.Next!.IsOpenCase);
    }

    [Fact]
    public void After_a_new_roller_and_cord_the_cold_checks_come_first_and_what_needs_them_after()
    {
        var after = Of(Changed(Repaired("roller-left", PartChange.Renewed), "cord-1", PartChange.Renewed))!;
        var order = after.Readings.Select(r => r.Spec.Id).ToList();
        Assert.All(OnTheBench.Sheet.Readings.Where(r => r.IsGate), g => Assert.Contains(g.Id, order));
        var needs = after.Readings.SelectMany(r => r.Spec.Needs.Where(order.Contains).Select(n => (First: n, Then: r.Spec.Id))).ToList();
        Assert.NotEmpty(needs);
        Assert.All(needs, n => Assert.True(order.IndexOf(n.First) < order.IndexOf(n.Then), $"{n}"));
        Assert.True(after.WaitsForWiringCheck);
    }

    [Fact]
    public void When_all_of_them_are_read_it_is_over()
    {
        var bench = Repaired("roller-left", PartChange.Renewed);
        while (Of(bench) is { Next: { } next } after)
        {
            var before = after.Readings.Count(r => r.IsTaken);
            bench.Read(next.Id, 1);
            if (Of(bench) is { } later)
                Assert.Equal(before + 1, later.Readings.Count(r => r.IsTaken));
        }
        Assert.Null(Of(bench));
    }
}
