using Microsoft.EntityFrameworkCore;
using Ohmstead.Storage.Rows;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Merging;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Storage;

/// <content>What came from another bench.</content>
public sealed partial class Store
{
    /// <inheritdoc/>
    public async Task<int> MergeAsync(Guid unitId, IReadOnlyList<NewEntry> entries, CancellationToken cancel)
    {
        var (unit, fresh) = await transactions.WriteAsync(context => MergeAsync(context, unitId, entries, cancel), cancel);
        kept.Keep(unitId, unit);
        return fresh;
    }

    /// <inheritdoc/>
    public Task<int> MergeDocumentsAsync(IReadOnlyList<Document> versions, CancellationToken cancel) =>
        transactions.WriteAsync(
            async context =>
            {
                var added = 0;
                foreach (var one in versions.GroupBy(v => (v.Kind, v.Id)))
                    added += await MergeAsync(context, one.Key.Kind, one.Key.Id, [.. one], cancel);
                return added;
            },
            cancel
        );

    /// <inheritdoc/>
    public Task<IReadOnlyList<Document>> VersionsAsync(string kind, CancellationToken cancel) =>
        transactions.ReadAsync<IReadOnlyList<Document>>(
            async context =>
            {
                var rows = await context.Documents.Where(d => d.Kind == kind).ToListAsync(cancel);
                return [.. rows.OrderBy(d => d.Id, StringComparer.Ordinal).ThenBy(d => d.Version).Select(d => d.Document)];
            },
            cancel
        );

    /// <inheritdoc/>
    public Task<IReadOnlyList<(Guid UnitId, int Count)>> ContradictedAsync(CancellationToken cancel) =>
        transactions.ReadAsync<IReadOnlyList<(Guid, int)>>(
            async context =>
            {
                var rows = await context
                    .Units.Where(u => u.Contradictions > 0)
                    .OrderBy(u => u.Id)
                    .Select(u => new { u.Id, u.Contradictions })
                    .ToListAsync(cancel);
                return rows.ConvertAll(r => (r.Id, r.Contradictions));
            },
            cancel
        );

    private async Task<(BenchUnit Unit, int Fresh)> MergeAsync(
        WorkshopContext context,
        Guid unitId,
        IReadOnlyList<NewEntry> entries,
        CancellationToken cancel
    )
    {
        var row = await context.Units.FindAsync([unitId], cancel);
        var rows = await context.Entries.AsNoTracking().Where(e => e.UnitId == unitId).OrderBy(e => e.Number).ToListAsync(cancel);
        var before = rows.ConvertAll(r => r.Entry);
        var theirs = entries.Select((e, n) => Theirs(e, unitId, n + 1)).ToList();
        var merged = MergedJournal.Of(before, theirs);
        var unit = UnitHistory.Fold(merged);
        // What is here already keeps its text: a later version may have put more into it than this one knows.
        var known = rows.ToDictionary(r => r.Id);
        var lines = new List<EntryRow>(merged.Length);
        foreach (var entry in merged)
            lines.Add(known.TryGetValue(entry.Id, out var mine) && Same(mine, entry) ? Renumbered(mine, entry) : EntryRow.Of(entry));
        var fresh = lines.Where(l => !known.ContainsKey(l.Id)).ToList();
        var first = Enumerable.Range(0, lines.Count).FirstOrDefault(n => n >= rows.Count || !IsSameLine(rows[n], lines[n]), lines.Count);
        if (first == lines.Count)
            return (unit, 0);
        var isNew = row is null;
        row ??= new UnitRow { Id = unitId };
        if (isNew && unit.Journal[0].Fact is not TakenIn)
            throw new JournalRefused($"There is no unit {unitId}: a journal begins with taking it in.");
        foreach (var ids in fresh.Select(f => f.Id).Chunk(500))
            if (await context.Entries.AnyAsync(e => ids.Contains(e.Id) && e.UnitId != unitId, cancel))
                throw new JournalRefused($"An entry of another unit was sent for unit {unitId} too.");
        if (isNew)
            context.Units.Add(row);
        await TakeAsync(context, row, unit, fresh, cancel);
        await context.Entries.Where(e => e.UnitId == unitId && e.Number > first).ExecuteDeleteAsync(cancel);
        context.Entries.AddRange(lines[first..]);
        return (unit, fresh.Count);
    }

    /// <summary>The row says what the journal says now.</summary>
    private async Task TakeAsync(WorkshopContext context, UnitRow row, BenchUnit unit, List<EntryRow> fresh, CancellationToken cancel)
    {
        var sheet = await sheets.OfAsync(context, unit, cancel);
        row.Take(CardOf.Make(unit, sheet, await ShopAsync(context, cancel)));
        row.Fitted = FittedPart.Write(FittedPart.Of(unit, sheet));
        row.Contradictions = Contradictions.Of(unit).Length;
        row.LastNumber = unit.LastNumber;
        row.Search = SearchText.Merge([row.Search, .. fresh.Select(r => r.Search)]);
    }

    private static Entry Theirs(NewEntry entry, Guid unitId, int number) =>
        EntryRow
            .Of(
                new Entry(entry.Id, unitId, number, entry.At.ToUniversalTime(), entry.By, entry.Fact)
                {
                    Bench = entry.Bench ?? "",
                    After = entry.After,
                }
            )
            .Entry;

    private static bool Same(EntryRow row, Entry entry) =>
        row.At == entry.At && row.By == entry.By && FactText.Write(row.Entry.Fact) == FactText.Write(entry.Fact);

    private static bool IsSameLine(EntryRow row, EntryRow line) =>
        row.Id == line.Id
        && row.Json == line.Json
        && row.At == line.At
        && row.By == line.By
        && row.Bench == line.Bench
        && row.After == line.After;

    private static EntryRow Renumbered(EntryRow row, Entry entry) =>
        new()
        {
            UnitId = row.UnitId,
            Number = entry.Number,
            Id = row.Id,
            At = row.At,
            By = row.By,
            Kind = row.Kind,
            Json = row.Json,
            Search = row.Search,
            Bench = entry.Bench,
            After = EntryRow.AfterText(entry),
        };

    private static async Task<int> MergeAsync(
        WorkshopContext context,
        string kind,
        string id,
        IReadOnlyList<Document> theirs,
        CancellationToken cancel
    )
    {
        var kept = await context
            .Documents.AsNoTracking()
            .Where(d => d.Kind == kind && d.Id == id)
            .OrderBy(d => d.Version)
            .ToListAsync(cancel);
        var missing = DocumentHistory
            .Kept(kind, [.. theirs.OrderBy(d => d.Version).Select(d => new DocumentVersion(d.At, d.Text))])
            .Missing(kind, [.. kept.Select(d => new DocumentVersion(d.At, d.Text))]);
        var version = kept.Count == 0 ? 0 : kept[^1].Version;
        foreach (var one in missing)
            context.Documents.Add(
                new DocumentRow
                {
                    Kind = kind,
                    Id = id,
                    Version = ++version,
                    At = one.At,
                    Text = one.Text,
                }
            );
        if (missing.Length > 0 && kind == SheetShelf.Kind)
            await RenameKindAsync(context, id, missing[^1].Text, cancel);
        return missing.Count(m => !kept.Any(k => k.Text == m.Text));
    }
}
