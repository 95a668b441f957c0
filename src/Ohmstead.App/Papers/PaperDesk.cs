using Ohmstead.App.Web;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Papers;

/// <summary>Makes the papers of units: reads what they are made from, and their photos.</summary>
internal static class PaperDesk
{
    /// <summary>What the papers of a unit are made from; null when there is no such unit.</summary>
    public static async Task<PaperMatter?> MatterAsync(Bench bench, Guid unitId) =>
        await bench.ReadAsync(unitId) is { } unit ? await MatterAsync(bench, unit) : null;

    /// <summary>What the papers of a unit are made from.</summary>
    public static async Task<PaperMatter> MatterAsync(Bench bench, BenchUnit unit)
    {
        var (kind, shop) = (await bench.SheetAsync(unit.Card.SheetId), await bench.ShopAsync());
        var at = TimeZoneInfo.ConvertTime(bench.Time.GetUtcNow(), bench.Time.LocalTimeZone);
        return await Task.Run(() => MatterMaker.Make(unit, kind, shop, at));
    }

    /// <summary>A paper as PDF; null when there is no paper of this name.</summary>
    /// <param name="usualOnly">On the bench sheet: the usual round alone.</param>
    public static async Task<byte[]?> MakeAsync(Bench bench, PaperMatter matter, string paperId, bool usualOnly)
    {
        var paper = paperId switch
        {
            ServiceRecord.Id => ServiceRecord.Make(matter),
            BenchSheet.Id => BenchSheet.Make(matter, usualOnly && matter.Sheet is { } sheet ? await RoundAsync(matter, sheet) : []),
            _ => null,
        };
        if (paper is null) return null;
        var photos = await PhotosAsync(bench, paper.Photos);
        return await Task.Run(() => PaperPdf.Write(paper, matter.Shop.Paper, photos, matter.At));
    }

    private static Task<System.Collections.Immutable.ImmutableArray<string>> RoundAsync(PaperMatter matter, Electrical.TypeSheets.TypeSheet sheet) =>
        Task.Run(() => System.Collections.Immutable.ImmutableArray.CreateRange(
            UsualRound.Choose(new Electrical.Circuits.UnitModel(sheet), MeterInHand.Next(matter.Unit, matter.Shop)).Select(r => r.Id)));

    private static async Task<Dictionary<string, byte[]>> PhotosAsync(Bench bench, IEnumerable<string> hashes)
    {
        var photos = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        foreach (var hash in hashes.Distinct(StringComparer.Ordinal))
        {
            if (await bench.Photos.OpenPrintAsync(hash, CancellationToken.None) is not { } photo) continue;
            using var content = photo.Content;
            using var copy = new MemoryStream();
            await content.CopyToAsync(copy);
            photos[hash] = copy.ToArray();
        }
        return photos;
    }
}
