using System.Reflection;
using Microsoft.EntityFrameworkCore;

namespace Ohmstead.Storage.Databases;

/// <summary>Every row of a workshop, from one database into another, and both held against each other afterwards.</summary>
internal static class RowCopy
{
    /// <summary>So many are in memory at a time.</summary>
    private const int AtOnce = 500;

    /// <summary>True when nothing is in it.</summary>
    public static async Task<bool> IsEmptyAsync(WorkshopContext context, CancellationToken cancel) =>
        !await context.Units.AnyAsync(cancel) && !await context.Documents.AnyAsync(cancel) && !await context.Photos.AnyAsync(cancel);

    /// <summary>Copies units, entries, documents with all their versions, and the rows of photos.</summary>
    public static async Task CopyAsync(WorkshopContext from, WorkshopContext to, CancellationToken cancel)
    {
        await CopyAsync(Units(from), to, cancel);
        await CopyAsync(Entries(from), to, cancel);
        await CopyAsync(Documents(from), to, cancel);
        await CopyAsync(Photos(from), to, cancel);
    }

    /// <summary>What is not the same in both: the table and how many rows; empty when nothing differs.</summary>
    public static async Task<IReadOnlyList<string>> DifferencesAsync(WorkshopContext from, WorkshopContext to, CancellationToken cancel) =>
        [
            .. await DifferencesAsync("unit", Units(from), Units(to), cancel),
            .. await DifferencesAsync("entry", Entries(from), Entries(to), cancel),
            .. await DifferencesAsync("document", Documents(from), Documents(to), cancel),
            .. await DifferencesAsync("photo", Photos(from), Photos(to), cancel),
        ];

    private static IQueryable<Rows.UnitRow> Units(WorkshopContext context) => context.Units.AsNoTracking().OrderBy(u => u.Id);

    private static IQueryable<Rows.EntryRow> Entries(WorkshopContext context) =>
        context.Entries.AsNoTracking().OrderBy(e => e.UnitId).ThenBy(e => e.Number);

    private static IQueryable<Rows.DocumentRow> Documents(WorkshopContext context) =>
        context.Documents.AsNoTracking().OrderBy(d => d.Kind).ThenBy(d => d.Id).ThenBy(d => d.Version);

    private static IQueryable<Rows.PhotoRow> Photos(WorkshopContext context) => context.Photos.AsNoTracking().OrderBy(p => p.Hash);

    private static async Task CopyAsync<T>(IQueryable<T> rows, WorkshopContext to, CancellationToken cancel)
        where T : class
    {
        var waiting = 0;
        await foreach (var row in rows.AsAsyncEnumerable().WithCancellation(cancel))
        {
            to.Add(row);
            if (++waiting < AtOnce)
                continue;
            await PutAsync(to, cancel);
            waiting = 0;
        }
        await PutAsync(to, cancel);
    }

    private static async Task PutAsync(WorkshopContext to, CancellationToken cancel)
    {
        await to.SaveChangesAsync(cancel);
        to.ChangeTracker.Clear();
    }

    private static async Task<IReadOnlyList<string>> DifferencesAsync<T>(
        string what,
        IQueryable<T> from,
        IQueryable<T> to,
        CancellationToken cancel
    )
    {
        PropertyInfo[] fields = [.. typeof(T).GetProperties().Where(f => f.CanWrite)];
        await using var there = to.AsAsyncEnumerable().GetAsyncEnumerator(cancel);
        var (at, differing) = (0, 0);
        await foreach (var row in from.AsAsyncEnumerable().WithCancellation(cancel))
        {
            at++;
            if (!await there.MoveNextAsync() || !fields.All(f => Equals(Value(f, row), Value(f, there.Current))))
                differing++;
        }
        while (await there.MoveNextAsync())
            differing++;
        return differing == 0 ? [] : [FormattableString.Invariant($"{differing} of {at} ({what})")];
    }

    // What PostgreSQL cannot keep of a text is no difference.
    private static object? Value(PropertyInfo field, object? row) =>
        field.GetValue(row) is var value && value is string text ? PostgresText.Storable(text) : value;
}
