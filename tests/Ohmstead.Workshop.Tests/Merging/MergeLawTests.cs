using System.Collections.Immutable;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Merging;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Merging;

/// <summary>It does not matter in which order, how often, or through whom copies of a workshop are merged.</summary>
public class MergeLawTests
{
    [Fact]
    public void The_laws_hold_over_drawn_histories() => Check(1, 200);

    [Fact]
    [Trait("kind", "long")]
    public void The_laws_hold_over_ten_thousand_drawn_histories() => Check(1_001, 10_000);

    private static void Check(uint from, uint count)
    {
        var (contradicted, forked, jumped, joined) = (0, 0, 0, 0);
        for (var seed = from; seed < from + count; seed++)
        {
            var drawn = DrawnBenches.Draw(seed);
            var (a, b, c) = (drawn[0], drawn[1], drawn[2]);
            var both = a.Merge(b);
            Same(both, b.Merge(a), seed, "in either order");
            Same(both, both.Merge(a).Merge(b).Merge(both), seed, "as often as one likes");
            Same(a, a.Merge(a), seed, "with itself");
            var all = both.Merge(c);
            Same(all, a.Merge(b.Merge(c)), seed, "through either");
            Same(all, c.Merge(a).Merge(c.Merge(b)), seed, "through a third");
            foreach (var dates in all.Documents.Where(d => d.Key.Kind == KindDates.DocumentKind).Select(d => d.Value))
                joined += dates.Versions.Any(v => v.Text == dates.Counting.Text) ? 0 : 1;
            foreach (var (id, journal) in all.Units)
            {
                NothingIsLost(journal, [.. drawn.Select(d => d.Units.GetValueOrDefault(id, []))], seed);
                OrderStays(journal, [.. drawn.Select(d => d.Units.GetValueOrDefault(id, []))], seed);
                contradicted += Contradictions.Of(UnitHistory.Fold(journal)).Length;
                forked += Lineage.IsForked(journal) ? 1 : 0;
                jumped += journal.GroupBy(e => e.Bench).Count(own => own.Zip(own.Skip(1)).Any(p => p.Second.At < p.First.At));
            }
        }
        // What is drawn must hold what the laws are about.
        Assert.True(
            contradicted > count && forked > count && jumped > count / 2 && joined > count / 20,
            FormattableString.Invariant($"{contradicted} {forked} {jumped} {joined}")
        );
    }

    private static void Same(WorkshopContent one, WorkshopContent other, uint seed, string how) =>
        Assert.True(Text(one) == Text(other), $"seed {seed}: not the same {how}");

    private static void NothingIsLost(ImmutableArray<Entry> merged, ImmutableArray<ImmutableArray<Entry>> from, uint seed)
    {
        var (here, there) = (merged.Select(e => e.Id).ToHashSet(), from.SelectMany(j => j).Select(e => e.Id).ToHashSet());
        Assert.True(here.SetEquals(there) && here.Count == merged.Length, $"seed {seed}: an entry is lost or there twice");
        Assert.Equal(Enumerable.Range(1, merged.Length), merged.Select(e => e.Number));
        Assert.IsType<TakenIn>(merged[0].Fact);
    }

    /// <summary>Whatever a bench knew when it made an entry stands before that, by its clock or against it.</summary>
    private static void OrderStays(ImmutableArray<Entry> merged, ImmutableArray<ImmutableArray<Entry>> from, uint seed)
    {
        var place = merged.ToDictionary(e => e.Id, e => e.Number);
        foreach (var journal in from)
        foreach (var own in journal.GroupBy(e => e.Bench))
            Assert.True(
                own.Select(e => place[e.Id]).SequenceEqual(own.Select(e => place[e.Id]).Order()),
                $"seed {seed}: {own.Key} was put in another order"
            );
        var lineage = new Lineage(merged);
        foreach (var journal in from.Where(j => j.Length > 0))
        {
            var known = new Lineage(journal);
            foreach (var later in journal)
            foreach (var earlier in journal.Where(e => e.Number < later.Number && known.IsAfter(later.Id, e.Id)))
                Assert.True(lineage.IsAfter(later.Id, earlier.Id), $"seed {seed}: it is forgotten what was known");
        }
    }

    private static string Text(WorkshopContent content) =>
        string.Join(
            '\n',
            content
                .Units.Select(u => JournalFile.Write(u.Key, u.Value))
                .Concat(content.Units.SelectMany(u => Contradictions.Of(UnitHistory.Fold(u.Value)).Select(c => $"{c.Sort} {c.Key}")))
                .Concat(content.Documents.Select(d => $"{d.Key} {string.Join(", ", d.Value.Versions)} {d.Value.Counting.Text}"))
                .Concat(content.Photos)
        );
}
