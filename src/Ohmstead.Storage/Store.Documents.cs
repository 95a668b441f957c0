using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Storage.Rows;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Storage;

/// <content>The next thing on a unit, documents in versions, and the parts of the drawer in units.</content>
public sealed partial class Store
{
    /// <inheritdoc/>
    public Task<IReadOnlyList<string>> DocumentKindsAsync(CancellationToken cancel) =>
        transactions.ReadAsync<IReadOnlyList<string>>(
            async context => await context.Documents.Select(d => d.Kind).Distinct().OrderBy(k => k).ToListAsync(cancel),
            cancel
        );

    /// <inheritdoc/>
    public Task<Document?> ReadDocumentAsync(string kind, string id, CancellationToken cancel) =>
        transactions.ReadAsync(async context => (await NewestAsync(context, kind, id, cancel))?.Document, cancel);

    /// <inheritdoc/>
    public Task<IReadOnlyList<Document>> DocumentsAsync(string kind, CancellationToken cancel) =>
        transactions.ReadAsync<IReadOnlyList<Document>>(
            async context =>
            {
                var ofKind = context.Documents.Where(d => d.Kind == kind);
                var newest = ofKind.Where(d => !ofKind.Any(later => later.Id == d.Id && later.Version > d.Version));
                var rows = await newest.ToListAsync(cancel);
                return [.. rows.OrderBy(d => d.Id, StringComparer.Ordinal).Select(d => d.Document)];
            },
            cancel
        );

    /// <inheritdoc/>
    public Task<TypeSheet?> SheetAsync(string id, CancellationToken cancel) => SheetAsync(id, 0, cancel);

    /// <inheritdoc/>
    public Task<TypeSheet?> SheetAsync(string id, int version, CancellationToken cancel) =>
        transactions.ReadAsync(context => sheets.FindAsync(context, id, version, cancel), cancel);

    /// <inheritdoc/>
    public IReadOnlyList<CacheCount> Caches => [kept.Counted, sheets.Counted];

    /// <inheritdoc/>
    public Task<DocumentSaved> SaveDocumentAsync(
        string kind,
        string id,
        int seenVersion,
        string text,
        DateTimeOffset at,
        CancellationToken cancel
    ) =>
        transactions.WriteAsync(
            async context =>
            {
                var newest = await NewestAsync(context, kind, id, cancel);
                // Sent twice it is kept once: the way may have been cut after it was.
                if (newest is not null && newest.Version == seenVersion + 1 && newest.At == at && newest.Text == text)
                    return new DocumentSaved(true, newest.Document);
                if (newest is not null && newest.Version != seenVersion)
                    return new DocumentSaved(false, newest.Document);
                var row = new DocumentRow
                {
                    Kind = kind,
                    Id = id,
                    Version = (newest?.Version ?? 0) + 1,
                    At = at,
                    Text = text,
                };
                context.Documents.Add(row);
                if (kind == SheetShelf.Kind)
                    await RenameKindAsync(context, id, text, cancel);
                return new DocumentSaved(true, row.Document);
            },
            cancel
        );

    /// <inheritdoc/>
    public Task<NextThing?> NextAsync(Guid unitId, CancellationToken cancel) =>
        transactions.ReadAsync(
            async context =>
                await context.Units.Where(u => u.Id == unitId).Select(UnitRow.Light).SingleOrDefaultAsync(cancel) is { } unit
                    ? unit.Card.Next
                    : null,
            cancel
        );

    /// <inheritdoc/>
    public Task<IReadOnlyList<FittedPart>> FittedAsync(CancellationToken cancel) =>
        transactions.ReadAsync<IReadOnlyList<FittedPart>>(
            async context =>
            {
                var texts = await context.Units.Where(u => u.Fitted != "").OrderBy(u => u.Id).Select(u => u.Fitted).ToListAsync(cancel);
                if (fitted is not { } last || !last.Texts.SequenceEqual(texts))
                    fitted = last = new(texts, [.. texts.SelectMany(t => FittedPart.Read(t))]);
                return last.Parts;
            },
            cancel
        );

    /// <summary>What of the drawer is in units, as last read: few units change between two looks.</summary>
    private volatile Fitted? fitted;

    private sealed record Fitted(List<string> Texts, ImmutableArray<FittedPart> Parts);

    private static Task<DocumentRow?> NewestAsync(WorkshopContext context, string kind, string id, CancellationToken cancel) =>
        context
            .Documents.AsNoTracking()
            .Where(d => d.Kind == kind && d.Id == id)
            .OrderByDescending(d => d.Version)
            .FirstOrDefaultAsync(cancel);

    private static async Task<Shop> ShopAsync(WorkshopContext context, CancellationToken cancel) =>
        ShopText.Read((await NewestAsync(context, Shop.DocumentKind, Shop.DocumentId, cancel))?.Text);

    /// <summary>A sheet with another title, or one that was not there: the cards of its units say so.</summary>
    private static async Task RenameKindAsync(WorkshopContext context, string sheetId, string text, CancellationToken cancel)
    {
        if (TypeSheetFile.Read(text).Value is not { } sheet)
            return;
        var shop = await ShopAsync(context, cancel);
        foreach (
            var unit in await context
                .Units.Where(u => u.SheetId == sheetId && (u.Kind != sheet.Title || u.NextAction == NextAction.NameKind))
                .ToListAsync(cancel)
        )
            // A unit that keeps an earlier version is shown by that one.
            if (UnitHistory.Fold(await JournalAsync(context, unit.Id, cancel)) is { SheetVersion: 0 } told)
                unit.Take(CardOf.Make(told, sheet, shop));
    }
}
