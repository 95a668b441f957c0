using System.Globalization;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Storage.Zips;

/// <summary>
/// Takes a zip in, into an empty workshop or one with units in it. All of it is looked at before any of it is kept. An entry
/// that is here already stays as it is; what a unit here lacks is added to the end of its journal.
/// </summary>
public static class ZipIn
{
    /// <summary>Reads a zip and keeps what is new in it.</summary>
    /// <param name="from">The zip; it must be able to seek.</param>
    /// <param name="at">When documents count as saved, and photos as kept.</param>
    /// <param name="differing">Which sheet or settings stand afterwards where the zip holds others under the same id.</param>
    public static async Task<ZipTaken> TakeAsync(
        Stream from,
        IStore store,
        IPhotos photos,
        DateTimeOffset at,
        ZipLimits limits,
        DifferingDocuments differing,
        CancellationToken cancel
    )
    {
        var problems = new List<Problem>();
        using var zip = ZipReader.Open(from, limits, problems);
        if (zip is null || problems.Count > 0)
            return ZipTaken.Refused(problems);
        return await LookAsync(zip, problems, cancel) is var (contents, journals)
            ? await KeepAsync(zip, contents, journals, store, photos, at, limits, differing, cancel)
            : ZipTaken.Refused(problems);
    }

    /// <summary>Looks at all of a zip; null, with every problem reported, where anything is wrong with it.</summary>
    internal static async Task<(ZipContents Contents, IReadOnlyList<UnitEntries> Journals)?> LookAsync(
        ZipReader zip,
        List<Problem> problems,
        CancellationToken cancel
    )
    {
        var contents = await ZipContents.ReadAsync(zip, problems, cancel);
        var journals = new List<UnitEntries>();
        foreach (var name in contents.Units)
            if (await JournalAsync(zip, name, problems, cancel) is { } journal)
                journals.Add(journal);
        foreach (var photo in contents.Photos)
            await zip.PhotoAsync(photo, cancel);
        CheckIds(journals, problems);
        return problems.Count > 0 ? null : (contents, journals);
    }

    private static async Task<UnitEntries?> JournalAsync(ZipReader zip, string name, List<Problem> problems, CancellationToken cancel)
    {
        var read = JournalFile.Read(await zip.TextAsync(name, cancel));
        problems.AddRange(read.Problems.Take(20).Select(p => p with { Path = $"{name}: {p.Path}" }));
        if (read.Value is { } unit && ZipNames.Unit(unit.UnitId) != name)
            problems.Add(new Problem($"{name}: $.unit", "is another unit than the file's name says", "both must agree"));
        return read.Value;
    }

    private static void CheckIds(IEnumerable<UnitEntries> journals, List<Problem> problems)
    {
        var seen = new HashSet<Guid>();
        foreach (var unit in journals)
            if (unit.Entries.Any(e => !seen.Add(e.Id)))
                problems.Add(
                    new Problem(
                        ZipNames.Unit(unit.UnitId),
                        "holds an entry that is in another unit too",
                        "every entry has an id of its own"
                    )
                );
    }

    private static async Task<ZipTaken> KeepAsync(
        ZipReader zip,
        ZipContents contents,
        IReadOnlyList<UnitEntries> journals,
        IStore store,
        IPhotos photos,
        DateTimeOffset at,
        ZipLimits limits,
        DifferingDocuments differing,
        CancellationToken cancel
    )
    {
        // First the photos, which harm nobody when the rest fails; then all journals in one transaction; then the documents.
        foreach (var photo in contents.Photos)
        {
            using var content = new MemoryStream((await zip.PhotoAsync(photo, cancel))!);
            await photos.KeepAsync(content, limits.MostPhotoBytes, at, cancel, photo.Hash);
        }
        var (newUnits, newEntries, told) = (0, 0, new List<string>());
        foreach (var unit in journals)
        {
            var known = (await store.ReadAsync(unit.UnitId, cancel))?.Journal.ToDictionary(e => e.Id);
            if (known is null)
                newUnits++;
            newEntries += unit.Entries.Count(e => known?.ContainsKey(e.Id) != true);
            TellOtherwise(unit, known, told);
        }
        try
        {
            await store.AppendAllAsync(journals, cancel);
        }
        catch (JournalRefused refused)
        {
            return ZipTaken.Refused([new Problem("the zip", "cannot be joined with this workshop", refused.Message)]);
        }
        var newDocuments = 0;
        foreach (var document in contents.Documents)
            if (await DocumentAsync(document, store, at, differing, told, cancel))
                newDocuments++;
        await TellMissingAsync(journals, photos, told, cancel);
        return new ZipTaken([], journals.Count, newUnits, newEntries, contents.Photos.Count, newDocuments, told);
    }

