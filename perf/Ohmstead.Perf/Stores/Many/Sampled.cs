using System.Globalization;
using Microsoft.Data.Sqlite;
using Ohmstead.Storage;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Perf.Stores.Many;

/// <summary>Copied units held against what the real writer makes of their entries: every column of unit and entries.</summary>
internal static class Sampled
{
    // Which copy of the workshop an entry was made at, the folder says.
    private static readonly string[] OfTheFolder = ["Bench"];

    /// <param name="data">The data folder with copies in it, which no program has open.</param>
    /// <param name="units">The copies to look at.</param>
    /// <exception cref="InvalidOperationException">A copy is not what the writer makes.</exception>
    public static async Task CheckAsync(string data, string scratch, IReadOnlyList<Guid> units)
    {
        await using (var from = await Store.OpenAsync(data, TimeProvider.System))
        await using (var to = await Store.OpenAsync(scratch, TimeProvider.System))
        {
            foreach (var sheet in await from.DocumentsAsync("sheet", CancellationToken.None))
                await to.SaveDocumentAsync("sheet", sheet.Id, 0, sheet.Text, sheet.At, CancellationToken.None);
            foreach (var id in units)
            {
                var journal = (await from.ReadAsync(id, CancellationToken.None))!.Journal;
                NewEntry[] entries = [.. journal.Select(e => new NewEntry(e.Id, e.At, e.By, e.Fact))];
                await to.AppendAsync(id, 0, entries, CancellationToken.None);
            }
        }
        await using var copies = Open(data);
        await using var written = Open(scratch);
        foreach (var id in units)
        foreach (
            var sql in new[]
            {
                $"SELECT * FROM Units WHERE Id = '{id.ToString().ToUpperInvariant()}'",
                $"SELECT * FROM Entries WHERE UnitId = '{id.ToString().ToUpperInvariant()}' ORDER BY Number",
            }
        )
        {
            var (copy, real) = (await new Grown(copies, false).RowsAsync(sql), await new Grown(written, false).RowsAsync(sql));
            if (copy.Count == 0 || copy.Count != real.Count)
                throw new InvalidOperationException($"{id}: {copy.Count.ToString(CultureInfo.InvariantCulture)} rows copied");
            foreach (var (one, other) in copy.Zip(real))
            foreach (var (column, value) in one)
                if (!OfTheFolder.Contains(column) && value != other[column])
                    throw new InvalidOperationException($"{id}, {column}: copied {value}, written {other[column]}");
        }
    }

    private static SqliteConnection Open(string folder)
    {
        var connection = new SqliteConnection($"Data Source={Path.Combine(folder, "workshop.db")};Pooling=false");
        connection.Open();
        return connection;
    }
}
