using System.Text.Json;
using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>A reading in one sight: leads, conditions, hazard, what it should read and the whole entry without scrolling.</summary>
public sealed class ReadingFitTests(OpenBrowser browser, RunningDemo demo)
{
    /// <summary>
    /// Everything that is needed before the number is typed; where the reading is locked, what to do first and that it can be entered
    /// as not taken stand in place of the pad. On a laptop both leads are in the pane of the drawing.
    /// </summary>
    private const string Measure = """
        () => {
          const bottom = e => e.getBoundingClientRect().bottom + scrollY;
          const isLocked = !document.querySelector('.reading-fit .pad') && document.querySelector('.reading-fit .value-side .warning');
          const entry = isLocked ? '.reading-fit .value-side .warning, .reading-fit .value-side > details > summary' : '.reading-fit .pad button';
          const all = [...document.querySelectorAll('.reading-fit h1, .reading-fit .setup, .reading-fit .should, ' + entry)];
          const box = s => [...document.querySelectorAll(s)].map(e => e.getBoundingClientRect());
          const pane = box('.reading-fit .circuit-pane').filter(b => b.width > 0)[0];
          const outside = pane ? box('.circuit-pane .d-probe-red, .circuit-pane .d-probe-black').filter(b => b.left < pane.left || b.right > pane.right || b.top < pane.top || b.bottom > pane.bottom).length : 0;
          const least = [...document.querySelectorAll('.reading-fit *')].filter(e => e.offsetParent && [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim())).map(e => parseFloat(getComputedStyle(e).fontSize));
          return {
            // Another row of this test looks at the same unit: the line that says so is none of the reading's own.
            bottom: Math.max(...all.filter(e => e.offsetParent).map(bottom)) - (document.querySelector('.who-else') ? document.querySelector('.who-else').offsetHeight + 8 : 0),
            bands: box('.reading-fit .should').filter(b => b.height > 0).length,
            ways: box('.reading-fit .value-side .warning .do, .reading-fit .pad .do').filter(b => b.height >= 48).length,
            probes: box('.circuit-pane .d-probe-red, .circuit-pane .d-probe-black').length,
            isDrawn: pane ? 1 : 0,
            outside,
            wide: document.documentElement.scrollWidth,
            flags: box('.setup .flag').length,
            keys: box('.reading-fit .pad button').filter(b => b.height > 0).length,
            leastKey: Math.min(99, ...box('.reading-fit .pad button').filter(b => b.height > 0).map(b => b.height)),
            leastText: Math.min(...least),
          };
        }
        """;

    [Theory]
    [InlineData(Width.Phone, "twin-175")]
    [InlineData(Width.Desk, "twin-175", Traits = ["kind", "long"])]
    [InlineData(Width.Phone, "solo-110", Traits = ["kind", "long"])]
    [InlineData(Width.Desk, "solo-110")]
    [InlineData(Width.Phone, "step-230", Traits = ["kind", "long"])]
    [InlineData(Width.Desk, "step-230", Traits = ["kind", "long"])]
    public Task A_third_of_the_readings_of_a_type_fit_their_screen(Width width, string kind) => FitAsync(width, kind, oneIn: 3);

    [Theory]
    [Trait("kind", "long")]
    [InlineData(Width.Phone, "twin-175")]
    [InlineData(Width.Desk, "twin-175")]
    [InlineData(Width.Phone, "solo-110")]
    [InlineData(Width.Desk, "solo-110")]
    [InlineData(Width.Phone, "step-230")]
    [InlineData(Width.Desk, "step-230")]
    public Task Every_reading_of_a_type_fits_its_screen(Width width, string kind) => FitAsync(width, kind, oneIn: 1);

    private async Task FitAsync(Width width, string kind, int oneIn)
    {
        await using var window = await Window.OpenAsync(browser, demo.Tool.Address, width);
        var (wide, high) = width == Width.Phone ? (390, 844) : (1440, 900);
        var unit = await UnitWithMostReadingsAsync(window, kind);
        await window.GoAsync($"{unit}/reading");
        var readings = await window.Page.EvaluateAsync<string[]>(
            "[...new Set([...document.querySelectorAll('details a[href*=\"/reading/\"]')].map(a => a.getAttribute('href')))]"
        );
        Assert.True(readings.Length > 20, "readings are missing");
        var (wrong, pads) = (new List<string>(), 0);
        // A drawn share, another at each width.
        new Random((int)width).Shuffle(readings);
        var looked = readings[..(readings.Length / oneIn)];
        foreach (var reading in looked)
        {
            await window.GoAsync(reading);
            await window.Page.Locator(".reading-fit .pad, .reading-fit .value-side .warning").First.WaitForAsync();
            if (width == Width.Desk)
                await window.Page.Locator(".circuit-pane .d-probe-black").First.WaitForAsync();
            var seen = await window.Page.EvaluateAsync<JsonElement>(Measure);
            double At(string name) => seen.GetProperty(name).GetDouble();
            pads += At("keys") > 0 ? 1 : 0;
            if (
                At("bottom") > high
                || At("wide") > wide
                || At("leastKey") < 48
                || At("leastText") < 16
                || At("bands") < 1
                || At("ways") < 1
                || At("outside") > 0
                || (At("isDrawn") > 0 && At("probes") < 2)
            )
                wrong.Add($"{reading}: {seen.GetRawText()}");
        }
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
        Assert.True(pads >= looked.Length / 4, "too few could be entered");
    }

