using Ohmstead.Storage;
using Ohmstead.Workshop.Journal;
using SkiaSharp;

namespace Ohmstead.Perf.Stores;

/// <summary>An invented workshop of many years: units, each with readings, photos, notes and answers, drawn from a seed.</summary>
internal sealed class FilledStore(Store store, int seed)
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
        for (var k = 0; k < PhotosAUnit; k++)
            facts.Add(new PhotoAdded(await PhotoAsync(at, cancel), Sentence(2), ""));
        for (var k = 0; k < 6; k++)
            facts.Add(new Noted(Sentence(8)));
        facts.Add(new StageClosed(Stage.LookOver, true, ""));
        for (var k = 0; k < ReadingsAUnit; k++)
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

    /// <summary>A small JPEG: one picture, followed by bytes that make each another file.</summary>
    public static byte[] Picture { get; } = Draw();

    private async Task<string> PhotoAsync(DateTimeOffset at, CancellationToken cancel)
    {
        var bytes = new byte[Picture.Length + 16];
        random.NextBytes(bytes);
        Picture.CopyTo(bytes, 0);
        using var content = new MemoryStream(bytes);
        return (await store.Photos.KeepAsync(content, 1_000_000, at, cancel)).Hash;
    }

    private static byte[] Draw()
    {
        using var bitmap = new SKBitmap(320, 240);
        bitmap.Erase(SKColors.Tan);
        using var jpeg = bitmap.Encode(SKEncodedImageFormat.Jpeg, 80);
        return jpeg.ToArray();
    }
}
