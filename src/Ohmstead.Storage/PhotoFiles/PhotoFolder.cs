using System.Buffers;
using System.Globalization;
using System.Security.Cryptography;
using Ohmstead.Storage.Rows;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Storage.PhotoFiles;

/// <summary>
/// Photos in the data folder: first the file, written through to the disk, then its row. Where the database keeps them
/// (<see cref="Transactions.KeepsPhotos"/>), their bytes go in with the row, and the folder holds copies of those that were looked at here.
/// </summary>
internal sealed class PhotoFolder : IPhotos, IDisposable
{
    private readonly PhotoPlaces places;
    private readonly PhotoRows rows;
    private readonly string mark;
    private long taken;

    /// <summary>Drawing a photo takes a processor and memory for a moment; a page of thumbnails must not take them all.</summary>
    private readonly SemaphoreSlim drawing = new(2, 2);

    public PhotoFolder(string folder, Transactions transactions)
    {
        (places, rows, mark) = (new(folder), new(transactions), transactions.KeepsPhotos ? Path.GetRandomFileName() : "");
        Directory.CreateDirectory(places.Incoming);
        // Where the folder is not ours alone, another program may be at its own just now: not those of today.
        foreach (var leftover in Directory.GetFiles(places.Incoming))
            if (!transactions.KeepsPhotos || File.GetLastWriteTimeUtc(leftover) < DateTime.UtcNow.AddDays(-1))
                File.Delete(leftover);
    }

    private string Incoming() =>
        Path.Combine(places.Incoming, mark + Interlocked.Increment(ref taken).ToString(CultureInfo.InvariantCulture));

    /// <inheritdoc/>
    public Task<PhotoKept> KeepAsync(Stream photo, long mostBytes, DateTimeOffset at, CancellationToken cancel, string? name = null) =>
        BrokenDisk.InWordsAsync(
            places.Incoming,
            // What has a name already was looked at when it came in first.
            () => TakeAsync(photo, mostBytes, at, name, h => name is null && h.IsSound ? "this is a recording, not a picture" : "", cancel)
        );

    /// <inheritdoc/>
    public Task<PhotoKept> KeepRecordingAsync(Stream recording, long mostBytes, DateTimeOffset at, CancellationToken cancel) =>
        BrokenDisk.InWordsAsync(
            places.Incoming,
            () => TakeAsync(recording, mostBytes, at, null, h => h.IsSound ? "" : NoRecording, cancel)
        );

    private const string NoRecording = "this is no recording Ohmstead knows. Use WAV, M4A, MP3, Ogg or WebM";

    private async Task<PhotoKept> TakeAsync(
        Stream photo,
        long mostBytes,
        DateTimeOffset at,
        string? name,
        Func<PhotoHeader, string> otherwise,
        CancellationToken cancel
    )
    {
        var incoming = Incoming();
        try
        {
            if (!await TakeInAsync(photo, incoming, mostBytes, cancel))
                return Refuse(string.Create(CultureInfo.InvariantCulture, $"this file is larger than {mostBytes / 1e6:0.##} MB"));
            var header = HeaderOf(incoming);
            if (otherwise(header) is var why && (why.Length > 0 || header.Refused.Length > 0))
                return Refuse(why.Length > 0 ? why : header.Refused);
            if (await BareAsync(incoming, header, cancel) is not var (fileHash, bytes))
                return Refuse("this picture is damaged. Take it again");
            var hash = name ?? fileHash;
            var place = places.File(hash, header.Extension);
            var kept = new PhotoKept(hash, "", header.WidthPixels, header.HeightPixels);
            if (name is not null && File.Exists(place) && await rows.HasAsync(hash, cancel))
                return kept;
            if (!File.Exists(place) || new FileInfo(place).Length != bytes)
                DurableFile.Place(incoming, place);
            await rows.KeepAsync(RowOf(hash, fileHash, bytes, header, at), place, cancel);
            return kept;
        }
        finally
        {
            File.Delete(incoming);
        }
    }

    /// <inheritdoc/>
    public async Task<PhotoFile?> OpenAsync(string hash, CancellationToken cancel) =>
        await FindAsync(hash, cancel) is { } found ? new PhotoFile(Read(found.Path), found.MediaType) : null;

    /// <inheritdoc/>
    public async Task<PhotoFile?> OpenThumbnailAsync(string hash, CancellationToken cancel)
    {
        if (await FindAsync(hash, cancel) is not { } found)
            return null;
        var place = places.Thumbnail(hash);
        if (!File.Exists(place) && !await DrawAsync(found.Path, place, cancel))
            return null;
        return new PhotoFile(Read(place), "image/jpeg");
    }

