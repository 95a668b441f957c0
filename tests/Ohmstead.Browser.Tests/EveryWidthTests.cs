using Microsoft.AspNetCore.Components;
using Microsoft.Playwright;
using Ohmstead.App.Components;

namespace Ohmstead.Browser.Tests;

/// <summary>
/// The screens that no journey goes through: nothing runs over the side from 320 to 1440 px and at 200 % zoom, Tab leads to all that can
/// be pressed, axe finds nothing.
/// </summary>
public sealed class EveryWidthTests(OpenBrowser browser, RunningDemo demo)
{
    private static readonly string[] Untyped = ["", "/look-over", "/terminals", "/type", "/reading", "/round", "/findings"];
    private static readonly string[] UntypedToo =
    [
        "/plan",
        "/apart",
        "/apart/back",
        "/wiring",
        "/continuity",
        "/check",
        "/first-power",
        "/tests",
        "/heat-run",
        "/breaker",
        "/drawing",
        "/can-run",
        "/hum",
        "/history",
        "/dating",
        "/together",
        "/papers",
        "/return",
    ];
    private static readonly string[] Typed = ["", "/look-over", "/reading", "/round", "/findings", "/plan", "/apart", "/apart/back"];
    private static readonly string[] TypedToo =
    [
        "/wiring",
        "/continuity",
        "/check",
        "/first-power",
        "/tests",
        "/tests/touch-current",
        "/tests/reading-insulation-core",
        "/heat-run",
        "/breaker",
        "/drawing",
        "/can-run",
        "/hum",
        "/history",
        "/dating",
        "/dating/vents",
        "/together",
        "/papers",
        "/practice",
        "/return",
    ];
    private static readonly string[] Workshop =
    [
        "/",
        "/practice",
        "/units/new",
        "/units/new?type=solo-110",
        "/handed-back",
        "/devices",
        "/merge",
        "/search?words=post",
        "/nowhere",
        "/show/F-036",
        "/show/day",
        "/kinds",
        "/kinds/twin-175",
    ];
    private static readonly string[] Drawer =
    [
        "/drawer",
        "/drawer/kits",
        "/drawer/donors",
        "/drawer/batches",
        "/drawer/log",
        "/day",
        "/back",
    ];
    private static readonly string[] Settings =
    [
        "/kinds/solo-110/readings",
        "/kinds/solo-110/years",
        "/shop",
        "/shop/meters",
        "/shop/loads",
        "/shop/parts",
        "/shop/limits",
        "/shop/look-over",
        "/shop/mistakes",
        "/shop/language",
        "/about/memory",
    ];

    /// <summary>CSS pixels. Half of 1440 with two device pixels each is 200 % zoom of a laptop, half of 640 that of a small window.</summary>
    private static readonly int[] Widths = [320, 390, 720, 1024, 1440];

    private const string Listen = """
        () => {
            window.held = new Set();
            document.addEventListener('focusin', e => held.add(e.target));
            const start = document.createElement('span');
            start.tabIndex = -1;
            document.body.prepend(start);
            start.focus();
            return document.querySelectorAll('a[href],button,summary,select,textarea,input').length;
        }
        """;

    private const string Missed = """
        () => [...document.querySelectorAll('a[href],button,summary,select,textarea,input')]
            .filter(e => e.checkVisibility({ visibilityProperty: true }) && !e.disabled && !held.has(e))
            .filter(e => !(e.type === 'radio' && [...held].some(h => h.name === e.name)))
            .map(e => e.outerHTML.slice(0, 160))
        """;

    /// <summary>Texts in which a line may end between a number and its unit.</summary>
    private const string Breaking = """
        () => {
            const [texts, found] = [document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT), []];
            while (texts.nextNode())
                if (!texts.currentNode.parentElement.closest('textarea,pre,select,svg') && /\d (V|Ω|kΩ|MΩ|A|W|°C|%)(?![\p{L}\d])/u.test(texts.currentNode.data))
                    found.push(texts.currentNode.data);
            return found;
        }
        """;

    [Fact]
    public Task The_first_screens_and_the_types_fit_every_width() => FitAsync("", Workshop);

    [Fact]
    public Task The_shops_pages_fit_every_width() => FitAsync("", Settings);

