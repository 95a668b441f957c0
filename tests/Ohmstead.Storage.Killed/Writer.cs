using System.Globalization;
using Ohmstead.Workshop.Journal;
using SkiaSharp;

namespace Ohmstead.Storage.Killed;

/// <summary>One writer: units are begun, notes are entered one or a few at a time, photos are taken and entered.</summary>
internal sealed class Writer(Store store, int seed, int writer)
{
    private const int Units = 3;
    private readonly Random random = new(seed * 2 + writer);
    private int made;

    public async Task RunAsync()
    {
        for (; ; )
        {
            var unit = new Guid(1, 0, 0, [0, 0, 0, 0, 0, 0, 0, (byte)random.Next(Units)]);
            Fact[] facts =
                random.Next(4) == 0 ? [await PhotoAsync()] : [.. Enumerable.Range(0, random.Next(1, 4)).Select(_ => new Noted(Words()))];
            await EnterAsync(unit, facts);
        }
    }

    private async Task EnterAsync(Guid unit, Fact[] facts)
    {
        var known = await AgainAsync(() => store.ReadAsync(unit, CancellationToken.None));
        if (known is null)
            facts = [new TakenIn("killed", "", "", ""), .. facts];
        NewEntry[] entries = [.. facts.Select(f => new NewEntry(Id(), TimeProvider.System.GetUtcNow(), "writer", f))];
        var appended = await AgainAsync(() => store.AppendAsync(unit, known?.LastNumber ?? 0, entries, CancellationToken.None));
        foreach (var e in appended.Written)
            Acknowledged.Say($"entry {unit} {e.Id} {e.Number.ToString(CultureInfo.InvariantCulture)}");
    }

    private async Task<Fact> PhotoAsync()
    {
        var bytes = Picture();
        var kept = await AgainAsync(async () =>
        {
            using var content = new MemoryStream(bytes);
            return await store.Photos.KeepAsync(content, 1_000_000, TimeProvider.System.GetUtcNow(), CancellationToken.None);
        });
        Acknowledged.Say($"photo {kept.Hash}");
        return new PhotoAdded(kept.Hash, "", "");
    }

    /// <summary>A person whose entry was not taken sends it again when the database is back.</summary>
    private static async Task<T> AgainAsync<T>(Func<Task<T>> send)
    {
        while (true)
        {
            try
            {
                return await send();
            }
            catch (StoreUnusable away) when (away.InnerException is not null)
            {
                await Task.Delay(50);
            }
        }
    }

    private Guid Id() => new(seed, (short)writer, 0, [.. BitConverter.GetBytes(++made), 0, 0, 0, 0]);

    private string Words() => new('x', random.Next(1, 2000));

    /// <summary>Noise, a few kilobytes or a few hundred: each another file, of which nothing may be left out as what follows a picture is.</summary>
    private byte[] Picture()
    {
        using var bitmap = new SKBitmap(16, random.Next(16, 8000));
        var dots = new byte[bitmap.ByteCount];
        random.NextBytes(dots);
        System.Runtime.InteropServices.Marshal.Copy(dots, 0, bitmap.GetPixels(), dots.Length);
        using var encoded = bitmap.Encode(SKEncodedImageFormat.Jpeg, 80);
        return encoded.ToArray();
    }
}
