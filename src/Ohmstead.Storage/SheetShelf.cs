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
        unit.Card.SheetId.Length == 0 ? UntypedSheet.Of(unit) : await FindAsync(context, unit.Card.SheetId, cancel);

    /// <summary>The newest version of a sheet; null when there is none, or it is not sound.</summary>
    public async Task<TypeSheet?> FindAsync(WorkshopContext context, string id, CancellationToken cancel)
    {
        if (id.Length == 0)
            return null;
        var version = await context.Documents.Where(d => d.Kind == Kind && d.Id == id).MaxAsync(d => (int?)d.Version, cancel);
        if (version is not { } newest)
            return null;
        if (read.Find(id, kept => kept.Version == newest) is { Version: > 0 } found)
            return found.Sheet;
        var text = await context
            .Documents.Where(d => d.Kind == Kind && d.Id == id && d.Version == newest)
            .Select(d => d.Text)
            .SingleAsync(cancel);
        var sheet = TypeSheetFile.Read(text).Value;
        read.Keep(id, (newest, sheet));
        return sheet;
    }
}
