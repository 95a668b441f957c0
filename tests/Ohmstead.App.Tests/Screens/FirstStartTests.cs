using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Ohmstead.App.Components;
using Ohmstead.App.Demo;
using Ohmstead.App.Hosting;
using Ohmstead.App.Screens.Start;
using Ohmstead.App.Screens.Types;
using Ohmstead.App.Screens.Units;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Kinds;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Tests.Screens;

/// <summary>What an empty workshop offers on its first screen.</summary>
public class FirstStartTests
{
    private static async Task<OpenWorkshop> OpenAsync()
    {
        var workshop = await OpenWorkshop.OpenAsync();
        workshop.Screens.Services.AddSingleton(new SiteOptions(0, IsOnLan: false, IsDemo: false));
        workshop.Screens.Services.AddSingleton(Opener());
        return workshop;
    }

    private static DemoOpener Opener() =>
        new(TimeProvider.System, (options, store) => Site.Build(options, store, store.Photos, TimeProvider.System));

    private static string At(OpenWorkshop workshop) =>
        new Uri(workshop.Screens.Services.GetRequiredService<NavigationManager>().Uri).PathAndQuery;

    [Fact]
    public async Task An_empty_bench_asks_one_question_and_offers_a_unit_practice_a_look_around_and_a_file()
    {
        await using var workshop = await OpenAsync();
        var screen = workshop.Screens.Render<Start>();
        screen.WaitForAssertion(() => Assert.Equal("What is in front of you?", screen.Find("h1").TextContent));
        Assert.Equal(
            ["/units/new", .. PracticeTypes.Ids.Select(id => $"/units/new?type={id}")],
            screen.FindAll("a.tile").Select(a => a.GetAttribute("href"))
        );
        Assert.All(
            screen.FindAll("a.tile").Skip(1),
            a => Assert.Contains("invented, for practice", a.TextContent, StringComparison.Ordinal)
        );
        Assert.Contains("Look around first", screen.Find("button.tile").TextContent, StringComparison.Ordinal);
        Assert.Single(screen.FindAll("input[type=file]"));
        // Local codes are named once, at the foot of every page; and nothing went back from here yet.
        Assert.DoesNotContain("ocal codes", screen.Markup, StringComparison.Ordinal);
        Assert.Empty(screen.FindAll("a[href='/handed-back']"));
    }

    [Fact]
    public async Task A_unit_that_went_back_says_once_how_and_the_empty_bench_leads_to_it()
    {
        await using var workshop = await OpenAsync();
        await workshop.Bench.EnterAsync(
            new Guid(7, 0, 0, new byte[8]),
            0,
            "bench",
            new TakenIn("7", "", "", ""),
            new Returned(ReturnManner.NotToBePluggedIn, "A. B.")
        );
        var list = workshop.Screens.Render<HandedBack>();
        list.WaitForElement("a.row");
        Assert.Equal(2, list.Find("a.row").TextContent.Split(FactWords.ReturnTitle(ReturnManner.NotToBePluggedIn)).Length);
        var start = workshop.Screens.Render<Start>();
        start.WaitForElement("a[href='/handed-back']");
    }

