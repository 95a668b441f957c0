using AngleSharp.Dom;
using Bunit;
using Ohmstead.App.Background;
using Ohmstead.App.Screens.Readings;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Tests.Screens;

/// <summary>One reading at a time, by keyboard and by pad.</summary>
public class OneReadingTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private static IRenderedComponent<OneReading> Show(ScreenBench bench, string id)
    {
        var screen = bench.Context.Render<OneReading>(p => p.Add(s => s.Id, ScreenBench.UnitId).Add(s => s.ReadingId, id));
        screen.WaitForElement("h1:not(:empty)", Patience);
        screen.WaitForAssertion(() => Assert.NotEmpty(screen.FindAll(".setup")), Patience);
        return screen;
    }

    private static async Task TypeAsync(IRenderedComponent<OneReading> screen, string text)
    {
        await screen.DoAsync(() => screen.Find("#entry").InputAsync(text));
        await screen.DoAsync(() => screen.Find("form.pad").SubmitAsync());
    }

    private static Task PressAsync(IRenderedComponent<OneReading> screen, string key) =>
        screen.DoAsync(() => screen.FindAll(".keys button").First(b => b.TextContent.Trim() == key).ClickAsync());

    [Fact]
    public async Task The_band_stands_there_before_and_the_meaning_after_Enter()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench, "blades");
        Assert.Contains("Should read", screen.Markup, StringComparison.Ordinal);
        Assert.Equal("1", screen.Find("#entry").GetAttribute("data-seen"));
        Assert.Equal(["red", "black"], screen.FindAll(".leads .flag").Select(f => f.TextContent));
        await TypeAsync(screen, "3,8");
        screen.WaitForAssertion(() => Assert.Equal("passed", screen.Find(".value-side .word").TextContent.Trim()), Patience);
        Assert.Equal(["blades 3.8 Value"], await bench.StandingAsync());
        Assert.StartsWith("/units/", screen.Find("a.do").GetAttribute("href"), StringComparison.Ordinal);
    }

    /// <summary>A bare number on an insulation tester is megohms: 0.02 is 20 kΩ.</summary>
    [Fact]
    public async Task A_failed_check_says_failed_with_its_limit_and_what_follows()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench, "insulation-core");
        await TypeAsync(screen, "0.02");
        screen.WaitForAssertion(
            () => Assert.Equal("failed: at least 2.00 MΩ", screen.Find(".value-side .word").TextContent.Trim()),
            Patience
        );
        Assert.Contains("Do not plug it in.", screen.Find(".value-side [role=alert]").TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Yes, 3.8 Ω", 3.8)]
    [InlineData("No, it reads 38 Ω", 38)]
    public async Task A_slip_is_asked_about_and_kept_as_the_person_says(string answer, double kept)
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench, "blades");
        await TypeAsync(screen, "38");
        screen.WaitForAssertion(() => Assert.Equal("Did you mean 3.8 Ω?", screen.Find(".slip h2").TextContent), Patience);
        Assert.Contains("Possible slip: ten times too high", screen.Markup, StringComparison.Ordinal);
        Assert.Empty(await bench.StandingAsync());
        Assert.Equal("Yes, 3.8 Ω", screen.Find("button.do").TextContent.Trim());
        await screen.DoAsync(() => screen.FindAll(".slip button").First(b => b.TextContent.Trim() == answer).ClickAsync());
        screen.WaitForElement("p.value", Patience);
        Assert.Equal(kept, (await bench.UnitAsync()).CurrentReadings.Single().Fact.Shown.Value);
    }

    [Fact]
    public async Task A_slip_that_is_read_again_leaves_nothing()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench, "blades");
        await TypeAsync(screen, "-3.8");
        screen.WaitForElement(".slip", Patience);
        await screen.DoAsync(() => screen.FindAll(".slip button").First(b => b.TextContent.Trim() == "Read it again").ClickAsync());
        Assert.Equal("", screen.WaitForElement("#entry", Patience).GetAttribute("value") ?? "");
        Assert.Empty(await bench.StandingAsync());
    }

    [Fact]
    public async Task Test_leads_are_asked_for_once_and_kept_with_the_meter()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench, "blades");
        await screen.DoAsync(() => screen.Find("#leads").InputAsync("30"));
        await screen.DoAsync(() => screen.Find("form.test-leads").SubmitAsync());
        screen.WaitForAssertion(
            () => Assert.Contains("0 to 5 Ω", screen.Find("form.test-leads").TextContent, StringComparison.Ordinal),
            Patience
        );
        await screen.DoAsync(() => screen.Find("#leads").InputAsync("0.4"));
        await screen.DoAsync(() => screen.Find("form.test-leads").SubmitAsync());
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll("form.test-leads")), Patience);
        Assert.Equal(0.4, (await bench.Bench.ShopAsync()).Meters[0].Errors["ohms"].LeadOhms);
        Assert.Empty(Show(bench, "ohms-14").FindAll("form.test-leads"));
    }

    /// <summary>Which meter it is and its own error are asked with them; other quantities keep what the shop has.</summary>
    [Fact]
    public async Task The_meters_own_error_is_asked_with_the_leads_and_another_meter_can_be_taken_up()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench, "blades");
        Assert.Contains("± (0.8 % + 0.05 Ω)", screen.Find("form.test-leads summary").TextContent, StringComparison.Ordinal);
        await screen.DoAsync(() => screen.Find("#which").ChangeAsync("true-rms"));
        screen.WaitForAssertion(() => Assert.Equal("true-rms", screen.Find("#which").GetAttribute("value")), Patience);
        Assert.Equal("true-rms", (await bench.UnitAsync()).Bench.MeterId);
        await screen.DoAsync(() => screen.Find("#error-percent").InputAsync("60"));
        await screen.DoAsync(() => screen.Find("form.test-leads").SubmitAsync());
        screen.WaitForAssertion(
            () => Assert.Contains("Percent: Must be 0 to 50.", screen.Find("form.test-leads").TextContent, StringComparison.Ordinal),
            Patience
        );
        await screen.DoAsync(() => screen.Find("#error-percent").InputAsync("1.5"));
        await screen.DoAsync(() => screen.Find("#error-fixed").InputAsync("0.2"));
        await screen.DoAsync(() => screen.Find("form.test-leads").SubmitAsync());
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll("form.test-leads")), Patience);
        var meters = (await bench.Bench.ShopAsync()).Meters;
        Assert.Equal(new(1.5, 0.2, 0.5, 0.2), meters[1].Errors["ohms"]);
        Assert.Equal(0.8, meters[1].Errors["ac-volts"].Percent);
        Assert.Equal((0.8, false), (meters[0].Errors["ohms"].Percent, meters[0].AreLeadsKnown));
    }

    [Fact]
    public async Task Test_leads_may_be_skipped()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench, "blades");
        await screen.DoAsync(() => screen.FindAll("form.test-leads button").First(b => b.TextContent.Trim() == "Skip").ClickAsync());
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll("form.test-leads")), Patience);
        Assert.True((await bench.Bench.ShopAsync()).Meters[0].AreLeadsKnown);
        Assert.NotEmpty(screen.FindAll("#entry"));
    }

    [Fact]
    public async Task Arabic_digits_are_read_and_no_key_crashes_the_pad()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench, "blades");
        foreach (var text in new[] { "\u0663", "\ud83d\ude00", "\ud83d", "\u00b2", "\0", "\u0663\u066b\u0668" })
        {
            await screen.DoAsync(() => screen.Find("#entry").InputAsync(text));
            Assert.NotEmpty(screen.Find("#entry-says").TextContent);
        }
        await PressAsync(screen, "⌫");
        await PressAsync(screen, "8");
        await screen.DoAsync(() => screen.Find("form.pad").SubmitAsync());
        screen.WaitForElement("p.value", Patience);
        Assert.Equal(["blades 3.8 Value"], await bench.StandingAsync());
    }

    [Fact]
    public async Task The_pad_writes_what_the_keyboard_would()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench, "blades");
        foreach (var key in new[] { "0", ".", "0", "0", "9", "⌫", "4", "k" })
            await PressAsync(screen, key);
        Assert.Equal("0.004k", screen.Find("#entry").GetAttribute("value"));
        await screen.DoAsync(() => screen.Find("form.pad").SubmitAsync());
        screen.WaitForAssertion(() => Assert.Contains("4 Ω", screen.Find("p.value").TextContent, StringComparison.Ordinal), Patience);
        Assert.Equal(["blades 4 Value"], await bench.StandingAsync());
    }

    [Fact]
    public async Task OL_is_one_key()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench, "blades-posts");
        await PressAsync(screen, "OL");
        await screen.DoAsync(() => screen.Find("form.pad").SubmitAsync());
        screen.WaitForAssertion(() => Assert.Equal("passed", screen.Find(".value-side .word").TextContent.Trim()), Patience);
        Assert.Equal(ShownKind.OverRange, (await bench.UnitAsync()).CurrentReadings.Single().Fact.Shown.Kind);
    }

    [Fact]
    public async Task What_is_no_value_is_refused_and_stays_in_the_box()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench, "blades");
        await TypeAsync(screen, "<script>");
        screen.WaitForAssertion(() => Assert.NotEmpty(screen.Find("[role=alert]").TextContent), Patience);
        Assert.Equal("<script>", screen.Find("#entry").GetAttribute("value"));
        Assert.Empty(await bench.StandingAsync());
    }

    [Theory]
    [InlineData("u")]
    [InlineData("Backspace")]
    public async Task One_button_with_keys_takes_the_entry_back(string key)
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench, "blades");
        await TypeAsync(screen, "9");
        screen.WaitForElement("p.value", Patience);
        // What presses it by its keys is a script; the journey of one key runs it.
        await screen.DoAsync(() => screen.Find($"[data-keys~='{key}']").ClickAsync());
        screen.WaitForElement("#entry", Patience);
        Assert.Empty(await bench.StandingAsync());
        Assert.Contains("Undone: Between the plug blades", screen.Markup, StringComparison.Ordinal);
        Assert.Equal(3, (await bench.UnitAsync()).Journal.Length);
    }

    [Fact]
    public async Task Backspace_in_the_empty_box_takes_back_the_last()
    {
        await using var bench = await ScreenBench.OpenAsync(ScreenBench.Read("blades", 38));
        var screen = Show(bench, "blades");
        await screen.DoAsync(() => screen.Find("#entry").KeyDownAsync("Backspace"));
        screen.WaitForAssertion(() => Assert.Contains("Undone", screen.Markup, StringComparison.Ordinal), Patience);
        Assert.Empty(await bench.StandingAsync());
    }

    [Fact]
    public async Task Behind_a_shut_gate_there_is_no_box_and_the_gates_are_named()
    {
        await using var bench = await ScreenBench.OpenAsync(ScreenBench.Read("insulation-core", 100e3));
        var screen = Show(bench, "full-1");
        Assert.Empty(screen.FindAll("#entry"));
        var gates = screen.Find(".warning").TextContent;
        Assert.Contains("Between the plug blades", gates, StringComparison.Ordinal);
        Assert.Contains("A measured failure cannot be waived", gates, StringComparison.Ordinal);
        // The failed gate itself offers no waiver.
        Assert.DoesNotContain("waive this check", Show(bench, "insulation-core").Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_gate_without_an_instrument_is_waived_in_writing()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench, "insulation-core");
        await PressAsync(screen, "not taken");
        await screen.DoAsync(() => screen.Find("#why").InputAsync("no insulation tester"));
        await screen.DoAsync(() => screen.FindAll("button").First(b => b.TextContent == "Waive it").ClickAsync());
        screen.WaitForAssertion(
            () => Assert.Contains("who answers for it", screen.Find("[role=alert]").TextContent, StringComparison.Ordinal),
            Patience
        );
        await screen.DoAsync(() => screen.Find("#by").InputAsync("J. Example"));
        await screen.DoAsync(() => screen.Find("#instead").InputAsync("ohmmeter OL"));
        await screen.DoAsync(() => screen.FindAll("button").First(b => b.TextContent == "Waive it").ClickAsync());
        screen.WaitForElement("p.value", Patience);
        Assert.Equal(
            new ReadingWaived("insulation-core", "no insulation tester", "J. Example", "ohmmeter OL"),
            (await bench.UnitAsync()).Last.Fact
        );
    }

    [Fact]
    public async Task What_is_really_so_is_changed_where_it_stands_and_moves_the_band()
    {
        await using var bench = await ScreenBench.OpenAsync([.. ScreenBench.ColdGates, ScreenBench.Read("lamp-60", 106)]);
        var screen = Show(bench, "full-1");
        var before = screen.Find(".value-side").TextContent;
        await screen.DoAsync(() => screen.Find("input[aria-label='Line voltage']").ChangeAsync("108"));
        screen.WaitForAssertion(() => Assert.NotEqual(before, screen.Find(".value-side").TextContent), Patience);
        Assert.Equal(108, (await bench.UnitAsync()).Bench.SupplyVolts);
        await screen.DoAsync(() => screen.Find("input[aria-label='Line voltage']").ChangeAsync("9999"));
        screen.WaitForAssertion(() => Assert.Contains("from 1 to 1000", screen.Markup, StringComparison.Ordinal), Patience);
        Assert.Equal(108, (await bench.UnitAsync()).Bench.SupplyVolts);
    }

    [Fact]
    public async Task The_throttle_is_set_by_its_volts_with_nothing_connected()
    {
        await using var bench = await ScreenBench.OpenAsync([.. ScreenBench.ColdGates, ScreenBench.Read("lamp-60", 106)]);
        var screen = Show(bench, "whistle-1-1");
        await screen.DoAsync(() => screen.Find("input[aria-label*='with no load']").ChangeAsync("12"));
        screen.WaitForAssertion(() => Assert.Contains(" % up.", screen.Markup, StringComparison.Ordinal), Patience);
        Assert.InRange((await bench.UnitAsync()).Bench.Throttles["throttle-1"], 0.2, 0.8);
        await screen.DoAsync(() => screen.Find("input[aria-label*='with no load']").ChangeAsync("90"));
        screen.WaitForAssertion(() => Assert.Contains("this post shows", screen.Markup, StringComparison.Ordinal), Patience);
    }

    /// <summary>A supply of 117 V and a reading fed with 115: a sound unit was once called faulty at over 99 %.</summary>
    [Theory]
    [InlineData("115", true)]
    [InlineData("\"mains\"", false)]
    public async Task A_reading_that_does_not_follow_the_line_is_warned_of(string volts, bool isWarned)
    {
        await using var bench = await ScreenBench.OpenAsync([
            .. ScreenBench.NothingLive,
            .. ScreenBench.ColdGates,
            ScreenBench.Read("lamp-60", 110),
        ]);
        var sheet = System.Text.Json.Nodes.JsonNode.Parse(
            (await bench.Bench.Store.ReadDocumentAsync(Bench.SheetKind, "twin-175", Xunit.TestContext.Current.CancellationToken))!.Text
        )!;
        sheet["readings"]!.AsArray().Single(r => (string?)r!["id"] == "full-1")!["state"]!["source"]!["volts"] =
            System.Text.Json.Nodes.JsonNode.Parse(volts);
        await bench.Bench.SaveDocumentAsync(Bench.SheetKind, "twin-175", 1, sheet.ToJsonString());
        var screen = Show(bench, "full-1");
        Assert.Equal(
            isWarned,
            screen
                .FindAll(".caution")
                .Any(c =>
                    c.TextContent.Contains("does not follow your line voltage, so a sound unit may look faulty", StringComparison.Ordinal)
                )
        );
    }

    [Fact]
    public async Task A_reading_that_the_sheet_does_not_have_is_said()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = bench.Context.Render<OneReading>(p => p.Add(s => s.Id, ScreenBench.UnitId).Add(s => s.ReadingId, "<b>none"));
        screen.WaitForAssertion(() => Assert.Contains("no such reading", screen.Markup, StringComparison.Ordinal), Patience);
    }
}
