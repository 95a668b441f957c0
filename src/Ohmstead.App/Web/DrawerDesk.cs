using System.Collections.Concurrent;
using System.Collections.Immutable;
using Ohmstead.App.Queue;
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

    /// <summary>Enters facts as one entry, all or nothing; it is on the disk when this returns.</summary>
    public Task EnterAsync(params ImmutableArray<DrawerFact> facts) => facts.IsEmpty ? Task.CompletedTask : EnterAsync(newId(), facts);

    /// <summary>Enters facts under an id that was made before: sent twice, they are kept once.</summary>
    public async Task EnterAsync(Guid id, ImmutableArray<DrawerFact> facts)
    {
        var now = time.GetUtcNow();
        var entry = new DrawerEntry(id, now, "bench", facts);
        var saved = await store.SaveDocumentAsync(
            DrawerEntry.DocumentKind,
            entry.DocumentId,
            0,
            entry.Write(),
            now,
            CancellationToken.None
        );
        if (!saved.IsSaved)
            return;
        Press.Kept();
        entries.TryAdd(id, entry);
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