    /// <summary>An entry is never changed once it is here, so one that says something else under the same id was altered outside.</summary>
    private static void TellOtherwise(UnitEntries unit, Dictionary<Guid, Entry>? known, List<string> told)
    {
        var other = unit.Entries.Count(e =>
            known?.GetValueOrDefault(e.Id) is { } here && FactText.Write(here.Fact) != FactText.Write(e.Fact)
        );
        if (other > 0)
            told.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{other} entries of {ZipNames.Unit(unit.UnitId)} say something else than the same entries here. Those here stay; the others are in the zip."
                )
            );
    }

    /// <summary>A document that is not here comes in. Of two that differ, the one wanted stands; versions of before stay.</summary>
    private static async Task<bool> DocumentAsync(
        ZipDocument document,
        IStore store,
        DateTimeOffset at,
        DifferingDocuments differing,
        List<string> told,
        CancellationToken cancel
    )
    {
        var here = await store.ReadDocumentAsync(document.Kind, document.Id, cancel);
        if (here is null)
            return (await store.SaveDocumentAsync(document.Kind, document.Id, 0, document.Text, at, cancel)).IsSaved;
        if (here.Text == document.Text)
            return false;
        var what =
            document.Kind == SheetShelf.Kind ? $"The type sheet \"{document.Id}\"" : $"The document \"{document.Id}\" ({document.Kind})";
        var isTaken =
            differing == DifferingDocuments.TakeTheirs
            && (await store.SaveDocumentAsync(document.Kind, document.Id, here.Version, document.Text, at, cancel)).IsSaved;
        told.Add(
            FormattableString.Invariant(
                isTaken
                    ? (FormattableString)
                        $"{what} differs from the one here. The one in the zip is used now, as version {here.Version + 1}; version {here.Version} is kept."
                    : $"{what} differs from the one here. The one here (version {here.Version}) stays, and the units that came in go by it; the other is in the zip as {document.File}."
            )
        );
        return isTaken;
    }

    private static async Task TellMissingAsync(
        IEnumerable<UnitEntries> journals,
        IPhotos photos,
        List<string> told,
        CancellationToken cancel
    )
    {
        var missing = 0;
        foreach (var hash in journals.SelectMany(u => PhotoNames.In(u.Entries.Select(e => e.Fact))).Distinct())
        {
            if (await photos.OpenAsync(hash, cancel) is { } photo)
                await photo.Content.DisposeAsync();
            else
                missing++;
        }
        if (missing > 0)
            told.Add(
                string.Create(CultureInfo.InvariantCulture, $"{missing} photos that entries speak of are neither in the zip nor here.")
            );
    }
}

/// <summary>What is done where the zip holds another sheet, or other settings, than stand here under the same id. Neither is lost.</summary>
public enum DifferingDocuments
{
    /// <summary>The one here stands: every unit here was read by it.</summary>
    KeepMine,

    /// <summary>The one in the zip becomes the newest version; the one here stays as the version before.</summary>
    TakeTheirs,
}

/// <summary>What came in from a zip, or why nothing did.</summary>
/// <param name="Problems">Everything wrong with the zip, the file first; when there is any, nothing was taken.</param>
/// <param name="NewUnits">Units that were not here before.</param>
/// <param name="NewEntries">Entries that were not here before, of new units and of known ones.</param>
/// <param name="Told">What the person should know: sheets that differ from those here, photos that are missing.</param>
public sealed record ZipTaken(
    IReadOnlyList<Problem> Problems,
    int Units,
    int NewUnits,
    int NewEntries,
    int Photos,
    int NewDocuments,
    IReadOnlyList<string> Told
)
{
    internal static ZipTaken Refused(IReadOnlyList<Problem> problems) => new(problems, 0, 0, 0, 0, 0, []);
}
