using System.Text.Json;
using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>What a device's page does by itself: when its connection breaks, when its proof does not arrive, when it is paired again.</summary>
public sealed class DeviceScriptTests(OpenBrowser browser)
{
    private const string PassCookie = "__Host-ohmstead-pass";

    [Fact, Trait("kind", "long")]
    public async Task What_is_typed_while_the_connection_is_broken_is_what_is_entered_when_it_is_back()
    {
        await using var tool = await RunningTool.StartAsync("--lan");
        await using var laptop = await Window.OpenAsync(browser, tool.Address, Width.Desk);
        var unit = await UnitAsync(laptop);
        var code = await CodeAsync(laptop, "/devices", "Show a code");
        await using var wire = new Wire(code);
        await using var tablet = await PairAsync(wire.Over(code));
        await tablet.GoAsync($"{unit}/reading/blades");
        await tablet.Page.FillAsync("#entry", "1");
        await Expect(tablet.Page.Locator("#entry-says")).ToContainTextAsync("= 1");
        wire.Cut();
        await Expect(tablet.Page.Locator("#unsent")).ToContainTextAsync("No connection.");
        Assert.True(await tablet.Page.EvaluateAsync<bool>("navigator.onLine"));
        await tablet.Page.FillAsync("#entry", "3.7");
        wire.Mend();
        await Expect(tablet.Page.Locator("#unsent")).ToBeHiddenAsync();
        // The page may have been fetched anew: then what was typed is put back once it is live, and heard of.
        await tablet.LiveAsync();
        await Expect(tablet.Page.Locator("#entry")).ToHaveValueAsync("3.7");
        await Expect(tablet.Page.Locator("#entry-says")).ToContainTextAsync("= 3.7");
        await tablet.Page.PressAsync("#entry", "Enter");
        await Expect(tablet.Page.Locator("#entry")).ToHaveCountAsync(0);
        Assert.Matches(@"3\.7 Ω", await LogAsync(laptop, unit));
        Assert.DoesNotMatch(@"\b1 Ω", await LogAsync(laptop, unit));
    }

    [Fact, Trait("kind", "long")]
    public async Task All_that_is_entered_before_a_cut_is_noticed_is_kept_and_a_long_one_is_spoken_of()
    {
        await using var tool = await RunningTool.StartAsync("--lan");
        await using var laptop = await Window.OpenAsync(browser, tool.Address, Width.Desk);
        var unit = await UnitAsync(laptop);
        var code = await CodeAsync(laptop, "/devices", "Show a code");
        await using var wire = new Wire(code);
        await using var tablet = await PairAsync(wire.Over(code));
        await tablet.Page.Clock.InstallAsync();
        await tablet.GoAsync($"{unit}/round");
        var unsent = tablet.Page.Locator("#unsent");
        var (blades, posts) = (tablet.Page.Locator("input[name=blades]"), tablet.Page.Locator("input[name=blades-posts]"));
        await Expect(blades).ToBeVisibleAsync();
        // How far the screen had seen when it was entered goes along.
        var seen = await blades.EvaluateAsync<string>("b => b.dataset.seen ??= '999999'");
        wire.Silence();
        foreach (var (box, value) in new[] { (blades, "3.7"), (posts, "OL") })
        {
            await box.FillAsync(value);
            await box.PressAsync("Enter");
        }
        wire.Cut();
        await Expect(unsent).ToContainTextAsync("not sent yet: 2");
        await Expect(unsent).Not.ToContainTextAsync("another address");
        await tablet.Page.Clock.FastForwardAsync(125_000);
        await Expect(unsent).ToContainTextAsync("The bench may have another address now.");
        var sent = new List<JsonElement>();
        tablet.Page.Request += (_, request) =>
        {
            if (request.Url.EndsWith("/kept", StringComparison.Ordinal))
                sent.Add(JsonDocument.Parse(request.PostData!).RootElement);
        };
        wire.Mend();
        await Expect(unsent).ToBeHiddenAsync(new() { Timeout = 60_000 });
        Assert.Equal(["3.7", "OL"], sent.Select(s => s.GetProperty("shown").GetString()));
        Assert.Equal(seen, sent[0].GetProperty("seen").GetRawText());
        Assert.Matches(@"3\.7 Ω", await LogAsync(laptop, unit));
    }

