using Bunit;
using Ohmstead.App.Screens.Papers;
using Ohmstead.App.Screens.Types;
using Ohmstead.App.Web;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Tests.Screens;

public class TypeReadingsTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private static async Task<(OpenWorkshop Workshop, Guid[] Units)> ThreeUnitsAsync()
    {
        var workshop = await OpenWorkshop.OpenAsync();
        await workshop.PutAsync(
            Bench.SheetKind,
            "twin-175",
            await File.ReadAllTextAsync(Tool.Demo("twin-175.sheet.json"), CancellationToken.None)
        );
        Guid[] ids = [.. Enumerable.Range(1, 3).Select(n => new Guid(n, 7, 0, new byte[8]))];
        double[] ohms = [3.5, 3.6, 3.9];
        for (var n = 0; n < ids.Length; n++)
            await workshop.Bench.EnterAsync(
                ids[n],
                0,
                "bench",
                new TakenIn(
                    $"F-{(n + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)}",
                    "twin-175",
                    "",
                    "<script>alert(1)</script>"
                ),
                new ReadingEntered("blades", Shown.Number(ohms[n]), BenchState.AsSheet),
                new StageClosed(Stage.Findings, true, "")
            );
        return (workshop, ids);
    }

    [Fact]
    public async Task Median_spread_and_this_unit_stand_beside_the_reading()
    {
        var (workshop, units) = await ThreeUnitsAsync();
        await using var open = workshop;
        var screen = workshop.Screens.Render<TypeReadings>(p => p.Add(k => k.KindId, "twin-175"));
        screen.WaitForElement("#this", Patience);
        await screen.DoAsync(() => screen.Find("#this").ChangeAsync(units[2].ToString()));
        // Median of 3.5, 3.6, 3.9; distances 0.1, 0, 0.3, their median 0.1, times 1.4826.
        screen.WaitForAssertion(() => Assert.Contains("3.60 Ω ± 0.148 Ω, 3 units", screen.Markup, StringComparison.Ordinal), Patience);
        Assert.Contains("F-3: 3.90 Ω, 2.02 spreads above the median", screen.Markup, StringComparison.Ordinal);
        Assert.Equal(2, screen.FindAll(".spread circle").Count);
    }

    [Fact]
    public async Task A_fit_goes_into_a_copy_and_the_sheet_itself_stays()
    {
        var (workshop, _) = await ThreeUnitsAsync();
        await using var open = workshop;
        var screen = workshop.Screens.Render<TypeReadings>(p => p.Add(k => k.KindId, "twin-175"));
        screen.WaitForElement("button.can", Patience);
        await screen.DoAsync(() => screen.Find("button.can").ClickAsync());
        screen.WaitForElement("button.do", Patience);
        Assert.Contains("primary, ohms", screen.Find("tbody").TextContent, StringComparison.Ordinal);
        await screen.DoAsync(() => screen.Find("button.do").ClickAsync());
        var copy = TypeSheetFile.Read(await workshop.TextAsync(Bench.SheetKind, "twin-175-2")).Required;
        // The usual meter's leads read 0.2 Ω; the cord and its joints share in the rest.
        Assert.InRange(copy.Windings.First(w => w.Id == "primary").Ohms, 3.0, 3.6);
        Assert.Contains("\"id\": \"twin-175\"", await workshop.TextAsync(Bench.SheetKind, "twin-175"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Making_a_paper_is_an_entry_and_the_screen_says_what_the_paper_will()
    {
        var (workshop, units) = await ThreeUnitsAsync();
        await using var open = workshop;
        var screen = workshop.Screens.Render<UnitPapers>(p => p.Add(u => u.Id, units[0]));
        screen.WaitForElement("a.do", Patience);
        Assert.Contains("do not plug this unit in", screen.Find(".warning").TextContent, StringComparison.Ordinal);
        await screen.DoAsync(() => screen.Find("a[href*=service-record]").ClickAsync());
        screen.WaitForAssertion(
            () => Assert.Contains("service record", screen.Find(".rows").TextContent, StringComparison.Ordinal),
            Patience
        );
        Assert.IsType<PaperMade>((await workshop.Bench.ReadAsync(units[0]))!.Last.Fact);
    }
}
