namespace Ohmstead.Browser.Tests;

/// <summary>No line of a screen ends between a number and its unit, as the browser breaks them.</summary>
public sealed class UnbrokenTests(OpenBrowser browser, RunningDemo demo)
{
    /// <summary>The words of each pair that lies on two lines.</summary>
    private const string Broken = """
        () => {
          const pair = /\d\s(?:[mkM]?[VAWΩ]|Hz|min|mm|%|°C|USD)(?![A-Za-z])|(?:post|track|step) \d/gi, wrong = [];
          const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
          while (texts.nextNode()) {
            const text = texts.currentNode;
            if (text.parentElement.closest('textarea,option,script,style,svg') || !text.parentElement.checkVisibility()) continue;
            for (const found of text.data.matchAll(pair)) {
              const range = document.createRange();
              range.setStart(text, found.index);
              range.setEnd(text, found.index + found[0].length);
              const tops = [...range.getClientRects()].map(r => r.top);
              if (tops.length && Math.max(...tops) - Math.min(...tops) > 4) wrong.push(text.data.trim());
            }
          }
          return wrong;
        }
        """;

    [Theory]
    [InlineData("twin-175")]
    [InlineData("solo-110")]
    [InlineData("step-230", Traits = ["kind", "long"])]
    public async Task A_number_stands_on_one_line_with_its_unit(string kind)
    {
        await using var window = await Window.OpenAsync(browser, demo.Tool.Address, Width.Phone);
        await window.GoAsync($"/kinds/{kind}/readings");
        var options = window.Page.Locator("#this option");
        await options.Nth(1).WaitForAsync(new() { State = Microsoft.Playwright.WaitForSelectorState.Attached });
        var ids = await options.EvaluateAllAsync<string[]>("all => all.map(o => o.value).filter(v => v)");
        var (wrong, pairs) = (new List<string>(), 0);
        foreach (var page in new[] { "", "/round", "/findings", "/reading", "/check", "/apart", "/first-power", "/papers" })
        {
            await window.GoAsync($"/units/{ids[0]}{page}");
            await Expect(window.Page.Locator(".working")).ToHaveCountAsync(0, new() { Timeout = 300_000 });
            foreach (var wide in new[] { 390, 320, 355 })
            {
                await window.Page.SetViewportSizeAsync(wide, 844);
                wrong.AddRange(
                    (await window.Page.EvaluateAsync<string[]>(Broken)).Select(w =>
                        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{page} at {wide} px: {w}")
                    )
                );
            }
            pairs += await window.Page.EvaluateAsync<int>("() => (document.body.innerText.match(/\\d\\u00a0[VAWΩm]/g) ?? []).length");
        }
        Assert.Empty(wrong);
        Assert.True(pairs > 20, "hardly a number with its unit was seen");
    }
}
