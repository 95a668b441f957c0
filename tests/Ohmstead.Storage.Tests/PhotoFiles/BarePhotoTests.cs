using System.Buffers.Binary;
using System.IO.Hashing;
using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Ohmstead.Storage.Backups;
using Ohmstead.Storage.PhotoFiles;
using Ohmstead.Storage.Zips;
using Ohmstead.Workshop.Journal;
using SkiaSharp;

namespace Ohmstead.Storage.Tests.PhotoFiles;

/// <summary>Photos lose what the camera wrote beside the picture; the picture, its turn and its colors stay.</summary>
public sealed class BarePhotoTests : IAsyncLifetime
{
    /// <summary>Stands in every place where a camera writes words.</summary>
    private const string Secret = "N 47 21 serial 0815 Anycam";

    private readonly TempFolder folder = new();
    private readonly Draft draft = new();
    private Store store = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => store = await Store.OpenAsync(folder.Of("data"), TimeProvider.System, Stop);

    public async ValueTask DisposeAsync()
    {
        await store.DisposeAsync();
        folder.Dispose();
    }

    [Theory]
    [InlineData(SKEncodedImageFormat.Jpeg, 1)]
    [InlineData(SKEncodedImageFormat.Jpeg, 6)]
    [InlineData(SKEncodedImageFormat.Png, 1)]
    [InlineData(SKEncodedImageFormat.Webp, 1)]
    public async Task Place_and_device_are_gone_and_the_hash_is_of_what_is_kept(SKEncodedImageFormat format, byte turn)
    {
        var photo = WithHeaders(format, turn);
        Assert.Contains(Secret, Latin(photo), StringComparison.Ordinal);
        var kept = await KeepAsync(photo);
        var bytes = await BytesAsync(kept);
        Assert.DoesNotContain(Secret, Latin(bytes), StringComparison.Ordinal);
        Assert.DoesNotContain("http://ns.adobe.com", Latin(bytes), StringComparison.Ordinal);
        Assert.Equal(kept, Convert.ToHexStringLower(SHA256.HashData(bytes)));
        using var before = SKCodec.Create(new MemoryStream(photo));
        using var after = SKCodec.Create(new MemoryStream(bytes));
        Assert.Equal((int)turn, (int)after.EncodedOrigin);
        Assert.Equal(before.Info.Size, after.Info.Size);
        Assert.Equal(SKBitmap.Decode(photo).Bytes, SKBitmap.Decode(bytes).Bytes);
        // Taken in again, what is bare stays as it is, byte for byte.
        Assert.Equal(kept, await KeepAsync(bytes));
    }

    [Fact]
    public async Task A_photo_without_headers_stays_as_it_came()
    {
        var photo = Draft.Picture(4);
        Assert.Equal(photo, await BytesAsync(await KeepAsync(photo)));
    }

    [Fact]
    public void A_picture_whose_parts_run_beyond_its_end_is_not_followed()
    {
        var photo = WithHeaders(SKEncodedImageFormat.Jpeg, 1);
        Assert.Null(BarePhoto.Of(photo[..40], "image/jpeg", 1));
        var png = Draft.Picture(1, format: SKEncodedImageFormat.Png);
        png[8] = 0x7F;
        Assert.Null(BarePhoto.Of(png, "image/png", 1));
        png[8] = 0xFF;
        Assert.Null(BarePhoto.Of(png, "image/png", 1));
    }

    [Fact]
    public async Task An_older_photo_keeps_its_hash_and_goes_out_without_headers_and_in_again_under_its_hash()
    {
        var photo = WithHeaders(SKEncodedImageFormat.Jpeg, 6);
        var hash = Convert.ToHexStringLower(SHA256.HashData(photo));
        var unit = draft.Id();
        await OldAsync(photo, hash);
        await store.AppendAsync(unit, 0, [draft.TakenIn(), draft.Entry(new PhotoAdded(hash, "", ""))], Stop);
        using var zip = new MemoryStream();
        Assert.Empty((await ZipOut.WriteAllAsync(zip, store, store.Photos, Draft.Noon, Stop)).MissingPhotos);
        // Already in the zip, before any other workshop takes it in.
        Assert.DoesNotContain(Secret, Latin(zip.ToArray()), StringComparison.Ordinal);
        zip.Position = 0;
        await using var other = await Store.OpenAsync(folder.Of("other"), TimeProvider.System, Stop);
        var taken = await ZipIn.TakeAsync(zip, other, other.Photos, Draft.Noon, new(), DifferingDocuments.KeepMine, Stop);
        Assert.Empty(taken.Problems);
        Assert.Empty(taken.Told);
        await using var content = (await other.Photos.OpenAsync(hash, Stop))!.Content;
        using var bytes = new MemoryStream();
        await content.CopyToAsync(bytes, Stop);
        Assert.DoesNotContain(Secret, Latin(bytes.ToArray()), StringComparison.Ordinal);
        using var codec = SKCodec.Create(new MemoryStream(bytes.ToArray()));
        Assert.Equal(6, (int)codec.EncodedOrigin);
        // Its file has another hash than its name says; a backup and a restore go by the file.
        var made = await Backup.MakeAsync(folder.Of("other"), folder.Of("backups"), Draft.Noon, 4, Stop);
        Assert.Empty(made.MissingPhotos);
        var restored = await Restore.RunAsync(folder.Of("backups"), null, folder.Of("new"), false, Stop);
        Assert.Empty(restored.Problems);
        Assert.Empty(restored.MissingPhotos);
        // Where the photo is as it was, nothing of it changes.
        zip.Position = 0;
        await ZipIn.TakeAsync(zip, store, store.Photos, Draft.Noon, new(), DifferingDocuments.KeepMine, Stop);
        Assert.Equal(photo, await BytesAsync(hash));
    }

