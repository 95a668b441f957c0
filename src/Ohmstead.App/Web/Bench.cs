using System.Collections.Concurrent;
using Ohmstead.App.Queue;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Storage;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Untyped;

namespace Ohmstead.App.Web;

/// <summary>The workshop as every screen sees it: the store, with clock and new ids put in, and word of what other windows entered.</summary>
public sealed partial class Bench
{
    /// <summary>Document kind of type sheets.</summary>
    public const string SheetKind = "sheet";

    /// <summary>Units without a type that are worked on at a time.</summary>
    private const int MostUntyped = 64;

    private readonly UnsureEntries unsure = new();
    private readonly BoundedCache<Guid, (UntypedBasis Basis, TypeSheet Sheet)> untyped = new("Units without a type", MostUntyped);

    // No caches: one word a unit, by which locks go even where the store could not keep it.
    private readonly ConcurrentDictionary<Guid, (UnitDoubts Found, bool IsSaved)> doubts = new();
    private readonly ConcurrentDictionary<Guid, string> troubles = new();
    private readonly Func<Guid> newId;

    /// <param name="store">Where the workshop is kept.</param>
    /// <param name="photos">Where its photos are.</param>
    /// <param name="time">The clock.</param>
    /// <param name="newId">Makes ids; they rise with time.</param>
    public Bench(IStore store, IPhotos photos, TimeProvider time, Func<Guid> newId)
    {
        (Itself, Store, Photos, Time, this.newId) = (store, new AskedStore(store), new AskedPhotos(photos), time, newId);
        Drawer = new(Store, Work, time, newId);
        store.News += Hear;
    }

    /// <summary>
    /// A unit's journal grew, in whichever window or program; no id where any may have. Called from any thread; a screen comes back to
    /// its own by InvokeAsync.
    /// </summary>
    public event Action<Guid>? UnitChanged;

    /// <summary>A unit's journal grew by what was entered or merged at this program. Called from any thread, after the other.</summary>
    public event Action<Guid>? UnitEntered;

    /// <summary>What is doubted of a unit changed. Called from any thread.</summary>
    public event Action<Guid>? DoubtsChanged;

    /// <summary>The shop's settings changed. Called from any thread.</summary>
    public event Action? ShopChanged;

    /// <summary>The store went away, or came back. Called from any thread.</summary>
    public event Action? OutageChanged;

    /// <summary>Why nothing can be read or saved just now, and what to do; empty while the store answers.</summary>
    public string Outage { get; private set; } = "";

    /// <summary>Lists, search and documents are asked here directly. What whoever asks may not write is refused here.</summary>
    public IStore Store { get; }

    /// <summary>The store itself, for what is done at this machine alone; and who has which unit open.</summary>
    internal IStore Itself { get; }
    internal Presence Present { get; } = new();

    /// <summary>All that is worked out behind the screens.</summary>
    public WorkQueue Work { get; } = new();

    /// <summary>The shop's drawer of parts.</summary>
    public DrawerDesk Drawer { get; }

    /// <summary>The units that windows of this program show.</summary>
    public LookedAt LookedAt { get; } = new();

    /// <summary>What is asked for just now, for second screens.</summary>
    public AskedReadings Asked { get; } = new();

    /// <summary>The photos, and the recordings beside them.</summary>
    public IPhotos Photos { get; }

    /// <summary>The clock.</summary>
    public TimeProvider Time { get; }

    /// <summary>A new id, made before an entry is sent, so that sending it twice keeps it once.</summary>
    public Guid NewId() => newId();

    /// <summary>
    /// The type sheet of a unit; where its type is not known, the one that its plate, its posts and what came off it make: the
    /// same object as long as they stay the same. Null when its type has problems.
    /// </summary>
    public async Task<TypeSheet?> SheetOfAsync(BenchUnit unit)
    {
        if (unit.Card.SheetId.Length > 0)
            return await Store.SheetAsync(unit.Card.SheetId, unit.SheetVersion, CancellationToken.None);
        var basis = UntypedBasis.Of(unit);
        if (untyped.Find(unit.Id, kept => kept.Basis == basis) is { Sheet: { } kept })
            return kept;
        var sheet = UntypedSheet.Of(basis);
        untyped.Keep(unit.Id, (basis, sheet));
        return sheet;
    }

    /// <summary>The unit with what is doubted of it, or null when there is none with this id.</summary>
    public async Task<BenchUnit?> ReadAsync(Guid unitId)
    {
        if (await Store.ReadAsync(unitId, CancellationToken.None) is not { } unit)
            return null;
        return unit with
        {
            Doubts = doubts.GetOrAdd(unitId, (unit.Doubts, true)).Found with { Trouble = troubles.GetValueOrDefault(unitId, "") },
        };
    }