    [Fact]
    public async Task Types_are_listed_by_their_titles_and_no_id()
    {
        await using var workshop = await OpenAsync();
        await CarriedTypes.KeepAsync(workshop.Bench, "solo-110");
        var types = workshop.Screens.Render<AllTypes>();
        types.WaitForElement(".kind");
        Assert.Contains(CarriedTypes.TitleOf("solo-110"), types.Find(".kind").TextContent, StringComparison.Ordinal);
        Assert.Contains("version 1, no unit yet", types.Find(".kind").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("solo-110", types.Find(".kind").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_address_of_no_unit_ends_in_the_page_that_says_so_even_when_it_is_all_zeros()
    {
        await using var workshop = await OpenAsync();
        var told = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        workshop.Screens.Services.GetRequiredService<NavigationManager>().OnNotFound += (_, _) => told.TrySetResult();
        workshop.Screens.Render<UnitOverview>(p => p.Add(s => s.Id, Guid.Empty));
        await told.Task.WaitAsync(BunitContext.DefaultWaitTimeout, Xunit.TestContext.Current.CancellationToken);
    }

    [Fact]
    public async Task Looking_around_opens_the_invented_workshop_beside_and_leaves_the_own_one_empty()
    {
        await using var workshop = await OpenAsync();
        await using var door = Opener();
        var first = await door.OpenAsync(new Uri("http://127.0.0.1:18600/"));
        Assert.Equal(first, await door.OpenAsync(new Uri("http://127.0.0.1:18600/")));
        using var client = new HttpClient();
        var page = await client.GetStringAsync(first, Xunit.TestContext.Current.CancellationToken);
        Assert.Contains("invented workshop", page, StringComparison.Ordinal);
        Assert.Contains("Back to your own bench", page, StringComparison.Ordinal);
        Assert.Empty(await workshop.Bench.Store.CardsAsync(true, CancellationToken.None));
    }

    [Fact]
    public async Task A_type_that_comes_along_needs_no_file_and_begins_a_unit_to_practice_on()
    {
        await using var workshop = await OpenAsync();
        workshop.Screens.Services.GetRequiredService<NavigationManager>().NavigateTo("/units/new?type=solo-110");
        var screen = workshop.Screens.Render<NewUnit>();
        screen.WaitForAssertion(() => Assert.Contains("invented, for practice", screen.Markup, StringComparison.Ordinal));
        await screen.DoAsync(() => screen.Find("form").SubmitAsync());
        screen.WaitForAssertion(() => Assert.EndsWith("/reading", At(workshop), StringComparison.Ordinal));
        var card = Assert.Single(await workshop.Bench.Store.CardsAsync(false, CancellationToken.None));
        Assert.Equal("solo-110", card.SheetId);
        var unit = (await workshop.Bench.ReadAsync(card.Id))!;
        Assert.Single(unit.All<PracticeBegun>());
        Assert.NotNull(PracticeUnit.Of(unit, (await workshop.Bench.SheetAsync("solo-110"))!));
    }

    [Fact]
    public async Task Another_unit_is_taken_in_with_its_plate_and_posts_and_can_be_read_at_once()
    {
        await using var workshop = await OpenAsync();
        var screen = workshop.Screens.Render<NewUnit>();
        screen.WaitForAssertion(() => Assert.NotEqual("", screen.Find("#tag").GetAttribute("value") ?? ""));
        await screen.DoAsync(() => screen.Find("#watts").ChangeAsync("18000"));
        await screen.DoAsync(() => screen.Find("form").SubmitAsync());
        Assert.Contains("Must be 0 to 10000", screen.WaitForElement("[role=alert]").TextContent, StringComparison.Ordinal);
        await screen.DoAsync(() => screen.Find("#watts").ChangeAsync("180"));
        await screen.DoAsync(() => screen.Find("#posts").ChangeAsync("A B U"));
        await screen.DoAsync(() => screen.Find("button.can").ClickAsync());
        screen.WaitForAssertion(() => Assert.EndsWith("/reading", At(workshop), StringComparison.Ordinal));
        var card = Assert.Single(await workshop.Bench.Store.CardsAsync(false, CancellationToken.None));
        Assert.Equal(("", "180 W unit, type not known yet"), (card.SheetId, card.Kind));
        var sheet = (await workshop.Bench.SheetOfAsync((await workshop.Bench.ReadAsync(card.Id))!))!;
        Assert.Equal(7, sheet.Readings.Length);
        Assert.Same(sheet, await workshop.Bench.SheetOfAsync((await workshop.Bench.ReadAsync(card.Id))!));
    }

    [Fact]
    public async Task A_type_from_a_file_is_usable_at_once_and_overwrites_none()
    {
        await using var workshop = await OpenAsync();
        var text = CarriedTypes.TextOf("solo-110").Replace("\"solo-110\"", "\"mine\"", StringComparison.Ordinal);
        Assert.Equal(new BroughtIn("mine", true, ""), await BroughtIn.KeepAsync(workshop.Bench, "mine.json", text));
        Assert.NotNull(await workshop.Bench.SheetAsync("mine"));
        var other = text.Replace("6.1", "6.2", StringComparison.Ordinal);
        Assert.Equal(new BroughtIn("mine", false, ""), await BroughtIn.KeepAsync(workshop.Bench, "mine.json", other));
        Assert.Equal(text, await workshop.TextAsync(Bench.SheetKind, "mine"));
        var broken = text.Replace("\"mine\"", "\"broken\"", StringComparison.Ordinal)
            .Replace("\"winding\"", "\"wingding\"", StringComparison.Ordinal);
        Assert.False((await BroughtIn.KeepAsync(workshop.Bench, "broken.json", broken)).IsUsable);
        Assert.Contains("no type sheet", (await BroughtIn.KeepAsync(workshop.Bench, "x.json", "[]")).Refused, StringComparison.Ordinal);
        Assert.NotEmpty(
            (await BroughtIn.KeepAsync(workshop.Bench, "u.json", text.Replace("\"mine\"", "\"untyped\"", StringComparison.Ordinal))).Refused
        );
    }

    [Fact]
    public async Task The_act_stays_in_sight_of_a_bench_with_hundreds_of_units()
    {
        await using var workshop = await OpenAsync();
        for (var n = 0; n < 60; n++)
            await workshop.Bench.EnterAsync(
                new Guid(n + 1, 0, 0, new byte[8]),
                0,
                "bench",
                new TakenIn(FormattableString.Invariant($"T-{n}"), "", "", "")
            );
        var screen = workshop.Screens.Render<Start>();
        screen.WaitForAssertion(() => Assert.Equal(25, screen.FindAll("a.row").Count));
        Assert.Equal("/units/new", screen.Find(".start-act a.do").GetAttribute("href"));
    }
}
