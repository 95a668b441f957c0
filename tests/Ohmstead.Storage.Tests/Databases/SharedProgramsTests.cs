using System.Collections.Concurrent;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Storage.Tests.Databases;

/// <summary>Several programs on one database: what they write at the same time, and what they hear of each other.</summary>
[Collection(PostgresServer.Alone)]
public sealed class SharedProgramsTests(PostgresServer server) : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly Draft draft = new();
    private int programs;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    private Task<Store> OpenAsync(string address) =>
        Store.OpenSharedAsync(address, folder.Of(Draft.Name(++programs)), new Guid(programs, 0, 0, new byte[8]), Stop);

    [Fact]
    public async Task Programs_that_start_at_once_on_an_empty_database_make_its_tables_once()
    {
        var address = await server.DatabaseAsync("begun_at_once");
        var stores = await Task.WhenAll(OpenAsync(address), OpenAsync(address), OpenAsync(address));
        foreach (var store in stores)
        {
            Assert.Empty(await store.CardsAsync(true, Stop));
            await store.DisposeAsync();
        }
    }

    [Fact]
    public async Task Three_programs_that_write_to_one_unit_lose_nothing_and_number_every_entry_once()
    {
        var address = await server.DatabaseAsync("three_programs");
        var unit = draft.Id();
        Store[] stores = [await OpenAsync(address), await OpenAsync(address), await OpenAsync(address)];
        await stores[0].AppendAsync(unit, 0, [draft.TakenIn()], Stop);
        List<NewEntry>[] sent = [.. stores.Select(_ => Enumerable.Range(0, 15).Select(n => draft.Note(Draft.Name(n))).ToList())];
        await Task.WhenAll(
            stores.Select(
                async (store, n) =>
                {
                    foreach (var note in sent[n])
                        await store.AppendAsync(unit, 1, [note], Stop);
                }
            )
        );
        var journal = (await stores[1].ReadAsync(unit, Stop))!.Journal;
        Assert.Equal(Enumerable.Range(1, 46), journal.Select(e => e.Number));
        Assert.Equal(sent.SelectMany(s => s).Select(e => e.Id).Order(), journal.Skip(1).Select(e => e.Id).Order());
        foreach (var store in stores)
            await store.DisposeAsync();
    }

    [Fact]
    public async Task What_one_program_writes_the_others_hear_within_a_second_and_itself_does_not()
    {
        var address = await server.DatabaseAsync("news");
        await using var writer = await OpenAsync(address);
        await using var hearer = await OpenAsync(address);
        var (heard, own) = (new BlockingCollection<StoreNews>(), new ConcurrentQueue<StoreNews>());
        hearer.News += heard.Add;
        writer.News += own.Enqueue;
        var unit = draft.Id();
        // What is heard first may come before the ear is there.
        var first = await UntilHeardAsync(heard, () => writer.AppendAsync(draft.Id(), 0, [draft.TakenIn()], Stop));
        Assert.Equal(NewsOf.Entries, first.About);
        await writer.AppendAsync(unit, 0, [draft.TakenIn()], Stop);
        Assert.Equal(new StoreNews(NewsOf.Entries, unit, "", ""), Next(heard));
        await writer.SaveFoundAsync(unit, 1, new NextThing(NextAction.TakeReading, "left post", 2, "left"), UnitDoubts.None, Stop);
        Assert.Equal(new StoreNews(NewsOf.Found, unit, "", ""), Next(heard));
        await writer.SaveDocumentAsync("shop", "shop", 0, "{}", Draft.Noon, Stop);
        Assert.Equal(new StoreNews(NewsOf.Document, Guid.Empty, "shop", ""), Next(heard));
        Assert.Empty(own);
    }

    [Fact]
    public async Task A_photo_that_one_program_kept_another_shows_and_prints()
    {
        var address = await server.DatabaseAsync("photos");
        await using var phone = await OpenAsync(address);
        await using var bench = await OpenAsync(address);
        var picture = Draft.Picture(3);
        using var stream = new MemoryStream(picture);
        var kept = await phone.Photos.KeepAsync(stream, 1_000_000, Draft.Noon, Stop);
        await using var thumbnail = (await bench.Photos.OpenThumbnailAsync(kept.Hash, Stop))!.Content;
        await using var content = (await bench.Photos.OpenAsync(kept.Hash, Stop))!.Content;
        using var bytes = new MemoryStream();
        await content.CopyToAsync(bytes, Stop);
        Assert.Equal(picture, bytes.ToArray());
        // What is not what was kept is not shown.
        await server.RunSqlAsync("UPDATE \"PhotoContents\" SET \"Content\" = '\\x00'", "photos");
        await using var late = await OpenAsync(address);
        Assert.Null(await late.Photos.OpenAsync(kept.Hash, Stop));
    }

    [Fact]
    public async Task An_entry_whose_answer_was_cut_off_is_kept_once()
    {
        var address = await server.DatabaseAsync("cut_at_the_end");
        await using var line = new CutLine(server.Port);
        await using var bench = await OpenAsync(server.AddressOf("cut_at_the_end", line.Port));
        await using var other = await OpenAsync(address);
        var unit = draft.Id();
        await bench.AppendAsync(unit, 0, [draft.TakenIn()], Stop);
        line.CutAtNextEnd();
        var sending = bench.AppendAsync(unit, 1, [draft.Note("once")], Stop);
        while (!line.IsCut)
            await Task.Delay(10, Stop);
        line.Mend();
        Assert.Equal(2, (await sending).Written.Single().Number);
        Assert.Equal(["once"], (await other.ReadAsync(unit, Stop))!.Journal.Skip(1).Select(e => ((Noted)e.Fact).Words));
    }

    [Fact]
    public async Task A_document_that_is_sent_twice_is_one_version()
    {
        await using var store = await OpenAsync(await server.DatabaseAsync("documents"));
        Assert.True((await store.SaveDocumentAsync("shop", "shop", 0, "one", Draft.Noon, Stop)).IsSaved);
        Assert.True((await store.SaveDocumentAsync("shop", "shop", 0, "one", Draft.Noon, Stop)).IsSaved);
        Assert.False((await store.SaveDocumentAsync("shop", "shop", 0, "one", Draft.Noon.AddHours(1), Stop)).IsSaved);
        Assert.Equal(1, (await store.ReadDocumentAsync("shop", "shop", Stop))!.Version);
    }

    [Fact]
    public async Task A_character_that_the_database_cannot_keep_is_shown_as_a_sign_and_the_entry_is_kept()
    {
        await using var store = await OpenAsync(await server.DatabaseAsync("odd_text"));
        var unit = draft.Id();
        await store.AppendAsync(unit, 0, [draft.TakenIn("tag \0 12", owner: "A. \ud83d Brass")], Stop);
        Assert.Equal("tag \ufffd 12", (await store.CardsAsync(true, Stop)).Single().Tag);
        Assert.Equal("tag \0 12", (await store.ReadAsync(unit, Stop))!.Card.Tag);
    }

    private static StoreNews Next(BlockingCollection<StoreNews> heard) =>
        heard.TryTake(out var news, TimeSpan.FromSeconds(5)) ? news : throw new TimeoutException("nothing was heard");

    private static async Task<StoreNews> UntilHeardAsync(BlockingCollection<StoreNews> heard, Func<Task> write)
    {
        for (var n = 0; n < 40; n++)
        {
            await write();
            if (heard.TryTake(out var news, TimeSpan.FromMilliseconds(250)))
                return news;
        }
        throw new TimeoutException("nothing was heard");
    }
}
