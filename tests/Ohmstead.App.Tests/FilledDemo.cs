using Ohmstead.App.Demo;
using Ohmstead.App.Tests.Screens;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Tests;

/// <summary>The invented workshop, filled once for all tests that only look at it.</summary>
internal sealed record FilledDemo(
    IReadOnlyList<UnitCard> Cards,
    IReadOnlyDictionary<Guid, BenchUnit> Units,
    IReadOnlyDictionary<string, TypeSheet> Sheets,
    Shop Shop,
    DateTimeOffset At
)
{
    private static readonly Lazy<Task<FilledDemo>> Filled = new(FillAsync);

    /// <summary>The tags of its units.</summary>
    public static TheoryData<string> Tags() =>
        ["F-022", "F-029", "F-031", "F-033", "F-036", "F-038", "F-039", "F-041", "F-042", "F-044", "F-045", "F-046"];

    public static Task<FilledDemo> ReadAsync() => Filled.Value;

    /// <summary>The type sheet of a unit; null while its type is not known.</summary>
    public TypeSheet? SheetOf(UnitCard card) => Sheets.GetValueOrDefault(card.SheetId);

    private static async Task<FilledDemo> FillAsync()
    {
        await using var workshop = await OpenWorkshop.OpenAsync();
        await DemoWorkshop.FillAsync(workshop.Bench, CancellationToken.None);
        var cards = await workshop.Bench.Store.CardsAsync(withHandedBack: true, CancellationToken.None);
        var (units, sheets) = (new Dictionary<Guid, BenchUnit>(), new Dictionary<string, TypeSheet>(StringComparer.Ordinal));
        foreach (var card in cards)
        {
            units[card.Id] = (await workshop.Bench.ReadAsync(card.Id))!;
            if (await workshop.Bench.SheetAsync(card.SheetId) is { } sheet)
                sheets[card.SheetId] = sheet;
        }
        return new([.. cards], units, sheets, await workshop.Bench.ShopAsync(), workshop.Bench.Time.GetUtcNow());
    }
}
