using Microsoft.EntityFrameworkCore;
using Ohmstead.Storage.Rows;

namespace Ohmstead.Storage.Databases;

/// <summary>
/// In which units three letters stand beside each other: an index of SQLite's full-text search (FTS5, tokenizer trigram) over what units are
/// found by. Triggers of the table keep it in the same transaction; the units have numbers of their own in it, which nothing renumbers.
/// </summary>
internal static class LetterIndex
{
    private const int Letters = 3;

    /// <summary>What makes the tables and fills them from the units that are there.</summary>
    public const string Make = """
        CREATE TABLE "SearchKeys" ("Key" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT, "UnitId" TEXT NOT NULL UNIQUE);
        CREATE VIRTUAL TABLE "SearchLetters" USING fts5("Search", "KindSearch", content='', contentless_delete=1, detail=none, tokenize='trigram');
        INSERT INTO "SearchKeys" ("UnitId") SELECT "Id" FROM "Units";
        INSERT INTO "SearchLetters" (rowid, "Search", "KindSearch")
            SELECT k."Key", u."Search", u."KindSearch" FROM "Units" u JOIN "SearchKeys" k ON k."UnitId" = u."Id";
        CREATE TRIGGER "SearchNew" AFTER INSERT ON "Units" BEGIN
            INSERT INTO "SearchKeys" ("UnitId") VALUES (NEW."Id");
            INSERT INTO "SearchLetters" (rowid, "Search", "KindSearch")
                SELECT "Key", NEW."Search", NEW."KindSearch" FROM "SearchKeys" WHERE "UnitId" = NEW."Id";
        END;
        CREATE TRIGGER "SearchAgain" AFTER UPDATE OF "Search", "KindSearch" ON "Units"
            WHEN NEW."Search" <> OLD."Search" OR NEW."KindSearch" <> OLD."KindSearch" BEGIN
            INSERT OR REPLACE INTO "SearchLetters" (rowid, "Search", "KindSearch")
                SELECT "Key", NEW."Search", NEW."KindSearch" FROM "SearchKeys" WHERE "UnitId" = NEW."Id";
        END;
        CREATE TRIGGER "SearchGone" AFTER DELETE ON "Units" BEGIN
            DELETE FROM "SearchLetters" WHERE rowid = (SELECT "Key" FROM "SearchKeys" WHERE "UnitId" = OLD."Id");
            DELETE FROM "SearchKeys" WHERE "UnitId" = OLD."Id";
        END;
        """;

    /// <summary>Takes it away.</summary>
    public const string Drop =
        "DROP TRIGGER \"SearchNew\"; DROP TRIGGER \"SearchAgain\"; DROP TRIGGER \"SearchGone\"; DROP TABLE \"SearchLetters\"; DROP TABLE \"SearchKeys\"";

    /// <summary>The question for all words: every three letters of each; empty where all words are shorter.</summary>
    public static string Asked(IEnumerable<string> words) =>
        string.Join(
            " AND ",
            words
                .SelectMany(Threes)
                .Distinct(StringComparer.Ordinal)
                .Select(t => $"\"{t.Replace("\"", "\"\"", StringComparison.Ordinal)}\"")
        );

    /// <summary>The units that have all of them.</summary>
    public static IQueryable<UnitRow> Find(WorkshopContext context, string asked) =>
        context.Units.FromSql(
            $"""
            SELECT * FROM "Units" WHERE "Id" IN (SELECT k."UnitId" FROM "SearchLetters" l JOIN "SearchKeys" k ON k."Key" = l.rowid WHERE "SearchLetters" MATCH {asked})
            """
        );

    private static IEnumerable<string> Threes(string word)
    {
        var letters = word.EnumerateRunes().Select(r => r.ToString()).ToList();
        return Enumerable.Range(0, Math.Max(0, letters.Count - Letters + 1)).Select(n => string.Concat(letters.GetRange(n, Letters)));
    }
}
