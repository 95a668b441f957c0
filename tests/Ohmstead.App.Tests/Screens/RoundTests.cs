using Bunit;
using Ohmstead.App.Background;
using Ohmstead.App.Screens.Readings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Tests.Screens;

/// <summary>The quick list on one page.</summary>
public class RoundTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private static IRenderedComponent<Round> Show(ScreenBench bench)
    {
        var screen = bench.Context.Render<Round>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        screen.WaitForElement("input[name=blades]", Patience);
        // The caret goes to the first line after it is drawn.
        screen.WaitForAssertion(() => Assert.Single(bench.Context.JSInterop.Invocations["Blazor._internal.domWrapper.focus"]), Patience);
        return screen;
    }

    private static async Task TypeAsync(IRenderedComponent<Round> screen, string id, string text)
    {
        await screen.DoAsync(() => screen.Find($"input[name={id}]").InputAsync(text));
        await screen.DoAsync(() =>
            screen.FindAll(".round-line form").First(f => f.QuerySelector($"input[name={id}]") is not null).SubmitAsync()
        );
    }

    [Fact]
    public async Task Enter_saves_at_once_and_goes_to_the_next_line()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench);
        var focused = bench.Context.JSInterop.Invocations["Blazor._internal.domWrapper.focus"].Count;
        await TypeAsync(screen, "blades", "3.8");
        screen.WaitForAssertion(
            () => Assert.Contains("Saved: Between the plug blades, 3.8 Ω", screen.Markup, StringComparison.Ordinal),
            Patience
        );
        Assert.Equal(["blades 3.8 Value"], await bench.StandingAsync());
        // What is kept without a connection tells up to where its screen had seen.
        var last = (await bench.UnitAsync()).LastNumber.ToString(System.Globalization.CultureInfo.InvariantCulture);
        screen.WaitForAssertion(
            () => Assert.All(screen.FindAll("[data-kept]"), b => Assert.Equal(last, b.GetAttribute("data-seen"))),
            Patience
        );
        screen.WaitForAssertion(
            () => Assert.Equal(focused + 1, bench.Context.JSInterop.Invocations["Blazor._internal.domWrapper.focus"].Count),
            Patience
        );
        await TypeAsync(screen, "blades-posts", "ol");
        screen.WaitForAssertion(() => Assert.Contains("Both blades to all posts, OL", screen.Markup, StringComparison.Ordinal), Patience);
        Assert.Equal(["blades 3.8 Value", "blades-posts 0 OverRange"], await bench.StandingAsync());
    }

    /// <summary>Of a database that is far away the unit comes before the shop's settings.</summary>
    [Fact]
    public async Task What_is_only_half_read_is_not_drawn_yet()
    {
        await using var bench = await ScreenBench.OpenAsync(FailingStore.Around);
        var settings = FailingStore.Hold(bench.Bench.Store, nameof(IStore.ReadDocumentAsync));
        var screen = bench.Context.Render<Round>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        screen.WaitForAssertion(() => Assert.Equal("F-9", screen.Find(".tag").TextContent));
        Assert.Empty(screen.FindAll("input"));
        settings.SetResult();
        screen.WaitForElement("input[name=blades]", Patience);
    }

    [Fact]
    public async Task A_line_behind_a_shut_gate_has_no_box_until_the_gates_have_passed()
    {
        await using var bench = await ScreenBench.OpenAsync(ScreenBench.NothingLive);
        var screen = Show(bench);
        Assert.Empty(screen.FindAll("input[name=lamp-60]"));
        var locked = screen.FindAll(".round-line .box").First(b => b.TextContent.Contains("Locked.", StringComparison.Ordinal));
        Assert.StartsWith(
            "Locked. Between the plug blades: not taken yet. Take it first. And ",
            locked.TextContent.Trim(),
            StringComparison.Ordinal
        );
        Assert.EndsWith("/reading/blades", locked.QuerySelector("a")!.GetAttribute("href"), StringComparison.Ordinal);
        await TypeAsync(screen, "blades", "3.8");
        await TypeAsync(screen, "blades-posts", "OL");
        await TypeAsync(screen, "insulation-core", "300");
        await TypeAsync(screen, "insulation-posts", "250");
        screen.WaitForElement("input[name=lamp-60]", Patience);
        Assert.Equal(300e6, (await bench.UnitAsync()).CurrentReadings.Single(r => r.Fact.ReadingId == "insulation-core").Fact.Shown.Value);
    }

    [Fact]
    public async Task Backspace_in_an_empty_box_takes_back_the_last_entry()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench);
        await TypeAsync(screen, "blades", "9");
        screen.WaitForAssertion(() => Assert.Contains("Saved", screen.Markup, StringComparison.Ordinal), Patience);
        await screen.DoAsync(() => screen.Find("input[name=blades-posts]").KeyDownAsync("Backspace"));
        screen.WaitForAssertion(
            () => Assert.Contains("Undone: Between the plug blades", screen.Markup, StringComparison.Ordinal),
            Patience
        );
        Assert.Empty(await bench.StandingAsync());
    }

    [Fact]
    public async Task What_is_no_value_stays_and_says_why_and_could_not_is_an_entry()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench);
        await TypeAsync(screen, "blades", "lots");
        screen.WaitForElement("[role=alert]", Patience);
        Assert.Empty(await bench.StandingAsync());
        await TypeAsync(screen, "blades", "could not, no clip");
        screen.WaitForAssertion(() => Assert.Contains("Saved", screen.Markup, StringComparison.Ordinal), Patience);
        Assert.Equal("no clip", (await bench.UnitAsync()).CurrentReadings.Single().Fact.Shown.Why);
    }

    /// <summary>A bare number on an insulation tester is megohms: 0.02 is 20 kΩ, and 2.05 lies within 5 % + 20 kΩ of 2 MΩ.</summary>
    [Theory]
    [InlineData("0.02", "failed: at least 2.00 MΩ", "Do not plug it in.")]
    [InlineData("2.05", "too close for this meter", "use a better meter")]
    public async Task A_check_that_does_not_pass_says_so_on_its_line_and_opens_nothing(string typed, string word, string next)
    {
        await using var bench = await ScreenBench.OpenAsync([.. ScreenBench.NothingLive, .. ScreenBench.ColdGates]);
        var screen = Show(bench);
        Assert.NotEmpty(screen.FindAll("input[name=lamp-60]"));
        await TypeAsync(screen, "insulation-core", typed);
        AngleSharp.Dom.IElement Line() =>
            screen.FindAll(".round-line").First(l => l.QuerySelector("input[name=insulation-core]") is not null);
        screen.WaitForAssertion(() => Assert.Equal(word, Line().QuerySelector(".word")?.TextContent.Trim()), Patience);
        Assert.Contains(next, Line().TextContent, StringComparison.Ordinal);
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll("input[name=lamp-60]")), Patience);
    }

    [Fact]
    public async Task A_slip_is_asked_about_on_its_line()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench);
        screen.WaitForAssertion(() => Assert.Contains("3.15–4.22 Ω", screen.Markup, StringComparison.Ordinal), Patience);
        await TypeAsync(screen, "blades", "38");
        screen.WaitForAssertion(() => Assert.Equal("Did you mean 3.8 Ω?", screen.Find(".round-line .slip h2").TextContent), Patience);
        Assert.Empty(await bench.StandingAsync());
        await screen.DoAsync(() => screen.Find(".slip button.do").ClickAsync());
        screen.WaitForAssertion(
            () => Assert.Contains("Saved: Between the plug blades, 3.8 Ω", screen.Markup, StringComparison.Ordinal),
            Patience
        );
        Assert.Equal(["blades 3.8 Value"], await bench.StandingAsync());
    }
}
