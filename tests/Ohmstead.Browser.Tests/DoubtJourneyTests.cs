using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>Benches that do not match their type sheet: each ends in the right words, and a doubted check keeps mains locked.</summary>
public sealed class DoubtJourneyTests(OpenBrowser browser, SpoiledBench bench) : IClassFixture<SpoiledBench>
{
    private Task<Window> OpenAsync(Width width) => Window.OpenAsync(browser, bench.Tool.Address, width);

    private static ILocator Doubt(Window window, string headline) =>
        window.Page.Locator("section.caution-box", new() { HasText = headline });

    /// <summary>The answer takes seconds.</summary>
    private static Task SeenAsync(ILocator place) => Expect(place.First).ToBeVisibleAsync(new() { Timeout = 120_000 });

    [Fact]
    public async Task A_decimal_slip_is_asked_about_and_corrected_by_one_tap()
    {
        await using var window = await OpenAsync(Width.Phone);
        await window.GoAsync($"/units/{SpoiledBench.Slipped}/findings");
        await SeenAsync(Doubt(window, "Ten times too high?"));
        await window.SeeAsync();
        // Where the hand is now it is asked about as well.
        await window.GoAsync($"/units/{SpoiledBench.Slipped}/reading/load-6");
        await SeenAsync(Doubt(window, "Ten times too high?"));
        await window.SeeAsync();
        await window.PressAsync("Yes, 6.1");
        await Expect(Doubt(window, "Ten times too high?")).ToHaveCountAsync(0);
        await window.GoAsync($"/units/{SpoiledBench.Slipped}/findings");
        await Expect(window.Page.Locator(".working")).ToHaveCountAsync(0, new() { Timeout = 120_000 });
        await Expect(Doubt(window, "Ten times too high?")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_doubted_check_keeps_mains_locked_until_it_is_read_again_and_fits()
    {
        await using var window = await OpenAsync(Width.Desk);
        var unit = $"/units/{SpoiledBench.SlippedCheck}";
        await window.GoAsync($"{unit}/reading/track-full");
        var locked = window.Page.Locator(".warning", new() { HasText = "possible slip, ten times too high" });
        await SeenAsync(locked);
        Assert.Equal(0, await window.Page.Locator(".value-side form.pad").CountAsync());
        await window.SeeAsync();
        await window.GoAsync($"{unit}/round");
        await SeenAsync(locked);
        await window.Page.Locator(".round-line").First.WaitForAsync();
        Assert.Equal(0, await window.Page.Locator(".round-line input[name='track-load']").CountAsync());
        await window.GoAsync(unit);
        await SeenAsync(locked);
        await window.SeesAsync("Read again: Series lamp");
        await window.GoAsync($"{unit}/papers");
        await window.SeesAsync("To be read again.");
        await window.GoAsync($"{unit}/reading/track-full");
        await window.FollowAsync("Read again: series lamp");
        await window.TitledAsync("Series lamp");
        await window.EnterAsync("104.4");
        await window.SeesAsync("passed");
        await window.GoAsync($"{unit}/reading/track-full");
        await Expect(window.Page.Locator(".value-side form.pad")).ToBeVisibleAsync(new() { Timeout = 120_000 });
    }

    /// <summary>The same readings from a file: the check first, to be read again, and mains behind it.</summary>
    [Fact]
    public async Task At_the_command_line_a_doubted_check_comes_first_and_mains_waits_for_it()
    {
        var values = SpoiledBench.Values("solo-110", leads: 0);
        values["lamp-40"] *= 10;
        foreach (var id in new[] { "track-load", "load-6" })
            values.Remove(id);
        var readings = new JsonArray([
            .. values.Select(v => (JsonNode)new JsonObject { ["id"] = v.Key, ["value"] = double.IsInfinity(v.Value) ? "OL" : v.Value }),
        ]);
        var file = Path.Combine(bench.Tool.Folder, "slipped.readings.json");
        Task WriteAsync() =>
            File.WriteAllTextAsync(
                file,
                new JsonObject
                {
                    ["ohmstead"] = "readings/1",
                    ["sheet"] = "solo-110",
                    ["readings"] = readings.DeepClone(),
                }.ToJsonString(),
                TestContext.Current.CancellationToken
            );
        await WriteAsync();
        async Task<List<JsonElement>> NextAsync() =>
            [
                .. JsonDocument
                    .Parse(await RunningTool.RunAsync("diagnose", RunningTool.SheetFile("solo-110"), file, "--json"))
                    .RootElement.GetProperty("next")
                    .EnumerateArray(),
            ];
        var next = await NextAsync();
        Assert.Equal("lamp-40", next[0].GetProperty("id").GetString());
        Assert.All(
            next.Where(n => n.GetProperty("id").GetString() is "track-load" or "load-6"),
            n => Assert.Contains("lamp-40", n.GetProperty("blockedBy").EnumerateArray().Select(b => b.GetString()))
        );
        var said = System.Text.RegularExpressions.Regex.Replace(
            await RunningTool.RunAsync("diagnose", RunningTool.SheetFile("solo-110"), file),
            @"\s+",
            " "
        );
        Assert.Contains("Ten times too high?", said, StringComparison.Ordinal);
        Assert.Contains("possible slip, ten times too high, read it again", said, StringComparison.Ordinal);
        // Read again below the first, it fits: mains is open.
        readings.Add((JsonNode)new JsonObject { ["id"] = "lamp-40", ["value"] = values["lamp-40"] / 10 });
        await WriteAsync();
        Assert.All(
            (await NextAsync()).Where(n => n.GetProperty("id").GetString() is "track-load" or "load-6" or "lamp-40"),
            n => Assert.Empty(n.GetProperty("blockedBy").EnumerateArray())
        );
    }

    [Fact]
    public async Task Leads_that_were_not_taken_off_are_entered_in_the_shop_and_the_doubt_is_gone()
    {
        await using var window = await OpenAsync(Width.Phone);
        await window.GoAsync($"/units/{SpoiledBench.LongLeads}/findings");
        await SeenAsync(Doubt(window, "Your test leads were probably not taken off: about 0.3"));
        await window.SeeAsync();
        await window.FollowAsync("Enter the test leads");
        await window.TitledAsync("Shop");
        var leads = window.Page.Locator("details[open]").GetByLabel("Test leads, touched together");
        await leads.FillAsync("0.5");
        await leads.PressAsync("Enter");
        await window.SeesAsync("saved ");
        await window.GoAsync($"/units/{SpoiledBench.LongLeads}/findings");
        await Expect(Doubt(window, "Your test leads were probably")).ToHaveCountAsync(0, new() { Timeout = 120_000 });
    }

    [Fact]
    public async Task A_wrong_line_is_named_with_its_volts_and_where_it_is_entered()
    {
        await using var window = await OpenAsync(Width.Desk);
        await window.GoAsync($"/units/{SpoiledBench.LowLine}/findings");
        await SeenAsync(Doubt(window, "The line voltage was probably 111 V, not 117 V"));
        await window.SeeAsync();
        await window.FollowAsync("Enter the line voltage");
        var line = window.Page.GetByRole(AriaRole.Textbox, new() { Name = "Line voltage", Exact = true });
        await line.FillAsync("111");
        await line.PressAsync("Enter");
        // What was read before keeps its line: it is not moved to 105 V, and is to be read again.
        await window.GoAsync($"/units/{SpoiledBench.LowLine}/findings");
        var entered = Doubt(window, "The line voltage was probably 111 V, not 117 V");
        await SeenAsync(entered.GetByText("111 V is entered now. Readings taken before keep 117 V."));
        await Expect(entered.GetByRole(AriaRole.Link)).ToHaveTextAsync(new System.Text.RegularExpressions.Regex("^Read again: "));
    }

    [Fact]
    public async Task Another_batch_is_said_to_be_one_and_no_fault_is_very_likely()
    {
        await using var window = await OpenAsync(Width.Desk);
        await window.GoAsync($"/units/{SpoiledBench.OtherBatch}/findings");
        await SeenAsync(Doubt(window, "Probably another batch"));
        await window.SeesAsync("Findings count less until then.");
        await window.SeeAsync();
        await Expect(window.Page.Locator("article.finding").GetByText("very likely", new() { Exact = false })).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task An_internal_short_is_open_until_its_cause_is_found()
    {
        await using var window = await OpenAsync(Width.Phone);
        await window.GoAsync($"/units/{SpoiledBench.HotCore}/findings");
        await SeenAsync(Doubt(window, "more heat than it should"));
        await window.SeesAsync("Do not return it until you find the cause.");
        await window.SeeAsync();
        await window.GoAsync($"/units/{SpoiledBench.HotCore}/return");
        await window.SeesAsync("more heat than it should");
        await window.SeesAsync("Locked until");
        Assert.Contains(
            "more heat than it should",
            await window.PdfAsync($"/units/{SpoiledBench.HotCore}/papers/owner-page.pdf"),
            StringComparison.Ordinal
        );
    }
}
