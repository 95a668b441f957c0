using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Storage.PhotoFiles;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Storage.Merging;

/// <summary>
/// Another data folder, or one backup. Its database is copied first and the copy is read, so that the folder stays as it is, whatever
/// version wrote it and whether or not a program has it open.
/// </summary>
internal sealed class FolderSource : MergeSource
{
    private readonly DirectoryInfo copy;
    private readonly Store store;
    private readonly PhotoPlaces photos;

    private FolderSource(DirectoryInfo copy, Store store, PhotoPlaces photos, string bench) =>
        (this.copy, this.store, this.photos, Bench) = (copy, store, photos, bench);

    public override string Bench { get; }

    public override IReadOnlyList<Guid> Units => units;

    public override IReadOnlyList<Document> Documents => documents;

    private IReadOnlyList<Guid> units = [];
    private IReadOnlyList<Document> documents = [];

    public static async Task<MergeSource?> OpenAsync(string from, TimeProvider time, List<Problem> problems, CancellationToken cancel)
    {
        from = Path.GetFullPath(from);
        var database = Path.Combine(from, SqliteFile.Name);
        if (!File.Exists(database))
        {
            problems.Add(new Problem(from, "holds no workshop", "name a data folder, or one backup: the folder named by its time"));
            return null;
        }
        // The photos of all backups lie beside them.
        var beside = Path.GetDirectoryName(from);
        var photos = beside is null || PhotoPlaces.Any(from) || !PhotoPlaces.Any(beside) ? from : beside;
        var copy = Directory.CreateTempSubdirectory("ohmstead-merge-");
        FolderSource source;
        try
        {
            SqliteFile.CopyInWords(database, Path.Combine(copy.FullName, SqliteFile.Name));
            var store = await Store.OpenFoundAsync(copy.FullName, time, cancel);
            source = new(copy, store, new PhotoPlaces(photos), BenchMark.Said(from));
        }
        catch
        {
            copy.Delete(recursive: true);
            throw;
        }
        try
        {
            await source.ReadAsync(cancel);
            return source;
        }
        catch
        {
            await source.DisposeAsync();
            throw;
        }
    }

    public override async Task<IReadOnlyList<NewEntry>> JournalAsync(Guid unitId, CancellationToken cancel)
    {
        var journal = (await store.ReadAsync(unitId, cancel))!.Journal;
        return [.. journal.Select((e, n) => new NewEntry(e.Id, e.At, e.By, e.Fact) { Bench = e.Bench, After = Lineage.After(journal, n) })];
    }

    public override Task<Stream?> PhotoAsync(string hash, CancellationToken cancel) =>
        Task.FromResult<Stream?>(photos.Find(hash) is var (path, _) ? File.OpenRead(path) : null);

    public override async ValueTask DisposeAsync()
    {
        await store.DisposeAsync();
        copy.Delete(recursive: true);
    }

    private async Task ReadAsync(CancellationToken cancel)
    {
        units = [.. (await store.CardsAsync(withHandedBack: true, cancel)).Select(c => c.Id).Order()];
        var all = new List<Document>();
        foreach (var kind in await store.DocumentKindsAsync(cancel))
            all.AddRange(await store.VersionsAsync(kind, cancel));
        documents = all;
    }
}
