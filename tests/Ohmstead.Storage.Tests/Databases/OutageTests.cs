using System.Collections.Concurrent;
using System.Diagnostics;
using Ohmstead.Storage.Databases;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Storage.Tests.Databases;

/// <summary>A database that starts again, is away, slow, full or read only: tried again where that helps, told in words where it does not.</summary>
[Collection(PostgresServer.Alone)]
public sealed class OutageTests(PostgresServer server) : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly Draft draft = new();
    private int programs;

    // Where it is cut for good: what a person would wait for is no part of the question [s].
    private const double Short = 0.5;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    private Task<Store> OpenAsync(string address, double? patienceSeconds = null) =>
        Store.OpenSharedAsync(
            address,
            folder.Of(Draft.Name(++programs)),
            new Guid(programs, 0, 0, new byte[8]),
            patienceSeconds is { } seconds ? TimeSpan.FromSeconds(seconds) : PostgresDatabase.UsualPatience,
            Stop
        );

    [Fact]
    public async Task A_server_that_is_started_again_costs_a_moment_and_no_entry()
    {
        await using var store = await OpenAsync(await server.DatabaseAsync("restarted"));
        var unit = draft.Id();
        await store.AppendAsync(unit, 0, [draft.TakenIn()], Stop);
        server.Stop("immediate");
        var sending = store.AppendAsync(unit, 1, [draft.Note("meanwhile")], Stop);
        server.Start();
        Assert.Equal(2, (await sending).Written.Single().Number);
        Assert.Equal(2, (await store.ReadAsync(unit, Stop))!.LastNumber);
    }

    [Fact]
    public async Task A_way_that_is_cut_is_told_once_in_words_and_its_return_too()
    {
        await using var line = new CutLine(server.Port);
        await server.DatabaseAsync("cut");
        await using var store = await OpenAsync(server.AddressOf("cut", line.Port), Short);
        var heard = new BlockingCollection<StoreNews>();
        var unit = draft.Id();
        await store.AppendAsync(unit, 0, [draft.TakenIn()], Stop);
        store.News += heard.Add;
        // One window that breaks on the news keeps nobody from the next.
        store.News += _ => throw new FormatException();
        line.Cut();
        var away = Next(heard);
        Assert.Equal(NewsOf.Away, away.About);
        Assert.Contains("does not answer", away.Words, StringComparison.Ordinal);
        Assert.EndsWith(". Ohmstead tries again by itself", away.Words, StringComparison.Ordinal);
        var said = await Assert.ThrowsAsync<StoreUnusable>(() => store.AppendAsync(unit, 1, [draft.Note("lost")], Stop));
        Assert.Contains("The database cut on 127.0.0.1 does not answer", said.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("Username", said.Message, StringComparison.Ordinal);
        // Whoever asked does not, a command least of all.
        Assert.DoesNotContain("by itself", said.Message, StringComparison.Ordinal);
        // Nothing had been sent to be kept.
        Assert.False(said.IsUnsure);
        // Whoever comes next is told at once.
        var begun = Stopwatch.GetTimestamp();
        await Assert.ThrowsAsync<StoreUnusable>(() => store.ReadAsync(unit, Stop));
        Assert.True(Stopwatch.GetElapsedTime(begun) < TimeSpan.FromSeconds(3));
        line.Mend();
        Assert.Equal(NewsOf.Back, Next(heard).About);
        Assert.Equal(1, (await store.ReadAsync(unit, Stop))!.LastNumber);
    }

    [Fact]
    public async Task An_entry_whose_end_was_cut_for_long_is_told_as_unsure()
    {
        await using var line = new CutLine(server.Port);
        await server.DatabaseAsync("unsure");
        await using var store = await OpenAsync(server.AddressOf("unsure", line.Port), Short);
        var unit = draft.Id();
        await store.AppendAsync(unit, 0, [draft.TakenIn()], Stop);
        var note = draft.Note("once");
        line.CutAtNextEnd();
        var said = await Assert.ThrowsAsync<StoreUnusable>(() => store.AppendAsync(unit, 1, [note], Stop));
        Assert.True(said.IsUnsure);
        line.Mend();
        // Sent again under its id it is there once.
        Assert.Equal(2, (await store.AppendAsync(unit, 1, [note], Stop)).Written.Single().Number);
        Assert.Equal(2, (await store.ReadAsync(unit, Stop))!.LastNumber);
    }

    [Fact]
    public async Task A_database_that_is_too_slow_says_so()
    {
        var address = await server.DatabaseAsync("slow");
        await (await OpenAsync(address)).DisposeAsync();
        await server.RunSqlAsync(
            """
            CREATE FUNCTION dawdle() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN PERFORM pg_sleep(20); RETURN NEW; END $$;
            CREATE TRIGGER dawdle BEFORE INSERT ON "Entries" FOR EACH ROW EXECUTE FUNCTION dawdle();
            """,
            "slow"
        );
        await using var store = await OpenAsync(address + ";Command Timeout=1", Short);
        var said = await Assert.ThrowsAsync<StoreUnusable>(() => store.AppendAsync(draft.Id(), 0, [draft.TakenIn()], Stop));
        Assert.Contains("is too slow", said.Message, StringComparison.Ordinal);
    }

    // The server's own codes: disk_full and read_only_sql_transaction.
    [Theory]
    [InlineData("full", "RAISE EXCEPTION USING ERRCODE = '53100'", "is full. Free some space")]
    [InlineData("mute", "RAISE EXCEPTION USING ERRCODE = '25006'", "it is read only")]
    [InlineData("barred", "RAISE EXCEPTION USING ERRCODE = '42501'", "may not write")]
    public async Task A_database_that_takes_nothing_says_why_and_keeps_what_it_had(string name, string breaks, string words)
    {
        await using var store = await OpenAsync(await server.DatabaseAsync(name));
        var unit = draft.Id();
        await store.AppendAsync(unit, 0, [draft.TakenIn()], Stop);
        await server.RunSqlAsync(
            $"""
            CREATE FUNCTION fails() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN {breaks}; END $$;
            CREATE TRIGGER fails BEFORE INSERT ON "Entries" FOR EACH ROW EXECUTE FUNCTION fails();
            """,
            name
        );
        var said = await Assert.ThrowsAsync<StoreUnusable>(() => store.AppendAsync(unit, 1, [draft.Note("x")], Stop));
        Assert.Contains(words, said.Message, StringComparison.Ordinal);
        Assert.Equal(1, (await store.ReadAsync(unit, Stop))!.LastNumber);
        await server.RunSqlAsync("DROP TRIGGER fails ON \"Entries\"", name);
        Assert.Equal(2, (await store.AppendAsync(unit, 1, [draft.Note("x")], Stop)).Written.Single().Number);
    }

    [Fact]
    public async Task A_database_that_was_set_to_read_only_is_told_by_the_server_itself()
    {
        var address = await server.DatabaseAsync("read_only");
        await (await OpenAsync(address)).DisposeAsync();
        await server.RunSqlAsync("ALTER DATABASE read_only SET default_transaction_read_only = on");
        Npgsql.NpgsqlConnection.ClearAllPools();
        await using var store = await OpenAsync(address);
        var said = await Assert.ThrowsAsync<StoreUnusable>(() => store.AppendAsync(draft.Id(), 0, [draft.TakenIn()], Stop));
        Assert.Contains("it is read only", said.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Host=127.0.0.1;Port={0};Database=nowhere;Username=postgres", "is not there")]
    [InlineData("Host=127.0.0.1;Port={0};Database=postgres;Username=nobody", "does not let this account in")]
    [InlineData("Database=trains", "is not understood")]
    [InlineData("Host=h;Database=d;Colour=red", "is not understood")]
    public async Task An_address_that_leads_nowhere_is_refused_in_words(string address, string words)
    {
        await server.StartedAsync();
        var asked = address.Replace(
            "{0}",
            server.Port.ToString(System.Globalization.CultureInfo.InvariantCulture),
            StringComparison.Ordinal
        );
        var said = await Assert.ThrowsAsync<StoreUnusable>(() => OpenAsync(asked));
        Assert.Contains(words, said.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_database_of_another_program_is_left_alone()
    {
        var address = await server.DatabaseAsync("other_program");
        await server.RunSqlAsync("CREATE TABLE theirs (id int)", "other_program");
        var said = await Assert.ThrowsAsync<StoreUnusable>(() => OpenAsync(address));
        Assert.Contains("of another program", said.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Tables_of_a_newer_version_are_left_alone()
    {
        var address = await server.DatabaseAsync("newer");
        await (await OpenAsync(address)).DisposeAsync();
        await server.RunSqlAsync("INSERT INTO \"__EFMigrationsHistory\" VALUES ('29990101000000_Later', '99')", "newer");
        var said = await Assert.ThrowsAsync<StoreUnusable>(() => OpenAsync(address));
        Assert.Contains("newer Ohmstead", said.Message, StringComparison.Ordinal);
    }

    private static StoreNews Next(BlockingCollection<StoreNews> heard) =>
        heard.TryTake(out var news, TimeSpan.FromSeconds(8)) ? news : throw new TimeoutException("nothing was heard");
}
