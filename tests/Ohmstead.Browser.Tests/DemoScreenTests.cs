using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>Every screen of the invented workshop, looked at on both widths, by day and dim.</summary>
public sealed class DemoScreenTests(OpenBrowser browser, RunningDemo demo)
{
    private readonly RunningTool tool = demo.Tool;

    [Theory]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk)]
    public async Task Every_screen_fits_and_axe_finds_nothing(Width width)
    {
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        await window.GoAsync("/");
        await window.Page.Locator("section.rows a").First.WaitForAsync();
        await window.SeeAsync("start");
        foreach (
            var (path, title) in ((string, string)[])
                [
                    ("/kinds", "Types"),
                    ("/kinds/twin-175", ""),
                    ("/kinds/twin-175/readings", ""),
                    ("/shop", "Shop"),
                    ("/shop/meters", "Shop"),
                    ("/shop/loads", "Shop"),
                    ("/shop/parts", "Shop"),
                    ("/shop/limits", "Shop"),
                    ("/shop/look-over", "Shop"),
                    ("/shop/mistakes", "Shop"),
                    ("/search?words=whistle", "Found for"),
                    ("/handed-back", ""),
                    ("/units/new", "Take in a unit"),
                    ("/units/new?type=solo-110", "Take in a practice unit"),
                    ("/practice", "What is in front of you?"),
                    ("/nowhere", ""),
                ]
        )
            await LookAsync(window, path, title);
    }

    [Theory]
    [InlineData(Width.Phone, "twin-175")]
    [InlineData(Width.Desk, "twin-175", Traits = ["kind", "long"])]
    [InlineData(Width.Phone, "solo-110", Traits = ["kind", "long"])]
    [InlineData(Width.Desk, "solo-110")]
    [InlineData(Width.Phone, "step-230")]
    [InlineData(Width.Desk, "step-230", Traits = ["kind", "long"])]
    public async Task Every_screen_of_a_unit_of_each_kind_fits_and_axe_finds_nothing(Width width, string kind)
    {
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        var unit = await UnitOfAsync(window, kind);
        await LookAsync(window, unit, "", $"{kind}-unit");
        await LookAsync(window, $"{unit}/look-over", "Look-over");
        await LookAsync(window, $"{unit}/round", "Quick list");
        await LookAsync(window, $"{unit}/reading", "", $"{kind}-reading");
        await LookAsync(window, $"{unit}/findings", "Findings", $"{kind}-findings");
        await LookAsync(window, $"{unit}/drawing", "", $"{kind}-drawing");
        await LookAsync(window, $"{unit}/papers", "Paperwork");
        await window.SeesAsync("Make the service record");
        Assert.Contains("no certification", await window.PdfAsync($"{unit}/papers/service-record.pdf"), StringComparison.OrdinalIgnoreCase);
    }

    private static async Task LookAsync(Window window, string path, string title, string picture = "")
    {
        await window.GoAsync(path);
        if (title.Length > 0)
            await window.TitledAsync(title);
        // What is worked out in the background is part of the screen.
        await Expect(window.Page.Locator(".working")).ToHaveCountAsync(0, new() { Timeout = 120_000 });
        await window.SeeAsync(picture);
    }

    /// <summary>A unit of a kind with much to show, by the page of what the kind has read.</summary>
    private static async Task<string> UnitOfAsync(Window window, string kind)
    {
        await window.GoAsync($"/kinds/{kind}/readings");
        var units = window.Page.Locator("#this option");
        var first = kind == "twin-175" ? units.Filter(new() { HasText = "F-041" }).First : units.Nth(1);
        await first.WaitForAsync(new() { State = WaitForSelectorState.Attached });
        return $"/units/{await first.GetAttributeAsync("value")}";
    }
}
