using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Web;

/// <summary>
/// The store as whoever asks may use it (<see cref="Asker"/>): the one place where a device that may only look is refused, and where
/// entries get the mark of the bench that they were made at.
/// </summary>
internal sealed class AskedStore(IStore inner) : IStore
{
    /// <summary>The store itself, for what this machine does of its own.</summary>
    public IStore Inner => inner;

    /// <inheritdoc/>
    public event Action<StoreNews>? News
    {
        add => inner.News += value;
        remove => inner.News -= value;
    }

    /// <inheritdoc/>
    public string Bench => inner.Bench;

    /// <inheritdoc/>
    public IReadOnlyList<CacheCount> Caches => inner.Caches;

    /// <inheritdoc/>
    public Task<Appended> AppendAsync(Guid unitId, int seenNumber, IReadOnlyList<NewEntry> entries, CancellationToken cancel) =>
        Written(() => inner.AppendAsync(unitId, seenNumber, Marked(entries), cancel));

    /// <inheritdoc/>
    public Task AppendAllAsync(IReadOnlyList<UnitEntries> units, CancellationToken cancel) =>
        Written(() => inner.AppendAllAsync([.. units.Select(u => u with { Entries = [.. Marked(u.Entries)] })], cancel));

    /// <inheritdoc/>
    public Task<int> MergeAsync(Guid unitId, IReadOnlyList<NewEntry> entries, CancellationToken cancel) =>
        Written(() => inner.MergeAsync(unitId, entries, cancel));

    /// <inheritdoc/>
    public Task<int> MergeDocumentsAsync(IReadOnlyList<Document> versions, CancellationToken cancel) =>
        Written(() => inner.MergeDocumentsAsync(versions, cancel));

    /// <inheritdoc/>
    public Task<DocumentSaved> SaveDocumentAsync(
        string kind,
        string id,
        int seenVersion,
        string text,
        DateTimeOffset at,
        CancellationToken cancel
    ) => Written(() => inner.SaveDocumentAsync(kind, id, seenVersion, text, at, cancel));

    /// <summary>What the tool worked out itself, whoever's page made it do so.</summary>
    public Task SaveFoundAsync(Guid unitId, int seenNumber, NextThing next, UnitDoubts doubts, CancellationToken cancel) =>
        inner.SaveFoundAsync(unitId, seenNumber, next, doubts, cancel);

    /// <inheritdoc/>
    public Task<IReadOnlyList<Document>> VersionsAsync(string kind, CancellationToken cancel) => inner.VersionsAsync(kind, cancel);

    /// <inheritdoc/>
    public Task<IReadOnlyList<(Guid UnitId, int Count)>> ContradictedAsync(CancellationToken cancel) => inner.ContradictedAsync(cancel);

    /// <inheritdoc/>
    public Task<BenchUnit?> ReadAsync(Guid unitId, CancellationToken cancel) => inner.ReadAsync(unitId, cancel);

    /// <inheritdoc/>
    public Task<IReadOnlyList<UnitCard>> CardsAsync(bool withHandedBack, CancellationToken cancel) =>
        inner.CardsAsync(withHandedBack, cancel);

    /// <inheritdoc/>
    public Task<FirstCards> OnBenchAsync(int most, CancellationToken cancel) => inner.OnBenchAsync(most, cancel);

    /// <inheritdoc/>
    public Task<FirstCards> HandedBackAsync(int most, CancellationToken cancel) => inner.HandedBackAsync(most, cancel);

    /// <inheritdoc/>
    public Task<IReadOnlyList<UnitCard>> TwiceTaggedAsync(CancellationToken cancel) => inner.TwiceTaggedAsync(cancel);

    /// <inheritdoc/>
    public Task<IReadOnlyDictionary<string, int>> CountOfTypesAsync(string without, CancellationToken cancel) =>
        inner.CountOfTypesAsync(without, cancel);

    /// <inheritdoc/>
    public Task<NextThing?> NextAsync(Guid unitId, CancellationToken cancel) => inner.NextAsync(unitId, cancel);

    /// <inheritdoc/>
    public Task<IReadOnlyList<FittedPart>> FittedAsync(CancellationToken cancel) => inner.FittedAsync(cancel);

    /// <inheritdoc/>
    public Task<IReadOnlyList<Hit>> SearchAsync(string words, int most, CancellationToken cancel) => inner.SearchAsync(words, most, cancel);

    /// <inheritdoc/>
    public Task<IReadOnlyList<string>> DocumentKindsAsync(CancellationToken cancel) => inner.DocumentKindsAsync(cancel);

    /// <inheritdoc/>
    public Task<Document?> ReadDocumentAsync(string kind, string id, CancellationToken cancel) => inner.ReadDocumentAsync(kind, id, cancel);

    /// <inheritdoc/>
    public Task<IReadOnlyList<Document>> DocumentsAsync(string kind, CancellationToken cancel) => inner.DocumentsAsync(kind, cancel);

    /// <inheritdoc/>
    public Task<TypeSheet?> SheetAsync(string id, CancellationToken cancel) => inner.SheetAsync(id, cancel);

    /// <inheritdoc/>
    public Task<TypeSheet?> SheetAsync(string id, int version, CancellationToken cancel) => inner.SheetAsync(id, version, cancel);

    private static T Written<T>(Func<T> write)
    {
        Asker.MustWork();
        return write();
    }

    /// <summary>What the screens enter as "the bench" was entered at this device.</summary>
    private static IReadOnlyList<NewEntry> Marked(IReadOnlyList<NewEntry> entries) =>
        Asker.Now is { } asker
            ? [.. entries.Select(e => e with { Bench = e.Bench ?? asker.Mark, By = e.By == Asker.Here ? asker.Name : e.By })]
            : entries;
}

/// <summary>The photos as whoever asks may use them.</summary>
internal sealed class AskedPhotos(IPhotos inner) : IPhotos
{
    /// <inheritdoc/>
    public Task<PhotoKept> KeepAsync(Stream photo, long mostBytes, DateTimeOffset at, CancellationToken cancel, string? name = null)
    {
        Asker.MustWork();
        return inner.KeepAsync(photo, mostBytes, at, cancel, name);
    }

    /// <inheritdoc/>
    public Task<PhotoKept> KeepRecordingAsync(Stream recording, long mostBytes, DateTimeOffset at, CancellationToken cancel)
    {
        Asker.MustWork();
        return inner.KeepRecordingAsync(recording, mostBytes, at, cancel);
    }

    /// <inheritdoc/>
    public Task<PhotoFile?> OpenAsync(string hash, CancellationToken cancel) => inner.OpenAsync(hash, cancel);

    /// <inheritdoc/>
    public Task<PhotoFile?> OpenThumbnailAsync(string hash, CancellationToken cancel) => inner.OpenThumbnailAsync(hash, cancel);

    /// <inheritdoc/>
    public Task<string> JudgeAsync(string hash, CancellationToken cancel) => inner.JudgeAsync(hash, cancel);

    /// <inheritdoc/>
    public Task<PhotoFile?> OpenPrintAsync(string hash, CancellationToken cancel) => inner.OpenPrintAsync(hash, cancel);
}
