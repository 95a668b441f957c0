using System.Globalization;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Shops;
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
            PlateRead p =>
                $"Plate: {(p.Volts is { } v ? ValueText.Read(v, Quantity.AcVolts) : "no volts")}, {(p.Watts is { } w ? ValueText.Read(w, Quantity.Watts) : "no watts")}",
            TerminalNamed t => t.Name.Length == 0
                ? $"{(t.IsPost ? "Post" : "Lug")} removed"
                : $"{(t.IsPost ? "Post" : "Lug")} named: {t.Name}",
            CarriedOver => "Carried over to its type",
            SheetKept k => k.Version == 0 ? "Takes the newest type sheet" : $"Keeps version {ValueText.Plain(k.Version)} of its type sheet",
            PracticeBegun => "Practice unit, invented",
            CardChanged => "Card changed",
            SignAnswered s => $"Symptom: {PartNames.Symptom(sheet, s.ObservationId)}: {Answered(s.Answer)}",
            ConditionNoted c => c.Words.Length == 0
                ? $"{c.Title ?? ItemTitle(c.Item)}: {Decided(c.Decision)}"
                : $"{c.Title ?? ItemTitle(c.Item)}: {c.Words}{(c.Decision == Decision.Open ? "" : $", {Decided(c.Decision)}")}",
            NotLookedAt n => $"{n.Title ?? ItemTitle(n.Item)}: not looked at, {n.Why}. Signed by {n.SignedBy}",
            DamagePinned d => $"Damage: {d.Words}",
            DetailSeen d => $"{d.Title}: {Seen(d)}",
            PhotoAdded p => p.Title.Length == 0 ? "Photo taken" : $"Photo taken: {p.Title}",
            BenchSet => "Conditions set",
            ReadingEntered r =>
                $"{r.Title ?? PartNames.Reading(sheet, r.ReadingId)}: {ShownWords(r.Shown, UntypedIds.QuantityOf(r.ReadingId) ?? sheet?.FindReading(r.ReadingId)?.Quantity)}",
            ReadingWaived w => $"{PartNames.Reading(sheet, w.ReadingId)}: waived by {w.WaivedBy}, {w.Why}",
            SupplyStated s => $"Low-voltage supply measured: {ValueText.Of(s.AcVolts, Quantity.AcVolts)} AC",
            RewireChecked c => c.LookedAt.Length == 0 ? "Wiring check passed" : $"Wiring check passed. Looked at by {c.By}: {c.LookedAt}",
            WireChecked w =>
                $"{Points(w.First, sheet)} to {Points(w.Second, sheet)}: {ShownWords(w.Shown, Quantity.Ohms)}, {(w.Passes ? "pass" : "fail")}",
            PowerTried p => $"At {ValueText.Of(p.SetVolts, Quantity.AcVolts)}: {(p.Went ? "go" : "stopped")}",
            SweepTaken s => $"Throttle sweep: {Counted.Of(s.Points.Length, "position")}",
            TestRead t => $"Test: {t.Title}: {TestWords.Read(t)}",
            TestNotTaken t => $"Test: {t.Title}: not taken, {t.Why}",
            HeatRunBegun h => $"Heat run begun: {ValueText.Plain(h.LoadAmps)} A, {ValueText.Plain(h.ColdOhms)} Ω cold",
            HeatRead h =>
                $"Heat run, {ValueText.Plain(Math.Round(h.Minutes, 1))} min: {ValueText.Plain(h.Ohms)} Ω{(h.StaysOut ? ", the last one: plug out" : "")}",
            HeatUnplugged h => $"Heat run, {ValueText.Plain(Math.Round(h.Minutes, 1))} min: unplugged",
            HeatCooled h => $"Heat run, {ValueText.Plain(h.Seconds)} s after: {ValueText.Plain(h.Ohms)} Ω",
            HeatRunEnded h => $"Heat run {TestWords.Ended(h)}",
            LoadForHours l => $"May carry {TestWords.Amps(l.Amps)} for hours at {ValueText.Plain(l.RoomCelsius)} °C",
            BreakerStarted b => $"{PartNames.Title(sheet, b.Breaker)}: timing begun at {ValueText.Plain(b.Amps)} A",
            BreakerTimed b => $"{PartNames.Title(sheet, b.Breaker)}: {TestWords.Timed(b)}",
            FindingJudged f => $"{(sheet is null ? "A fault" : PartNames.Headline(sheet, f.Element, f.Mode))}: {Judged(f.Judgement)}",
            PartChanged p => $"{PartNames.Title(sheet, p.Element)}: {Changed(p.Change)}{FromTheDrawer(p)}",
            PartDecided d => $"{PartTitle(d.About, sheet)}: {Decided(d.Act)}{(d.Part.Length > 0 ? $", {d.Part}" : "")}",
            LooksNoted l =>
                $"Looks, {Sentences.Small(l.Item)}: {(l.Words.Length > 0 ? $"{l.Words}, " : "")}{(l.IsToDo ? "to do" : "leave")}",
            EstimateMade e => $"Estimate made: {Sum(e.Low)} to {Sum(e.High)}",
            GoAheadGiven g => $"Go-ahead{(g.How.Length > 0 ? $" {g.How}" : "")}{(g.Limit is { } limit ? $", up to {Sum(limit)}" : "")}",
            Billed b => $"Billed: {b.Sum.ToString("0.00", CultureInfo.InvariantCulture)}{(b.Words.Length > 0 ? $". {b.Words}" : "")}",
            JointSeen j =>
                $"{Sentences.Large(Points([j.Terminal], sheet))}, as {(j.As == WiringState.Found ? "found" : "left")}: {(j.Ends.IsEmpty ? "no wire" : string.Join("; ", j.Ends.Select(e => EndOf(e.Id, sheet))))}",
            WiringFrozen f => $"Wiring record as {(f.As == WiringState.Found ? "found" : "left")}: locked",
            WayChosen w => $"Get to: {string.Join(", ", w.Reach.Select(r => PartNames.Step(sheet, r)))}",
            TakenOff o => $"Off: {o.Title ?? PartNames.Step(sheet, o.Step)}{(o.Cup > 0 ? $", cup {ValueText.Plain(o.Cup)}" : "")}",
            PieceNoted p => $"{Sentences.Large(PartNames.Step(sheet, p.Step))}: {Counted.Of(p.Pieces, "piece")} {Fated(p.Fate)}",
            PutBack b => $"Back on: {PartNames.Step(sheet, b.Step)}",
            StageClosed { Stage: Stage.Papers } s => s.IsClosed ? "Returned" : "Back on the bench",
            StageClosed s => $"{StageTitle(s.Stage)}: {(s.IsClosed ? "done" : "reopened")}",
            Returned r => ReturnTitle(r.Manner),
            PaperMade p => $"Paper made: {PaperTitle(p.Paper)}",
            HumRecorded h => $"Hum recorded: {HumRecorded.Said(h.As)}",
            LayoutStated l => $"What the owner runs: {Counted.Of(l.Posts.Sum(p => p.Items.Sum(i => i.Count)), "thing")}",
            Noted n => n.Words,
            Settled s => s.Words,
            Corrected { Instead: { } right } => $"Corrected: {Of(right, sheet)}",
            Corrected => "An entry undone",
            _ => "An entry of a later version",
        };

    /// <summary>What a stage is called.</summary>
    public static string StageTitle(Stage stage) =>
        stage switch
        {
            Stage.LookOver => "Look-over",
            Stage.Readings => "Readings",
            Stage.Findings => "Findings",
            Stage.TakingApart => "Take apart, put together",
            Stage.Wiring => "Wiring record and wiring check",
            Stage.Tests => "Tests",
            _ => "Paperwork and return",
        };

    /// <summary>How a unit went back.</summary>
    public static string ReturnTitle(ReturnManner? manner) =>
        manner switch
        {
            ReturnManner.Working => "Returned working, as tested",
            ReturnManner.NotToBePluggedIn => "Returned, not to be plugged in",
            _ => "Returned",
        };

    /// <summary>What became of a piece.</summary>
    public static string Fated(PieceFate fate) =>
        fate switch
        {
            PieceFate.Broke => "broke",
            PieceFate.Lost => "lost",
            _ => "to replace",
        };

    private static string Points(IEnumerable<string> terminals, TypeSheet? sheet) =>
        sheet is null ? Sentences.List(terminals.Select(t => PartNames.Unknown(t, "a terminal"))) : PartNames.Terminals(sheet, terminals);

    /// <summary>An end on its joint: of a wire that has no title but its color, where its end is was said already.</summary>
    private static string EndOf(string end, TypeSheet? sheet) =>
        sheet is null ? "a wire"
        : UntypedIds.IsOne(sheet) ? PartNames.Of(sheet, end[..Math.Max(end.LastIndexOf('.'), 0)])
        : PartNames.End(sheet, end);

    /// <summary>What a paper is called.</summary>
    public static string PaperTitle(string paper) =>
        paper switch
        {
            "owner" or "owner-sheet" => "owner's page",
            _ => paper.Replace('-', ' '),
        };

    private static string PartTitle(string about, TypeSheet? sheet) =>
        Shop.Usual.LookOver.FirstOrDefault(i => i.Id == about)?.Title ?? PartNames.Title(sheet, about);

    private static string Sum(decimal sum) => sum.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Decided(DecidedAct act) =>
        act switch
        {
            DecidedAct.Leave => "leave",
            DecidedAct.Watch => "watch",
            DecidedAct.Clean => "clean",
            DecidedAct.Tighten => "tighten or resolder",
            DecidedAct.Replace => "replace",
            _ => "nothing decided",
        };

    private static string ItemTitle(string item) =>
        Shop.Usual.LookOver.FirstOrDefault(i => i.Id == item)?.Title ?? Sentences.Large(PartNames.Unknown(item, "a part"));

    /// <summary>Of a reading that no sheet knows the unit is not known either.</summary>
    private static string ShownWords(Shown shown, Quantity? quantity) =>
        quantity is not null || shown.Kind != ShownKind.Value
            ? ShownText.Write(shown, quantity ?? Quantity.Ohms)
            : shown.Value.ToString("0.######", CultureInfo.InvariantCulture);

    private static string Seen(DetailSeen detail) =>
        detail.Shows switch
        {
            DetailSeen.Another => "none of those known",
            DetailSeen.CannotTell => "could not tell",
            "" => "not looked at",
            _ => detail.Words,
        };

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
            Decision.Leave => "leave",
            Decision.Watch => "watch",
            Decision.Renew => "replace",
            Decision.Renewed => "replaced",
            Decision.MadeGood => "made good",
            _ => "not decided",
        };

    private static string Judged(Judgement judgement) =>
        judgement switch
        {
            Judgement.Confirmed => "found it",
            Judgement.Dismissed => "not this",
            _ => "undone",
        };

    private static string FromTheDrawer(PartChanged part) =>
        part.FromTheDrawer.Select(f => f.Count == 1 ? f.Words : $"{ValueText.Plain(f.Count)} × {f.Words}").ToList() is { Count: > 0 } parts
            ? $", from the drawer: {string.Join("; ", parts)}"
            : "";

    private static string Changed(PartChange change) =>
        change switch
        {
            PartChange.Renewed => "replaced, same part",
            PartChange.Replaced => "replaced, different part",
            PartChange.Removed => "removed",
            PartChange.Added => "added",
            PartChange.Serviced => "cleaned or tightened",
            PartChange.Moved => "stays where it is",
            _ => "resoldered",
        };
}
