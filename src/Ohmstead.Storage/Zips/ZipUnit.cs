using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Storage.PhotoFiles;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Storage.Zips;

/// <summary>One unit read out of a zip, without a workshop to take it in.</summary>
/// <param name="Unit">As its journal tells it.</param>
/// <param name="RecordSha256">Of its journal file, the bytes as they lie in the zip; hexadecimal.</param>
/// <param name="SheetText">Its type sheet; null where the zip has none.</param>
/// <param name="ShopText">The shop's settings; null where the zip has none.</param>
/// <param name="Photos">Its photos that are in the zip, by the hash that entries know them by.</param>
public sealed record ZipUnit(
    BenchUnit Unit,
    string RecordSha256,
    string? SheetText,
    string? ShopText,
    IReadOnlyDictionary<string, ZipPicture> Photos
)
{
    /// <summary>What dates the units of its type; null where the zip has none.</summary>
    public string? DatesText { get; init; }

    /// <summary>Finds a unit by its tag or id. All of the zip that concerns it is looked at first.</summary>
    /// <returns>The unit, or every problem.</returns>
    public static async Task<Parsed<ZipUnit>> ReadAsync(Stream from, string tag, ZipLimits limits, CancellationToken cancel)
    {
        var problems = new List<Problem>();
        using var zip = ZipReader.Open(from, limits, problems);
        if (zip is null || problems.Count > 0)
            return new(null, problems);
        var contents = await ZipContents.ReadAsync(zip, problems, cancel);
        var found = new List<(BenchUnit Unit, string Text)>();
        foreach (var name in contents.Units)
        {
            var text = await zip.TextAsync(name, cancel);
            var read = JournalFile.Read(text);
            problems.AddRange(read.Problems.Take(20).Select(p => p with { Path = $"{name}: {p.Path}" }));
            if (read.Value is not { } journal)
                continue;
            var unit = UnitHistory.Fold([.. journal.Entries.Select((e, n) => new Entry(e.Id, journal.UnitId, n + 1, e.At, e.By, e.Fact))]);
            if (unit.Card.Tag == tag || unit.Id.ToString() == tag)
                found.Add((unit, name));
        }
        if (problems.Count == 0 && found.Count != 1)
            problems.Add(
                found.Count == 0
                    ? new Problem("the zip", $"has no unit with the tag {tag}", "give the tag of a unit that is in it")
                    : new Problem(
                        "the zip",
                        $"has several units with the tag {tag}",
                        $"give one of these instead: {string.Join(", ", found.Select(f => f.Unit.Id))}"
                    )
            );
        if (problems.Count > 0)
            return new(null, problems);
        var (one, file) = found[0];
        var photos = new Dictionary<string, ZipPicture>(StringComparer.Ordinal);
        var wanted = PhotoNames.In(one.Standing.Select(e => e.Fact)).ToHashSet(StringComparer.Ordinal);
        foreach (var photo in contents.Photos.Where(p => wanted.Contains(p.Hash)))
            if (await zip.PhotoAsync(photo, cancel) is { } bytes)
            {
                using var content = new MemoryStream(bytes);
                photos[photo.Hash] = new(bytes, PhotoHeader.Read(content).MediaType);
            }
        string? Document(string kind, string? id) =>
            contents.Documents.Where(d => d.Kind == kind && (id is null || d.Id == id)).Select(d => d.Text).LastOrDefault();
        var hash = await zip.HashAsync(file, cancel);
        return problems.Count > 0
            ? new(null, problems)
            : new(
                new(one, hash, Document(SheetShelf.Kind, one.Card.SheetId), Document(Shop.DocumentKind, Shop.DocumentId), photos)
                {
                    DatesText = Document(KindDates.DocumentKind, one.Card.SheetId),
                },
                problems
            );
    }
}

/// <summary>A photo's bytes and what they are.</summary>
public sealed record ZipPicture(byte[] Bytes, string MediaType);
