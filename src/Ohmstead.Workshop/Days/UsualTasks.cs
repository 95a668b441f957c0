using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.TakeApart;
using Ohmstead.Workshop.Testing;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Days;

/// <summary>
/// What is left to do on a unit, in the order of the job, with usual minutes: those of its type sheet where that has them, else common
/// practice, no source. A person changes them on the day.
/// </summary>
public static class UsualTasks
{
    private const int LookOverMinutes = 15;
    private const int CheckMinutes = 25;
    private const int ReadingsMinutes = 30;
    private const int FindingsMinutes = 5;
    private const int ReturnMinutes = 10;
    private const int RepairMinutes = 20;
    private const int OrderMinutes = 5;

    /// <summary>What a club mostly has one of.</summary>
    public const string InsulationTester = "insulation tester";

    /// <inheritdoc cref="InsulationTester"/>
    public const string LoadBank = "load bank";

    /// <summary>To set a heat run up and to take its last ohms: common practice, no source.</summary>
    private const int HeatRunHands = 10;

    /// <summary>Of a task that a person adds, until it is changed [min].</summary>
    public const int UsualMinutes = 20;

    /// <summary>What is put on a task at one press when it takes longer [min].</summary>
    public const int MoreMinutes = 10;

    /// <summary>How often a club day is planned again by itself.</summary>
    public static readonly TimeSpan PlanAgain = TimeSpan.FromSeconds(20);

    /// <summary>Cement and varnish: common practice, no source.</summary>
    private const int DryMinutes = 24 * 60;

    /// <summary>The tasks of a unit that is on the bench.</summary>
    /// <param name="sheet">Its type sheet; null while its type is not known.</param>
    /// <param name="now">Parts that are on their way are waited for from here on.</param>
    /// <param name="tests">The tests that are due on it.</param>
    public static ImmutableArray<DayTask> Of(
        BenchUnit unit,
        TypeSheet? sheet,
        Drawer drawer,
        DateTimeOffset now,
        ImmutableArray<BenchTest> tests = default
    )
    {
        if (unit.HandedBack is not null)
            return [];
        var tasks = ImmutableArray.CreateBuilder<DayTask>();
        if (!unit.ClosedStages.Contains(Stage.LookOver))
            tasks.Add(new("Look-over", LookOverMinutes));
        if (sheet is not null && !UntypedIds.IsOne(sheet))
        {
            AddRepairs(tasks, unit, sheet, drawer, now);
            AddReadings(tasks, unit, sheet);
        }
        else
            tasks.Add(new("Readings", ReadingsMinutes));
        if (!unit.ClosedStages.Contains(Stage.Findings))
            tasks.Add(new("Look at the findings", FindingsMinutes));
        AddTests(tasks, tests.IsDefault ? [] : tests);
        tasks.Add(new("Paperwork and return", ReturnMinutes));
        return tasks.ToImmutable();
    }

    private static void AddRepairs(
        ImmutableArray<DayTask>.Builder tasks,
        BenchUnit unit,
        TypeSheet sheet,
        Drawer drawer,
        DateTimeOffset now
    )
    {
        var state = ApartState.Of(unit, sheet);
        var reach = state.Reach.IsEmpty ? ReachFor.Proposed(unit, sheet) : state.Reach;
        var back = (double)state.Off.Sum(o => o.Step.MinutesIn);
        if (!reach.All(state.IsOff))
        {
            var plan = state.Plan(reach, Electrical.Planning.TakeApartPlanner.UsualRate);
            tasks.Add(new("Take apart", Whole(plan.MinutesOut)));
            back += plan.MinutesIn;
        }
        AddUnrepaired(tasks, unit, sheet, drawer, now);
        if (!WiringCheck.IsOpen(unit, sheet))
            tasks.Add(new("Wiring check", CheckMinutes));
        if (back > 0)
            tasks.Add(new("Put together", Whole(back)));
    }

