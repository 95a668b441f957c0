using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Units;

/// <summary>From a journal to the unit it tells of.</summary>
public static class UnitHistory
{
    /// <summary>Reads a journal from its first entry to its last.</summary>
    /// <param name="journal">All entries of one unit in order of their numbers; at least one.</param>
    public static BenchUnit Fold(IReadOnlyList<Entry> journal)
    {
        var standing = Standing(journal);
        var card = new CardChanged("", "", "", "", "", "");
        var bench = BenchState.AsSheet;
        foreach (var entry in standing)
        {
            card = entry.Fact switch
            {
                TakenIn t => card with { Tag = t.Tag, SheetId = t.SheetId, Owner = t.Owner, Complaint = t.Complaint },
                CardChanged c => c,
                _ => card,
            };
            bench = entry.Fact switch
            {
                BenchSet b => b.Bench,
                ReadingEntered r => r.Bench,
                _ => bench,
            };
        }
        if (standing.Select(e => e.Fact).OfType<CarriedOver>().LastOrDefault(c => c.SheetId == card.SheetId) is { } carried)
            standing = [.. standing.Select(e => e with { Fact = carried.Translate(e.Fact) })];
        return new BenchUnit(journal[0].UnitId, card, [.. journal], standing, bench);
    }

    /// <summary>
    /// What counts. A correction takes its entry's place, at the entry's number and time; a correction of a correction goes on
    /// from there; a correction taken back (a correction of it with nothing instead) lets the first entry stand again.
    /// </summary>
    private static ImmutableArray<Entry> Standing(IReadOnlyList<Entry> journal)
    {
        var correctionOf = new Dictionary<Guid, Entry>();
        foreach (var entry in journal)
            if (entry.Fact is Corrected c)
                correctionOf[c.EntryId] = entry;
        var standing = ImmutableArray.CreateBuilder<Entry>();
        foreach (var entry in journal)
        {
            if (entry.Fact is Corrected)
                continue;
            if (Now(entry, correctionOf) is { } fact)
                standing.Add(entry with { Fact = fact });
        }
        return standing.ToImmutable();
    }

    private static Fact? Now(Entry entry, Dictionary<Guid, Entry> correctionOf)
    {
        if (!correctionOf.TryGetValue(entry.Id, out var correction))
            return entry.Fact;
        if (correctionOf.TryGetValue(correction.Id, out var second))
            return ((Corrected)second.Fact).Instead is { } third ? third : entry.Fact;
        return ((Corrected)correction.Fact).Instead;
    }
}
