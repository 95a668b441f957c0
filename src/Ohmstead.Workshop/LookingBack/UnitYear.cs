using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.LookingBack;

/// <summary>What one unit adds to the year.</summary>
/// <param name="TakenIn">When it came.</param>
/// <param name="Returned">When it went back; null while it is here.</param>
/// <param name="Minutes">At the bench, by its entries: from one to the next, a gap longer than half an hour left out [min].</param>
/// <param name="UsualMinutes">Of what was done, by the type sheet and the table of repairs [min].</param>
/// <param name="Found">Faults that were found on it, by kind of part and mode, with their entries' times.</param>
/// <param name="Looked">Parts that were looked at, by kind and mode, with the sheet's chance; empty while its findings are open.</param>
public sealed record UnitYear(
    DateTimeOffset TakenIn,
    DateTimeOffset? Returned,
    double Minutes,
    double UsualMinutes,
    ImmutableArray<(string Kind, string Mode, DateTimeOffset At)> Found,
    ImmutableArray<(string Kind, string Mode, double Percent)> Looked
)
{
    /// <summary>A longer gap is time away from the bench [min].</summary>
    public const double LongestGap = 30;

    private const double LookOver = 15;
    private const double Repair = 20;
    private const double Check = 25;
    private const double Paperwork = 10;

    /// <summary>Of a unit.</summary>
    /// <param name="sheet">Its type sheet; null while there is none.</param>
    public static UnitYear Of(BenchUnit unit, TypeSheet? sheet)
    {
        var modes = sheet is null ? [] : new FaultCatalogue(new UnitModel(sheet)).Modes;
        var isLookedThrough = unit.ClosedStages.Contains(Stage.Findings) || unit.HandedBack is not null;
        return new(
            unit.Journal[0].At,
            unit.HandedBack?.Entry.At,
            AtTheBench(unit),
            Usual(unit, sheet, modes),
            [
                .. unit
                    .Confirmed.Select(f =>
                        (Mode: modes.FirstOrDefault(m => m.Element == f.Fact.Element && m.Mode == f.Fact.Mode), f.Entry.At)
                    )
                    .Where(f => f.Mode is not null)
                    .Select(f => (f.Mode!.Kind.Word(), f.Mode.Mode, f.At)),
            ],
            isLookedThrough ? [.. modes.Select(m => (m.Kind.Word(), m.Mode, m.Percent))] : []
        );
    }

    private static double AtTheBench(BenchUnit unit) =>
        unit
            .Journal.Zip(unit.Journal.Skip(1), (one, next) => (next.At - one.At).TotalMinutes)
            .Where(gap => gap is > 0 and <= LongestGap)
            .Sum();

    private static double Usual(BenchUnit unit, TypeSheet? sheet, ImmutableArray<FaultMode> modes)
    {
        double Of(PartChanged changed) =>
            modes.FirstOrDefault(m =>
                m.Element == changed.Element && unit.All<FindingJudged>().Any(f => f.Fact.Element == m.Element && f.Fact.Mode == m.Mode)
            )
                is { } mode
                ? (WhatToDo.For(sheet!, mode).Minutes.From + WhatToDo.For(sheet!, mode).Minutes.To) / 2.0
                : Repair;
        double Step(string id, Func<TakeApartStep, double> minutes) =>
            sheet?.TakeApart.FirstOrDefault(s => s.Id == id) is { } step ? minutes(step) : 0;
        return (unit.ClosedStages.Contains(Stage.LookOver) ? LookOver : 0)
            + unit.All<ReadingEntered>().Sum(r => sheet?.FindReading(r.Fact.ReadingId)?.Minutes ?? 1)
            + unit.All<TakenOff>().Sum(o => Step(o.Fact.Step, s => s.MinutesOut))
            + unit.All<PutBack>().Sum(b => Step(b.Fact.Step, s => s.MinutesIn))
            + unit.All<PartChanged>().Sum(p => Of(p.Fact))
            + (Check * unit.All<RewireChecked>().Count())
            + (unit.HandedBack is null ? 0 : Paperwork);
    }
}
