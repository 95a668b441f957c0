using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Storage.PhotoFiles;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Storage.Zips;

/// <summary>Units with their sheets and photos as a zip of plain JSON and images, described in docs/formats.md.</summary>
public static class ZipOut
{
    /// <summary>Writes the whole workshop: every unit, every document as it stands now, every photo that a journal or the drawer speaks of.</summary>
    public static async Task<ZipWritten> WriteAllAsync(Stream to, IStore store, IPhotos photos, DateTimeOffset at, CancellationToken cancel)
    {
        var cards = await store.CardsAsync(withHandedBack: true, cancel);
        var documents = new List<Document>();
        foreach (var kind in await store.DocumentKindsAsync(cancel))
            documents.AddRange(await store.DocumentsAsync(kind, cancel));
        // Oldest first, so that they come in again in the order in which they were touched.
        return await WriteAsync(to, store, photos, [.. cards.Reverse().Select(c => c.Id)], documents, at, cancel);
    }

    /// <summary>Writes one unit, with the sheet it is read by, what dates it, and the shop's settings; null when there is no such unit.</summary>
    public static async Task<ZipWritten?> WriteUnitAsync(
        Stream to,
        Guid unitId,
        IStore store,
        IPhotos photos,
        DateTimeOffset at,
        CancellationToken cancel
    )
    {
        if (await store.ReadAsync(unitId, cancel) is not { } unit)
            return null;
        var documents = new List<Document>();
        if (await store.ReadDocumentAsync(SheetShelf.Kind, unit.Card.SheetId, cancel) is { } sheet)
            documents.Add(sheet);
        if (await store.ReadDocumentAsync(KindDates.DocumentKind, unit.Card.SheetId, cancel) is { } dates)
            documents.Add(dates);
        if (await store.ReadDocumentAsync(Shop.DocumentKind, Shop.DocumentKind, cancel) is { } shop)
            documents.Add(shop);
        return await WriteAsync(to, store, photos, [unitId], documents, at, cancel);
    }

    private static async Task<ZipWritten> WriteAsync(
        Stream to,
        IStore store,
        IPhotos photos,
        IReadOnlyList<Guid> units,
        IReadOnlyList<Document> documents,
        DateTimeOffset at,
        CancellationToken cancel
    )
    {
        using var zip = new ZipArchive(to, ZipArchiveMode.Create, leaveOpen: true);
        var (hashes, entries) = (new List<string>(), 0);
        foreach (var id in units)
        {
            var unit =
                await store.ReadAsync(id, cancel) ?? throw new InvalidOperationException($"Unit {id} went away while it was written.");
            entries += unit.Journal.Length;
            hashes.AddRange(PhotoNames.In(unit.Journal.Select(e => e.Fact)));
            await TextAsync(zip, ZipNames.Unit(id), JournalFile.Write(id, unit.Journal), at, cancel);
        }
        for (var n = 0; n < documents.Count; n++)
            await TextAsync(zip, ZipNames.Document(n + 1), documents[n].Text, at, cancel);
        hashes.AddRange(
            documents.Where(d => d.Kind == DrawerEntry.DocumentKind).SelectMany(d => DrawerEntry.Read(d.Id, d.Text)?.Photos ?? [])
        );
        var (kept, bared, missing) = (new JsonArray(), new JsonObject(), new List<string>());
        foreach (var hash in hashes.Distinct())
            if (await PhotoAsync(zip, photos, hash, at, cancel) is var (name, fileHash))
            {
                kept.Add((JsonNode)name);
                if (fileHash != hash)
                    bared[name] = fileHash;
            }
            else
                missing.Add(hash);
        var contents = new JsonObject
        {
            ["ohmstead"] = ZipNames.Mark,
            ["at"] = at.UtcDateTime.ToString("O"),
            ["bench"] = store.Bench,
            ["units"] = new JsonArray([.. units.Select(u => (JsonNode)ZipNames.Unit(u))]),
            ["documents"] = new JsonArray([.. documents.Select((d, n) => Described(d, ZipNames.Document(n + 1)))]),
            ["photos"] = kept,
            ["bared"] = bared,
            ["missingPhotos"] = new JsonArray([.. missing.Select(m => (JsonNode)m)]),
        };
        await TextAsync(zip, ZipNames.Contents, contents.ToJsonString(TypeSheetFile.Indented) + "\n", at, cancel);
        return new ZipWritten(units.Count, entries, documents.Count, kept.Count, missing);
    }

    private static JsonObject Described(Document document, string file) =>
        new()
        {
            ["kind"] = document.Kind,
            ["id"] = document.Id,
            ["version"] = document.Version,
            ["at"] = document.At.UtcDateTime.ToString("O"),
            ["file"] = file,
        };

    private static async Task TextAsync(ZipArchive zip, string name, string text, DateTimeOffset at, CancellationToken cancel)
    {
        var entry = zip.CreateEntry(name, CompressionLevel.Fastest);
        entry.LastWriteTime = at;
        await using var to = await entry.OpenAsync(cancel);
        await to.WriteAsync(Encoding.UTF8.GetBytes(text), cancel);
    }

    /// <summary>Writes a photo, without what its camera wrote beside the picture if it is of a time when that was kept.</summary>
    /// <returns>The photo's name in the zip and the hash of the file there; null when it is not to be had.</returns>
    private static async Task<(string Name, string FileHash)?> PhotoAsync(
        ZipArchive zip,
        IPhotos photos,
        string hash,
        DateTimeOffset at,
        CancellationToken cancel
    )
    {
        if (await photos.OpenAsync(hash, cancel) is not { } photo)
            return null;
        await using var content = photo.Content;
        using var bytes = new MemoryStream();
        await content.CopyToAsync(bytes, cancel);
        bytes.Position = 0;
        // A photo that cannot be followed is none that may go out: nobody knows what is in it.
        if (
            PhotoHeader.Read(bytes) is not { Refused: "" } header
            || BarePhoto.Of(bytes.ToArray(), photo.MediaType, header.Turn) is not { } bare
        )
            return null;
        var name = ZipNames.Photo(hash, photo.MediaType);
        // Images are compressed already.
        var entry = zip.CreateEntry(name, CompressionLevel.NoCompression);
        entry.LastWriteTime = at;
        await using var to = await entry.OpenAsync(cancel);
        await to.WriteAsync(bare, cancel);
        return (name, Convert.ToHexStringLower(SHA256.HashData(bare)));
    }
}

/// <summary>What went out.</summary>
/// <param name="MissingPhotos">Photos that entries speak of and that are not there; the zip says so too.</param>
public sealed record ZipWritten(int Units, int Entries, int Documents, int Photos, IReadOnlyList<string> MissingPhotos);
