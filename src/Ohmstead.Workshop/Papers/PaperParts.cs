using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Untyped;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Papers;

/// <summary>What several papers say in the same words.</summary>
internal static class PaperParts
{
    public static Opening Opening(PaperMatter matter, ImmutableArray<Pair> pairs)
    {
        var photo = matter.Unit.All<PhotoAdded>().Select(p => p.Fact.Photo).FirstOrDefault() ?? "";
        var title = matter.Sheet is { } sheet ? (sheet.Title.Length > 0 ? sheet.Title : sheet.Id) : "Kind not known";
        return new Opening(matter.Shop.Name, matter.Shop.Address, title, pairs, photo);
    }

    /// <summary>What stands first on every paper: checks that have not passed, and those waived, in full words.</summary>
    public static IEnumerable<Block> Warnings(PaperMatter matter)
    {
        if (matter.Sheet is null)
            yield return new Notice(
                Weight.Stop,
                "Do not plug this unit in.",
                ["Its kind is not known here, so no check could be judged."]
            );
        else if (!matter.MayBePluggedIn)
            yield return new Notice(
                Weight.Stop,
                "Do not plug this unit in.",
                [
                    .. UntypedSheet.IsOne(matter.Sheet) ? ["Its type is not known: only cold readings were taken."] : Array.Empty<string>(),
                    .. matter.Failed.Select(l => $"Failed: {l.Title}. It read {l.Measured}. {Sentences.Large(l.Limits)}."),
                    .. matter.TooClose.Select(l =>
                        $"Too close for the meter: {l.Title}. It read {l.Measured}. {Sentences.Large(l.Limits)}. Read it again with a better one."
                    ),
                    .. matter.Skipped.Any()
                        ? new[]
                        {
                            $"Cold checks not taken, which counts as not passed: {string.Join("; ", matter.Skipped.Select(l => l.Title))}.",
                        }
                        : [],
                    .. matter.IsOpen ? [$"It is not put back together: {string.Join(", ", matter.Apart!.Off.Select(o => o.Step.Title))}."] : Array.Empty<string>(),
                    .. matter.WaitsForCheck
                        ? ["A wire was moved, and the check before mains does not stand."]
                        : Array.Empty<string>(),
                ]
            );
        if (!matter.Waived.Any())
            yield break;
        yield return new Notice(Weight.Look, "Waived in writing, not measured", [.. matter.Waived.Select(Waiver)]);
    }

    private static string Waiver(ReadingLine line)
    {
        var w = line.Waiver!;
        var instead =
            w.Instead.Trim().Length > 0
                ? $" Done instead: {w.Instead.Trim().TrimEnd('.')}."
                : " Nothing was done instead.";
        return $"{line.Title}: {w.Why.Trim().TrimEnd('.')}. Waived by {w.WaivedBy}.{instead} Every reading that rests on it rests on that.";
    }

    /// <summary>The last word on each part of the look-over, in the shop's order.</summary>
    public static IEnumerable<ConditionNoted> LastConditions(PaperMatter matter)
    {
        var last = matter
            .Unit.All<ConditionNoted>()
            .GroupBy(c => c.Fact.Item, StringComparer.Ordinal)
            .Select(g => g.Last().Fact)
            .ToList();
        int Place(string item)
        {
            for (var n = 0; n < matter.Shop.LookOver.Length; n++)
                if (matter.Shop.LookOver[n].Id == item)
                    return n;
            return int.MaxValue;
        }
        return last.OrderBy(c => Place(c.Item));
    }

    public static ImmutableArray<Row> Conditions(PaperMatter matter) =>
        [.. LastConditions(matter).Select(c => Row.Of(Item(matter.Shop, c.Item), c.Words, Decided(c.Decision)))];

    public static string Item(Shop shop, string id) =>
        shop.LookOver.FirstOrDefault(i => i.Id == id)?.Title ?? PartNames.Unknown(id, "A part");

    /// <summary>A part's name, its first letter large.</summary>
    public static string Part(TypeSheet? sheet, string id)
    {
        var name = sheet is null ? PartNames.Unknown(id, "a part") : PartNames.Of(sheet, id);
        return Sentences.Large(name);
    }

    /// <summary>A fault as a heading.</summary>
    public static string Fault(TypeSheet? sheet, string part, string mode) =>
        sheet is null ? $"{Part(null, part)}: a fault" : PartNames.Headline(sheet, part, mode);

    public static string Change(PartChange change) =>
        change switch
        {
            PartChange.Renewed => "renewed",
            PartChange.Serviced => "cleaned or tightened",
            PartChange.Replaced => "replaced by another part",
            PartChange.Removed => "taken out",
            PartChange.Added => "put in",
            _ => "soldered anew",
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
            Decision.Renew => "renew",
            Decision.Renewed => "renewed",
            _ => "not decided",
        };
}
