using Microsoft.EntityFrameworkCore;
using Ohmstead.Storage.Databases;
using Ohmstead.Storage.PhotoFiles;
using Ohmstead.Storage.Rows;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Storage;

/// <summary>
/// The workshop: in a folder, which one program at a time has open, with its photos beside the database; or in a database that several
/// programs share, photos in it.
/// </summary>
public sealed partial class Store : IStore, IAsyncDisposable
{
    private readonly FolderLock? folderLock;
    private readonly PostgresNotices? notices;
    private readonly Transactions transactions;
    private readonly PhotoFolder photos;
    private readonly SheetShelf sheets = new();

    // What is worked on at a time, with some to spare. A journal only grows: a unit and the number of its last entry say everything.
    private readonly BoundedCache<Guid, BenchUnit> kept = new("Units as last read", limit: 16);

    private Store(string folder, FolderLock? folderLock, Transactions transactions, PostgresNotices? notices, string bench)
    {
        (this.folderLock, this.transactions, this.notices) = (folderLock, transactions, notices);
        (Folder, Bench) = (folder, bench);
        photos = new PhotoFolder(folder, transactions);
    }

    /// <inheritdoc/>
    public event Action<StoreNews>? News
    {
        add => notices?.Add(value);
        remove => notices?.Remove(value);
    }

    /// <summary>The data folder.</summary>
    public string Folder { get; }

    /// <inheritdoc/>
    public string Bench { get; }

    /// <summary>Where reading and writing pass.</summary>
    internal Transactions Transactions => transactions;

    /// <summary>The photos as files.</summary>
    internal PhotoFolder PhotoFolder => photos;

    /// <summary>The photos of this workshop.</summary>
    public IPhotos Photos => photos;

    /// <inheritdoc/>
    public async Task<Appended> AppendAsync(Guid unitId, int seenNumber, IReadOnlyList<NewEntry> entries, CancellationToken cancel)
    {
        var (unit, written) = await transactions.WriteAsync(context => AppendAsync(context, unitId, entries, cancel), cancel);
        // Only now it is on the disk.
        kept.Keep(unitId, unit);
        var own = written.Select(e => e.Id).ToHashSet();
        return new Appended(written, [.. unit.Journal.Where(e => e.Number > seenNumber && !own.Contains(e.Id))]);
    }

    /// <inheritdoc/>
    public Task AppendAllAsync(IReadOnlyList<UnitEntries> units, CancellationToken cancel) =>
        transactions.WriteAsync(
            async context =>
            {
                foreach (var unit in units)
                {
                    await AppendAsync(context, unit.UnitId, unit.Entries, cancel);
                    await context.SaveChangesAsync(cancel);
                    context.ChangeTracker.Clear();
                }
                return units.Count;
            },
            cancel
        );

    /// <inheritdoc/>
    public Task<BenchUnit?> ReadAsync(Guid unitId, CancellationToken cancel) =>
        transactions.ReadAsync(
            async context =>
            {
                var row = await context
                    .Units.Where(u => u.Id == unitId)
                    .Select(u => new { u.LastNumber, u.Doubts })
                    .SingleOrDefaultAsync(cancel);
                if (row is null)
                    return null;
                var unit = KeptAs(unitId, row.LastNumber);
                if (unit is null)
                    kept.Keep(unitId, unit = UnitHistory.Fold(await JournalAsync(context, unitId, cancel)));
                return unit with { Doubts = DoubtsText.Read(row.Doubts) };
            },
            cancel
        );

    /// <summary>The unit as it is after this entry; null where it is not kept so.</summary>
    private BenchUnit? KeptAs(Guid unitId, int lastNumber) => kept.Find(unitId, u => u.LastNumber == lastNumber);

    /// <inheritdoc/>
    public Task SaveFoundAsync(Guid unitId, int seenNumber, NextThing next, UnitDoubts doubts, CancellationToken cancel) =>
        transactions.WriteAsync(
            async context =>
            {
                if (await context.Units.FindAsync([unitId], cancel) is not { } unit)
                    return false;
                unit.Doubts = DoubtsText.Write(doubts);
                if (unit.LastNumber <= seenNumber)
                    unit.Take(next);
                return true;
            },
            cancel
        );

    /// <summary>Closes the database and lets go of the folder.</summary>
    public async ValueTask DisposeAsync()
    {
        if (notices is not null)
            await notices.DisposeAsync();
        photos.Dispose();
        await transactions.DisposeAsync();
        folderLock?.Dispose();
    }

    /// <summary>Numbers what is new, and puts it and the unit's card into the transaction.</summary>
    /// <returns>The unit with it, and of its journal the entries asked for.</returns>
    private async Task<(BenchUnit Unit, IReadOnlyList<Entry> Written)> AppendAsync(
        WorkshopContext context,
        Guid unitId,
        IReadOnlyList<NewEntry> entries,
        CancellationToken cancel
    )
    {
        var row = await context.Units.FindAsync([unitId], cancel);
        var before = row is null ? null : KeptAs(unitId, row.LastNumber);
        List<Entry> journal =
            row is null ? []
            : before is null ? await JournalAsync(context, unitId, cancel)
            : [.. before.Journal];
        var known = journal.ToDictionary(e => e.Id);
        var fresh = new List<EntryRow>();
        foreach (var entry in entries)
        {
            if (known.ContainsKey(entry.Id))
                continue;
            var line = EntryRow.Of(Lineage.Append(journal, unitId, entry, Bench));
            // As it will be read from the disk.
            known.Add(entry.Id, line.Entry);
            journal.Add(known[entry.Id]);
            fresh.Add(line);
        }
        var unit = fresh.Count == 0 && before is not null ? before : UnitHistory.Fold(journal);
        if (fresh.Count > 0)
            await AddAsync(context, row, unit, fresh, cancel);
        return (unit, [.. entries.Select(e => known[e.Id]).DistinctBy(e => e.Id)]);
    }

    private async Task AddAsync(WorkshopContext context, UnitRow? row, BenchUnit unit, List<EntryRow> fresh, CancellationToken cancel)
    {
        if (row is null && unit.Journal[0].Fact is not TakenIn)
            throw new JournalRefused($"There is no unit {unit.Id}: a journal begins with taking it in.");
        var ids = fresh.Select(e => e.Id).ToList();
        foreach (var part in ids.Chunk(500))
            if (await context.Entries.AnyAsync(e => part.Contains(e.Id), cancel))
                throw new JournalRefused($"An entry of another unit was sent for unit {unit.Id} too.");
        if (row is null)
            context.Units.Add(row = new UnitRow { Id = unit.Id });
        await TakeAsync(context, row, unit, fresh, cancel);
        context.Entries.AddRange(fresh);
    }

    private static async Task<List<Entry>> JournalAsync(WorkshopContext context, Guid unitId, CancellationToken cancel)
    {
        var rows = await context.Entries.AsNoTracking().Where(e => e.UnitId == unitId).OrderBy(e => e.Number).ToListAsync(cancel);
        return rows.ConvertAll(r => r.Entry);
    }
}
