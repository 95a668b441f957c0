using System.Collections.Concurrent;
using System.Security.Cryptography;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Keeping;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Web;

/// <summary>Everything in memory, until the store on disk is in place.</summary>
internal sealed class TemporaryStore : IStore, IPhotos
{
    private readonly ConcurrentDictionary<Guid, List<Entry>> units = new();
    private readonly ConcurrentDictionary<(string, string), Document> documents = new();
    private readonly ConcurrentDictionary<string, byte[]> photos = new();

    public Task<Appended> AppendAsync(
        Guid unitId,
        int seenNumber,
        IReadOnlyList<NewEntry> entries,
        CancellationToken cancel
    )
    {
        var journal = units.GetOrAdd(unitId, _ => []);
        lock (journal)
        {
            var between = journal.Where(e => e.Number > seenNumber).ToList();
            var written = new List<Entry>();
            foreach (var entry in entries)
            {
                if (journal.Find(e => e.Id == entry.Id) is not { } known)
                    journal.Add(known = new Entry(entry.Id, unitId, journal.Count + 1, entry.At, entry.By, entry.Fact));
                written.Add(known);
            }
            return Task.FromResult(new Appended(written, between));
        }
    }

    public Task<BenchUnit?> ReadAsync(Guid unitId, CancellationToken cancel)
    {
        if (!units.TryGetValue(unitId, out var journal))
            return Task.FromResult<BenchUnit?>(null);
        lock (journal)
            return Task.FromResult<BenchUnit?>(UnitHistory.Fold([.. journal]));
    }

    public async Task<IReadOnlyList<UnitCard>> CardsAsync(bool withHandedBack, CancellationToken cancel)
    {
        var cards = new List<UnitCard>();
        foreach (var id in units.Keys)
        {
            var unit = (await ReadAsync(id, cancel))!;
            var photo = unit.All<PhotoAdded>().Select(p => p.Fact.Photo).FirstOrDefault("");
            cards.Add(
                new UnitCard(
                    id,
                    unit.Card.Tag,
                    unit.Card.SheetId,
                    unit.Card.SheetId,
                    unit.Card.Owner,
                    photo,
                    unit.Last.Fact.GetType().Name,
                    unit.Last.At,
                    new NextThing(NextAction.LookOver, "Go on with the look-over", 10, ""),
                    false
                )
            );
        }
        return [.. cards.OrderByDescending(c => c.LastAt)];
    }

    public Task SaveNextAsync(Guid unitId, int seenNumber, NextThing next, CancellationToken cancel) =>
        Task.CompletedTask;

    public async Task<IReadOnlyList<Hit>> SearchAsync(string words, int most, CancellationToken cancel) =>
        [
            .. (await CardsAsync(true, cancel))
                .Where(c => $"{c.Tag} {c.Owner} {c.Kind}".Contains(words, StringComparison.OrdinalIgnoreCase))
                .Select(c => new Hit(c, c.Owner)),
        ];

    public Task<Document?> ReadDocumentAsync(string kind, string id, CancellationToken cancel) =>
        Task.FromResult(documents.GetValueOrDefault((kind, id)));

    public Task<IReadOnlyList<Document>> DocumentsAsync(string kind, CancellationToken cancel) =>
        Task.FromResult<IReadOnlyList<Document>>([
            .. documents.Values.Where(d => d.Kind == kind).OrderBy(d => d.Id, StringComparer.Ordinal),
        ]);

    public Task<DocumentSaved> SaveDocumentAsync(
        string kind,
        string id,
        int seenVersion,
        string text,
        DateTimeOffset at,
        CancellationToken cancel
    )
    {
        var document = new Document(kind, id, seenVersion + 1, at, text);
        documents[(kind, id)] = document;
        return Task.FromResult(new DocumentSaved(true, document));
    }

    public async Task<PhotoKept> KeepAsync(Stream photo, long mostBytes, DateTimeOffset at, CancellationToken cancel)
    {
        var bytes = new MemoryStream();
        await photo.CopyToAsync(bytes, cancel);
        var hash = Convert.ToHexStringLower(SHA256.HashData(bytes.ToArray()));
        photos[hash] = bytes.ToArray();
        return new PhotoKept(hash, "", 0, 0);
    }

    public Task<PhotoFile?> OpenAsync(string hash, CancellationToken cancel) =>
        Task.FromResult(
            photos.TryGetValue(hash, out var bytes) ? new PhotoFile(new MemoryStream(bytes), "image/jpeg") : null
        );

    public Task<PhotoFile?> OpenThumbnailAsync(string hash, CancellationToken cancel) => OpenAsync(hash, cancel);
}
