using System.Reflection;
using Ohmstead.App.Web;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Keeping;

namespace Ohmstead.App.Demo;

/// <summary>The invented workshop of <c>ohmstead demo</c>.</summary>
internal static class DemoWorkshop
{
    private static readonly string[] Kinds = ["twin-175", "solo-110", "step-230"];

    /// <summary>Fills an empty store: three kinds, a dozen units at different points of the job, their photos.</summary>
    public static async Task FillAsync(Bench bench, CancellationToken cancel)
    {
        var now = bench.Time.GetUtcNow();
        foreach (var id in Kinds)
            await bench.Store.SaveDocumentAsync(Bench.SheetKind, id, 0, Carried($"{id}.sheet.json"), now, cancel);
        var photos = await PicturesAsync(bench, now, cancel);
        var units = await Task.Run(() => Units(now, photos), cancel);
        await bench.Store.AppendAllAsync(units, cancel);
    }

    private static async Task<DemoPhotos> PicturesAsync(Bench bench, DateTimeOffset now, CancellationToken cancel)
    {
        async Task<string> KeepAsync(Action<Drawing> draw)
        {
            using var jpeg = new MemoryStream(Drawing.Jpeg(draw));
            return (await bench.Photos.KeepAsync(jpeg, PhotoRoutes.MostBytes, now, cancel)).Hash;
        }
        return new(
            await KeepAsync(MouldedCase.Draw),
            await KeepAsync(TinCase.Draw),
            await KeepAsync(SteppedBox.Draw),
            await KeepAsync(CrackedCord.Draw),
            await KeepAsync(WornRoller.Draw)
        );
    }

    private static UnitEntries[] Units(DateTimeOffset now, DemoPhotos photos)
    {
        var sheets = Kinds.Select(id => TypeSheetFile.Read(Carried($"{id}.sheet.json")).Required).ToArray();
        Func<Diary[]>[] kinds =
        [
            () => TwinUnits.All(sheets[0], now, photos),
            () => SoloUnits.All(sheets[1], now, photos),
            () => StepUnits.All(sheets[2], now, photos),
        ];
        return [.. kinds.AsParallel().AsOrdered().SelectMany(k => k()).Select(d => d.Entries)];
    }

    private static string Carried(string name)
    {
        using var stream =
            Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The program lacks {name}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}

/// <summary>Hashes of the drawn photos.</summary>
internal sealed record DemoPhotos(string Moulded, string Tin, string Stepped, string Cord, string Roller);
