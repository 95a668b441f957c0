using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.LookOver;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Papers;

/// <summary>What the owner is told, each fact once: the owner's page, the record's first page and the label take it from here.</summary>
public static class OwnerFacts
{
    /// <summary>More untested readings than this are counted, not named.</summary>
    private const int MostNamed = 4;

    /// <summary>What the owner said, as written down; empty for nothing.</summary>
    public static string Said(JudgedUnit judged) => judged.Unit.Card.Complaint.Trim();

    /// <summary>What was wrong, and what became of it: faults that were found, then parts, then what the look-over asked for.</summary>
    internal static ImmutableArray<string> WrongAndDone(JudgedUnit judged, PageSpeaker say)
    {
        var changes = judged
            .Unit.All<PartChanged>()
            .Where(p => p.Fact.Change != PartChange.Rewired)
            .GroupBy(p => p.Fact.Element, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Last().Fact, StringComparer.Ordinal);
        var found = judged
            .Unit.All<FindingJudged>()
            .GroupBy(j => (j.Fact.Element, j.Fact.Mode))
            .Select(g => g.Last().Fact)
            .Where(j => j.Judgement == Judgement.Confirmed)
            .ToList();
        var resoldered = judged
            .Unit.All<PartChanged>()
            .Where(p => p.Fact.Change == PartChange.Rewired)
            .Select(p => p.Fact.Element)
            .ToHashSet(StringComparer.Ordinal);
        string Became(string element) =>
            changes.TryGetValue(element, out var change) ? PaperParts.Change(change.Change)
            : resoldered.Contains(element) ? PaperParts.Change(PartChange.Rewired)
            : "found, not repaired";
        var named = found.Select(f => f.Element).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. found.Select(f => Line(PartNames.Headline(judged.Sheet, f.Element, f.Mode), Became(f.Element), say)),
            .. changes
                .Where(c => !named.Contains(c.Key))
                .Select(c => Line(PartNames.Title(judged.Sheet, c.Key), PaperParts.Change(c.Value.Change), say)),
            .. resoldered
                .Where(e => !named.Contains(e) && !changes.ContainsKey(e))
                .Select(e => Line(PartNames.Title(judged.Sheet, e), PaperParts.Change(PartChange.Rewired), say)),
            .. LookedAfter(judged, say),
        ];
    }

    /// <summary>Every change of a part, and what the look-over says was replaced.</summary>
    public static ImmutableArray<string> Done(JudgedUnit judged) =>
        [
            .. judged
                .Unit.All<PartChanged>()
                .Select(p =>
                    $"{PartNames.Title(judged.Sheet, p.Fact.Element)}: {PaperParts.Change(p.Fact.Change)}{PaperParts.After(p.Fact.Words)}."
                ),
            .. LookedAfter(judged, PageSpeaker.English),
        ];

    private static string Line(string name, string became, PageSpeaker say) => $"{say.Name(name)}: {say.Name(became)}.";

    /// <summary>What the look-over found and was put right, except where a new part says so already.</summary>
    private static IEnumerable<string> LookedAfter(JudgedUnit judged, PageSpeaker say) =>
        PaperParts
            .LastConditions(judged)
            .Where(c =>
                c.Decision is Decision.Renewed or Decision.MadeGood && !PartsOfItem.IsNewSince(judged.Unit, judged.Sheet, c.Item, 0)
            )
            .Select(c => Line(PaperParts.Item(judged.Shop, c.Item), c.Decision == Decision.Renewed ? "replaced" : "made good", say));

    /// <summary>What the look-over asks for and nobody has done yet.</summary>
    public static ImmutableArray<string> StillToDo(JudgedUnit judged) => StillToDo(judged, PageSpeaker.English);

    internal static ImmutableArray<string> StillToDo(JudgedUnit judged, PageSpeaker say) =>
        [
            .. PaperParts
                .LastConditions(judged)
                .Where(c => c.Decision == Decision.Watch || IsToReplace(judged, c))
                .Select(c =>
                    $"{say.Name(PaperParts.Item(judged.Shop, c.Item))}{PaperParts.After(say.Known(c.Words))}: {say.Name(c.Decision == Decision.Watch ? "to be watched" : "to be replaced")}."
                ),
        ];

    /// <summary>True for a part that is to be replaced and of which no new one was put in since.</summary>
    public static bool IsToReplace(JudgedUnit judged, ConditionNoted noted) =>
        noted.Decision == Decision.Renew && LookOverState.Of(judged.Unit, judged.Sheet, judged.Shop).ToReplace.Any(i => i.Id == noted.Item);

    /// <summary>Why it may not be plugged in, a line each.</summary>
    internal static ImmutableArray<string> OpenNow(JudgedUnit judged, PageSpeaker say) => PaperParts.Stops(judged, say, isBrief: true);

    /// <summary>What somebody signed for, with the name: checks that were not measured, parts that nobody could look at.</summary>
    internal static ImmutableArray<string> SignedFor(JudgedUnit judged, PageSpeaker say) =>
        [
            .. judged.Waived.Select(l => say.Say($"{say.Name(l.Title)}, waived by {l.Waiver!.WaivedBy}")),
            .. judged
                .Dangers.Where(d => d.State == Danger.SignedFor)
                .Select(d => say.Say($"{say.Name(d.Item.Title)}, not looked at, signed by {d.SignedBy}")),
        ];

    /// <summary>What was read on the unit as it is now and is not as it should be, but for what is doubted: "Post 1, full throttle, 4 Ω load: 3.01 V low".</summary>
    internal static ImmutableArray<string> NotNormal(JudgedUnit judged, PageSpeaker say) =>
        [.. Off(judged).Where(l => !l.IsDoubted).Select(l => $"{say.Name(l.Title)}: {say.Name(l.Verdict)}")];

    /// <summary>What was read and would not be normal, on a bench that is doubted or with a value that is: "Post 1, full throttle, 4 Ω load".</summary>
    internal static ImmutableArray<string> NotJudged(JudgedUnit judged, PageSpeaker say) =>
        [.. Off(judged).Where(l => l.IsDoubted).Select(l => say.Name(l.Title))];

    private static IEnumerable<ReadingLine> Off(JudgedUnit judged) =>
        judged
            .Lines.Where(l => l is { IsTaken: true, Weight: Weight.Look or Weight.Stop })
            .OrderBy(l => Place(judged.Sheet!.FindReading(l.Id)!));

    /// <summary>When the unit as it is now was last read; when the paper is made while nothing is.</summary>
    public static DateTimeOffset TestedOn(JudgedUnit judged) => judged.Lines.Where(l => l.IsTaken).Max(l => l.At) ?? judged.At;

    /// <summary>In which years it was probably made, by what was seen of it; empty where nothing was seen, or nothing narrows its type's years.</summary>
    internal static string MadeIn(JudgedUnit judged, PageSpeaker say)
    {
        if (judged.Dated is not { IsSeen: true, Answer: { } answer } || !judged.Dated.IsNarrowed)
            return "";
        var (from, to) = (answer.From.ToString(CultureInfo.InvariantCulture), answer.To.ToString(CultureInfo.InvariantCulture));
        return from == to ? say.Say($"Probably made in {from}.") : say.Say($"Probably made between {from} and {to}.");
    }

    /// <summary>What the unit is.</summary>
    public static string Title(JudgedUnit judged) => PaperParts.Letterhead(judged, []).Title;

    /// <summary>What was read and passed or is normal, the gravest first: insulation, the lamp, loaded volts, then the rest.</summary>
    public static ImmutableArray<ReadingLine> Tested(JudgedUnit judged) =>
        [.. judged.Lines.Where(l => l is { IsTaken: true, Weight: Weight.Good }).OrderBy(l => Place(judged.Sheet!.FindReading(l.Id)!))];

    /// <summary>How a reading that passed is told: "pass, at least 2 MΩ", "normal".</summary>
    internal static string Outcome(JudgedUnit judged, ReadingLine line, PageSpeaker say) =>
        say.Name(LimitWords.Of(judged.Sheet!.FindReading(line.Id)!) is { Length: > 0 } limits ? $"pass, {limits}" : "normal");

    /// <summary>What sorts of reading were taken: "insulation, series lamp, load".</summary>
    public static ImmutableArray<string> Sorts(JudgedUnit judged) =>
        [.. judged.Lines.Where(l => l.IsTaken).Select(l => judged.Sheet!.FindReading(l.Id)!).OrderBy(Place).Select(Sort).Distinct()];

    /// <summary>What no reading shows, and which readings of the type were not taken.</summary>
    /// <param name="where">Where a long list of them is: "The service record lists them."</param>
    public static ImmutableArray<string> NotTested(JudgedUnit judged, string where)
    {
        var open = judged.Lines.Where(l => !l.IsTaken && l.Waiver is null).ToList();
        // Tests that are readings stand among the readings.
        var tests = judged.Tests.Where(t => t.Test is { IsLeftOut: true, Offer: null }).Select(t => t.Test).ToList();
        return
        [
            .. open.Count == 0 ? []
            : open.Count <= MostNamed ? new[] { $"Not taken: {string.Join("; ", open.Select(l => l.Title))}." }
            : [$"Not taken: {Counted.Share(open.Count, judged.Lines.Length, "reading")}. {where}"],
            .. tests.Select(t => $"Test not taken: {t.Title}. Reason: {t.Taken!.NotTaken}."),
            .. judged.LookedAt is null ? Array.Empty<string>() : ["Some wiring was only looked at."],
            .. Advice.NeverJudged,
        ];
    }

    private static int Place(ReadingSpec spec) =>
        Sort(spec) switch
        {
            "insulation" => 0,
            "load" => 1,
            "series lamp" => 2,
            "no-load volts" => 3,
            "mains amps and watts" => 4,
            "low-voltage supply" => 5,
            _ => 6,
        };

    private static string Sort(ReadingSpec spec) =>
        spec switch
        {
            { Quantity: Quantity.InsulationOhms } => "insulation",
            { Quantity: Quantity.Ohms } => "ohms",
            { State.Source.HasLamp: true } => "series lamp",
            { State.Source: null or { IsDirect: true } } => "parts by themselves",
            { State.Source.Volts: <= 30 } => "low-voltage supply",
            { Quantity: Quantity.AcAmps or Quantity.Watts } => "mains amps and watts",
            { State.Loads.Length: > 0 } => "load",
            _ => "no-load volts",
        };
}
