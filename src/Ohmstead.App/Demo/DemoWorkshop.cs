using System.Security.Cryptography;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Kinds;

namespace Ohmstead.App.Demo;

/// <summary>The invented workshop of <c>ohmstead demo</c>.</summary>
internal static class DemoWorkshop
{
    /// <summary>Fills an empty store: three kinds, a dozen units at different points of the job, their photos, a drawer of parts, years of the kinds.</summary>
    public static async Task FillAsync(Bench bench, CancellationToken cancel)
    {
        var now = bench.Time.GetUtcNow();
        // What is read on the units is worked out while photos and sheets are written: whoever tries the tool waits for this.
        var pictures = await PicturesAsync();
        var units = Task.Run(() => Units(now, pictures), cancel);
        foreach (var id in PracticeTypes.Ids)
            await bench.Store.SaveDocumentAsync(Bench.SheetKind, id, 0, CarriedTypes.TextOf(id), now, cancel);
        foreach (var (id, dates) in DemoDates.All())
            await bench.Store.SaveDocumentAsync(KindDates.DocumentKind, id, 0, KindDates.Write(dates), now, cancel);
        foreach (var entry in DemoDrawer.Entries(now))
            await bench.Store.SaveDocumentAsync(DrawerEntry.DocumentKind, entry.DocumentId, 0, entry.Write(), now, cancel);
        foreach (var picture in pictures.All)
        {
            using var jpeg = new MemoryStream(picture.Jpeg);
            await bench.Photos.KeepAsync(jpeg, PhotoRoutes.MostBytes, now, cancel);
        }
        await bench.Store.AppendAllAsync(await units, cancel);
    }

    private static async Task<DemoPhotos> PicturesAsync()
    {
        var drawn = await Task.WhenAll(
            ((Action<Drawing>[])[HexagonBox.Draw, RoundCan.Draw, LadderFront.Draw, CrackedCord.Draw, WornRoller.Draw]).Select(draw =>
                Task.Run(() => new DemoPhoto(Drawing.Jpeg(draw)))
            )
        );
        return new(drawn[0], drawn[1], drawn[2], drawn[3], drawn[4]);
    }

    private static UnitEntries[] Units(DateTimeOffset now, DemoPhotos photos)
    {
        Func<Diary[]>[] kinds =
        [
            () => TwinUnits.All(CarriedTypes.Of("twin-175"), now, photos),
            () => SoloUnits.All(CarriedTypes.Of("solo-110"), now, photos),
            () => StepUnits.All(CarriedTypes.Of("step-230"), now, photos),
        ];
        return [.. kinds.AsParallel().AsOrdered().SelectMany(k => k()).Select(d => d.Entries)];
    }
}

/// <summary>The drawn photos.</summary>
internal sealed record DemoPhotos(
    DemoPhoto HexagonBox,
    DemoPhoto RoundCan,
    DemoPhoto LadderFront,
    DemoPhoto CrackedCord,
    DemoPhoto WornRoller
)
{
    /// <summary>All of them.</summary>
    public DemoPhoto[] All => [HexagonBox, RoundCan, LadderFront, CrackedCord, WornRoller];

    /// <summary>Their names, as journals hold them.</summary>
    public string Hexagon => HexagonBox.Hash;

    /// <inheritdoc cref="Hexagon"/>
    public string Can => RoundCan.Hash;

    /// <inheritdoc cref="Hexagon"/>
    public string Ladder => LadderFront.Hash;

    /// <inheritdoc cref="Hexagon"/>
    public string Cord => CrackedCord.Hash;

    /// <inheritdoc cref="Hexagon"/>
    public string Roller => WornRoller.Hash;
}

/// <summary>A drawn photo, and its name in the store.</summary>
internal sealed record DemoPhoto(byte[] Jpeg)
{
    /// <summary>SHA-256 of the bytes.</summary>
    public string Hash { get; } = Convert.ToHexStringLower(SHA256.HashData(Jpeg));
}
