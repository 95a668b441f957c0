using Microsoft.Playwright;
using Ohmstead.App.Demo;

namespace Ohmstead.Browser.Tests;

/// <summary>The wiring recorded joint by joint on a photo, an earlier repair found and kept, and the sheet printed.</summary>
public sealed class WiringJourneyTests(OpenBrowser browser, RunningBench bench)
{
    private const string Kind = "solo-110";

    [Theory]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk)]
    public async Task Joints_are_pressed_on_a_photo_with_at_most_three_actions_for_a_wire_end(Width width)
    {
        await using var window = await Window.OpenAsync(browser, bench.Tool.Address, width);
        var unit = await window.TakeInAsync(Kind, "Somebody was in it before.");
        await window.GoAsync($"{unit}/wiring");
        await window.SeesAsync("A photo first");
        await window.Page.SetInputFilesAsync(
            "input[data-about=wiring]",
            new FilePayload
            {
                Name = "inside.jpg",
                MimeType = "image/jpeg",
                Buffer = Drawing.Jpeg(WornRoller.Draw),
            }
        );
        await window.SeesAsync("Tap the joint on the photo");

        var (actions, ends) = (0, 0);
        var moved = "";
        for (var n = 0; n < 4; n++)
        {
            var photo = window.Page.Locator(".pinnable img");
            // Until it has arrived a photo has no size: its shares would all lie in the rounded corner, where no press is felt.
            await window.Page.WaitForFunctionAsync(
                "() => { const i = document.querySelector('.pinnable img'); return !!i && i.complete && i.naturalWidth > 0; }"
            );
            var box = (await photo.BoundingBoxAsync())!;
            await photo.ClickAsync(
                new()
                {
                    Position = new() { X = box.Width * (0.2f + (0.15f * n)), Y = box.Height * 0.4f },
                }
            );
            actions++;
            var colour = window.Page.Locator("input[list=colours]").First;
            await colour.WaitForAsync();
            var here = await window.Page.Locator("input[list=colours]").CountAsync();
            for (var e = 0; e < here; e++)
            {
                if ((await window.Page.Locator("input[list=colours]").Nth(e).InputValueAsync()).Length > 0)
                    continue;
                await window.Page.Locator("input[list=colours]").Nth(e).FillAsync("red");
                actions++;
            }
            ends += here;
            await window.PressAsync("Save this joint");
            actions++;
            await Expect(window.Page.Locator("section[aria-labelledby=list] li")).ToHaveCountAsync(n + 1);
            await Expect(window.Page.Locator(".pinnable .pin")).ToHaveCountAsync(n + 1);
        }
        Assert.InRange((double)actions / ends, 0.5, 3);
        await window.SeesAsync("Not recorded yet");
        await window.SeeAsync("wiring-found");

        // One more joint, on which an end sits that belongs elsewhere.
        await window
            .Page.Locator(".pinnable img")
            .ClickAsync(
                new()
                {
                    Position = new() { X = 40, Y = 40 },
                }
            );
        await window.Page.GetByText("Another end is here").ClickAsync();
        var other = window.Page.Locator("details[open] .choices button").First;
        moved = await other.InnerTextAsync();
        await other.ClickAsync();
        await window.PressAsync("Save this joint");
        await window.SeesAsync("An earlier repair?");
        await window.Page.GetByText("Lock it as it is").WaitForAsync();
        await window.Page.ReloadAsync();
        await window.LiveAsync();
        await window.SeesAsync("An earlier repair?");
        Assert.NotEmpty(moved);
        await window.PressAsync("Lock it as it is");
        await window.SeesAsync("Nothing in it can be changed");
        var sheet = await window.PdfAsync($"{unit}/papers/wiring-sheet.pdf");
        Assert.Contains("From, to", sheet, StringComparison.Ordinal);
        Assert.Contains("As found: not complete", sheet, StringComparison.Ordinal);
    }
}
