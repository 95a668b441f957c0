using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Merging;

namespace Ohmstead.Workshop.Tests.Merging;

/// <summary>Years and details that three benches changed apart become the same, in whichever order, how often and through whom they are merged.</summary>
public class JoinedDocumentTests
{
    private const string Kind = KindDates.DocumentKind;

    private static readonly DateTimeOffset Noon = new(2026, 3, 4, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public void The_laws_hold_over_drawn_years_and_details()
    {
        var (asked, apart, looks) = (0, 0, 0);
        for (var seed = 1u; seed <= 120; seed++)
        {
            var benches = Draw(seed);
            var (a, b, c) = (benches[0], benches[1], benches[2]);
            var both = a.Merge(Kind, b);
            Same(both, b.Merge(Kind, a), seed, "in either order");
            Same(both, both.Merge(Kind, a).Merge(Kind, b).Merge(Kind, both), seed, "as often as one likes");
            Same(a, a.Merge(Kind, a), seed, "with itself");
            var all = both.Merge(Kind, c);
            Same(all, a.Merge(Kind, b.Merge(Kind, c)), seed, "through either");
            Same(all, c.Merge(Kind, a).Merge(Kind, c.Merge(Kind, b)), seed, "through a third");
            var dates = Read(all);
            Assert.Equal(KindDates.Write(dates), KindDates.Write(KindDates.Read(KindDates.Write(dates))!));
            NothingIsLost(dates, benches, seed);
            AllIsAnswered(dates, benches, seed);
            (asked, looks) = (asked + DatesQuestion.Of(dates).Length, looks + dates.Details.Sum(d => d.Variants.Length));
            apart += benches.Select(x => x.Counting.Text).Distinct().Count() == 3 ? 1 : 0;
        }
        // What is drawn must hold what the laws are about.
        Assert.True(asked > 60 && apart > 60 && looks > 240, FormattableString.Invariant($"{asked} {apart} {looks}"));
    }

    private static KindDates Read(DocumentHistory history) => KindDates.Read(history.Counting.Text)!;

    private static void Same(DocumentHistory one, DocumentHistory other, uint seed, string how) =>
        Assert.True(
            one.Versions.SequenceEqual(other.Versions) && one.Counting.Text == other.Counting.Text,
            $"seed {seed}: not the same {how}"
        );

    /// <summary>A look that every bench has is there; so is one that nobody took away.</summary>
    private static void NothingIsLost(KindDates merged, DocumentHistory[] benches, uint seed)
    {
        var there = Looks(merged).ToHashSet(StringComparer.Ordinal);
        var everywhere = benches.Select(b => Looks(Read(b))).Aggregate((one, other) => one.Intersect(other));
        Assert.True(there.IsSupersetOf(everywhere), $"seed {seed}: a look that all have is lost");
        var removed = benches.SelectMany(b => (Read(b).Said ?? []).Where(s => s.Now.Any(n => n.IsGone)).Select(s => s.Key)).ToHashSet();
        var kept = benches
            .SelectMany(b => Looks(Read(b)))
            .Where(l => !removed.Contains(l) && !removed.Contains($"detail:{l.Split(':')[1]}"));
        Assert.True(there.IsSupersetOf(kept), $"seed {seed}: a look that nobody took away is lost");
    }

    private static IEnumerable<string> Looks(KindDates dates) =>
        dates.Details.SelectMany(d => d.Variants.Select(v => $"look:{d.Id}:{Uri.EscapeDataString(v.Id)}"));

    /// <summary>Once all is answered, merging with those who did not hear of it asks nothing and changes nothing.</summary>
    private static void AllIsAnswered(KindDates dates, DocumentHistory[] benches, uint seed)
    {
        for (var n = 0; DatesQuestion.Of(dates) is [var first, ..]; n++)
        {
            Assert.True(n < 100, $"seed {seed}: the questions do not end");
            dates = dates.ChangedTo(first.Answer(dates, first.Answers[n % first.Answers.Length]));
        }
        foreach (var bench in benches)
            Assert.True(
                KindDates.Write(dates.Join(Read(bench))) == KindDates.Write(dates.Join(dates)),
                $"seed {seed}: asked or changed again"
            );
    }

    /// <summary>Three copies of one text, changed apart and now and then merged.</summary>
    private static DocumentHistory[] Draw(uint seed)
    {
        var state = seed * 2654435761u + 1;
        int Next(int below)
        {
            state ^= state << 13;
            state ^= state >> 17;
            state ^= state << 5;
            return (int)(state % (uint)below);
        }
        var first = KindDates.None;
        for (var n = 0; n < 12; n++)
            first = DrawnDates.Change(first, Next);
        var minute = 0;
        DocumentHistory[] benches = [.. Enumerable.Repeat(DocumentHistory.Of([new(Noon, KindDates.Write(first))]), 3)];
        for (var n = 6 + Next(14); n > 0; n--)
        {
            var bench = Next(3);
            // Clocks are wrong now and then: what a bench saved last counts there all the same.
            var at = Noon.AddMinutes(++minute + (Next(5) == 0 ? -40 : 0));
            benches[bench] =
                Next(7) == 0
                    ? benches[bench].Merge(Kind, benches[Next(3)])
                    : DocumentHistory.Kept(
                        Kind,
                        [.. benches[bench].Versions, new(at, KindDates.Write(DrawnDates.Change(Read(benches[bench]), Next)))]
                    );
        }
        return benches;
    }
}