    [Fact]
    public Task The_drawer_fits_every_width() => FitAsync("", Drawer);

    [Fact]
    public async Task A_unit_without_a_type_fits_every_width() => await FitAsync("F-046", Untyped);

    [Fact]
    [Trait("kind", "long")]
    public async Task A_unit_without_a_type_fits_every_width_from_its_steps_to_its_return() => await FitAsync("F-046", UntypedToo);

    [Fact]
    public async Task A_unit_fits_every_width() => await FitAsync("F-036", Typed);

    [Fact]
    public async Task A_unit_fits_every_width_from_its_wiring_to_its_return() => await FitAsync("F-036", TypedToo);

    [Fact]
    public async Task Axe_finds_nothing_on_a_unit_without_a_type() => await AxeAsync(Width.Phone, "F-046", Untyped);

    [Fact]
    [Trait("kind", "long")]
    public async Task Axe_finds_nothing_from_its_steps_to_its_return() => await AxeAsync(Width.Phone, "F-046", UntypedToo);

    [Fact]
    public async Task Axe_finds_nothing_from_the_wiring_to_the_return_of_a_unit() => await AxeAsync(Width.Desk, "F-036", TypedToo);

    [Fact]
    public async Task Axe_finds_nothing_on_the_second_screen() => await AxeAsync(Width.Desk, "", ["/show/F-036"]);

    [Fact]
    public void Every_screen_of_a_unit_is_looked_at()
    {
        const string unit = "/units/{Id:guid}";
        var screens = typeof(UnitScreen)
            .Assembly.GetTypes()
            .SelectMany(t => t.GetCustomAttributes(typeof(RouteAttribute), false).Cast<RouteAttribute>())
            .Where(r => r.Template.StartsWith(unit, StringComparison.Ordinal))
            .Select(r => r.Template[unit.Length..])
            .Where(s => !s.Contains('{', StringComparison.Ordinal))
            .ToList();
        Assert.True(screens.Count > 15);
        // Journeys look at a step of taking apart, and at what is there with --lan alone.
        Assert.Empty(screens.Except([.. Untyped, .. UntypedToo, .. Typed, .. TypedToo, "/apart/step", "/phone"]));
    }

    private async Task FitAsync(string tag, string[] paths)
    {
        await using var window = await Window.OpenAsync(browser, demo.Tool.Address, Width.Desk, scale: 2);
        var at = await AddressAsync(window, tag);
        foreach (var path in paths)
        {
            await LookAsync(window, at + path);
            foreach (var width in Widths)
            {
                await window.Page.SetViewportSizeAsync(width, 900);
                await window.FitsAsync();
            }
            Assert.Empty(await window.Page.EvaluateAsync<string[]>(Breaking));
            var most = await window.Page.EvaluateAsync<int>(Listen);
            string[] missed = [];
            // A page that goes on filling, or takes the hand to its box, moves the start: what is missed is walked to once more.
            for (var round = 0; round < 3 && (round == 0 || missed.Length > 0); round++)
            {
                for (var n = 0; n <= most; n++)
                    await window.Page.Keyboard.PressAsync("Tab");
                missed = await window.Page.EvaluateAsync<string[]>(Missed);
            }
            Assert.True(missed.Length == 0, $"{window.Page.Url}: no Tab leads to {string.Join("; ", missed)}");
        }
    }

    private async Task AxeAsync(Width width, string tag, string[] paths)
    {
        await using var window = await Window.OpenAsync(browser, demo.Tool.Address, width);
        var at = await AddressAsync(window, tag);
        foreach (var path in paths)
        {
            await LookAsync(window, at + path);
            await window.SeeAsync();
        }
    }

    private static async Task LookAsync(Window window, string path)
    {
        await window.GoAsync(path);
        await window.Page.Locator("h1").First.WaitForAsync();
        await Expect(window.Page.Locator(".working")).ToHaveCountAsync(0, new() { Timeout = 120_000 });
    }

    /// <summary>The address of a unit of the demo, by its tag.</summary>
    private static async Task<string> AddressAsync(Window window, string tag)
    {
        if (tag.Length == 0)
            return "";
        await window.GoAsync("/");
        return (await window.Page.Locator("a.row").Filter(new() { HasText = tag }).First.GetAttributeAsync("href"))!;
    }
}
