using Microsoft.EntityFrameworkCore;

namespace Ohmstead.Storage.Backups;

/// <summary>Whether a copy of the database is what it should be.</summary>
internal static class SoundCopy
{
    /// <summary>What is wrong with it; empty when it is sound: SQLite's own check, and every journal runs 1, 2, 3… to the number on its unit's card.</summary>
    public static async Task<IReadOnlyList<string>> FaultsAsync(string database, CancellationToken cancel)
    {
        var faults = SqliteFile.Faults(database);
        if (faults.Count > 0)
            return faults;
        await using var context = new WorkshopContext(SqliteFile.ReadOnlyOptions(database));
        var journals = await context
            .Entries.GroupBy(e => e.UnitId)
            .Select(g => new
            {
                UnitId = g.Key,
                Count = g.Count(),
                First = g.Min(e => e.Number),
                Last = g.Max(e => e.Number),
            })
            .ToDictionaryAsync(g => g.UnitId, cancel);
        var units = await context
            .Units.Select(u => new
            {
                u.Id,
                u.Tag,
                u.LastNumber,
            })
            .ToListAsync(cancel);
        return
        [
            .. units
                .Where(u => !journals.TryGetValue(u.Id, out var j) || j.First != 1 || j.Last != j.Count || j.Last != u.LastNumber)
                .Select(u => $"the log of unit {u.Tag} has gaps"),
        ];
    }
}
