using System.Collections.Immutable;
using Ohmstead.App.Background;
using Ohmstead.App.Web;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Papers;

/// <summary>Makes the papers of units: reads what they are made from, and their photos.</summary>
internal static class PaperFiles
{
    /// <summary>What the papers of a unit are made from, but for the bands of readings that are not taken.</summary>
    public static Task<JudgedUnit> MatterAsync(Bench bench, BenchUnit unit) => MatterAsync(bench, unit, null);

    /// <summary>A paper as PDF; null when there is no such unit, when it is one to practice on, and for no paper of this name.</summary>
    /// <param name="usualOnly">On the bench sheet: the usual round alone.</param>
    /// <param name="inSecond">The owner's page: in the second language that the shop chose.</param>
    public static async Task<byte[]?> MakeAsync(Bench bench, Guid unitId, string paperId, bool usualOnly, bool inSecond = false)
    {
        var row = PaperTable.All.FirstOrDefault(p => p.Id == paperId);
        if ((row is null && paperId != Label.Id) || await bench.ReadAsync(unitId) is not { IsPractice: false } unit)
            return null;
        var only =
            paperId == BenchSheet.Id && usualOnly && await bench.SheetOfAsync(unit) is { } sheet
                ? (await UsualRounds.OfAsync(bench.Work, sheet)).Select(r => r.Id).ToImmutableArray()
                : [];
        var matter = await MatterAsync(
            bench,
            unit,
            paperId == BenchSheet.Id ? r => only.Length == 0 || only.Contains(r.Id, StringComparer.Ordinal) : null
        );
        if (row is null)
            return await bench.Work.RunAsync("A paper", () => LabelPdf.Write(Label.Make(matter, Label.RecordOf(unit)), matter.At));
        var paper =
            inSecond && paperId == OwnerPage.Id && await PageLanguages.OfAsync(bench, matter.Shop.SecondLanguage) is { } language
                ? OnePage(matter, language)
            : only.IsEmpty ? OnePage(row, matter)
            : BenchSheet.Make(matter, only);
        var photos = await PhotosAsync(bench, paper.Photos);
        return await bench.Work.RunAsync("A paper", () => PaperPdf.Write(paper, matter.Shop.Paper, photos, matter.At));
    }

    /// <summary>A paper in the longest of its lengths that one page holds; where it has but one, that.</summary>
    public static Paper OnePage(PaperRow row, JudgedUnit matter) =>
        row.Lengths(matter).ToList() is var lengths && lengths.Count == 1
            ? lengths[0]
            : lengths.First(p => PaperPdf.PagesOf(p, matter.Shop.Paper) == 1);

    /// <summary>The owner's page in another language: the longest that one page holds. Cautions in two languages may want the back of it too: then there is room for all.</summary>
    public static Paper OnePage(JudgedUnit matter, PageLanguage language)
    {
        var lengths = OwnerPage.Choices.Select(most => OwnerPage.Make(matter, most, language)).ToList();
        return lengths.Find(p => PaperPdf.PagesOf(p, matter.Shop.Paper) == 1) ?? lengths[0];
    }

    private static async Task<JudgedUnit> MatterAsync(Bench bench, BenchUnit unit, Func<ReadingSpec, bool>? bandsOf)
    {
        var (kind, shop) = (await bench.SheetOfAsync(unit), await bench.ShopAsync());
        var at = TimeZoneInfo.ConvertTime(bench.Time.GetUtcNow(), bench.Time.LocalTimeZone);
        var dated = await TypeDates.OfAsync(bench, unit);
        return await bench.Work.RunAsync("A paper", () => UnitJudge.Make(unit, kind, shop, at, bandsOf) with { Dated = dated });
    }

    private static async Task<Dictionary<string, byte[]>> PhotosAsync(Bench bench, IEnumerable<string> hashes)
    {
        var photos = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        foreach (var hash in hashes.Distinct(StringComparer.Ordinal))
        {
            if (await bench.Photos.OpenPrintAsync(hash, CancellationToken.None) is not { } photo)
                continue;
            using var content = photo.Content;
            using var copy = new MemoryStream();
            await content.CopyToAsync(copy);
            photos[hash] = copy.ToArray();
        }
        return photos;
    }
}
