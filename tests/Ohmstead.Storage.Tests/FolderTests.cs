using System.Buffers.Binary;
using System.IO.Hashing;
using Microsoft.EntityFrameworkCore;
using Ohmstead.Workshop.Stores;
using SkiaSharp;

namespace Ohmstead.Storage.Tests;

/// <summary>What only the store in a folder has: its lock, its tables, its files.</summary>
public sealed class FolderTests : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly Draft draft = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task A_second_program_on_a_folder_is_told_so_and_may_have_it_afterwards()
    {
        var first = await OpenAsync();
        var refused = await Assert.ThrowsAsync<StoreUnusable>(OpenAsync);
        Assert.Contains("in use by another ohmstead", refused.Message, StringComparison.Ordinal);
        await first.DisposeAsync();
        await (await OpenAsync()).DisposeAsync();
    }

    [Fact]
    public async Task A_database_that_is_none_is_told_and_left_as_it_is()
    {
        var text = new string('x', 5000);
        await File.WriteAllTextAsync(folder.Of(SqliteFile.Name), text, Stop);
        var told = await Assert.ThrowsAsync<StoreUnusable>(OpenAsync);
        Assert.Contains("is damaged", told.Message, StringComparison.Ordinal);
        Assert.Contains("ohmstead restore", told.Message, StringComparison.Ordinal);
        Assert.Equal(text, await File.ReadAllTextAsync(folder.Of(SqliteFile.Name), Stop));
    }

    [Fact]
    public void The_tables_are_those_of_the_last_migration()
    {
        using var context = new WorkshopContext(SqliteFile.Options(folder.Of("design.db")));
        Assert.False(
            context.Database.HasPendingModelChanges(),
            "the model has changed: dotnet ef migrations add NAME -p src/Ohmstead.Storage -s src/Ohmstead.Storage"
        );
    }

    [Fact]
    public async Task Tables_of_an_older_version_are_copied_then_brought_up_and_the_copy_put_back_is_the_old_version_again()
    {
        var unit = draft.Id();
        await FirstVersionAsync(unit);
        await using (var store = await OpenAsync())
        {
            Assert.Equal("tag 12", (await store.ReadAsync(unit, Stop))!.Card.Tag);
            await store.AppendAsync(unit, 1, [draft.Note("entered by the new version")], Stop);
            Assert.Equal("", (await KeepAsync(store, Draft.Picture(1))).Refused);
        }
        var copy = Assert.Single(Directory.GetFiles(folder.Of("copies"), "*.db"));
        Assert.Empty(SqliteFile.Faults(copy));
        Assert.Equal([First], await AppliedAsync(copy));
        // Back: the old program finds its own tables, and what was entered before; and the new one may be tried again.
        SqliteFile.Close(folder.Of(SqliteFile.Name));
        File.Copy(copy, folder.Of(SqliteFile.Name), overwrite: true);
        Assert.Equal([First], await AppliedAsync(folder.Of(SqliteFile.Name)));
        await using var again = await OpenAsync();
        Assert.Equal(1, (await again.ReadAsync(unit, Stop))!.LastNumber);
    }

    [Fact]
    public async Task A_lock_left_by_a_run_that_was_killed_while_it_changed_the_tables_does_not_hold_the_next()
    {
        var unit = draft.Id();
        await FirstVersionAsync(unit);
        await RunAsync("CREATE TABLE IF NOT EXISTS __EFMigrationsLock (Id INTEGER PRIMARY KEY, Timestamp TEXT NOT NULL)");
        await RunAsync("INSERT OR REPLACE INTO __EFMigrationsLock VALUES (1, '2026-01-01')");
        // Held, it would wait for ever.
        await using var store = await OpenAsync().WaitAsync(TimeSpan.FromMinutes(2), Stop);
        Assert.Equal("tag 12", (await store.ReadAsync(unit, Stop))!.Card.Tag);
    }

    [Fact]
    public async Task What_is_no_photo_is_refused_in_words_and_leaves_nothing()
    {
        await using var store = await OpenAsync();
        Assert.Contains("not a picture", await RefusedAsync(store, "<svg/>"u8.ToArray()), StringComparison.Ordinal);
        Assert.Contains("not a picture", await RefusedAsync(store, []), StringComparison.Ordinal);
        Assert.Contains("larger than 0.1 MB", await RefusedAsync(store, new byte[100_001]), StringComparison.Ordinal);
        // A PNG may say of itself what it likes: here 40,000 × 40,000 pixels.
        var png = Draft.Picture(1, format: SKEncodedImageFormat.Png);
        foreach (var at in (int[])[18, 22])
            (png[at], png[at + 1]) = (0x9C, 0x40);
        BinaryPrimitives.WriteUInt32BigEndian(png.AsSpan(29), Crc32.HashToUInt32(png.AsSpan(12, 17)));
        Assert.Contains("40000 × 40000", await RefusedAsync(store, png), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(folder.Of("photos"), "*", SearchOption.AllDirectories));
    }

    [Theory]
    [InlineData(SKEncodedImageFormat.Jpeg, "image/jpeg")]
    [InlineData(SKEncodedImageFormat.Png, "image/png")]
    [InlineData(SKEncodedImageFormat.Webp, "image/webp")]
    public async Task A_thumbnail_is_a_small_jpeg_made_once(SKEncodedImageFormat format, string mediaType)
    {
        await using var store = await OpenAsync();
        var hash = (await KeepAsync(store, Draft.Picture(3, 1600, 1200, format))).Hash;
        await using (var original = (await store.Photos.OpenAsync(hash, Stop))!.Content)
            Assert.Equal(mediaType, (await store.Photos.OpenAsync(hash, Stop))!.MediaType);
        var small = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => store.Photos.OpenThumbnailAsync(hash, Stop)));
        foreach (var photo in small)
        {
            await using var content = photo!.Content;
            using var codec = SKCodec.Create(content);
            Assert.Equal(
                ("image/jpeg", SKEncodedImageFormat.Jpeg, 320, 240),
                (photo.MediaType, codec.EncodedFormat, codec.Info.Width, codec.Info.Height)
            );
        }
        var path = Assert.Single(Directory.GetFiles(folder.Of("thumbnails"), "*", SearchOption.AllDirectories));
        var made = File.GetLastWriteTimeUtc(path);
        await (await store.Photos.OpenThumbnailAsync(hash, Stop))!.Content.DisposeAsync();
        Assert.Equal(made, File.GetLastWriteTimeUtc(path));
    }

    /// <summary>The stored picture is 640 × 480 with a red corner; each origin says where that corner belongs.</summary>
    [Theory]
    [InlineData(1, 320, 240, "top left")]
    [InlineData(2, 320, 240, "top right")]
    [InlineData(3, 320, 240, "bottom right")]
    [InlineData(4, 320, 240, "bottom left")]
    [InlineData(5, 240, 320, "top left")]
    [InlineData(6, 240, 320, "top right")]
    [InlineData(7, 240, 320, "bottom right")]
    [InlineData(8, 240, 320, "bottom left")]
    public async Task A_picture_taken_with_a_turned_camera_stands_upright(byte origin, int width, int height, string corner)
    {
        await using var store = await OpenAsync();
        var kept = await KeepAsync(store, Turned(origin));
        Assert.Equal((width * 2, height * 2), (kept.WidthPixels, kept.HeightPixels));
        await using var content = (await store.Photos.OpenThumbnailAsync(kept.Hash, Stop))!.Content;
        using var small = SKBitmap.Decode(content);
        Assert.Equal((width, height), (small.Width, small.Height));
        foreach (
            var (name, x, y) in new[]
            {
                ("top left", 20, 20),
                ("top right", width - 20, 20),
                ("bottom left", 20, height - 20),
                ("bottom right", width - 20, height - 20),
            }
        )
            Assert.Equal(name == corner, small.GetPixel(x, y) is { Red: > 200, Green: < 80 });
    }

    private static byte[] Turned(byte origin)
    {
        using var bitmap = new SKBitmap(640, 480);
        bitmap.Erase(SKColors.White);
        using (var canvas = new SKCanvas(bitmap))
        using (var paint = new SKPaint { Color = SKColors.Red })
            canvas.DrawRect(0, 0, 160, 120, paint);
        var jpeg = bitmap.Encode(SKEncodedImageFormat.Jpeg, 90).ToArray();
        // After the start mark: an Exif segment that holds one tag, 0x0112, the orientation.
        byte[] exif =
        [
            0xFF,
            0xE1,
            0,
            34,
            .. "Exif\0\0"u8,
            .. "MM\0*"u8,
            0,
            0,
            0,
            8,
            0,
            1,
            0x01,
            0x12,
            0,
            3,
            0,
            0,
            0,
            1,
            0,
            origin,
            0,
            0,
            0,
            0,
            0,
            0,
        ];
        return [.. jpeg[..2], .. exif, .. jpeg[2..]];
    }

    private const string First = "20261125132358_First";

    /// <summary>A folder as the first version left it, with one unit.</summary>
    private async Task FirstVersionAsync(Guid unit)
    {
        await using (var store = await OpenAsync())
            await store.AppendAsync(unit, 0, [draft.TakenIn()], Stop);
        await using (var context = new WorkshopContext(SqliteFile.Options(folder.Of(SqliteFile.Name))))
            await context.Database.MigrateAsync(First, Stop);
        SqliteFile.Close(folder.Of(SqliteFile.Name));
        Assert.Equal([First], await AppliedAsync(folder.Of(SqliteFile.Name)));
    }

    private static async Task<IEnumerable<string>> AppliedAsync(string path)
    {
        await using var context = new WorkshopContext(SqliteFile.ReadOnlyOptions(path));
        return await context.Database.GetAppliedMigrationsAsync(Stop);
    }

    private async Task RunAsync(string command)
    {
        await using var context = new WorkshopContext(SqliteFile.Options(folder.Of(SqliteFile.Name)));
        await context.Database.ExecuteSqlRawAsync(command, Stop);
    }

    private Task<Store> OpenAsync() => Store.OpenAsync(folder.Path, TimeProvider.System, Stop);

    private static async Task<PhotoKept> KeepAsync(Store store, byte[] bytes)
    {
        using var content = new MemoryStream(bytes);
        return await store.Photos.KeepAsync(content, 10_000_000, Draft.Noon, Stop);
    }

    private static async Task<string> RefusedAsync(Store store, byte[] bytes)
    {
        using var content = new MemoryStream(bytes);
        var kept = await store.Photos.KeepAsync(content, 100_000, Draft.Noon, Stop);
        Assert.Equal("", kept.Hash);
        return kept.Refused;
    }
}
