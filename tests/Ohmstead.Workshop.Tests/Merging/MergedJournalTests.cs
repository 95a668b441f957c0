using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Merging;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Merging;

public class MergedJournalTests
{
    private static readonly Guid Unit = new(1, 0, 0, new byte[8]);
    private static readonly DateTimeOffset Noon = new(2026, 1, 5, 12, 0, 0, TimeSpan.Zero);
    private static readonly ImmutableArray<Entry> Shared = With([], "a", (0, new TakenIn("F-1", "", "", "")));

    private static ImmutableArray<Entry> With(ImmutableArray<Entry> journal, string bench, params (double Minute, Fact Fact)[] facts)
    {
        foreach (var (minute, fact) in facts)
        {
            var id = new Guid(bench[0], (short)journal.Length, 0, new byte[8]);
            journal = journal.Add(Lineage.Append(journal, Unit, new NewEntry(id, Noon.AddMinutes(minute), "bench", fact), bench));
        }
        return journal;
    }

    private static ImmutableArray<Entry> Notes(ImmutableArray<Entry> journal, string bench, params (double Minute, string Words)[] notes) =>
        With(journal, bench, [.. notes.Select(n => (n.Minute, (Fact)new Noted(n.Words)))]);

    private static string Order(IEnumerable<Entry> journal) =>
        string.Join(' ', journal.Select(e => e.Fact).OfType<Noted>().Select(n => n.Words));

    [Fact]
    public void Between_benches_the_earlier_time_goes_first() =>
        Assert.Equal(
            "a1 b1 a2 b2",
            Order(MergedJournal.Of(Notes(Shared, "a", (1, "a1"), (3, "a2")), Notes(Shared, "b", (2, "b1"), (4, "b2"))))
        );

    [Fact]
    public void A_clock_that_jumps_back_does_not_reorder_what_its_bench_did()
    {
        var merged = MergedJournal.Of(Notes(Shared, "a", (50, "a1"), (3, "a2")), Notes(Shared, "b", (2, "b1"), (60, "b2")));
        Assert.Equal("b1 a1 a2 b2", Order(merged));
        var wrong = Assert.Single(WrongClock.Of(merged, Noon.AddHours(2)));
        Assert.Equal(("a2", false), (((Noted)wrong.Entry.Fact).Words, wrong.IsFuture));
        Assert.Equal(
            ["a1", "b2"],
            WrongClock.Of(merged, Noon.AddMinutes(20)).Where(w => w.IsFuture).Select(w => ((Noted)w.Entry.Fact).Words)
        );
        Assert.Empty(WrongClock.Of(Notes(Shared, "a", (1, "a1"), (9, "a2")), Noon));
        // Two machines that write into one database may differ by as much as is let pass ahead: ten minutes.
        Assert.Empty(WrongClock.Of(Notes(Shared, "a", (13, "a1"), (3, "a2")), Noon.AddHours(2)));
        Assert.Single(WrongClock.Of(Notes(Shared, "a", (14, "a1"), (3, "a2")), Noon.AddHours(2)));
    }

    [Fact]
    public void What_was_entered_after_a_merge_stands_after_all_that_was_merged()
    {
        var both = MergedJournal.Of(Notes(Shared, "a", (50, "a1")), Notes(Shared, "b", (2, "b1")));
        // The clock of b is behind that of a: its time alone would put b2 first.
        var later = Notes(both, "b", (3, "b2"));
        Assert.Equal("b1 a1 b2", Order(MergedJournal.Of(Notes(Shared, "a", (50, "a1")), later)));
        Assert.Equal("b1 a1 b2", Order(MergedJournal.Of(later, Notes(Shared, "a", (50, "a1")))));
    }

    [Fact]
    public void An_undo_takes_back_the_entry_that_it_named_wherever_that_stands_now()
    {
        var mine = Notes(Shared, "a", (10, "a1"));
        mine = With(mine, "a", (11, new Corrected(mine[1].Id, null)));
        var merged = UnitHistory.Fold(MergedJournal.Of(mine, Notes(Shared, "b", (10.5, "b1"))));
        Assert.Equal("b1", Order(merged.Standing));
    }