    /// <inheritdoc/>
    public async Task<PhotoFile?> OpenPrintAsync(string hash, CancellationToken cancel)
    {
        if (await FindAsync(hash, cancel) is not { } found)
            return null;
        await drawing.WaitAsync(cancel);
        try
        {
            var jpeg = await Task.Run(() => Thumbnail.Make(found.Path, Thumbnail.PrintPixels), cancel);
            return jpeg is null ? null : new PhotoFile(new MemoryStream(jpeg), "image/jpeg");
        }
        finally
        {
            drawing.Release();
        }
    }

    /// <inheritdoc/>
    public async Task<string> JudgeAsync(string hash, CancellationToken cancel)
    {
        if (await FindAsync(hash, cancel) is not { } found)
            return "";
        await drawing.WaitAsync(cancel);
        try
        {
            return await Task.Run(() => Sharpness.Judge(found.Path), cancel);
        }
        finally
        {
            drawing.Release();
        }
    }

    public void Dispose() => drawing.Dispose();

    private async Task<bool> DrawAsync(string path, string place, CancellationToken cancel)
    {
        await drawing.WaitAsync(cancel);
        try
        {
            if (File.Exists(place))
                return true;
            if (await Task.Run(() => Thumbnail.Make(path), cancel) is not { } small)
                return false;
            var part = Incoming();
            await File.WriteAllBytesAsync(part, small, cancel);
            Directory.CreateDirectory(Path.GetDirectoryName(place)!);
            File.Move(part, place, overwrite: true);
            return true;
        }
        finally
        {
            drawing.Release();
        }
    }

    /// <returns>False when it was too much.</returns>
    private static async Task<bool> TakeInAsync(Stream photo, string incoming, long mostBytes, CancellationToken cancel)
    {
        await using var file = new FileStream(incoming, FileMode.Create, FileAccess.Write, FileShare.None, 1, useAsync: true);
        var part = ArrayPool<byte>.Shared.Rent(1 << 16);
        try
        {
            long bytes = 0;
            while (await photo.ReadAsync(part, cancel) is var count and > 0)
            {
                bytes += count;
                if (bytes > mostBytes)
                    return false;
                await file.WriteAsync(part.AsMemory(0, count), cancel);
            }
            return true;
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(part);
        }
    }

    /// <summary>Takes out of a file what is not of its picture, and writes it through to the disk.</summary>
    /// <returns>Hash and size of what is left; null when the file is damaged.</returns>
    private async Task<(string Hash, long Bytes)?> BareAsync(string path, PhotoHeader header, CancellationToken cancel)
    {
        await drawing.WaitAsync(cancel);
        try
        {
            var photo = await File.ReadAllBytesAsync(path, cancel);
            if (BarePhoto.Of(photo, header.MediaType, header.Turn) is not { } bare)
                return null;
            await using var file = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None, 1);
            if (!ReferenceEquals(bare, photo))
            {
                await file.WriteAsync(bare, cancel);
                file.SetLength(bare.Length);
            }
            file.Flush(flushToDisk: true);
            return (Convert.ToHexStringLower(SHA256.HashData(bare)), bare.Length);
        }
        finally
        {
            drawing.Release();
        }
    }

    private static PhotoRow RowOf(string hash, string fileHash, long bytes, PhotoHeader header, DateTimeOffset at) =>
        new()
        {
            Hash = hash,
            FileHash = fileHash == hash ? "" : fileHash,
            Bytes = bytes,
            WidthPixels = header.WidthPixels,
            HeightPixels = header.HeightPixels,
            MediaType = header.MediaType,
            At = at,
        };

    /// <summary>The photo's file and its kind; brought from the database where it was not looked at here before; null when there is none.</summary>
    internal async Task<(string Path, string MediaType)?> FindAsync(string hash, CancellationToken cancel)
    {
        if (places.Find(hash) is { } here)
            return here;
        if (!PhotoHash.IsOne(hash) || await rows.ContentAsync(hash, cancel) is not var (content, mediaType))
            return null;
        return await BrokenDisk.InWordsAsync(
            places.Incoming,
            async () =>
            {
                var incoming = Incoming();
                await File.WriteAllBytesAsync(incoming, content, cancel);
                DurableFile.Place(incoming, places.File(hash, PhotoHeader.Files.First(f => f.MediaType == mediaType).Extension));
                return places.Find(hash);
            }
        );
    }

    private static PhotoHeader HeaderOf(string path)
    {
        using var file = File.OpenRead(path);
        return PhotoHeader.Read(file);
    }

    private static FileStream Read(string path) =>
        new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 1 << 16, useAsync: true);

    private static PhotoKept Refuse(string why) => new("", why, 0, 0);
}
