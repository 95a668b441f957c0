using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Storage.Backups;

/// <summary>What a backup lacks of a workshop or of another backup: entries that are there and not in it.</summary>
/// <param name="Of">The folder, or the backup's name.</param>
/// <param name="From">When the first of them was made; null when there are none.</param>
public sealed record RestoreLoss(string Of, int Units, int Entries, DateTimeOffset? From)
{
    /// <summary>Compares the backup that would be restored with a workshop that may be there still, and with the others beside it.</summary>
    /// <param name="name">Which backup; null for the one that holds most.</param>
    /// <param name="instead">The data folder that it would take the place of; it need not be there, nor sound.</param>
    /// <returns>One for each that holds entries which the backup lacks.</returns>
    public static async Task<IReadOnlyList<RestoreLoss>> LookAsync(string backups, string? name, string instead, CancellationToken cancel)
    {
        var folder = new BackupFolder(Path.GetFullPath(backups));
        var names = folder.Names();
        if ((name ?? (names.Count > 0 ? names[0] : null)) is not { } chosen || !names.Contains(chosen))
            return [];
        var (own, losses) = (await EntriesAsync(folder.Database(chosen), cancel), new List<RestoreLoss>());
        (string Of, string Database)[] others =
        [
            (instead, Path.Combine(instead, SqliteFile.Name)),
            .. names.TakeWhile(n => n != chosen).Select(n => ($"backup {n}", folder.Database(n))),
        ];
        foreach (var (of, database) in others)
        {
            var lost = (await EntriesAsync(database, cancel)).Where(e => !own.ContainsKey(e.Key)).ToList();
            if (lost.Count > 0)
                losses.Add(new(of, lost.Select(e => e.Value.UnitId).Distinct().Count(), lost.Count, lost.Min(e => e.Value.At)));
        }
        return losses;
    }

    /// <summary>The loss in words.</summary>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Of} holds {Counted.Of(Entries, "entry", "entries")} on {Counted.Of(Units, "unit")} that this backup does not have, from {From:yyyy-MM-dd HH:mm} UTC on. They stay where they are."
        );

    private static async Task<Dictionary<Guid, (Guid UnitId, DateTimeOffset At)>> EntriesAsync(string database, CancellationToken cancel)
    {
        if (!File.Exists(database))
            return [];
        try
        {
            await using var context = new WorkshopContext(SqliteFile.ReadOnlyOptions(database));
            return await context
                .Entries.Select(e => new
                {
                    e.Id,
                    e.UnitId,
                    e.At,
                })
                .ToDictionaryAsync(e => e.Id, e => (e.UnitId, e.At), cancel);
        }
        catch (SqliteException)
        {
            // Damaged: nothing can be said of what it holds, and a restore is what is wanted then.
            return [];
        }
    }
}