    /// <summary>No name of the drawing lies on another, as the browser draws them, and the smallest is 14 px.</summary>
    [Theory]
    [InlineData("twin-175")]
    [InlineData("solo-110")]
    [InlineData("step-230")]
    public async Task The_drawing_reads_at_arms_length(string kind)
    {
        await using var window = await Window.OpenAsync(browser, demo.Tool.Address, Width.Desk);
        await window.GoAsync($"{await UnitWithMostReadingsAsync(window, kind)}/drawing");
        await window.Page.Locator(".circuit-pane svg text").First.WaitForAsync();
        await Expect(window.Page.Locator(".working")).ToHaveCountAsync(0, new() { Timeout = 120_000 });
        var found = await window.Page.EvaluateAsync<string[]>(
            """
            () => {
              // A line's box has room above and below its letters.
              const letters = b => ({ left: b.left + 1, right: b.right - 1, top: b.top + 0.22 * b.height, bottom: b.bottom - 0.2 * b.height });
              const texts = [...document.querySelectorAll('.circuit-pane svg text')].map(t => ({ words: t.textContent, box: letters(t.getBoundingClientRect()), size: parseFloat(t.getAttribute('font-size')) * t.getScreenCTM().a }));
              const wrong = texts.filter(t => t.size < 14).map(t => `${t.words}: ${t.size} px`);
              texts.forEach((a, n) => texts.slice(n + 1).forEach(b => {
                if (a.box.left < b.box.right && b.box.left < a.box.right && a.box.top < b.box.bottom && b.box.top < a.box.bottom) wrong.push(`${a.words} on ${b.words}`);
              }));
              return wrong;
            }
            """
        );
        Assert.Empty(found);
    }

    /// <summary>Rows of the ladder are a finger high, its letters 16 px and more, and none lies over the next.</summary>
    [Theory]
    [InlineData("twin-175")]
    [InlineData("step-230")]
    public async Task On_a_phone_the_drawing_is_a_ladder(string kind)
    {
        await using var window = await Window.OpenAsync(browser, demo.Tool.Address, Width.Phone);
        await window.GoAsync($"{await UnitWithMostReadingsAsync(window, kind)}/drawing");
        await window.Page.Locator(".rung").First.WaitForAsync();
        var lanes = window.Page.Locator("[aria-label='Which lane'] button");
        for (var n = 0; n < await lanes.CountAsync() - 1; n++)
        {
            // The line of progress above may go while the finger comes down, and move the button from under it.
            for (var tries = 0; tries < 3 && await lanes.Nth(n).GetAttributeAsync("aria-pressed") != "true"; tries++)
            {
                await lanes.Nth(n).ClickAsync();
                await window.Page.WaitForTimeoutAsync(300);
            }
            await Expect(lanes.Nth(n)).ToHaveAttributeAsync("aria-pressed", "true");
            var wrong = await window.Page.EvaluateAsync<string[]>(
                """
                () => {
                  const rows = [...document.querySelectorAll('.rung')], boxes = rows.map(r => r.getBoundingClientRect()), wrong = [];
                  if (rows.length < 3) wrong.push(`${rows.length} rows`);
                  boxes.forEach((b, n) => { if (b.height < 68) wrong.push(`row ${n} is ${b.height} high`); if (n && b.top < boxes[n - 1].bottom - 0.5) wrong.push(`row ${n} lies over the one before`); });
                  for (const e of document.querySelectorAll('.rung b, .rung small, .rung .flag')) if (parseFloat(getComputedStyle(e).fontSize) < 16) wrong.push(e.textContent);
                  return wrong;
                }
                """
            );
            Assert.Empty(wrong);
        }
    }

    private static async Task<string> UnitWithMostReadingsAsync(Window window, string kind)
    {
        await window.GoAsync($"/kinds/{kind}/readings");
        var options = window.Page.Locator("#this option");
        await options.Nth(1).WaitForAsync(new() { State = WaitForSelectorState.Attached });
        var (best, most) = ("", -1);
        foreach (var id in await options.EvaluateAllAsync<string[]>("all => all.map(o => o.value).filter(v => v)"))
        {
            await window.GoAsync($"/units/{id}/reading");
            await window.Page.Locator(".reading-fit").WaitForAsync();
            var open = await window.Page.Locator("details .line", new() { HasText = "locked." }).CountAsync();
            if (best.Length == 0 || open < most)
                (best, most) = (id, open);
        }
        return $"/units/{best}";
    }
}
