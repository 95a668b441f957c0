using System.Globalization;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Journal;

/// <summary>A fact in the words of the trade, one short line.</summary>
public static class FactWords
{
    /// <summary>What was entered, in words.</summary>
    /// <param name="sheet">The unit's type sheet, for the titles of its readings; null while there is none.</param>
    public static string Of(Fact fact, TypeSheet? sheet) =>
        fact switch
        {
            TakenIn => "Taken in",
            CardChanged => "Card written anew",
            SignAnswered s => $"{SignTitle(s.ObservationId, sheet)}: {Answered(s.Answer)}",
            ConditionNoted c => c.Words.Length == 0
                ? $"{c.Item}: {Decided(c.Decision)}"
                : $"{c.Item}: {c.Words}, {Decided(c.Decision)}",
            DamagePinned d => $"Damage marked: {d.Words}",
            PhotoAdded p => p.Title.Length == 0 ? "Photo taken" : $"Photo taken: {p.Title}",
            BenchSet => "Bench set up",
            ReadingEntered r =>
                $"{ReadingTitle(r.ReadingId, sheet)}: {ShownWords(r.Shown, sheet?.FindReading(r.ReadingId)?.Quantity)}",
            ReadingWaived w => $"Waived: {ReadingTitle(w.ReadingId, sheet)}, {w.Why}",
            SupplyStated s => $"Low supply measured: {ValueText.Of(s.AcVolts, Quantity.AcVolts)} AC",
            RewireChecked c => c.LookedAt.Length == 0
                ? "The check before mains stands"
                : $"The check before mains stands; looked at by {c.By}: {c.LookedAt}",
            WireChecked w => $"{string.Join(", ", w.First)} – {string.Join(", ", w.Second)}: {ShownWords(w.Shown, Quantity.Ohms)}{(w.Passes ? "" : ", wrong")}",
            PowerTried p => $"At {ValueText.Of(p.SetVolts, Quantity.AcVolts)}: {(p.Went ? "go" : "stopped")}",
            FindingJudged f => $"{f.Element}, {f.Mode}: {Judged(f.Judgement)}",
            PartChanged p => $"{p.Element}: {Changed(p.Change)}",
            JointSeen j => $"{j.Terminal}, as {(j.As == WiringState.Found ? "found" : "left")}: {(j.Ends.IsEmpty ? "no wire" : string.Join(", ", j.Ends.Select(e => e.Id)))}",
            WiringFrozen f => $"The wiring as {(f.As == WiringState.Found ? "found" : "left")} is recorded",
            WayChosen w => $"To reach: {string.Join(", ", w.Reach.Select(r => StepTitle(r, sheet)))}",
            TakenOff o => $"Off: {StepTitle(o.Step, sheet)}{(o.Cup > 0 ? $", cup {ValueText.Plain(o.Cup)}" : "")}",
            PieceNoted p => $"{StepTitle(p.Step, sheet)}: {Counted.Of(p.Pieces, "piece")} {Fated(p.Fate)}",
            PutBack b => $"Back: {StepTitle(b.Step, sheet)}",
            StageClosed s => $"{StageTitle(s.Stage)}: {(s.IsClosed ? "closed" : "opened again")}",
            PaperMade p => $"Paper made: {p.Paper.Replace('-', ' ')}",
            Noted n => n.Words,
            Corrected { Instead: { } right } => $"Corrected: {Of(right, sheet)}",
            Corrected => "An entry taken back",
            _ => "An entry of a later version",
        };

    /// <summary>What a stage is called.</summary>
    public static string StageTitle(Stage stage) =>
        stage switch
        {
            Stage.LookOver => "Look-over",
            Stage.Readings => "Readings",
            Stage.Findings => "Findings and repair",
            Stage.TakingApart => "Apart and back together",
            Stage.Wiring => "Wiring, and the check before mains",
            _ => "Papers",
        };

    /// <summary>The title of a reading, or its id where the sheet has none.</summary>
    public static string ReadingTitle(string id, TypeSheet? sheet) =>
        sheet?.FindReading(id) is { Title.Length: > 0 } spec ? spec.Title : id;

    /// <summary>The title of a take-apart step, or its id where the sheet has none.</summary>
    public static string StepTitle(string id, TypeSheet? sheet) =>
        sheet?.TakeApart.FirstOrDefault(s => s.Id == id) is { Title.Length: > 0 } step ? step.Title : id;

    /// <summary>What became of a piece.</summary>
    public static string Fated(PieceFate fate) =>
        fate switch
        {
            PieceFate.Broke => "broke",
            PieceFate.Lost => "lost",
            _ => "to be renewed",
        };

    private static string SignTitle(string id, TypeSheet? sheet) =>
        sheet?.Observations.FirstOrDefault(o => o.Id == id) is { Title.Length: > 0 } sign ? sign.Title : id;

    /// <summary>Of a reading that no sheet knows the unit is not known either.</summary>
    private static string ShownWords(Shown shown, Quantity? quantity) =>
        quantity is not null || shown.Kind != ShownKind.Value
            ? ShownText.Write(shown, quantity ?? Quantity.Ohms)
            : shown.Value.ToString("0.######", CultureInfo.InvariantCulture);

    private static string Answered(Answer answer) =>
        answer switch
        {
            Answer.Yes => "yes",
            Answer.No => "no",
            _ => "not sure",
        };

    private static string Decided(Decision decision) =>
        decision switch
        {
            Decision.Leave => "leave it",
            Decision.Watch => "watch it",
            Decision.Renew => "renew it",
            Decision.Renewed => "renewed",
            _ => "not decided",
        };

    private static string Judged(Judgement judgement) =>
        judgement switch
        {
            Judgement.Confirmed => "confirmed",
            Judgement.Dismissed => "dismissed",
            _ => "open again",
        };

    private static string Changed(PartChange change) =>
        change switch
        {
            PartChange.Renewed => "renewed",
            PartChange.Replaced => "replaced by another part",
            PartChange.Removed => "taken out",
            PartChange.Added => "put in",
            _ => "soldered anew",
        };
}
