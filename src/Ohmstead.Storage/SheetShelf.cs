using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Untyped;

namespace Ohmstead.Storage;

/// <summary>Type sheets as read, kept by id and version: a journal grows by the second, its sheet by the month.</summary>
internal sealed class SheetShelf
{
    /// <summary>The kind of document a type sheet is.</summary>
    public const string Kind = "sheet";

    /// <summary>More types than a workshop has on its benches at a time.</summary>
    private const int MostKept = 64;

    private readonly BoundedCache<string, (int Version, TypeSheet? Sheet)> read = new("Type sheets", MostKept, StringComparer.Ordinal);

    /// <summary>How many are kept, and how often one was there.</summary>
    public CacheCount Counted => read.Counted;

    /// <summary>The sheet of a unit: its type's, or the one that stands in while its type is not known; null when its type has none that is sound.</summary>
    public async Task<TypeSheet?> OfAsync(WorkshopContext context, BenchUnit unit, CancellationToken cancel) =>
        unit.Card.SheetId.Length == 0 ? UntypedSheet.Of(unit) : await FindAsync(context, unit.Card.SheetId, unit.SheetVersion, cancel);

    /// <summary>A version of a sheet, the newest where that one is not there; null when there is none, or it is not sound.</summary>
    /// <param name="asked">0 for the newest.</param>
    public async Task<TypeSheet?> FindAsync(WorkshopContext context, string id, int asked, CancellationToken cancel)
    {
        if (id.Length == 0)
            return null;
        var versions = context.Documents.Where(d => d.Kind == Kind && d.Id == id);
        var newest = await versions.MaxAsync(d => (int?)d.Version, cancel);
        var kept =
            asked == 0 ? null : await versions.Where(d => d.Version == asked).Select(d => (int?)d.Version).SingleOrDefaultAsync(cancel);
        if ((kept ?? newest) is not { } version)
            return null;
        // The newest goes by its id, an older one by id and version: each is there once.
        var key = version == newest ? id : string.Create(CultureInfo.InvariantCulture, $"{id} {version}");
        if (read.Find(key, kept => kept.Version == version) is { Version: > 0 } found)
            return found.Sheet;
        var text = await versions.Where(d => d.Version == version).Select(d => d.Text).SingleAsync(cancel);
        var sheet = TypeSheetFile.Read(text).Value;
        read.Keep(key, (version, sheet));
        return sheet;
    }
}
