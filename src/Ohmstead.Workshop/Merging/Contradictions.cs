using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Merging;

/// <summary>
/// What contradicts in the journal of a unit that was worked on at several benches. Nothing is kept of it but the journal: an answer
/// is an entry made after all that it is about, so it merges like any other.
/// </summary>
public static class Contradictions
{
    /// <summary>Two readings closer than this were taken by two people at once, or one was entered twice.</summary>
    private static readonly TimeSpan OneMinute = TimeSpan.FromMinutes(1);

    /// <summary>The open contradictions of a unit, in the order of its journal; none where only one bench worked on it.</summary>
    public static ImmutableArray<Contradiction> Of(BenchUnit unit)
    {
        if (!Lineage.IsForked(unit.Journal))
            return [];
        var lineage = new Lineage(unit.Journal);
        ImmutableArray<ImmutableHashSet<Guid>> settled = [.. unit.All<Settled>().Select(s => s.Fact.Between.ToImmutableHashSet())];
        return
        [
            .. Said(unit, lineage)
                .Concat(Corrections(unit, lineage))
                .Concat(Pairs(unit, lineage))
                .Concat(Back(unit, lineage))
                .Where(c => !settled.Any(s => c.Entries.All(e => s.Contains(e.Id))))
                .OrderBy(c => c.Entries[^1].Number)
                .ThenBy(c => c.Entries[0].Number),
        ];
    }

    /// <summary>What the last entry decides, said differently by entries of which none knew another.</summary>
    private static IEnumerable<Contradiction> Said(BenchUnit unit, Lineage lineage) =>
        from said in unit.Standing.Where(e => e.Fact is not Corrected).GroupBy(e => Registers.Key(e.Fact))
        where said.Key.Length > 0
        let last = Last([.. said], lineage)
        where last.Select(e => Registers.Value(e.Fact)).Distinct().Skip(1).Any()
        select new Contradiction(said.Key == "card" ? ContradictionSort.Card : ContradictionSort.Differently, last);

    private static IEnumerable<Contradiction> Corrections(BenchUnit unit, Lineage lineage) =>
        from corrections in unit.Journal.Where(e => e.Fact is Corrected).GroupBy(e => ((Corrected)e.Fact).EntryId)
        let last = Last([.. corrections], lineage)
        where last.Select(e => FactText.Write(e.Fact)).Distinct().Skip(1).Any()
        select new Contradiction(ContradictionSort.Corrected, last);

    /// <summary>The entries after which none of the others was made.</summary>
    private static ImmutableArray<Entry> Last(ImmutableArray<Entry> entries, Lineage lineage) =>
        entries.Length == 1 ? entries : [.. entries.Where(e => !entries.Any(o => o.Id != e.Id && lineage.IsAfter(o.Id, e.Id)))];

    /// <summary>What counts each time, read or done at two benches.</summary>
    private static IEnumerable<Contradiction> Pairs(BenchUnit unit, Lineage lineage)
    {
        foreach (var read in unit.Standing.GroupBy(e => Registers.Reading(e.Fact).Key).Where(g => g.Key.Length > 0))
        foreach (var (one, other) in Apart([.. read], lineage))
            if ((other.At - one.At).Duration() <= OneMinute && Registers.Reading(one.Fact).Value != Registers.Reading(other.Fact).Value)
                yield return new(ContradictionSort.SameMinute, [one, other]);
        foreach (var done in unit.Standing.GroupBy(e => Registers.Deed(e.Fact)).Where(g => g.Key.Length > 0))
        foreach (var (one, other) in Apart([.. done], lineage))
            yield return new(ContradictionSort.DoneTwice, [one, other]);
    }

    private static IEnumerable<(Entry One, Entry Other)> Apart(ImmutableArray<Entry> entries, Lineage lineage) =>
        from n in Enumerable.Range(0, entries.Length)
        from other in entries[(n + 1)..]
        where lineage.AreApart(entries[n].Id, other.Id)
        select (entries[n], other);

    /// <summary>Returned by one bench, and worked on by another that did not know.</summary>
    private static IEnumerable<Contradiction> Back(BenchUnit unit, Lineage lineage) =>
        unit.HandedBack is { Entry: var back }
        && unit.Standing.LastOrDefault(e => Registers.IsWork(e.Fact) && lineage.AreApart(e.Id, back.Id)) is { } work
            ? [new(ContradictionSort.Returned, [.. new[] { back, work }.OrderBy(e => e.Number)])]
            : [];
}
