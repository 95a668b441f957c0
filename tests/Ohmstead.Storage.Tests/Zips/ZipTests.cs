using System.IO.Compression;
using System.Text;
using System.Text.Json;
using Ohmstead.Storage.Zips;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Storage.Tests.Zips;

/// <summary>Workshops out and in again, and zips that are not what they say.</summary>
public sealed class ZipTests : IAsyncLifetime
{
    private readonly TempFolder folder = new();
    private readonly Draft draft = new();
    private Store from = null!;
    private Store to = null!;
    private Guid first;
    private Guid second;
    private string photo = "";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        (from, to) = (
            await Store.OpenAsync(folder.Of("from"), TimeProvider.System, Stop),
            await Store.OpenAsync(folder.Of("to"), TimeProvider.System, Stop)
        );
        (first, second) = (draft.Id(), draft.Id());
        await from.SaveDocumentAsync("sheet", Sheets.Id, 0, Sheets.Text, Draft.Noon, Stop);
        await from.SaveDocumentAsync("shop", "shop", 0, JsonSerializer.Serialize(UsualShop.Make(), FactText.Options), Draft.Noon, Stop);
        using var picture = new MemoryStream(Draft.Picture(7));
        photo = (await from.Photos.KeepAsync(picture, 1_000_000, Draft.Noon, Stop)).Hash;
        await from.AppendAsync(
            first,
            0,
            [draft.TakenIn("12", Sheets.Id), draft.Entry(new PhotoAdded(photo, "front", "")), draft.Note("ünï \"quoted\"\nline")],
            Stop
        );
        await from.AppendAsync(
            second,
            0,
            [draft.TakenIn("13"), draft.Reading("left-full", 18.6), draft.Entry(new Unread("""{"kind":"of-next-year","x":1}"""))],
            Stop
        );
    }

    public async ValueTask DisposeAsync()
    {
        await from.DisposeAsync();
        await to.DisposeAsync();
        folder.Dispose();
    }

    [Fact]
    public async Task A_workshop_comes_into_an_empty_one_equal_in_every_entry_document_and_photo()
    {
        var taken = await TakeAsync(await AllAsync());
        Assert.Equal((2, 2, 6, 1, 2), (taken.Units, taken.NewUnits, taken.NewEntries, taken.Photos, taken.NewDocuments));
        Assert.Empty(taken.Told);
        foreach (var unit in (Guid[])[first, second])
            Assert.Equal(await JournalAsync(from, unit), await JournalAsync(to, unit));
        Assert.Equal(await from.CardsAsync(true, Stop), await to.CardsAsync(true, Stop));
        Assert.Equal(Sheets.Text, (await to.ReadDocumentAsync("sheet", Sheets.Id, Stop))!.Text);
        await using var content = (await to.Photos.OpenAsync(photo, Stop))!.Content;
        Assert.Equal(Draft.Picture(7).Length, content.Length);
    }

    [Fact]
    public async Task The_drawer_goes_with_it_with_the_photos_of_its_bins_and_is_not_doubled_by_a_second_zip()
    {
        using var picture = new MemoryStream(Draft.Picture(8));
        var front = (await from.Photos.KeepAsync(picture, 1_000_000, Draft.Noon, Stop)).Hash;
        var bin = draft.Id();
        DrawerEntry[] made =
        [
            new(
                draft.Id(),
                Draft.Noon,
                "bench",
                [
                    new BinSaid(bin)
                    {
                        Tag = "C1",
                        Name = "Roller",
                        Photo = front,
                    },
                    new BinCounted(bin, 5),
                ]
            ),
            new(draft.Id(), Draft.Noon.AddMinutes(1), "bench", [new PartsUsed(bin, 2, "")]),
        ];
        foreach (var entry in made)
            await from.SaveDocumentAsync(DrawerEntry.DocumentKind, entry.DocumentId, 0, entry.Write(), Draft.Noon, Stop);
        var zip = await AllAsync();
        Assert.Equal((2, 4), (await TakeAsync(zip) is { } taken ? (taken.Photos, taken.NewDocuments) : default));
        Assert.Equal(0, (await TakeAsync(zip)).NewDocuments);
        var entries = (await to.DocumentsAsync(DrawerEntry.DocumentKind, Stop)).Select(d => DrawerEntry.Read(d.Id, d.Text)!);
        var read = Drawer.Of(entries, await to.FittedAsync(Stop)).Find(bin)!;
        Assert.Equal(("Roller", front, 3), (read.Name, read.Photo, read.Count));
        await using var content = (await to.Photos.OpenAsync(front, Stop))!.Content;
        Assert.Equal(Draft.Picture(8).Length, content.Length);
    }

    [Fact]
    public async Task Taking_the_same_zip_twice_changes_nothing_the_second_time()
    {
        var zip = await AllAsync();
        await TakeAsync(zip);
        var again = await TakeAsync(zip);
        Assert.Equal((0, 0, 0), (again.NewUnits, again.NewEntries, again.NewDocuments));
        Assert.Equal(await JournalAsync(from, first), await JournalAsync(to, first));
    }

    [Fact]
    public async Task A_unit_that_is_here_gets_the_entries_that_it_lacks_and_keeps_its_own()
    {
        await TakeAsync(await AllAsync());
        await to.AppendAsync(first, 3, [draft.Note("only here")], Stop);
        await from.AppendAsync(first, 3, [draft.Note("only there")], Stop);
        var taken = await TakeAsync(await UnitAsync(first));
        Assert.Equal((1, 0, 1), (taken.Units, taken.NewUnits, taken.NewEntries));
        var notes = (await to.ReadAsync(first, Stop))!.All<Noted>().Select(n => n.Fact.Words);
        Assert.Equal(["only here", "only there"], notes.TakeLast(2));
    }

    [Fact]
    public async Task A_sheet_that_differs_stays_as_it_is_here_and_that_is_told()
    {
        var own = Sheets.Text.Replace(Sheets.Title, "Our own title", StringComparison.Ordinal);
        await to.SaveDocumentAsync("sheet", Sheets.Id, 0, own, Draft.Noon, Stop);
        var taken = await TakeAsync(await UnitAsync(first));
        Assert.Contains("differs from the one here", Assert.Single(taken.Told), StringComparison.Ordinal);
        Assert.Equal(own, (await to.ReadDocumentAsync("sheet", Sheets.Id, Stop))!.Text);
        Assert.Equal("Our own title", Assert.Single(await to.CardsAsync(true, Stop)).Kind);
    }

    [Fact]
    public async Task Of_sheets_that_differ_theirs_can_be_taken_and_ours_is_kept_as_the_version_before()
    {
        var own = Sheets.Text.Replace(Sheets.Title, "Our own title", StringComparison.Ordinal);
        await to.SaveDocumentAsync("sheet", Sheets.Id, 0, own, Draft.Noon, Stop);
        var taken = await TakeAsync(await UnitAsync(first), DifferingDocuments.TakeTheirs);
        Assert.Contains("version 1 is kept", Assert.Single(taken.Told), StringComparison.Ordinal);
        var stands = (await to.ReadDocumentAsync("sheet", Sheets.Id, Stop))!;
        Assert.Equal((2, Sheets.Text), (stands.Version, stands.Text));
        Assert.Equal(Sheets.Title, Assert.Single(await to.CardsAsync(true, Stop)).Kind);
        // Taken again, nothing differs any more.
        Assert.Empty((await TakeAsync(await UnitAsync(first), DifferingDocuments.TakeTheirs)).Told);
    }

    [Fact]
    public async Task An_entry_altered_outside_changes_nothing_here_and_is_told()
    {
        await TakeAsync(await UnitAsync(first));
        var name = ZipNames.Unit(first);
        var zip = await ChangedAsync(z =>
        {
            using var reader = new StreamReader(z.GetEntry(name)!.Open());
            var text = reader.ReadToEnd();
            reader.Dispose();
            Put(z, name, Encoding.UTF8.GetBytes(text.Replace("\"front\"", "\"back\"", StringComparison.Ordinal)));
        });
        var taken = await TakeAsync(zip);
        Assert.Contains("1 entries", Assert.Single(taken.Told), StringComparison.Ordinal);
        Assert.Equal(await JournalAsync(from, first), await JournalAsync(to, first));
    }

    [Fact]
    public async Task A_photo_that_is_gone_is_told_on_the_way_out_and_on_the_way_in()
    {
        File.Delete(folder.Of("from", "photos", photo[..2], photo + ".jpg"));
        using var zip = new MemoryStream();
        var written = await ZipOut.WriteAllAsync(zip, from, from.Photos, Draft.Noon, Stop);
        Assert.Equal([photo], written.MissingPhotos);
        Assert.Contains("1 photos", Assert.Single((await TakeAsync(zip.ToArray())).Told), StringComparison.Ordinal);
    }

    public static TheoryData<string, string, string> Hostile() =>
        new()
        {
            { "climbs", "../../evil.json", "climbs out of the folder" },
            { "climbs-back", "photos\\..\\..\\evil.json", "climbs out of the folder" },
            { "absolute", "/etc/evil.json", "is an absolute path" },
            { "drive", "C:\\evil.json", "is an absolute path" },
            { "foreign", "readme.txt", "is no file of a workshop" },
            { "below", "units/a/b.json", "is no file of a workshop" },
            { "unlisted", "documents/777.json", "does not list documents/777.json" },
            { "twice", "ohmstead.json", "is in the zip twice" },
        };

    [Theory]
    [MemberData(nameof(Hostile))]
    public async Task A_zip_with_a_file_that_does_not_belong_is_refused_whole(string _, string name, string why)
    {
        var zip = await ChangedAsync(z => Put(z, name, "{}"u8.ToArray()));
        await RefusedAsync(zip, name, why);
    }

    [Fact]
    public async Task A_bomb_is_refused_by_what_it_says_and_by_what_comes_out()
    {
        var zip = await ChangedAsync(z => Put(z, "documents/002.json", new byte[80_000_000]));
        await RefusedAsync(zip, "the zip", "more than 200 times");
        // The same with its size given as 10 bytes: 0x04C4B400 is 80,000,000.
        for (var at = 0; at < zip.Length - 4; at++)
            if (zip.AsSpan(at, 4).SequenceEqual((byte[])[0x00, 0xB4, 0xC4, 0x04]))
                (zip[at], zip[at + 1], zip[at + 2], zip[at + 3]) = (10, 0, 0, 0);
        await RefusedAsync(zip, "documents/002.json", "");
    }

    [Fact]
    public async Task A_photo_of_other_bytes_and_an_image_that_is_none_are_refused()
    {
        var name = $"photos/{photo}.jpg";
        await RefusedAsync(await ChangedAsync(z => Put(z, name, Draft.Picture(8))), name, "holds other bytes");
        await RefusedAsync(await ChangedAsync(z => Put(z, name, "<script>"u8.ToArray())), name, "this is not a picture");
        await RefusedAsync(await ChangedAsync(z => z.GetEntry(name)!.Delete()), "ohmstead.json", "is not in the zip");
    }

    [Theory]
    [InlineData("{\"name\":5}", "$.name")]
    [InlineData("{}", "$")]
    [InlineData("[]", "$")]
    [InlineData("not json", "$")]
    public async Task Settings_of_wrong_types_are_refused(string text, string path) =>
        await RefusedAsync(
            await ChangedAsync(z => Put(z, "documents/002.json", Encoding.UTF8.GetBytes(text))),
            $"documents/002.json: {path}",
            ""
        );

    [Theory]
    [InlineData("\"tag\":\"12\"", "\"tag\":12", "$.entries[0].fact.tag")]
    [InlineData("\"tag\":\"12\"", "\"tag\":null", "$.entries[0].fact.tag")]
    [InlineData("\"tag\":\"12\",", "", "$.entries[0].fact.tag")]
    [InlineData("\"number\":2", "\"number\":7", "$.entries[1].number")]
    [InlineData("\"number\":2", "\"number\":\"2\"", "$.entries[1].number")]
    [InlineData("\"kind\":\"taken-in\"", "\"kind\":\"of-next-year\"", "$.entries[0].fact.kind")]
    [InlineData("\"ohmstead\": \"journal/1\"", "\"ohmstead\": \"journal/9\"", "$.ohmstead")]
    [InlineData("\"by\":\"bench\"", "\"by\":[]", "$.entries[0].by")]
    [InlineData("\"entries\": [", "\"entries\": {", "$")]
    public async Task A_journal_of_wrong_types_is_refused_with_the_place(string right, string wrong, string path)
    {
        var name = ZipNames.Unit(first);
        var zip = await ChangedAsync(z =>
        {
            using var reader = new StreamReader(z.GetEntry(name)!.Open());
            var text = reader.ReadToEnd();
            reader.Dispose();
            Assert.Contains(right, text, StringComparison.Ordinal);
            Put(z, name, Encoding.UTF8.GetBytes(text.Replace(right, wrong, StringComparison.Ordinal)));
        });
        await RefusedAsync(zip, $"{name}: {path}", "");
    }

    [Fact]
    public async Task An_entry_that_is_here_in_another_unit_is_refused_and_no_unit_comes_in()
    {
        var journal = (await from.ReadAsync(second, Stop))!.Journal;
        await to.AppendAsync(
            draft.Id(),
            0,
            [draft.TakenIn("14"), new NewEntry(journal[1].Id, Draft.Noon, "bench", new Noted("stolen id"))],
            Stop
        );
        var taken = await TakeAsync(await AllAsync());
        Assert.Contains("another unit", Assert.Single(taken.Problems).Right, StringComparison.Ordinal);
        Assert.Equal("14", Assert.Single(await to.CardsAsync(true, Stop)).Tag);
        Assert.Null(await to.ReadDocumentAsync("sheet", Sheets.Id, Stop));
    }

    [Theory]
    [InlineData("")]
    [InlineData("this is no zip at all, but it is long enough to be looked at")]
    public async Task What_is_no_zip_is_refused(string text) => await RefusedAsync(Encoding.UTF8.GetBytes(text), "the zip", "is no zip");

    [Fact]
    public async Task A_zip_damaged_anywhere_is_refused_or_taken_whole_and_never_breaks_the_program()
    {
        var sound = await AllAsync();
        var random = new Random(42);
        for (var n = 0; n < 150; n++)
        {
            var spoilt = (byte[])sound.Clone();
            for (var k = random.Next(1, 4); k > 0; k--)
                spoilt[random.Next(spoilt.Length)] = (byte)random.Next(256);
            var taken = await TakeAsync(n % 3 == 0 ? spoilt[..random.Next(spoilt.Length)] : spoilt);
            if (taken.Problems.Count > 0)
                continue;
            foreach (var unit in (Guid[])[first, second])
                Assert.True((await to.ReadAsync(unit, Stop))!.LastNumber >= 3);
        }
    }

    private async Task RefusedAsync(byte[] zip, string where, string why)
    {
        var taken = await TakeAsync(zip);
        Assert.Contains(
            taken.Problems,
            p => p.ToString().Contains(where, StringComparison.Ordinal) && p.ToString().Contains(why, StringComparison.Ordinal)
        );
        Assert.Empty(await to.CardsAsync(true, Stop));
        Assert.Empty(await to.DocumentKindsAsync(Stop));
        Assert.Empty(Directory.GetFiles(folder.Of("to", "photos"), "*", SearchOption.AllDirectories));
        Assert.Empty(Directory.GetFiles(folder.Path, "evil*", SearchOption.AllDirectories));
    }

    private async Task<ZipTaken> TakeAsync(byte[] zip, DifferingDocuments differing = DifferingDocuments.KeepMine)
    {
        using var stream = new MemoryStream(zip);
        return await ZipIn.TakeAsync(stream, to, to.Photos, Draft.Noon, new ZipLimits(), differing, Stop);
    }

    private async Task<byte[]> AllAsync()
    {
        using var zip = new MemoryStream();
        await ZipOut.WriteAllAsync(zip, from, from.Photos, Draft.Noon, Stop);
        return zip.ToArray();
    }

    private async Task<byte[]> UnitAsync(Guid unit)
    {
        using var zip = new MemoryStream();
        Assert.NotNull(await ZipOut.WriteUnitAsync(zip, unit, from, from.Photos, Draft.Noon, Stop));
        return zip.ToArray();
    }

    private async Task<byte[]> ChangedAsync(Action<ZipArchive> change)
    {
        using var stream = new MemoryStream();
        await stream.WriteAsync(await AllAsync(), Stop);
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Update, leaveOpen: true))
            change(zip);
        return stream.ToArray();
    }

    private static void Put(ZipArchive zip, string name, byte[] bytes)
    {
        if (name != ZipNames.Contents)
            zip.GetEntry(name)?.Delete();
        using var to = zip.CreateEntry(name).Open();
        to.Write(bytes);
    }

    private static async Task<IEnumerable<(Guid, int, DateTimeOffset, string, string)>> JournalAsync(Store store, Guid unit) =>
        (await store.ReadAsync(unit, Stop))!.Journal.Select(e => (e.Id, e.Number, e.At, e.By, FactText.Write(e.Fact)));
}
