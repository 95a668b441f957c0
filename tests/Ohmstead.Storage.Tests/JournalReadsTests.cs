using System.Collections.Concurrent;
using System.Diagnostics;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Storage.Tests;

/// <summary>How often a journal is read from the disk.</summary>
public sealed class JournalReadsTests : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly Draft draft = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task A_journal_is_read_once_however_many_look_and_enter()
    {
        var unit = draft.Id();
        await using (var store = await Store.OpenAsync(folder.Path, TimeProvider.System, Stop))
            await store.AppendAsync(unit, 0, [draft.TakenIn(), draft.Note("first")], Stop);
        // Before the store is open: for a second EF remembers that nobody listened.
        using var reads = new JournalReads(folder.Path);
        await using var again = await Store.OpenAsync(folder.Path, TimeProvider.System, Stop);
        for (var n = 0; n < 3; n++)
        {
            await again.AppendAsync(unit, 2 + n, [draft.Reading("left-full", n)], Stop);
            // The screen that entered it, another window, and what works behind them.
            for (var look = 0; look < 3; look++)
                Assert.Equal(3 + n, (await again.ReadAsync(unit, Stop))!.LastNumber);
        }
        Assert.Equal(1, reads.Count);
    }

    [Fact]
    public async Task What_was_refused_is_not_kept_and_what_comes_in_otherwise_is_seen()
    {
        await using var store = await Store.OpenAsync(folder.Path, TimeProvider.System, Stop);
        var (unit, other) = (draft.Id(), draft.Id());
        var note = draft.Note("of the other");
        await store.AppendAsync(unit, 0, [draft.TakenIn()], Stop);
        await store.AppendAsync(other, 0, [draft.TakenIn(), note], Stop);
        await Assert.ThrowsAsync<JournalRefused>(() => store.AppendAsync(unit, 1, [note], Stop));
        Assert.Equal(1, (await store.ReadAsync(unit, Stop))!.LastNumber);
        await store.AppendAllAsync([new(unit, [draft.Note("from a zip")])], Stop);
        var told = (await store.ReadAsync(unit, Stop))!;
        Assert.Equal("from a zip", ((Noted)told.Last.Fact).Words);
        Assert.Equal([3], (await store.AppendAsync(unit, 2, [draft.Note("and on")], Stop)).Written.Select(e => e.Number));
    }

    [Fact]
    public async Task A_kept_unit_is_the_one_that_is_on_the_disk()
    {
        var unit = draft.Id();
        var store = await Store.OpenAsync(folder.Path, TimeProvider.System, Stop);
        await store.AppendAsync(unit, 0, [draft.TakenIn(), .. EveryKind.Facts(draft).Skip(1).Select(f => draft.Entry(f))], Stop);
        var kept = (await store.ReadAsync(unit, Stop))!;
        await store.DisposeAsync();
        await using var again = await Store.OpenAsync(folder.Path, TimeProvider.System, Stop);
        var read = (await again.ReadAsync(unit, Stop))!;
        Assert.Equal(read.Card, kept.Card);
        Assert.Equal(read.Bench, kept.Bench);
        Assert.Equal(
            read.Standing.Select(e => (e.Id, e.Number, e.At, e.At.Offset, e.By, FactText.Write(e.Fact))),
            kept.Standing.Select(e => (e.Id, e.Number, e.At, e.At.Offset, e.By, FactText.Write(e.Fact)))
        );
    }

    [Fact]
    public async Task No_more_units_are_kept_than_lie_on_a_bench()
    {
        await using var store = await Store.OpenAsync(folder.Path, TimeProvider.System, Stop);
        for (var n = 0; n < 18; n++)
            await store.AppendAsync(draft.Id(), 0, [draft.TakenIn()], Stop);
        Assert.Equal((16, 16), store.Caches.Where(c => c.Name == "Units as last read").Select(c => (c.Limit, c.Count)).Single());
    }

    /// <summary>Counts the questions for entries that one database is asked.</summary>
    private sealed class JournalReads : IObserver<DiagnosticListener>, IObserver<KeyValuePair<string, object?>>, IDisposable
    {
        private readonly string folder;
        private readonly ConcurrentBag<IDisposable> ends = [];
        private int count;

        public JournalReads(string folder)
        {
            this.folder = folder;
            ends.Add(DiagnosticListener.AllListeners.Subscribe(this));
        }

        public int Count => count;

        public void OnNext(DiagnosticListener value)
        {
            if (value.Name == DbLoggerCategory.Name)
                ends.Add(value.Subscribe(this));
        }

        public void OnNext(KeyValuePair<string, object?> value)
        {
            if (
                value.Value is CommandExecutedEventData done
                && value.Key == RelationalEventId.CommandExecuted.Name
                && done.Command.Connection!.DataSource.StartsWith(folder, StringComparison.Ordinal)
                && done.Command.CommandText.Contains("\"Json\"", StringComparison.Ordinal)
                && done.Command.CommandText.StartsWith("SELECT", StringComparison.Ordinal)
            )
                Interlocked.Increment(ref count);
        }

        public void OnCompleted() { }

        public void OnError(Exception error) { }

        public void Dispose()
        {
            foreach (var end in ends)
                end.Dispose();
        }
    }
}
