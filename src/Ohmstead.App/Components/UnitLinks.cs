using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Testing;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Components;

/// <summary>Where the next thing on a unit is done.</summary>
internal static class UnitLinks
{
    /// <summary>The screen on which the next thing is done.</summary>
    public static string Of(Guid id, NextThing next) =>
        next.Action switch
        {
            NextAction.NameKind or NextAction.LookOver => LookOver(id, next.About),
            NextAction.TakeReading => $"/units/{id}/reading/{Uri.EscapeDataString(next.About)}",
            NextAction.CheckWiring => $"/units/{id}/check",
            NextAction.JudgeFindings or NextAction.Repair => $"/units/{id}/findings",
            NextAction.TakeApart => $"/units/{id}/apart/step",
            NextAction.PutBack => $"/units/{id}/apart/back",
            NextAction.MakePaper => $"/units/{id}/papers",
            NextAction.Return => $"/units/{id}/return",
            NextAction.HeatRun => $"/units/{id}/heat-run",
            NextAction.TimeBreaker => $"/units/{id}/breaker/{Uri.EscapeDataString(next.About)}",
            _ => $"/units/{id}",
        };

    /// <summary>Where an open thing is put right.</summary>
    public static string Of(Guid id, OpenThing open) =>
        open.Place switch
        {
            OpenPlace.LookOver => LookOver(id, open.About),
            OpenPlace.Reading => $"/units/{id}/reading/{Uri.EscapeDataString(open.About)}",
            OpenPlace.Tests => $"/units/{id}/tests/{Uri.EscapeDataString(open.About)}",
            OpenPlace.Wiring => $"/units/{id}/wiring",
            OpenPlace.Check => $"/units/{id}/check",
            OpenPlace.Back => $"/units/{id}/apart/back",
            _ => $"/units/{id}/findings",
        };

    /// <summary>Where what keeps a reading locked is put right.</summary>
    public static string Of(Guid id, LockReason reason) =>
        reason.Place switch
        {
            LockPlace.LookOver => LookOver(id, reason.About),
            LockPlace.WiringCheck => $"/units/{id}/check",
            _ => $"/units/{id}/reading/{Uri.EscapeDataString(reason.About)}",
        };

    /// <summary>What settles a doubt, and where; no words where nothing here does.</summary>
    public static (string Words, string Address) Of(BenchUnit unit, BenchDoubt doubt, Workshop.Shops.Shop shop) =>
        doubt switch
        {
            { About: DoubtAbout.Leads } => (
                "Enter the test leads",
                $"/shop/meters?meter={Uri.EscapeDataString(OhmMeter(unit, doubt, shop))}"
            ),
            { About: DoubtAbout.Line, IsEntered: false } => ("Enter the line voltage", $"/units/{unit.Id}/round"),
            { IsDamp: true, Again: [var first, ..] } => ReadAgain(unit, first),
            { About: DoubtAbout.Unit } when unit.Card.SheetId.Length > 0 => (
                "Learn from sound units",
                $"/kinds/{Uri.EscapeDataString(unit.Card.SheetId)}/readings"
            ),
            { About: DoubtAbout.Kind } when unit.Card.SheetId.Length > 0 => (
                "Compare with the type sheet",
                $"/kinds/{Uri.EscapeDataString(unit.Card.SheetId)}"
            ),
            { Again: [var first, ..] } => ReadAgain(unit, first),
            _ => ("", ""),
        };

    private static (string, string) ReadAgain(BenchUnit unit, ReadingSpec spec) =>
        ($"Read again: {spec.Title}", $"/units/{unit.Id}/reading/{Uri.EscapeDataString(spec.Id)}");

    /// <summary>The meter that the doubted ohms were read with.</summary>
    private static string OhmMeter(BenchUnit unit, BenchDoubt doubt, Workshop.Shops.Shop shop) =>
        MeterInHand
            .For(
                Quantity.Ohms,
                unit.CurrentReadings.LastOrDefault(r => doubt.Again.Any(a => a.Id == r.Fact.ReadingId)).Fact?.Bench ?? unit.Bench,
                shop
            )
            ?.Id
        ?? "";

    /// <summary>What to do about a part.</summary>
    /// <param name="mode">The fault that it is about; empty for none.</param>
    public static string Decide(Guid id, string about, string mode) =>
        $"/units/{id}/decide/{Uri.EscapeDataString(about)}{(mode.Length > 0 ? $"?fault={Uri.EscapeDataString(mode)}" : "")}";

    /// <summary>The look-over, at one part of it or from its top.</summary>
    public static string LookOver(Guid id, string part) => $"/units/{id}/look-over{(part.Length > 0 ? $"#part-{part}" : "")}";

    /// <summary>Where a test is made.</summary>
    public static string Of(Guid id, BenchTest test) =>
        test.Sort switch
        {
            TestSort.HeatRun => $"/units/{id}/heat-run",
            TestSort.Breaker => $"/units/{id}/breaker/{Uri.EscapeDataString(test.About)}",
            _ => $"/units/{id}/tests/{Uri.EscapeDataString(test.Id)}",
        };

    /// <summary>The screen of a stage.</summary>
    public static string Of(Guid id, Stage stage) =>
        stage switch
        {
            Stage.LookOver => $"/units/{id}/look-over",
            Stage.Readings => $"/units/{id}/reading",
            Stage.Findings => $"/units/{id}/findings",
            Stage.Wiring => $"/units/{id}/wiring",
            Stage.TakingApart => $"/units/{id}/apart",
            Stage.Tests => $"/units/{id}/tests",
            _ => $"/units/{id}/papers",
        };
}