    private static void AddUnrepaired(
        ImmutableArray<DayTask>.Builder tasks,
        BenchUnit unit,
        TypeSheet sheet,
        Drawer drawer,
        DateTimeOffset now
    )
    {
        var modes = unit.Unrepaired.Any() ? new FaultCatalogue(new UnitModel(sheet)).Modes : [];
        foreach (var found in unit.Unrepaired)
        {
            var mode = modes.FirstOrDefault(m => m.Element == found.Element && m.Mode == found.Mode);
            var remedy = mode is null ? null : WhatToDo.For(sheet, mode);
            if (Part(found.Element, sheet, drawer) is { IsThere: false, Bin: { } bin })
                tasks.Add(
                    bin.DueAt is { } due
                        ? new($"Parts come: {bin.Name}", 0, "parts come", Math.Max(0, Whole((due - now).TotalMinutes)))
                        : new($"Order: {bin.Name}", OrderMinutes, "parts come", Whole(bin.LeadDays * DayHours.Day))
                );
            tasks.Add(
                new(
                    $"Repair: {PartNames.Fault(sheet, found.Element, found.Mode)}",
                    remedy is null ? RepairMinutes : (remedy.Minutes.From + remedy.Minutes.To + 1) / 2,
                    remedy is { Waits.Length: > 0 } ? "dries" : "",
                    remedy is { Waits.Length: > 0 } ? DryMinutes : 0
                )
            );
        }
    }

    private static void AddReadings(ImmutableArray<DayTask>.Builder tasks, BenchUnit unit, TypeSheet sheet)
    {
        if (unit.ClosedStages.Contains(Stage.Readings))
            return;
        var taken = unit.CurrentReadings.Select(r => r.Fact.ReadingId).ToHashSet(StringComparer.Ordinal);
        var left = sheet.Readings.Where(r => !r.IsOpenCase && !taken.Contains(r.Id)).ToList();
        if (left.Count > 0)
            tasks.Add(new(Counted.Of(left.Count, "reading"), Whole(left.Sum(r => r.Minutes))));
    }

    /// <summary>Tests with the same tool one after the other are one task; a heat run goes on by itself and keeps its load.</summary>
    private static void AddTests(ImmutableArray<DayTask>.Builder tasks, ImmutableArray<BenchTest> due)
    {
        foreach (
            var (tool, name, some) in TestTools.Select(t =>
                (t.Tool, t.Name, due.Where(d => d.Sort != TestSort.HeatRun && ToolOf(d.Sort) == t.Tool).ToList())
            )
        )
            if (some.Count > 0)
                tasks.Add(new($"{name}: {Counted.Of(some.Count, "test")}", Whole(some.Sum(t => t.Minutes)), Tool: tool));
        if (due.FirstOrDefault(t => t.Sort == TestSort.HeatRun) is { } heat)
            tasks.Add(
                new("Heat run", HeatRunHands, "runs hot", Math.Max(1, Whole(heat.Minutes) - HeatRunHands), LoadBank, KeepsTool: true)
            );
    }

    private static readonly ImmutableArray<(string Tool, string Name)> TestTools =
    [
        (InsulationTester, "Insulation"),
        ("", "Without a load"),
        (LoadBank, "Under load"),
    ];

    private static string ToolOf(TestSort sort) =>
        sort switch
        {
            TestSort.Insulation or TestSort.SecondaryToCore => InsulationTester,
            TestSort.LoadedVolts or TestSort.WhistleFirst or TestSort.WhistleSecond or TestSort.Breaker => LoadBank,
            _ => "",
        };

    private static AtHand Part(string element, TypeSheet sheet, Drawer drawer)
    {
        var part =
            sheet.TakeApart.FirstOrDefault(s => s.Lifts.Contains(element) || s.Id == element || s.Id == $"{element}-out")?.Part ?? "";
        return drawer.For(part);
    }

    private static int Whole(double minutes) => Math.Max(1, (int)Math.Ceiling(minutes));
}
