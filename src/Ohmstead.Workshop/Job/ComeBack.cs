using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Kinds;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Job;

/// <summary>A unit that was here before: known by its tag, or by its owner and its type.</summary>
public static class ComeBack
{
    /// <summary>Which units that went back may be this one, the likeliest first: the same tag, then the same owner, the latest first.</summary>
    /// <param name="sheetId">Its type; empty while that is not known.</param>
    /// <param name="self">The unit itself, where it is in the workshop already.</param>
    public static ImmutableArray<UnitCard> Among(IEnumerable<UnitCard> cards, string tag, string owner, string sheetId, Guid? self = null)
    {
        bool Same(string a, string b) => a.Trim().Length > 0 && string.Equals(a.Trim(), b.Trim(), StringComparison.OrdinalIgnoreCase);
        bool MayBe(string type) => type.Length == 0 || sheetId.Length == 0 || type == sheetId;
        return
        [
            .. cards
                .Where(c =>
                    c.IsHandedBack
                    && c.Id != self
                    && c.Owner != PracticeTypes.Mark
                    && MayBe(c.SheetId)
                    && (Same(tag, c.Tag) || Same(owner, c.Owner))
                )
                .OrderByDescending(c => Same(tag, c.Tag))
                .ThenByDescending(c => c.LastAt),
        ];
    }

    /// <summary>Each reading as it was left then, beside the first of it now: as found, before anything was changed.</summary>
    /// <param name="sheet">The sheet by which both are read.</param>
    public static ImmutableArray<ThenAndNow> Compare(BenchUnit then, BenchUnit now, TypeSheet sheet)
    {
        var left = OwnHistory.AsLeft(then);
        var found = now.All<ReadingEntered>()
            .GroupBy(r => r.Fact.ReadingId, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.First().Fact, StringComparer.Ordinal);
        string Said(IReadOnlyDictionary<string, ReadingEntered> of, ReadingSpec spec) =>
            of.TryGetValue(spec.Id, out var read) && read.Shown.Kind != ShownKind.NotTaken
                ? ShownText.Write(read.Shown, spec.Quantity)
                : "not taken";
        return
        [
            .. sheet
                .Readings.Where(r => left.ContainsKey(r.Id) || found.ContainsKey(r.Id))
                .Select(r => new ThenAndNow(PartNames.Reading(sheet, r.Id), Said(left, r), Said(found, r))),
        ];
    }
}

/// <summary>A reading of a unit that came back.</summary>
/// <param name="Title">What was read.</param>
/// <param name="Then">As it was left.</param>
/// <param name="Now">As it was found.</param>
public sealed record ThenAndNow(string Title, string Then, string Now);
