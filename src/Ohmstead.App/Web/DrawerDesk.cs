using System.Collections.Concurrent;
using System.Collections.Immutable;
using Ohmstead.App.Queue;
using Ohmstead.Storage;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Web;

/// <summary>The shop's drawer as every screen sees it: read once, grown with each entry.</summary>
public sealed class DrawerDesk(IStore store, WorkQueue work, TimeProvider time, Func<Guid> newId)
{
    private static readonly TimeSpan OrdersHold = TimeSpan.FromHours(1);

    private readonly ConcurrentDictionary<Guid, DrawerEntry> entries = new();
    private readonly Lock door = new();
    private Task? loading;
    private Folded? last;
    private Ordered? lastOrders;

    // Sent, and no answer came: sent again from where it was, it goes under its id, and is kept once.
    private readonly ConcurrentDictionary<string, DrawerEntry> unsure = new(StringComparer.Ordinal);

    /// <summary>Something was entered, in whichever window. Called from any thread.</summary>
    public event Action? Changed;

    /// <summary>The drawer as it stands, with what the journals of the units say of it; the same object while neither changed.</summary>
    public async Task<Drawer> ReadAsync()
    {
        await LoadedAsync();
        var fitted = await store.FittedAsync(CancellationToken.None);
        Task<Drawer> folded;
        lock (door)
        {
            // Entries are never written over: as many as before are the same.
            if (last is not { } kept || kept.Entries != entries.Count || !kept.Fitted.SequenceEqual(fitted))
            {
                ImmutableArray<DrawerEntry> all = [.. entries.Values];
                last = new(all.Length, fitted, work.RunAsync("The drawer", () => Drawer.Of(all, fitted)));
            }
            folded = last.Drawer;
        }
        return await folded;
    }

    /// <summary>What to order today, of the drawer as it stands; worked out once an hour while that stays the same.</summary>
    public async Task<DrawerOrders> OrdersAsync()
    {
        var (drawer, now) = (await ReadAsync(), time.GetUtcNow());
        Task<DrawerOrders> worked;
        lock (door)
        {
            if (lastOrders is not { } kept || !ReferenceEquals(kept.Drawer, drawer) || now - kept.At > OrdersHold)
                lastOrders = new(drawer, now, work.RunAsync("What to order", () => DrawerOrders.Of(drawer, now)));
            worked = lastOrders.Orders;
        }
        return await worked;
    }

    /// <summary>
    /// Enters facts as one entry, all or nothing; it is on the disk when this returns. What was sent before and nobody knows what became of
    /// it goes under the id it had.
    /// </summary>
    public async Task EnterAsync(params ImmutableArray<DrawerFact> facts)
    {
        if (facts.IsEmpty)
            return;
        var from = Asker.NowMark;
        var entry = unsure.TryGetValue(from, out var sent) && Said(sent.Facts) == Said(facts) ? sent : Of(newId(), facts);
        try
        {
            await EnterAsync(entry);
            unsure.TryRemove(from, out _);
        }
        catch (StoreUnusable cut) when (cut.IsUnsure)
        {
            unsure[from] = entry;
            throw;
        }
    }

    /// <summary>Enters facts under an id that was made before: sent twice, they are kept once.</summary>
    public Task EnterAsync(Guid id, ImmutableArray<DrawerFact> facts) => EnterAsync(Of(id, facts));

    /// <summary>True where the drawer as last read has the entry that may not have been saved.</summary>
    /// <param name="from">The mark of the device that sent it; empty for this machine.</param>
    public bool IsSavedAllTheSame(string from) => unsure.TryGetValue(from, out var sent) && entries.ContainsKey(sent.Id);

    /// <summary>The person was told: the same again is another entry.</summary>
    /// <param name="from">The mark of the device that sent it; empty for this machine.</param>
    public void ToldSaved(string from) => unsure.TryRemove(from, out _);

    /// <summary>Made at the device that asks, or at this machine.</summary>
    private DrawerEntry Of(Guid id, ImmutableArray<DrawerFact> facts) =>
        new(id, time.GetUtcNow(), Asker.Now?.Name ?? Asker.Here, facts) { Bench = Asker.Now?.Mark };

    private static string Said(ImmutableArray<DrawerFact> facts) =>
        new DrawerEntry(Guid.Empty, DateTimeOffset.UnixEpoch, "bench", facts).Write();

    private async Task EnterAsync(DrawerEntry entry)
    {
        var saved = await store.SaveDocumentAsync(
            DrawerEntry.DocumentKind,
            entry.DocumentId,
            0,
            entry.Write(),
            entry.At,
            CancellationToken.None
        );
        Press.Kept();
        if (!saved.IsSaved)
        {
            // It is there from before, as it was written then.
            ReadAgain();
            return;
        }
        entries.TryAdd(entry.Id, entry);
        Changed?.Invoke();
    }

    /// <summary>Another program or bench entered something: it is read with the next look.</summary>
    public void ReadAgain()
    {
        lock (door)
            loading = null;
        Changed?.Invoke();
    }

    private Task LoadedAsync()
    {
        lock (door)
            return loading is null or { IsFaulted: true } or { IsCanceled: true } ? loading = LoadAsync() : loading;
    }

    /// <summary>What is entered meanwhile is there by itself.</summary>
    private async Task LoadAsync()
    {
        foreach (var document in await store.DocumentsAsync(DrawerEntry.DocumentKind, CancellationToken.None))
            if (DrawerEntry.Read(document.Id, document.Text) is { } entry)
                entries.TryAdd(entry.Id, entry);
    }

    private sealed record Folded(int Entries, IReadOnlyList<FittedPart> Fitted, Task<Drawer> Drawer);

    private sealed record Ordered(Drawer Drawer, DateTimeOffset At, Task<DrawerOrders> Orders);
}
