using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Papers;

/// <summary>What several papers say in the same words.</summary>
internal static class PaperParts
{
    /// <summary>The heading of every paper of a unit that went back so.</summary>
    public const string NotToBePluggedIn = "NOT TO BE PLUGGED IN";

    public static Letterhead Letterhead(JudgedUnit judged, ImmutableArray<Pair> pairs)
    {
        var photo = judged.Unit.All<PhotoAdded>().Select(p => p.Fact.Photo).FirstOrDefault() ?? "";
        var title = judged.Sheet is { } sheet ? (sheet.Title.Length > 0 ? sheet.Title : sheet.Id) : "Type not known";
        return new Letterhead(judged.Shop.Name, judged.Shop.Address, title, pairs, photo);
    }

    /// <summary>What stands first on every paper: checks that have not passed, those waived, and what is doubted, in full words.</summary>
    public static IEnumerable<Block> Warnings(JudgedUnit judged)
    {
        if (!judged.MayBePluggedIn)
            yield return new Notice(
                Weight.Stop,
                judged.IsReturnedUnplugged ? NotToBePluggedIn : "Do not plug this unit in.",
                Stops(judged, PageSpeaker.English)
            );
        ImmutableArray<string> signed =
        [
            .. judged.Waived.Select(Waiver),
            .. judged
                .Open.Where(o => o is { Weight: OpenWeight.Waived, Place: not OpenPlace.Reading })
                .Select(o => Line(o, PageSpeaker.English)),
        ];
        if (!signed.IsEmpty)
            yield return new Notice(Weight.Look, "Waived in writing, not measured", signed);
        ImmutableArray<string> doubts =
        [
            .. judged.Doubts.Where(d => d.Weakens).Select(d => $"{d.Headline}. {d.Do}"),
            .. judged.Slipped.Select(l => $"To be read again: {l.Title}. It read {l.Measured}: {l.Verdict}."),
        ];
        if (!doubts.IsEmpty)
            yield return new Notice(Weight.Look, "Doubted, and not settled. Readings and findings count less until then", doubts);
    }

    /// <summary>Why it may not be plugged in, a line each.</summary>
    /// <param name="isBrief">For the owner: how many checks and parts, not which.</param>
    public static ImmutableArray<string> Stops(JudgedUnit judged, PageSpeaker say, bool isBrief = false) =>
        [.. AllStops(judged, say, isBrief).DefaultIfEmpty(say.Name("It goes back as it is."))];

    private static IEnumerable<string> AllStops(JudgedUnit judged, PageSpeaker say, bool isBrief)
    {
        if (judged.Sheet is null)
            yield return say.Name("Its type is not known here. No check could be judged.");
        if (UntypedIds.IsOne(judged.Sheet))
            yield return say.Name("Its type is not known: only cold readings were taken.");
        foreach (var open in judged.Open.Where(o => o is { IsOpen: true, Place: OpenPlace.LookOver, About.Length: > 0 }))
            yield return Line(open, say);
        foreach (var line in judged.Failed)
            yield return say.Say($"Failed: {say.Name(line.Title)}. It read {line.Measured}. {say.Name(Sentences.Large(line.Limits))}.");
        foreach (var line in judged.TooClose)
            yield return say.Say(
                $"Too close for the meter: {say.Name(line.Title)}. It read {line.Measured}. {say.Name(Sentences.Large(line.Limits))}. Read it again with a better one."
            );
        foreach (var line in judged.Doubted)
            yield return say.Say($"To be read again: {say.Name(line.Title)}. It read {line.Measured}: {say.Name(line.Verdict)}.");
        foreach (var open in judged.Open.Where(o => o is { IsOpen: true, Place: OpenPlace.Tests }))
            yield return Line(open, say);
        foreach (var heat in judged.Heat)
            yield return say.Name($"{heat}. The cause is not found.");
        if (judged.Skipped.Any())
            yield return isBrief
                ? say.Name($"{Counted.Of(judged.Skipped.Count(), "cold check")} not taken. Not taken counts as not passed.")
                : $"Cold checks not taken, which counts as not passed: {string.Join("; ", judged.Skipped.Select(l => l.Title))}.";
        if (judged.IsOpen)
            yield return isBrief
                ? say.Name($"Not put together: {Counted.Of(judged.Apart!.Off.Length, "part")} off.")
                : $"Not put together. Off: {string.Join(", ", judged.Apart!.Off.Select(o => o.Step.Title))}.";
        foreach (var open in judged.Open.Where(o => o is { IsOpen: true, Place: OpenPlace.Wiring }))
            yield return Line(open, say);
        if (judged.WaitsForCheck)
            yield return say.Name("A wire was moved, and the wiring check has not passed.");
        foreach (
            var back in judged.Open.Where(o =>
                o is { IsOpen: true, Place: OpenPlace.Back }
                && judged.Apart!.Back.Any(b => b.Off.Step.Id == o.About && b.Fact.By.Length == 0)
            )
        )
            yield return Line(back, say);
    }