    /// <summary>As a version before this one kept it: the file as it came, under its own hash.</summary>
    private async Task OldAsync(byte[] photo, string hash)
    {
        var file = new PhotoPlaces(folder.Of("data")).File(hash, ".jpg");
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        await File.WriteAllBytesAsync(file, photo, Stop);
        await using var context = new WorkshopContext(SqliteFile.Options(folder.Of("data", SqliteFile.Name)));
        context.Photos.Add(
            new()
            {
                Hash = hash,
                Bytes = photo.Length,
                WidthPixels = 64,
                HeightPixels = 48,
                MediaType = "image/jpeg",
                At = Draft.Noon,
            }
        );
        await context.SaveChangesAsync(Stop);
    }

    private async Task<string> KeepAsync(byte[] photo)
    {
        using var stream = new MemoryStream(photo);
        var kept = await store.Photos.KeepAsync(stream, 1_000_000, Draft.Noon, Stop);
        Assert.Equal("", kept.Refused);
        return kept.Hash;
    }

    private async Task<byte[]> BytesAsync(string hash)
    {
        await using var content = (await store.Photos.OpenAsync(hash, Stop))!.Content;
        using var bytes = new MemoryStream();
        await content.CopyToAsync(bytes, Stop);
        return bytes.ToArray();
    }

    private static string Latin(byte[] bytes) => Encoding.Latin1.GetString(bytes);

    /// <summary>A picture with words of a camera in every place that its format has for them, and behind its end.</summary>
    private static byte[] WithHeaders(SKEncodedImageFormat format, byte turn)
    {
        var photo = Draft.Picture(7, format: format);
        var words = Encoding.ASCII.GetBytes(Secret);
        return format switch
        {
            SKEncodedImageFormat.Jpeg =>
            [
                .. photo[..2],
                .. Segment(0xE1, [.. "Exif\0\0"u8, .. Exif(turn, words)]),
                .. Segment(0xE1, [.. "http://ns.adobe.com/xap/1.0/\0"u8, .. words]),
                .. Segment(0xED, [.. "Photoshop 3.0\0"u8, .. words]),
                .. Segment(0xFE, words),
                .. photo[2..],
                .. words,
            ],
            SKEncodedImageFormat.Png =>
            [
                // Before the last part, which has no body: 12 bytes.
                .. photo[..^12],
                .. Chunk("tEXt", words),
                .. Chunk("eXIf", Exif(1, words)),
                .. photo[^12..],
                .. words,
            ],
            _ => Riff([.. photo, .. RiffChunk("EXIF", Exif(1, words)), .. RiffChunk("XMP ", words)], words),
        };
    }

    /// <summary>Exif with an orientation and the maker (0x010F), whose words stand behind the two tags.</summary>
    private static byte[] Exif(byte turn, byte[] words) =>
        [
            .. "MM\0*"u8,
            0,
            0,
            0,
            8,
            0,
            2,
            0x01,
            0x0F,
            0,
            2,
            0,
            0,
            0,
            (byte)words.Length,
            0,
            0,
            0,
            38,
            0x01,
            0x12,
            0,
            3,
            0,
            0,
            0,
            1,
            0,
            turn,
            0,
            0,
            0,
            0,
            0,
            0,
            .. words,
        ];

    private static byte[] Segment(byte mark, byte[] body) => [0xFF, mark, (byte)((body.Length + 2) >> 8), (byte)(body.Length + 2), .. body];

    private static byte[] Chunk(string name, byte[] body)
    {
        var length = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(length, body.Length);
        byte[] named = [.. Encoding.ASCII.GetBytes(name), .. body];
        var sum = new byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(sum, Crc32.HashToUInt32(named));
        return [.. length, .. named, .. sum];
    }

    private static byte[] RiffChunk(string name, byte[] body)
    {
        var length = new byte[4];
        BinaryPrimitives.WriteInt32LittleEndian(length, body.Length);
        return [.. Encoding.ASCII.GetBytes(name), .. length, .. body, .. new byte[body.Length & 1]];
    }

    private static byte[] Riff(byte[] file, byte[] behind)
    {
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(4), file.Length - 8);
        return [.. file, .. behind];
    }
}
