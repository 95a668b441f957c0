using System.Data.Common;
using System.Globalization;
using System.Text;

namespace Ohmstead.Perf.Stores.Many;

/// <summary>
/// Makes many units of few: the rows that the real writer wrote, copied within the database under other ids, tags and times. What is made so
/// is held against what the writer makes of the same entries (<see cref="Sampled"/>).
/// </summary>
/// <param name="connection">Open; its rows were written by the tool.</param>
/// <param name="isPostgres">False for SQLite.</param>
internal sealed class Grown(DbConnection connection, bool isPostgres)
{
    /// <summary>Units that the real writer makes; the others are copies of them.</summary>
    public const int Templates = 200;

    /// <summary>Each round of copies is as much later [ticks].</summary>
    private const long Later = 7 * TimeSpan.TicksPerMinute;

    /// <summary>Adds copies until there are so many units.</summary>
    /// <param name="units">A multiple of <see cref="Templates"/>.</param>
    public async Task GrowAsync(int units)
    {
        var there = Convert.ToInt32(await ScalarAsync("SELECT COUNT(*) FROM \"Units\""), CultureInfo.InvariantCulture);
        var (first, last) = (there / Templates, units / Templates - 1);
        // As many rounds a transaction as stay in memory.
        const int atOnce = 25;
        for (var from = first; from <= last; from += atOnce)
        {
            var to = Math.Min(last, from + atOnce - 1);
            await using var transaction = await connection.BeginTransactionAsync();
            await CopyAsync("Units", "t", from, to, transaction);
            await CopyAsync("Entries", "e", from, to, transaction);
            await transaction.CommitAsync();
        }
        // What a server does by itself after a while.
        await ScalarAsync(isPostgres ? "ANALYZE" : "PRAGMA wal_checkpoint(TRUNCATE)");
    }

    /// <summary>The id of a copy.</summary>
    public static Guid IdOf(Guid template, int round) => new(round, 0, 0, template.ToByteArray()[8..]);

    /// <summary>A row of a table as text, by column; the order as given.</summary>
    public async Task<IReadOnlyList<IReadOnlyDictionary<string, string>>> RowsAsync(string sql)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        await using var reader = await command.ExecuteReaderAsync();
        var rows = new List<IReadOnlyDictionary<string, string>>();
        while (await reader.ReadAsync())
            rows.Add(
                Enumerable
                    .Range(0, reader.FieldCount)
                    .ToDictionary(reader.GetName, n => Convert.ToString(reader.GetValue(n), CultureInfo.InvariantCulture)!)
            );
        return rows;
    }

    private async Task CopyAsync(string table, string from, int first, int last, DbTransaction transaction)
    {
        var columns = await ColumnsAsync(table, transaction);
        var sql = new StringBuilder();
        sql.Append(CultureInfo.InvariantCulture, $"INSERT INTO \"{table}\" (").AppendJoin(", ", columns.Select(c => $"\"{c}\""));
        sql.Append(") SELECT ").AppendJoin(", ", columns.Select(c => Copied(c, from)));
        sql.Append(
            CultureInfo.InvariantCulture,
            $" FROM {Rounds(first, last)} {(table == "Units" ? "" : "JOIN \"Entries\" e ON 1 = 1 ")}JOIN \"Units\" t ON {(table == "Units" ? "1 = 1" : "e.\"UnitId\" = t.\"Id\"")} WHERE {Template} ORDER BY k.n, {from}.\"{(table == "Units" ? "Id" : "UnitId")}\""
        );
        await using var command = connection.CreateCommand();
        (command.CommandText, command.CommandTimeout, command.Transaction) = (sql.ToString(), 0, transaction);
        await command.ExecuteNonQueryAsync();
    }

    /// <summary>What the writer made has its seed in front, a copy the number of its round.</summary>
    private string Template =>
        isPostgres
            ? FormattableString.Invariant($"left(t.\"Id\"::text, 8) = '{ManyFigures.Seed:x8}'")
            : FormattableString.Invariant($"substr(t.\"Id\", 1, 8) = '{ManyFigures.Seed:X8}'");

    private string Rounds(int first, int last) =>
        isPostgres
            ? FormattableString.Invariant($"generate_series({first}, {last}) AS k(n)")
            : FormattableString.Invariant(
                $"(WITH RECURSIVE r(n) AS (SELECT {first} UNION ALL SELECT n + 1 FROM r WHERE n < {last}) SELECT n FROM r) k"
            );

    private string Copied(string column, string of) =>
        column switch
        {
            "Id" or "UnitId" when isPostgres => $"(lpad(to_hex(k.n), 8, '0') || substr({of}.\"{column}\"::text, 9))::uuid",
            "Id" or "UnitId" => $"printf('%08X', k.n) || substr({of}.\"{column}\", 9)",
            "At" or "LastAt" => FormattableString.Invariant($"{of}.\"{column}\" + k.n * {Later}"),
            "Tag" => "t.\"Tag\" || '-' || k.n",
            // The tag is the first word of the first entry.
            "Search" when of == "t" => "t.\"Tag\" || '-' || k.n || substr(t.\"Search\", length(t.\"Tag\") + 1)",
            "Search" =>
                "CASE WHEN e.\"Number\" = 1 THEN t.\"Tag\" || '-' || k.n || substr(e.\"Search\", length(t.\"Tag\") + 1) ELSE e.\"Search\" END",
            "Json" =>
                "CASE WHEN e.\"Number\" = 1 THEN replace(e.\"Json\", '\"' || t.\"Tag\" || '\"', '\"' || t.\"Tag\" || '-' || k.n || '\"') ELSE e.\"Json\" END",
            _ => $"{of}.\"{column}\"",
        };

    private async Task<IReadOnlyList<string>> ColumnsAsync(string table, DbTransaction transaction)
    {
        await using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = isPostgres
            ? $"SELECT column_name FROM information_schema.columns WHERE table_schema = 'public' AND table_name = '{table}' AND is_generated = 'NEVER'"
            : $"SELECT name FROM pragma_table_info('{table}')";
        await using var reader = await command.ExecuteReaderAsync();
        var columns = new List<string>();
        while (await reader.ReadAsync())
            columns.Add(reader.GetString(0));
        return columns;
    }

    private async Task<object?> ScalarAsync(string sql)
    {
        await using var command = connection.CreateCommand();
        (command.CommandText, command.CommandTimeout) = (sql, 0);
        return await command.ExecuteScalarAsync();
    }
}