    [Fact]
    public void A_repair_asks_again_for_the_readings_that_were_taken_before_it_at_the_other_bench()
    {
        Fact Read(double value) => new ReadingEntered("left-full", Shown.Number(value), BenchState.AsSheet);
        var repaired = With(Shared, "a", (10, new PartChanged("roller", PartChange.Renewed, null, "")));
        double[] Current(double minute) =>
            [
                .. UnitHistory
                    .Fold(MergedJournal.Of(repaired, With(Shared, "b", (minute, Read(17.3)))))
                    .CurrentReadings.Select(r => r.Fact.Shown.Value),
            ];
        Assert.Empty(Current(9));
        Assert.Equal([17.3], Current(11));
    }

    [Fact]
    public void Two_journals_that_were_imported_into_each_other_become_one()
    {
        var (a, b) = (Notes(Shared, "a", (1, "a1"))[1], Notes(Shared, "b", (2, "b1"))[1]);
        ImmutableArray<Entry> one = [Shared[0], a, b with { Number = 3 }];
        ImmutableArray<Entry> other = [Shared[0], b, a with { Number = 3 }];
        Assert.Equal("a1 b1", Order(MergedJournal.Of(one, other)));
        Assert.Equal(JournalFile.Write(Unit, MergedJournal.Of(one, other)), JournalFile.Write(Unit, MergedJournal.Of(other, one)));
    }

    [Fact]
    public void A_journal_of_one_bench_is_written_as_ever_and_a_merged_one_is_read_back_with_what_was_made_after_what()
    {
        Assert.DoesNotContain("after", JournalFile.Write(Unit, Notes(Shared, "a", (1, "x"))), StringComparison.Ordinal);
        var merged = MergedJournal.Of(Notes(Shared, "a", (1, "a1"), (3, "a2")), Notes(Shared, "b", (2, "b1")));
        var text = JournalFile.Write(Unit, merged);
        var read = JournalFile
            .Read(text)
            .Value!.Entries.Select((e, n) => new Entry(e.Id, Unit, n + 1, e.At, e.By, e.Fact) { Bench = e.Bench!, After = e.After });
        Assert.Equal(text, JournalFile.Write(Unit, MergedJournal.Of([], [.. read])));
        Assert.Contains("\"bench\":\"b\",\"after\":[\"", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_an_entry_that_was_altered_outside_the_same_stands_at_every_bench()
    {
        var (mine, theirs) = (Notes(Shared, "a", (1, "right")), Notes(Shared, "a", (1, "altered")));
        Assert.Equal(1, MergedJournal.Altered(mine, theirs));
        Assert.Equal(0, MergedJournal.Altered(mine, mine));
        Assert.Equal(Order(MergedJournal.Of(mine, theirs)), Order(MergedJournal.Of(theirs, mine)));
    }

    [Fact]
    public void The_last_version_of_a_document_counts_and_the_others_stay()
    {
        DocumentVersion old = new(Noon, "old"),
            mine = new(Noon.AddDays(2), "mine"),
            theirs = new(Noon.AddDays(1), "theirs");
        var merged = DocumentHistory.Of([old, mine]).Merge("sheet", DocumentHistory.Of([old, theirs]));
        Assert.Equal(["old", "theirs", "mine"], merged.Versions.Select(v => v.Text));
        // A store keeps its numbers: theirs comes behind, and what counts comes last once more.
        Assert.Equal(["theirs", "mine"], merged.Missing("sheet", [old, mine]).Select(v => v.Text));
        Assert.Equal(["mine"], merged.Missing("sheet", [old, theirs]).Select(v => v.Text));
        Assert.Empty(merged.Missing("sheet", [old, mine, theirs, mine]));
    }
}
