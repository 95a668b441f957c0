using Ohmstead.Storage.Backups;
using Ohmstead.Storage.Moves;
using Ohmstead.Storage.Tests.Databases;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Storage.Tests.Moves;

/// <summary>A workshop goes from a folder into a database and back, and into a backup and back: nothing is lost on the way.</summary>
[Collection(PostgresServer.Alone)]
public sealed class MoveTests(PostgresServer server) : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly Draft draft = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Home => folder.Of("home");

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task A_workshop_comes_back_from_a_database_as_it_went_in()
    {
        await FillAsync();
        var place = new WorkshopPlace(folder.Of("local"), await server.DatabaseAsync("moved"));
        var there = await Move.ToDatabaseAsync(Home, place, TimeProvider.System, Guid.Empty, Stop);
        var facts = EveryKind.Facts(new Draft()).Length;
        Assert.Equal((2, facts + 1, 3, 2), (there.Units, there.Entries, there.Documents, there.Photos));
        Assert.Empty(there.MissingPhotos);
        var back = await Move.ToFolderAsync(place, folder.Of("back"), TimeProvider.System, Guid.Empty, Stop);
        Assert.Equal((there.Units, there.Entries, there.Documents, there.Photos), (back.Units, back.Entries, back.Documents, back.Photos));
        Assert.Equal(await SaidAsync(Home), await SaidAsync(folder.Of("back")));
    }

    [Fact]
    public async Task Nothing_is_moved_onto_a_workshop_that_is_there()
    {
        await FillAsync();
        var place = new WorkshopPlace(folder.Of("local"), await server.DatabaseAsync("moved_twice"));
        await Move.ToDatabaseAsync(Home, place, TimeProvider.System, Guid.Empty, Stop);
        var said = await Assert.ThrowsAsync<StoreUnusable>(() => Move.ToDatabaseAsync(Home, place, TimeProvider.System, Guid.Empty, Stop));
        Assert.Contains("a workshop already", said.Message, StringComparison.Ordinal);
        said = await Assert.ThrowsAsync<StoreUnusable>(() => Move.ToFolderAsync(place, Home, TimeProvider.System, Guid.Empty, Stop));
        Assert.Contains("is not empty", said.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_photo_that_was_damaged_before_is_named_and_the_rest_goes()
    {
        await FillAsync();
        var photo = Directory.GetFiles(Path.Combine(Home, "photos"), "*.jpg", SearchOption.AllDirectories)[0];
        await File.WriteAllBytesAsync(photo, [1, 2, 3], Stop);
        var place = new WorkshopPlace(folder.Of("local"), await server.DatabaseAsync("moved_damaged"));
        var there = await Move.ToDatabaseAsync(Home, place, TimeProvider.System, Guid.Empty, Stop);
        Assert.Equal([Path.GetFileNameWithoutExtension(photo)], there.MissingPhotos);
        Assert.Equal(1, there.Photos);
        // Brought again, it is there with its bytes, at every bench.
        await using (var store = await place.OpenAsync(TimeProvider.System, new Guid(1, 0, 0, new byte[8]), Stop))
            await KeepPhotosAsync(store);
        await using var other = await (place with { Folder = folder.Of("other") }).OpenAsync(
            TimeProvider.System,
            new Guid(2, 0, 0, new byte[8]),
            Stop
        );
        var found = await other.Photos.OpenAsync(there.MissingPhotos[0], Stop);
        Assert.NotNull(found);
        await found.Content.DisposeAsync();
    }

    /// <summary>Between two questions of a move lies the work on a photo: a club's has hundreds.</summary>
    [Fact]
    public async Task A_move_may_take_longer_than_a_server_lets_an_open_transaction_rest()
    {
        await FillAsync();
        var place = new WorkshopPlace(folder.Of("local"), await server.DatabaseAsync("moved_slowly"));
        await Move.ToDatabaseAsync(Home, place, TimeProvider.System, Guid.Empty, Stop);
        var impatient = place with { Database = place.Database + ";Options='-c idle_in_transaction_session_timeout=1'" };
        var back = await Move.ToFolderAsync(impatient, folder.Of("back"), TimeProvider.System, Guid.Empty, Stop);
        Assert.Equal(2, back.Photos);
    }

    [Fact]
    public async Task A_move_whose_last_answer_was_lost_is_done_all_the_same()
    {
        await FillAsync();
        await using var line = new CutLine(server.Port);
        var place = new WorkshopPlace(folder.Of("local"), await server.DatabaseAsync("moved_cut"));
        await (await place.OpenAsync(TimeProvider.System, Guid.Empty, Stop)).DisposeAsync();
        line.CutAtNextEnd();
        var moving = Move.ToDatabaseAsync(
            Home,
            place with
            {
                Database = server.AddressOf("moved_cut", line.Port),
            },
            TimeProvider.System,
            Guid.Empty,
            Stop
        );
        while (!line.IsCut && !moving.IsCompleted)
            await Task.Delay(20, Stop);
        Assert.True(line.IsCut);
        line.Mend();
        Assert.Equal((2, 3, 2), ((await moving).Units, (await moving).Documents, (await moving).Photos));
    }

    [Fact]
    public async Task A_backup_of_a_database_is_restored_as_any_other()
    {
        await FillAsync();
        var place = new WorkshopPlace(folder.Of("local"), await server.DatabaseAsync("backed_up"));
        await Move.ToDatabaseAsync(Home, place, TimeProvider.System, Guid.Empty, Stop);
        var made = await Backup.MakeAsync(place, folder.Of("backups"), Draft.Noon, 10, Guid.Empty, Stop);
        Assert.Equal((2, 2, 2), (made.Units, made.Photos, made.NewPhotos));
        Assert.Empty(made.MissingPhotos);
        var again = await Backup.MakeAsync(place, folder.Of("backups"), Draft.Noon.AddHours(1), 10, Guid.Empty, Stop);
        Assert.Equal(0, again.NewPhotos);
        // One that rotted in the backup is brought from the database, though nobody looked at it here.
        var rotten = Directory.GetFiles(folder.Of("backups"), "*.jpg", SearchOption.AllDirectories)[0];
        await File.WriteAllBytesAsync(rotten, [1, 2, 3], Stop);
        Directory.Delete(Path.Combine(folder.Of("local"), "database", "photos"), recursive: true);
        var mended = await Backup.MakeAsync(place, folder.Of("backups"), Draft.Noon.AddHours(2), 10, Guid.Empty, Stop);
        Assert.Equal((1, 0), (mended.ReplacedPhotos, mended.MissingPhotos.Count));
        var restored = await Restore.RunAsync(folder.Of("backups"), null, folder.Of("restored"), false, Stop);
        Assert.Empty(restored.Problems);
        Assert.Equal(await SaidAsync(Home), await SaidAsync(folder.Of("restored")));
    }

    private async Task FillAsync()
    {
        await using var store = await Store.OpenAsync(Home, TimeProvider.System, Stop);
        var (unit, other) = (draft.Id(), draft.Id());
        await store.SaveDocumentAsync("sheet", Sheets.Id, 0, Sheets.Text, Draft.Noon, Stop);
        await store.SaveDocumentAsync("shop", "b", 0, "one", Draft.Noon, Stop);
        await store.SaveDocumentAsync("shop", "b", 1, "two", Draft.Noon, Stop);
        await store.AppendAsync(unit, 0, [.. EveryKind.Facts(draft).Select(f => draft.Entry(f))], Stop);
        await store.AppendAsync(other, 0, [draft.TakenIn("grün 13", Sheets.Id)], Stop);
        await store.SaveFoundAsync(other, 1, (await store.NextAsync(other, Stop))!, new UnitDoubts(1, new(["left"], 0.3), [], []), Stop);
        await KeepPhotosAsync(store);
    }

    private static async Task KeepPhotosAsync(Store store)
    {
        foreach (var n in (int[])[1, 2])
        {
            using var picture = new MemoryStream(Draft.Picture(n));
            await store.Photos.KeepAsync(picture, 1_000_000, Draft.Noon, Stop);
        }
    }

    /// <summary>All that a workshop says, entry by entry; read here by what the screens read it by.</summary>
    private static async Task<IReadOnlyList<string>> SaidAsync(string data)
    {
        var said = new List<string>();
        await using (var store = await Store.OpenAsync(data, TimeProvider.System, Stop))
        {
            foreach (var card in await store.CardsAsync(true, Stop))
            {
                var unit = (await store.ReadAsync(card.Id, Stop))!;
                said.Add($"{card} {DoubtsText.Write(unit.Doubts)}");
                said.AddRange(
                    unit.Journal.Select(e => FormattableString.Invariant($"{e.Number} {e.Id} {e.At:O} {e.By} {FactText.Write(e.Fact)}"))
                );
            }
            foreach (var kind in await store.DocumentKindsAsync(Stop))
                said.AddRange((await store.DocumentsAsync(kind, Stop)).Select(d => d.ToString()));
            said.Add((await store.SheetAsync(Sheets.Id, 1, Stop))!.Title);
        }
        foreach (
            var photo in Directory
                .GetFiles(Path.Combine(data, "photos"), "*.jpg", SearchOption.AllDirectories)
                .Order(StringComparer.Ordinal)
        )
            said.Add($"{Path.GetFileName(photo)} {Convert.ToHexString(await File.ReadAllBytesAsync(photo, Stop))}");
        return said;
    }
}
