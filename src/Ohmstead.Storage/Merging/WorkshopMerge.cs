using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Storage.Zips;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Merging;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Storage.Merging;

/// <summary>
/// Another copy of a workshop comes into this one: documents, then unit by unit its photos and its journal, each unit in one
/// transaction. Stopped or killed it leaves every unit whole, and merging again goes on, for what came in already changes nothing.
/// </summary>
public sealed class WorkshopMerge(IStore store, IPhotos photos, TimeProvider time)
{
    /// <summary>Documents go in by so many, each lot in one transaction.</summary>
    private const int Lot = 200;

    private readonly ZipLimits limits = new();
    private readonly List<Guid> changed = [];
    private readonly Dictionary<string, (Guid UnitId, WrongClock Clock)> clocks = new(StringComparer.Ordinal);
    private readonly List<string> types = [];
    private MergeOutcome outcome = new();

    /// <summary>Merges.</summary>
    /// <param name="from">A data folder, one backup, or a zip.</param>
    /// <param name="backup">Makes a backup and says where it is; called once the other workshop was looked at, before anything is kept.</param>
    /// <param name="progress">Told after each unit.</param>
    /// <param name="cancel">Stops it after the unit that is being merged.</param>
    public async Task<MergeOutcome> RunAsync(
        string from,
        Func<CancellationToken, Task<string>> backup,
        IProgress<MergeProgress> progress,
        CancellationToken cancel
    )
    {
        var problems = new List<Problem>();
        await using var source = await MergeSource.OpenAsync(from, time, limits, problems, cancel);
        if (source is null || problems.Count > 0)
            return new MergeOutcome { Problems = problems };
        outcome = new() { Bench = source.Bench, Progress = new(0, source.Units.Count) };
        outcome = outcome with { Backup = await backup(cancel) };
        try
        {
            await DocumentsAsync(source, cancel);
            foreach (var unit in source.Units)
            {
                cancel.ThrowIfCancellationRequested();
                await UnitAsync(source, unit, cancel);
                outcome = outcome with { Progress = outcome.Progress with { Done = outcome.Progress.Done + 1 } };
                progress.Report(outcome.Progress);
            }
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            outcome = outcome with { IsStopped = true };
        }
        catch (JournalRefused refused)
        {
            outcome = outcome with { Problems = [new Problem(from, "cannot be merged", refused.Message)] };
        }
        return outcome with { Changed = changed, WrongClocks = [.. clocks.Values], TypesToLookAt = types };
    }

    private async Task DocumentsAsync(MergeSource source, CancellationToken cancel)
    {
        var mine = (await store.ReadDocumentAsync(Shop.DocumentKind, Shop.DocumentId, cancel))?.Text;
        var all = source.Documents.Select(d => Beside(d, source.Bench)).OfType<Document>().ToList();
        // Settings that are the same here are no choice.
        all.RemoveAll(d => d.Kind == BenchNames.OtherShopKind && d.Text == mine);
        foreach (var lot in all.GroupBy(d => (d.Kind, d.Id)).Chunk(Lot))
            outcome = outcome with
            {
                NewDocuments = outcome.NewDocuments + await store.MergeDocumentsAsync([.. lot.SelectMany(d => d)], cancel),
            };
        outcome = outcome with { HasOtherShop = all.Exists(d => d.Kind == BenchNames.OtherShopKind) };
        foreach (var drawer in all.Where(d => d.Kind == DrawerEntry.DocumentKind))
        foreach (var hash in DrawerEntry.Read(drawer.Id, drawer.Text)?.Photos ?? [])
            await PhotoAsync(source, hash, cancel);
    }

    /// <summary>The settings of another bench lie beside one's own under its mark; its own come back to nobody.</summary>
    private Document? Beside(Document document, string bench)
    {
        var beside =
            document.Kind == Shop.DocumentKind
                ? document with
                {
                    Kind = BenchNames.OtherShopKind,
                    Id = bench.Length > 0 ? bench : "unknown",
                }
                : document;
        return beside.Kind == BenchNames.OtherShopKind && beside.Id == store.Bench ? null : beside;
    }

    private async Task UnitAsync(MergeSource source, Guid unit, CancellationToken cancel)
    {
        var theirs = await source.JournalAsync(unit, cancel);
        foreach (var hash in PhotoNames.In(theirs.Select(e => e.Fact)))
            await PhotoAsync(source, hash, cancel);
        var before = await store.ReadAsync(unit, cancel);
        var fresh = await store.MergeAsync(unit, theirs, cancel);
        var merged = (await store.ReadAsync(unit, cancel))!;
        if (await KeptType.IsAnotherAsync(before, merged, source, store, cancel))
            types.Add(merged.Card.Tag);
        foreach (var clock in WrongClock.Of(merged.Journal, time.GetUtcNow()))
            clocks.TryAdd(clock.Entry.Bench, (unit, clock));
        if (fresh > 0)
            changed.Add(unit);
        outcome = outcome with
        {
            NewUnits = outcome.NewUnits + (before is null ? 1 : 0),
            GrownUnits = outcome.GrownUnits + (before is not null && fresh > 0 ? 1 : 0),
            NewEntries = outcome.NewEntries + fresh,
            AlteredEntries =
                outcome.AlteredEntries
                + (
                    before is null
                        ? 0
                        : MergedJournal.Altered(
                            before.Journal,
                            [.. theirs.Select(e => new Entry(e.Id, unit, 0, e.At.ToUniversalTime(), e.By, e.Fact))]
                        )
                ),
        };
    }

    private async Task PhotoAsync(MergeSource source, string hash, CancellationToken cancel)
    {
        if (await photos.OpenAsync(hash, cancel) is { } here)
        {
            await here.Content.DisposeAsync();
            return;
        }
        if (await source.PhotoAsync(hash, cancel) is not { } photo)
        {
            outcome = outcome with { MissingPhotos = outcome.MissingPhotos + 1 };
            return;
        }
        await using (photo)
            if ((await photos.KeepAsync(photo, limits.MostPhotoBytes, time.GetUtcNow(), cancel, hash)).Refused.Length == 0)
                outcome = outcome with { NewPhotos = outcome.NewPhotos + 1 };
    }
}