    /// <summary>
    /// What a finished diagnosis doubts of a unit: from now on every lock and paper goes by it, also where the store could not keep it.
    /// </summary>
    /// <param name="unit">As it was read for the diagnosis, with what was doubted before.</param>
    /// <param name="isSaved">False where the store could not keep it: then it counts here until the next search.</param>
    public void Doubt(BenchUnit unit, UnitDoubts found, bool isSaved = true)
    {
        doubts[unit.Id] = (found, isSaved);
        if (!unit.Doubts.IsEmpty || !found.IsEmpty)
            DoubtsChanged?.Invoke(unit.Id);
    }

    /// <summary>Why the last search on a unit gave no answer, and what to do; empty where it did.</summary>
    public void DoubtTrouble(Guid unitId, string trouble)
    {
        var before = troubles.GetValueOrDefault(unitId, "");
        troubles[unitId] = trouble;
        if (trouble != before)
            DoubtsChanged?.Invoke(unitId);
    }

    /// <summary>
    /// Enters facts; they are on the disk when this returns. What was sent before and nobody knows what became of it goes under the ids it
    /// had: it is kept once.
    /// </summary>
    /// <param name="seenNumber">Number of the last entry that the screen shows.</param>
    public async Task<Appended> EnterAsync(Guid unitId, int seenNumber, string by, params Fact[] facts)
    {
        var (at, sender) = (Time.GetUtcNow(), new Sender(by, Asker.NowMark));
        var entries = unsure.Again(unitId, sender, facts) ?? [.. facts.Select(f => new NewEntry(NewId(), at, by, f))];
        try
        {
            var appended = await EnterAsync(unitId, seenNumber, entries);
            unsure.Drop(unitId, sender);
            return appended;
        }
        catch (StoreUnusable cut) when (cut.IsUnsure)
        {
            unsure.Keep(unitId, sender, entries);
            throw;
        }
    }

    /// <summary>The entries that the unit has though nobody knew whether they were saved; none in most.</summary>
    /// <param name="from">The mark of the device that sent them; empty for this machine.</param>
    public IReadOnlyList<Guid> SavedAllTheSame(BenchUnit unit, string by, string from = "") => unsure.In(unit, new(by, from));

    /// <summary>The person was told: the same facts again are another entry.</summary>
    /// <param name="from">The mark of the device that sent them; empty for this machine.</param>
    public void ToldSaved(Guid unitId, string by, string from = "") => unsure.Drop(unitId, new(by, from));

    /// <summary>Enters entries whose ids are already made.</summary>
    public async Task<Appended> EnterAsync(Guid unitId, int seenNumber, IReadOnlyList<NewEntry> entries)
    {
        var appended = await Store.AppendAsync(unitId, seenNumber, entries, CancellationToken.None);
        Press.Kept();
        UnitChanged?.Invoke(unitId);
        UnitEntered?.Invoke(unitId);
        return appended;
    }

    /// <summary>Entries of another bench came to units, past this class: every window reads them again, and the drawer.</summary>
    public void TellMerged(IReadOnlyList<Guid> units)
    {
        Drawer.ReadAgain();
        foreach (var unit in units)
        {
            UnitChanged?.Invoke(unit);
            UnitEntered?.Invoke(unit);
        }
    }

    /// <summary>What other programs wrote is told as if another window had; a store that came back may hold anything new.</summary>
    private void Hear(StoreNews news)
    {
        switch (news.About)
        {
            case NewsOf.Entries:
                UnitChanged?.Invoke(news.UnitId);
                break;
            case NewsOf.Found:
                doubts.TryRemove(news.UnitId, out _);
                DoubtsChanged?.Invoke(news.UnitId);
                break;
            case NewsOf.Document when news.Kind == Shop.DocumentKind:
                ShopChanged?.Invoke();
                break;
            case NewsOf.Document when news.Kind == DrawerEntry.DocumentKind:
                Drawer.ReadAgain();
                break;
            case NewsOf.Away:
                Outage = news.Words;
                OutageChanged?.Invoke();
                break;
            case NewsOf.Back:
                Outage = "";
                // What other benches doubt since nobody told. What could not be saved here still counts.
                foreach (var (unit, known) in doubts)
                    if (known.IsSaved || known.Found.IsEmpty)
                        doubts.TryRemove(unit, out _);
                OutageChanged?.Invoke();
                Drawer.ReadAgain();
                ShopChanged?.Invoke();
                DoubtsChanged?.Invoke(Guid.Empty);
                UnitChanged?.Invoke(Guid.Empty);
                break;
        }
    }

    /// <summary>What is kept in memory here and beside the disk.</summary>
    public IReadOnlyList<CacheCount> Caches => [.. Store.Caches, untyped.Counted];
}