    [Fact, Trait("kind", "long")]
    public async Task What_is_typed_while_the_tool_is_gone_is_back_in_its_box_when_the_page_is_fetched_anew()
    {
        await using var tool = await RunningTool.StartAsync();
        await using var laptop = await Window.OpenAsync(browser, tool.Address, Width.Desk);
        var unit = await UnitAsync(laptop);
        await laptop.GoAsync($"{unit}/reading/blades-posts");
        await tool.KillAsync();
        await Expect(laptop.Page.Locator("#unsent")).ToContainTextAsync("No connection.");
        await laptop.Page.FillAsync("#entry", "8.6M");
        await tool.AgainAsync();
        await Expect(laptop.Page.Locator("#typed-back")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Expect(laptop.Page.Locator("#entry")).ToHaveValueAsync("8.6M");
    }

    [Fact, Trait("kind", "long")]
    public async Task A_device_proves_once_more_keeps_its_first_key_and_takes_what_was_typed_along()
    {
        await using var tool = await RunningTool.StartAsync("--lan");
        await using var laptop = await Window.OpenAsync(browser, tool.Address, Width.Desk);
        var unit = await UnitAsync(laptop);
        await using var tablet = await PairAsync(await CodeAsync(laptop, "/devices", "Show a code"));
        await tablet.GoAsync($"{unit}/reading/blades-posts");

        // A challenge that came too late: a new one is asked for.
        await PassRunsOutAsync(tablet);
        await tablet.Page.RouteAsync("**/proof", late => late.FulfillAsync(new() { Status = 409 }), new() { Times = 1 });
        await tablet.Page.RunAndWaitForResponseAsync(
            () => tablet.Page.EvaluateAsync("document.dispatchEvent(new Event('visibilitychange'))"),
            answer => answer.Url.EndsWith("/proof", StringComparison.Ordinal) && answer.Status == 200
        );
        Assert.Equal(200, await tablet.StatusAsync("/"));
        await Expect(tablet.Page.Locator("#entry")).ToBeVisibleAsync();

        // A second pairing that comes to nothing leaves the first as it is.
        var code = await CodeAsync(laptop, "/devices", "Show a code");
        await tablet.Page.GotoAsync($"{code.AbsolutePath}#{new string('0', 32)}");
        await tablet.PressAsync("Pair it");
        await Expect(tablet.Page.Locator("#pair-says")).ToContainTextAsync("another certificate");
        await PassRunsOutAsync(tablet);
        await tablet.Page.GotoAsync($"{unit}/reading/blades-posts");
        await tablet.TitledAsync("Both blades to all posts");

        await tablet.Page.FillAsync("#entry", "8.6M");
        await laptop.GoAsync("/devices");
        await laptop.PressAsync("Shut it out");
        await Expect(tablet.Page.Locator("h1")).ToContainTextAsync("not let in any more");
        Assert.Contains("8.6M", await tablet.Page.EvaluateAsync<string>("sessionStorage.getItem('typed')"), StringComparison.Ordinal);
    }

    [Fact, Trait("kind", "long")]
    public async Task A_phone_whose_pass_has_run_out_proves_itself_and_loses_neither_photo_nor_reading()
    {
        await using var tool = await RunningTool.StartAsync("--lan");
        await using var laptop = await Window.OpenAsync(browser, tool.Address, Width.Desk);
        var unit = await UnitAsync(laptop);
        var code = await CodeAsync(laptop, $"{unit}/phone", "Show a code for a phone");
        await using var phone = await Window.OpenAsync(browser, new Uri(code.GetLeftPart(UriPartial.Authority)), Width.Phone);
        await phone.Page.GotoAsync(code.AbsolutePath);
        await phone.PressAsync("Pair it");
        await Expect(phone.Page.Locator("#shown")).ToBeVisibleAsync();
        var picture = await phone.Page.ScreenshotAsync();
        await PassRunsOutAsync(phone);
        await phone.Page.SetInputFilesAsync(
            "input[type=file]",
            new FilePayload
            {
                Name = "plate.png",
                MimeType = "image/png",
                Buffer = picture,
            }
        );
        await Expect(phone.Page.Locator("img.pic")).ToHaveCountAsync(1);
        await PassRunsOutAsync(phone);
        await phone.Page.SelectOptionAsync("#reading", "blades");
        await phone.Page.FillAsync("#shown", "4.2");
        await phone.PressAsync("Enter");
        await phone.SeesAsync("Last entered: ");
        Assert.Matches(@"4\.2 Ω", await LogAsync(laptop, unit));
    }

    private static async Task<string> UnitAsync(Window laptop)
    {
        await laptop.BringInAsync("twin-175");
        return await laptop.TakeInAsync("twin-175", "It hums.");
    }

    /// <summary>Where the code that a page shows leads.</summary>
    private static async Task<Uri> CodeAsync(Window laptop, string path, string press)
    {
        await laptop.GoAsync(path);
        if (await laptop.Page.GetByText("on no network").IsVisibleAsync())
            Assert.Skip("this machine is on no network that a tablet could reach");
        await laptop.PressAsync(press);
        return new Uri(await laptop.Page.Locator("p.address b").First.InnerTextAsync());
    }

    private async Task<Window> PairAsync(Uri code)
    {
        var tablet = await Window.OpenAsync(browser, new Uri(code.GetLeftPart(UriPartial.Authority)), Width.Desk);
        await tablet.Page.GotoAsync(code.AbsolutePath);
        await tablet.PressAsync("Pair it");
        await tablet.TitledAsync("On the bench");
        return tablet;
    }

    /// <summary>As after a night in which the tablet slept.</summary>
    private static Task PassRunsOutAsync(Window device) => device.Page.Context.ClearCookiesAsync(new() { Name = PassCookie });

    private static async Task<string> LogAsync(Window laptop, string unit)
    {
        await laptop.GoAsync(unit);
        return await Window.WordsAsync(laptop.Page.Locator("section", new() { Has = laptop.Page.Locator("#journal") }));
    }
}
