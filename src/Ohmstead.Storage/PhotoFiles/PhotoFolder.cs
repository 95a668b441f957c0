using System.Buffers;
using System.Globalization;
using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Ohmstead.Storage.Rows;
using Ohmstead.Workshop.Keeping;

namespace Ohmstead.Storage.PhotoFiles;

/// <summary>Photos in the data folder: first the file, written through to the disk, then its row.</summary>
internal sealed class PhotoFolder : IPhotos, IDisposable
{
    private readonly PhotoPlaces places;
    private readonly Desk desk;
    private long taken;

    /// <summary>Drawing a photo takes a processor and memory for a moment; a page of thumbnails must not take them all.</summary>
    private readonly SemaphoreSlim drawing = new(2, 2);

    public PhotoFolder(string folder, Desk desk)
    {
        (places, this.desk) = (new PhotoPlaces(folder), desk);
        Directory.CreateDirectory(places.Incoming);
        foreach (var leftover in Directory.GetFiles(places.Incoming))
            File.Delete(leftover);
    }

    /// <inheritdoc/>
    public Task<PhotoKept> KeepAsync(Stream photo, long mostBytes, DateTimeOffset at, CancellationToken cancel) =>
        BrokenDisk.InWordsAsync(places.Incoming, () => TakeAsync(photo, mostBytes, at, cancel));

    private async Task<PhotoKept> TakeAsync(Stream photo, long mostBytes, DateTimeOffset at, CancellationToken cancel)
    {
        var incoming = Path.Combine(
            places.Incoming,
            Interlocked.Increment(ref taken).ToString(CultureInfo.InvariantCulture)
        );
        try
        {
            var (hash, bytes) = await TakeInAsync(photo, incoming, mostBytes, cancel);
            if (hash.Length == 0)
                return Refuse(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"this file is larger than {mostBytes / 1e6:0.##} MB, the most that is taken"
                    )
                );
            var header = HeaderOf(incoming);
            if (header.Refused.Length > 0)
                return Refuse(header.Refused);
            var place = places.File(hash, header.Extension);
            if (!File.Exists(place) || new FileInfo(place).Length != bytes)
                DurableFile.Place(incoming, place);
            await RowAsync(
                new PhotoRow
                {
                    Hash = hash,
                    Bytes = bytes,
                    WidthPixels = header.WidthPixels,
                    HeightPixels = header.HeightPixels,
                    MediaType = header.MediaType,
                    At = at,
                },
                cancel
            );
            return new PhotoKept(hash, "", header.WidthPixels, header.HeightPixels);
        }
        finally
        {
            File.Delete(incoming);
        }
    }

    /// <inheritdoc/>
    public Task<PhotoFile?> OpenAsync(string hash, CancellationToken cancel) =>
        Task.FromResult(places.Find(hash) is { } found ? new PhotoFile(Read(found.Path), found.MediaType) : null);

    /// <inheritdoc/>
    public async Task<PhotoFile?> OpenThumbnailAsync(string hash, CancellationToken cancel)
    {
        if (places.Find(hash) is not { } found)
            return null;
        var place = places.Thumbnail(hash);
        if (!File.Exists(place) && !await DrawAsync(found.Path, place, cancel))
            return null;
        return new PhotoFile(Read(place), "image/jpeg");
    }

    /// <inheritdoc/>
    public async Task<PhotoFile?> OpenPrintAsync(string hash, CancellationToken cancel)
    {
        if (places.Find(hash) is not { } found)
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
        if (places.Find(hash) is not { } found)
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
            var part = Path.Combine(
                places.Incoming,
                Interlocked.Increment(ref taken).ToString(CultureInfo.InvariantCulture)
            );
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

    /// <returns>The hash and the size of what came; no hash when it was too much.</returns>
    private static async Task<(string Hash, long Bytes)> TakeInAsync(
        Stream photo,
        string incoming,
        long mostBytes,
        CancellationToken cancel
    )
    {
        await using var file = new FileStream(
            incoming,
            FileMode.Create,
            FileAccess.Write,
            FileShare.None,
            1,
            useAsync: true
        );
        using var sha = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var part = ArrayPool<byte>.Shared.Rent(1 << 16);
        try
        {
            long bytes = 0;
            while (await photo.ReadAsync(part, cancel) is var count and > 0)
            {
                bytes += count;
                if (bytes > mostBytes)
                    return ("", bytes);
                sha.AppendData(part, 0, count);
                await file.WriteAsync(part.AsMemory(0, count), cancel);
            }
            file.Flush(flushToDisk: true);
            return (Convert.ToHexStringLower(sha.GetHashAndReset()), bytes);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(part);
        }
    }

    private Task<bool> RowAsync(PhotoRow row, CancellationToken cancel) =>
        desk.WriteAsync(
            async context =>
            {
                if (await context.Photos.AnyAsync(p => p.Hash == row.Hash, cancel))
                    return false;
                context.Photos.Add(row);
                return true;
            },
            cancel
        );

    private static PhotoHeader HeaderOf(string path)
    {
        using var file = File.OpenRead(path);
        return PhotoHeader.Read(file);
    }

    private static FileStream Read(string path) =>
        new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 1 << 16, useAsync: true);

    private static PhotoKept Refuse(string why) => new("", why, 0, 0);
}
