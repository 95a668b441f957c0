using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Units;

/// <summary>A unit as its journal tells it: every entry, and what counts of them now.</summary>
/// <param name="Journal">Every entry, first to last, corrected ones too.</param>
/// <param name="Standing">What counts: corrected entries replaced or left out, in journal order.</param>
/// <param name="Bench">How the bench stood last.</param>
public sealed record BenchUnit(Guid Id, CardChanged Card, ImmutableArray<Entry> Journal, ImmutableArray<Entry> Standing, BenchState Bench)
{
    /// <summary>What the last finished diagnosis of it doubts; the store keeps it beside the journal.</summary>
    public UnitDoubts Doubts { get; init; } = UnitDoubts.None;

    /// <summary>The version of its type sheet that it keeps; 0 for the newest.</summary>
    public int SheetVersion => All<SheetKept>().LastOrDefault(k => k.Fact.SheetId == Card.SheetId).Fact?.Version ?? 0;

    /// <summary>Number of the last entry: what an entry made on this view has seen.</summary>
    public int LastNumber => Journal.Length == 0 ? 0 : Journal[^1].Number;

    /// <summary>The last entry.</summary>
    public Entry Last => Journal[^1];

    /// <summary>The standing facts of one kind, with their entries.</summary>
    public IEnumerable<(Entry Entry, T Fact)> All<T>()
        where T : Fact => Standing.Where(e => e.Fact is T).Select(e => (e, (T)e.Fact));

    /// <summary>True for one that was invented to practice on: no paper, no price, no statistic and no chance of the shop's knows it.</summary>
    public bool IsPractice => All<PracticeBegun>().Any();

    /// <summary>Photos of one thing on it, each once, in journal order.</summary>
    /// <param name="about">A step, a terminal, a part, a detail.</param>
    public ImmutableArray<string> PhotosOf(string about) =>
        [.. All<PhotoAdded>().Where(p => p.Fact.About == about).Select(p => p.Fact.Photo).Distinct(StringComparer.Ordinal)];

    /// <summary>How it went back to its owner; null while it is on the bench.</summary>
    public HandBack? HandedBack => HandBack.Of(this);

    /// <summary>The stages that were said to be done and not opened again since.</summary>
    public ImmutableHashSet<Stage> ClosedStages =>
        [.. All<StageClosed>().GroupBy(s => s.Fact.Stage).Where(g => g.Last().Fact.IsClosed).Select(g => g.Key)];

    /// <summary>Faults seen to be so, each by its last judgement, with the entries that say it.</summary>
    public IEnumerable<(Entry Entry, FindingJudged Fact)> Confirmed =>
        All<FindingJudged>()
            .GroupBy(f => (f.Fact.Element, f.Fact.Mode))
            .Select(g => g.Last())
            .Where(f => f.Fact.Judgement == Judgement.Confirmed);

    /// <summary>Confirmed faults whose part was not changed since.</summary>
    public IEnumerable<FindingJudged> Unrepaired =>
        Confirmed
            .Where(f => !All<PartChanged>().Any(p => p.Fact.Element == f.Fact.Element && p.Entry.Number > f.Entry.Number))
            .Select(f => f.Fact);

    /// <summary>Number of the last entry that changed the circuit.</summary>
    public int LastChange => All<PartChanged>().Select(p => p.Entry.Number).DefaultIfEmpty(0).Last();

    /// <summary>True when no change after this entry can have moved the reading that it is of: it speaks of the unit as it is now.</summary>
    public bool IsOfNow(Entry entry, string readingId) =>
        !All<PartChanged>().Any(p => p.Entry.Number > entry.Number && !p.Fact.Keeps.Contains(readingId));

    /// <summary>Readings that speak of the unit as it is now, in journal order; one taken twice is there twice.</summary>
    public IEnumerable<(Entry Entry, ReadingEntered Fact)> CurrentReadings =>
        All<ReadingEntered>().Where(r => IsOfNow(r.Entry, r.Fact.ReadingId));

    /// <summary>
    /// The waivers that hold: those that no change of the circuit has come after which could have moved the check. What was done
    /// instead of it was done on the circuit as it was, so such a change asks for it again.
    /// </summary>
    public IEnumerable<(Entry Entry, ReadingWaived Fact)> CurrentWaivers =>
        All<ReadingWaived>().Where(w => IsOfNow(w.Entry, w.Fact.ReadingId));

    /// <summary>The last answer to each observation.</summary>
    public ImmutableDictionary<string, Answer> Signs =>
        All<SignAnswered>().GroupBy(s => s.Fact.ObservationId).ToImmutableDictionary(g => g.Key, g => g.Last().Fact.Answer);
}
