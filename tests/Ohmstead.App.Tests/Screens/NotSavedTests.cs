using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Ohmstead.App.Background;
using Ohmstead.App.Hosting;
using Ohmstead.App.Screens.Readings;
using Ohmstead.App.Screens.Units;
using Ohmstead.App.Tests.Web;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Tests.Screens;

/// <summary>What a person sees when the store does not take an entry: that, why, and what was typed still in its box.</summary>
public sealed class NotSavedTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    [Fact]
    public async Task A_reading_that_the_disk_does_not_take_stays_in_its_box_and_is_saved_by_the_next_Enter()
    {
        await using var bench = await ScreenBench.OpenAsync(FailingStore.Around);
        var screen = Show<Round>(bench);
        screen.WaitForElement("input[name=blades]", Patience);
        FailingStore.Fail(bench.Bench.Store, nameof(IStore.AppendAsync), FailingStore.FullDisk);
        await screen.DoAsync(() => screen.Find("input[name=blades]").InputAsync("3.8"));
        await EnterAsync(screen);
        screen.WaitForAssertion(() => Assert.Contains("Not saved.", Said(screen), StringComparison.Ordinal), Patience);
        Assert.Contains("The disk is full.", Said(screen), StringComparison.Ordinal);
        Assert.Equal("3.8", screen.Find("input[name=blades]").GetAttribute("value"));
        Assert.Empty(await bench.StandingAsync());
        await EnterAsync(screen);
        screen.WaitForAssertion(
            () => Assert.Contains("Saved: Between the plug blades, 3.8 Ω", screen.Markup, StringComparison.Ordinal),
            Patience
        );
        Assert.Equal(["blades 3.8 Value"], await bench.StandingAsync());
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll(".mishap")), Patience);
    }

    [Fact]
    public async Task An_error_of_the_program_is_said_too_and_what_was_kept_before_it_is_not_called_lost()
    {
        await using var bench = await ScreenBench.OpenAsync(FailingStore.Around);
        var screen = Show<Round>(bench);
        screen.WaitForElement("input[name=blades]", Patience);
        // The entry is on the disk; reading the unit again is what fails, for whoever reads it first: the search for faults may.
        FailingStore.Break(bench.Bench.Store, nameof(IStore.ReadAsync), new FormatException(), nameof(IStore.AppendAsync));
        await screen.DoAsync(() => screen.Find("input[name=blades]").InputAsync("3.8"));
        await EnterAsync(screen);
        screen.WaitForAssertion(() => Assert.Contains("Saved, but", Said(screen), StringComparison.Ordinal), Patience);
        Assert.Contains("FormatException", Said(screen), StringComparison.Ordinal);
        FailingStore.Mend(bench.Bench.Store);
        Assert.Equal(["blades 3.8 Value"], await bench.StandingAsync());
        await screen.DoAsync(() => screen.Find(".mishap button").ClickAsync());
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll(".mishap")), Patience);
    }

    /// <summary>Skip reads the shop's settings, writes them, and reads them for the screen.</summary>
    [Theory]
    [InlineData(nameof(IStore.SaveDocumentAsync), "Saved, but", true)]
    [InlineData(null, "Not saved.", false)]
    public async Task A_setting_that_is_on_the_disk_is_not_called_lost_and_one_that_is_not_is(string? since, string said, bool isKept)
    {
        await using var bench = await ScreenBench.OpenAsync(FailingStore.Around);
        var screen = Show<Round>(bench);
        screen.WaitForElement("form.test-leads", Patience);
        FailingStore.Break(bench.Bench.Store, nameof(IStore.ReadDocumentAsync), new FormatException(), since);
        await screen.DoAsync(() => screen.FindAll("form.test-leads button").First(b => b.TextContent.Trim() == "Skip").ClickAsync());
        screen.WaitForAssertion(() => Assert.Contains(said, Said(screen), StringComparison.Ordinal), Patience);
        FailingStore.Mend(bench.Bench.Store);
        Assert.Equal(isKept, (await bench.Bench.ShopAsync()).Meters[0].AreLeadsKnown);
    }

    [Fact]
    public async Task A_unit_that_could_not_be_taken_in_is_taken_in_by_the_next_press()
    {
        await using var bench = await ScreenBench.OpenAsync(FailingStore.Around);
        var screen = Show<NewUnit>(bench);
        screen.WaitForAssertion(() => Assert.NotEqual("", Tag(screen)), Patience);
        await screen.DoAsync(() => screen.Find("#tag").ChangeAsync("G-1"));
        FailingStore.Fail(bench.Bench.Store, nameof(IStore.AppendAsync), FailingStore.FullDisk);
        await EnterAsync(screen);
        screen.WaitForAssertion(() => Assert.Contains("Not saved.", Said(screen), StringComparison.Ordinal), Patience);
        Assert.Equal("G-1", Tag(screen));
        await EnterAsync(screen);
        Assert.Contains(
            await bench.Bench.Store.CardsAsync(withHandedBack: true, Xunit.TestContext.Current.CancellationToken),
            c => c.Tag == "G-1"
        );
    }

    [Fact]
    public async Task A_reading_that_was_saved_all_the_same_is_told_so_and_the_next_Enter_does_not_double_it()
    {
        await using var bench = await ScreenBench.OpenAsync(TellingStore.Around);
        var screen = Show<Round>(bench);
        screen.WaitForElement("input[name=blades]", Patience);
        TellingStore.CutNextEnd(bench.Bench.Store);
        await screen.DoAsync(() => screen.Find("input[name=blades]").InputAsync("3.8"));
        await EnterAsync(screen);
        screen.WaitForAssertion(() => Assert.Contains("It may not be saved.", Said(screen), StringComparison.Ordinal), Patience);
        TellingStore.Say(bench.Bench.Store, new StoreNews(NewsOf.Back, Guid.Empty, "", ""));
        screen.WaitForAssertion(() => Assert.Contains("It was saved all the same.", Said(screen), StringComparison.Ordinal), Patience);
        Assert.DoesNotContain("may not", Said(screen), StringComparison.Ordinal);
        // It is this window's own, nothing that came in from others.
        var number = (await bench.UnitAsync()).LastNumber;
        await bench.Bench.EnterAsync(ScreenBench.UnitId, number, "bench", BenchRead);
        Assert.Equal(number, (await bench.UnitAsync()).LastNumber);
        await screen.DoAsync(() => screen.Find(".mishap button").ClickAsync());
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll(".mishap")), Patience);
    }

    private static readonly Workshop.Journal.Fact BenchRead = ScreenBench.Read("blades", 3.8);

    [Fact]
    public async Task A_unit_that_was_taken_in_all_the_same_is_opened_by_the_next_press_and_there_once()
    {
        await using var bench = await ScreenBench.OpenAsync(TellingStore.Around);
        var screen = Show<NewUnit>(bench);
        screen.WaitForAssertion(() => Assert.NotEqual("", Tag(screen)), Patience);
        await screen.DoAsync(() => screen.Find("#tag").ChangeAsync("G-1"));
        TellingStore.CutNextEnd(bench.Bench.Store);
        await EnterAsync(screen);
        screen.WaitForAssertion(() => Assert.Contains("It may not be saved.", Said(screen), StringComparison.Ordinal), Patience);
        await EnterAsync(screen);
        var unit = Assert.Single(
            await bench.Bench.Store.CardsAsync(withHandedBack: true, Xunit.TestContext.Current.CancellationToken),
            c => c.Tag == "G-1"
        );
        var way = bench.Context.Services.GetRequiredService<NavigationManager>();
        screen.WaitForAssertion(() => Assert.EndsWith($"/units/{unit.Id}/look-over", way.Uri, StringComparison.Ordinal), Patience);
    }

    [Fact]
    public async Task A_page_that_cannot_be_read_says_so_and_comes_back_by_itself()
    {
        await using var bench = await ScreenBench.OpenAsync(FailingStore.Around);
        FailingStore.Fail(bench.Bench.Store, nameof(IStore.ReadAsync), FailingStore.FullDisk);
        var screen = Show<Round>(bench);
        screen.WaitForAssertion(() => Assert.Contains("This page cannot be shown now", screen.Markup, StringComparison.Ordinal), Patience);
        screen.WaitForElement("input[name=blades]", Patience);
    }

    private static string Tag(IRenderedComponent<Layout> screen) => screen.Find("#tag").GetAttribute("value") ?? "";

    private static string Said(IRenderedComponent<Layout> screen) => screen.Find(".mishap").TextContent;

    private static Task EnterAsync(IRenderedComponent<Layout> screen) =>
        screen.DoAsync(() =>
        {
            var lines = screen.FindAll("main form").Where(f => f.QuerySelector("input[name=blades]") is not null);
            var form = lines.FirstOrDefault() ?? screen.Find("main form");
            return form.SubmitAsync();
        });

    private static IRenderedComponent<Layout> Show<T>(ScreenBench bench)
        where T : IComponent
    {
        bench.Context.Renderer.SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        return bench.Context.Render<Layout>(p =>
            p.Add(
                l => l.Body,
                b =>
                {
                    b.OpenComponent<T>(0);
                    if (typeof(T) != typeof(NewUnit))
                        b.AddComponentParameter(1, "Id", ScreenBench.UnitId);
                    b.CloseComponent();
                }
            )
        );
    }
}
