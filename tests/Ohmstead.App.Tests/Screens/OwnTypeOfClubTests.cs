using System.Text.Json;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Ohmstead.App.Components;
using Ohmstead.App.Screens.Types;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Asking;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.TakeApart;

namespace Ohmstead.App.Tests.Screens;

/// <summary>A type of one's own: its steps out of the first unit's log, and another bench's readings beside one's own.</summary>
public sealed class OwnTypeOfClubTests : IAsyncLifetime
{
    private const string Type = "own-0001";

    private static readonly Guid First = new(5, 0, 0, new byte[8]);

    private static readonly KindAnswers Answers = new()
    {
        Volts = "120",
        Watts = "90",
        Count = "1",
        Runs = "roller",
        Output = "ac",
        Throttles =
        [
            new()
            {
                Post = "A",
                Return = "U",
                Low = "6",
                Full = "18",
            },
        ],
        Fixed = "none",
        Breaker = "common",
    };

    private OpenWorkshop workshop = null!;

    private Bench Bench => workshop.Bench;

    public async ValueTask InitializeAsync()
    {
        workshop = await OpenWorkshop.OpenAsync();
        workshop.Screens.Services.AddSingleton(new SiteOptions(0, IsOnLan: false, IsDemo: false));
        await OwnTypes.KeepAsync(Bench, Type, 0, new OwnType(Answers, null, null, []));
        await OwnTypes.MakeAsync(Bench, Type, [], _ => { }, CancellationToken.None);
    }

    public ValueTask DisposeAsync() => workshop.DisposeAsync();

    private NavigationManager Navigation => workshop.Screens.Services.GetRequiredService<NavigationManager>();

    private IRenderedComponent<OneType> Page(string type)
    {
        Navigation.NavigateTo($"/kinds/{type}");
        var page = workshop.Screens.Render<OneType>(p => p.Add(s => s.KindId, type));
        page.WaitForElement("#numbers");
        return page;
    }

    private static Task PressAsync(IRenderedComponent<OneType> page, string words) =>
        page.DoAsync(() => page.FindAll("button").Single(b => b.TextContent == words).ClickAsync());

    [Fact]
    public async Task Steps_of_the_first_unit_become_the_types_by_one_press_and_are_put_right_after()
    {
        await Bench.EnterAsync(
            First,
            0,
            "bench",
            new TakenIn("7", Type, "", ""),
            new TakenOff("untyped-off-1", 1, 4, "") { Title = "brass screws" },
            new TakenOff("untyped-off-2", 0, 1, "") { Title = "lid" },
            new TakenOff("untyped-off-3", 0, 1, "") { Title = "fiber shield" },
            new PieceNoted("untyped-off-3", PieceFate.Broke, 1, "")
        );
        var page = Page(Type);
        var offer = page.Find("[aria-labelledby=logged]").TextContent;
        Assert.Contains("You took unit 7 apart in 3 steps.", offer, StringComparison.Ordinal);
        Assert.Matches("(?s)Brass screws, cup 1.*Lid.*Fiber shield. 1 piece broke", offer);
        await PressAsync(page, "Use these steps for the type");
        page.WaitForAssertion(() => Assert.Empty(page.FindAll("[aria-labelledby=logged]")));
        var steps = (await Bench.SheetAsync(Type))!.TakeApart;
        Assert.Equal(["screws", "cover", "fiber-shield"], steps.Take(3).Select(s => s.Id));

        await page.DoAsync(() =>
        {
            var row = page.FindAll(".own-number").Single(r => r.QuerySelector("span")!.TextContent == "Fiber shield");
            return row.QuerySelector("button")!.ClickAsync();
        });
        await page.DoAsync(() => page.Find("#s-out").ChangeAsync("1.5"));
        await page.DoAsync(() => page.Find("#s-cup").ChangeAsync("6"));
        await page.DoAsync(() => page.Find(".own-number form").SubmitAsync());
        page.WaitForAssertion(() => Assert.Empty(page.FindAll(".own-number form")));
        var shield = (await Bench.SheetAsync(Type))!.TakeApart[2];
        Assert.Equal((1.5, 6), (shield.MinutesOut, shield.Cup));

        // The next unit takes them; another answer leaves them.
        var next = new Guid(6, 0, 0, new byte[8]);
        await Bench.EnterAsync(next, 0, "bench", new TakenIn("8", Type, "", ""), new WayChosen(["roller-a-out"]));
        await OwnTypes.MakeAsync(Bench, Type, [], _ => { }, CancellationToken.None);
        var unit = (await Bench.ReadAsync(next))!;
        Assert.Equal("Brass screws", ApartState.Of(unit, (await Bench.SheetOfAsync(unit))!).NextOff()!.Title);
        Assert.Equal(1.5, (await Bench.SheetAsync(Type))!.TakeApart[2].MinutesOut);
    }

    [Fact]
    public async Task Another_benchs_readings_are_shown_beside_ones_own_and_make_a_new_version_by_a_press()
    {
        var (mine, sheet) = ((await OwnTypes.ReadAsync(Bench, Type))!.Value.Type, await workshop.TextAsync(Bench.SheetKind, Type));
        var put = TypeEdit.Put(sheet, mine.Made!, "elements.primary.ohms", 20)!.Value;
        using var readings = JsonDocument.Parse("""{ "ohmstead": "readings/1", "readings": [{ "id": "blades", "value": 7.9 }] }""");
        var file = TypeFile.Write(put.Text, mine with { Made = put.Made }, [new SoundUnit("f00df00df00df00d", readings.RootElement)]);
        var brought = await BroughtIn.KeepAsync(Bench, "club.type.json", file);
        Assert.NotEqual(Type, brought.Id);
        Assert.Equal(sheet, await workshop.TextAsync(Bench.SheetKind, Type));

        var page = Page(brought.Id);
        page.WaitForElement("#beside");
        var beside = page.Find("[aria-labelledby=beside]").TextContent;
        Assert.Contains("1 number differs by more than the doubt", beside, StringComparison.Ordinal);
        Assert.Matches("(?s)Primary, ohms.*yours.*this one 20.0 Ω", beside);
        Assert.Contains("1 reading of 1 sound unit.", beside, StringComparison.Ordinal);
        await PressAsync(page, "Put these readings into yours");
        page.WaitForAssertion(() => Assert.EndsWith($"/kinds/{Type}", Navigation.Uri, StringComparison.Ordinal));
        var pooled = (await OwnTypes.ReadAsync(Bench, Type))!.Value.Type;
        Assert.Equal((2, 1, 1), (pooled.Made!.From.SheetVersion, pooled.Made.From.Units, pooled.Made.From.Readings));
        Assert.Contains("1 reading of 1 sound unit came in with a file", Page(Type).Markup, StringComparison.Ordinal);
        // A type that is not here yet comes in with them, and gives them on.
        Assert.Single(TypeFile.Read(TypeFile.Write(put.Text, pooled, await TypeUnits.SoundAsync(Bench, Type)))!.Type.Sound);
    }
}