    private static string Line(OpenThing open, PageSpeaker say) => $"{say.Name(open.Title)}: {say.Name(open.Words.TrimEnd('.'))}.";

    private static string Waiver(ReadingLine line)
    {
        var w = line.Waiver!;
        var instead = w.Instead.Trim().Length > 0 ? $" Done instead: {w.Instead.Trim().TrimEnd('.')}." : " Nothing was done instead.";
        return $"{line.Title}: {w.Why.Trim().TrimEnd('.')}. Waived by {w.WaivedBy}.{instead} The readings that need this check rely on that.";
    }

    /// <summary>The last word on each part of the look-over, in the shop's order.</summary>
    public static IEnumerable<ConditionNoted> LastConditions(JudgedUnit judged)
    {
        var last = judged.Unit.All<ConditionNoted>().GroupBy(c => c.Fact.Item, StringComparer.Ordinal).Select(g => g.Last().Fact).ToList();
        int Place(string item)
        {
            for (var n = 0; n < judged.Shop.LookOver.Length; n++)
                if (judged.Shop.LookOver[n].Id == item)
                    return n;
            return int.MaxValue;
        }
        return last.OrderBy(c => Place(c.Item));
    }

    public static ImmutableArray<Row> Conditions(JudgedUnit judged) =>
        [
            .. LastConditions(judged)
                .Select(c =>
                    Row.Of(
                        Item(judged.Shop, c.Item),
                        c.Words,
                        c.Decision == Decision.Renew && !OwnerFacts.IsToReplace(judged, c) ? "replaced" : Decided(c.Decision)
                    )
                ),
        ];

    public static string Item(Shop shop, string id) =>
        shop.LookOver.FirstOrDefault(i => i.Id == id)?.Title ?? PartNames.Unknown(id, "A part");

    public static string Change(PartChange change) =>
        change switch
        {
            PartChange.Serviced => "cleaned or tightened",
            PartChange.Renewed => "replaced, same part",
            PartChange.Replaced => "replaced, different part",
            PartChange.Removed => "removed",
            PartChange.Added => "added",
            PartChange.Moved => "wired differently, on purpose",
            _ => "resoldered",
        };

    /// <summary>Words in brackets, or nothing.</summary>
    public static string After(string words) => words.Trim().Length > 0 ? $" ({words.Trim().TrimEnd('.')})" : "";

    /// <summary>A date that nobody reads the wrong way round.</summary>
    public static string Day(DateTimeOffset at) => at.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    private static string Decided(Decision decision) =>
        decision switch
        {
            Decision.Leave => "stays as it is",
            Decision.Watch => "to be watched",
            Decision.Renew => "to be replaced",
            Decision.Renewed => "replaced",
            Decision.MadeGood => "made good",
            _ => "not decided",
        };
}
