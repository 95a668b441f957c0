using Ohmstead.Storage;
using Ohmstead.Workshop.Journal;
using SkiaSharp;

namespace Ohmstead.Perf.Stores;

/// <summary>An invented workshop of many years: units, each with readings, photos, notes and answers, drawn from a seed.</summary>
/// <param name="photosAUnit">Photos that each unit has.</param>
/// <param name="readingsAUnit">Readings that each unit has.</param>
internal sealed class FilledStore(
    Store store,
    int seed,
    int photosAUnit = FilledStore.PhotosAUnit,
    int readingsAUnit = FilledStore.ReadingsAUnit
)
{
    public const int Units = 1000;
    public const int ReadingsAUnit = 40;
    public const int PhotosAUnit = 20;

    private static readonly DateTimeOffset Began = new(2020, 1, 6, 9, 0, 0, TimeSpan.Zero);
    private static readonly string[] Words =
    [
        "brittle",
        "cord",
        "roller",
        "pitted",
        "cleaned",
        "hums",
        "warm",
        "copper",
        "lamp",
        "soldered",
        "loose",
        "worn",
    ];
    private static readonly string[] Names = ["Brass", "Copper", "Tinman", "Fuse", "Winding", "Lever", "Signal", "Halt"];
    private readonly Random random = new(seed);
    private int ids;

    /// <summary>True where every photo is the same picture, so that it is kept once.</summary>
    public bool IsOnePicture { get; init; }

    /// <summary>Ids of the units, in the order in which they came.</summary>
    public List<Guid> Ids { get; } = [];

    public async Task FillAsync(string sheetId, string sheetText, string[] readings, CancellationToken cancel, int units = Units)
    {
        await store.SaveDocumentAsync("sheet", sheetId, 0, sheetText, Began, cancel);
        var part = new List<UnitEntries>();
        for (var n = 0; n < units; n++)
        {
            part.Add(await UnitAsync(n, sheetId, readings, cancel));
            if (part.Count < 50)
                continue;
            await store.AppendAllAsync(part, cancel);
            part.Clear();
        }
        await store.AppendAllAsync(part, cancel);
    }

    /// <summary>One more unit, as its owner hands it over the counter and it is worked on.</summary>
    public async Task<UnitEntries> UnitAsync(int number, string sheetId, string[] readings, CancellationToken cancel)
    {
        var id = NewId();
        Ids.Add(id);
        var at = Began.AddHours(number * 40);
        var owner = $"{(char)('A' + random.Next(26))}. {Names[random.Next(Names.Length)]}";
        var facts = new List<Fact> { new TakenIn(FormattableString.Invariant($"{number:D4}"), sheetId, owner, Sentence(6)) };
        for (var k = 0; k < photosAUnit; k++)
            facts.Add(new PhotoAdded(await PhotoAsync(at, cancel), Sentence(2), ""));
        for (var k = 0; k < 6; k++)
            facts.Add(new Noted(Sentence(8)));
        facts.Add(new StageClosed(Stage.LookOver, true, ""));
        for (var k = 0; k < readingsAUnit; k++)
            facts.Add(
                new ReadingEntered(
                    readings[k % readings.Length],
                    Shown.Number(Math.Round(random.NextDouble() * 20, 2)),
                    BenchState.AsSheet with
                    {
                        SupplyVolts = 117 + random.Next(8),
                    }
                )
            );
        if (number % 10 != 0)
            facts.AddRange([
                new StageClosed(Stage.Readings, true, ""),
                new StageClosed(Stage.Findings, true, ""),
                new StageClosed(Stage.Papers, true, ""),
            ]);
        return new UnitEntries(id, [.. facts.Select((f, k) => new NewEntry(NewId(), at.AddMinutes(k), "bench", f))]);
    }

    private string Sentence(int words) => string.Join(' ', Enumerable.Range(0, words).Select(_ => Words[random.Next(Words.Length)]));

    private Guid NewId() => new(seed, 0, 0, [.. BitConverter.GetBytes(++ids), 0, 0, 0, 0]);

    private async Task<string> PhotoAsync(DateTimeOffset at, CancellationToken cancel)
    {
        using var content = new MemoryStream(Picture(IsOnePicture ? 0 : random.NextInt64()));
        return (await store.Photos.KeepAsync(content, 1_000_000, at, cancel)).Hash;
    }

    /// <summary>A small JPEG, another for every number: what follows a picture would be left out of the file.</summary>
    public static byte[] Picture(long number)
    {
        const int dot = 8;
        using var bitmap = new SKBitmap(16 * dot, 4 * dot);
        bitmap.Erase(SKColors.Tan);
        using var canvas = new SKCanvas(bitmap);
        using var paint = new SKPaint { Color = SKColors.Black };
        for (var bit = 0; bit < 64; bit++)
            if ((number >> bit & 1) == 1)
                canvas.DrawRect(bit % 16 * dot, bit / 16 * dot, dot, dot, paint);
        using var jpeg = bitmap.Encode(SKEncodedImageFormat.Jpeg, 80);
        return jpeg.ToArray();
    }
}
