using Microsoft.EntityFrameworkCore;
using Ohmstead.Storage.Databases;

namespace Ohmstead.Storage.Tests.Databases;

/// <summary>The index of letters by threes in a folder: what is asked of it, and that a database of before it gets it filled.</summary>
public sealed class LetterIndexTests : IDisposable
{
    private const string Before = "20261130121000_EntryBench";
    private readonly TempFolder folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("cord", "\"cor\" AND \"ord\"")]
    [InlineData("cord ord", "\"cor\" AND \"ord\"")]
    [InlineData("ab", "")]
    [InlineData("ab cor", "\"cor\"")]
    [InlineData("a\"b", "\"a\"\"b\"")]
    public void Every_three_letters_of_each_word_are_asked_for_once(string words, string asked) =>
        Assert.Equal(asked, LetterIndex.Asked(words.Split(' ')));

    [Fact]
    public async Task Units_of_before_the_index_are_found_and_stand_in_their_order()
    {
        var path = folder.Of(SqliteFile.Name);
        SqliteFile.Prepare(path);
        await using (var context = new WorkshopContext(SqliteFile.Options(path)))
        {
            await context.Database.MigrateAsync(Before, Stop);
            await context.Database.ExecuteSqlRawAsync(
                """
                INSERT INTO Units (Id, LastNumber, Tag, Kind, SheetId, Owner, Photo, LastDone, LastAt, NextAction, NextWords, NextMinutes, NextAbout,
                    IsHandedBack, Doubts, Fitted, Contradictions, Search, KindSearch)
                VALUES ('00000001-0000-0000-0000-000000000000', 1, 'late', '', '', '', '', '', 3, 'LookOver', '', 5, '', 0, '', '', 0, 'late brittle', ''),
                       ('00000002-0000-0000-0000-000000000000', 1, 'first', '', '', '', '', '', 1, 'Repair', '', 30, '', 0, '', '', 0, 'first', 'brittle'),
                       ('00000003-0000-0000-0000-000000000000', 1, 'last', '', '', '', '', '', 9, 'Repair', '', 31, '', 0, '', '', 0, 'last', '')
                """,
                Stop
            );
        }
        SqliteFile.Close(path);
        await using var store = await Store.OpenAsync(folder.Path, TimeProvider.System, Stop);
        Assert.Equal(["first", "late", "last"], (await store.OnBenchAsync(9, Stop)).Cards.Select(c => c.Tag));
        await using var migrated = new WorkshopContext(SqliteFile.Options(path));
        Assert.Equal(
            ["first", "late"],
            (await LetterIndex.Find(migrated, LetterIndex.Asked(["brittle"])).ToListAsync(Stop))
                .Select(u => u.Tag)
                .Order(StringComparer.Ordinal)
        );
        Assert.Empty(SqliteFile.Faults(path));
    }
}
