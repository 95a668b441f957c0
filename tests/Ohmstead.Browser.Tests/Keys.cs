using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>A window worked by its keys alone.</summary>
internal static class Keys
{
    private const int MostTabs = 120;

    private const string Held = """
        () => {
            const held = document.activeElement;
            // A finding is called by its name: the letter on its tag stands before it.
            const words = held.cloneNode(true);
            words.querySelectorAll('.letter').forEach(letter => letter.remove());
            return (held.getAttribute('aria-label') ?? held.labels?.[0]?.textContent ?? words.textContent ?? '').replaceAll('\u00a0', ' ').trim();
        }
        """;

    /// <summary>Presses Tab until the hand is on what is named so; fails where no Tab leads there.</summary>
    public static async Task TabToAsync(this Window window, string name)
    {
        await window.LiveAsync();
        for (var n = 0; n < MostTabs; n++)
        {
            if ((await window.HeldAsync()).StartsWith(name, StringComparison.Ordinal))
                return;
            await window.Page.Keyboard.PressAsync("Tab");
        }
        Assert.Fail($"{window.Page.Url}: no Tab leads to “{name}”");
    }

    /// <summary>Goes there by Tab and presses Enter.</summary>
    public static async Task EnterOnAsync(this Window window, string name)
    {
        await window.TabToAsync(name);
        await window.Page.Keyboard.PressAsync("Enter");
    }

    /// <summary>Goes there by Tab and types.</summary>
    public static async Task TypeIntoAsync(this Window window, string name, string text)
    {
        await window.TabToAsync(name);
        await window.Page.Keyboard.TypeAsync(text);
    }

    /// <summary>
    /// Types what a unit with one fault shows, line after line, each where the tool has put the hand. Gives the number of
    /// readings taken.
    /// </summary>
    public static async Task<int> TypeRoundAsync(this Window window, FaultyUnit unit)
    {
        await Expect(window.Page.Locator(".round-line input:focus")).ToBeVisibleAsync();
        for (var taken = 0; ; taken++)
        {
            var reading = await window.Page.EvaluateAsync<string>("document.activeElement.name ?? ''");
            if (reading.Length == 0)
                return taken;
            var line = window.Page.Locator(".round-line").Filter(new() { Has = window.Page.Locator($"input[name='{reading}']") });
            await Expect(line.Locator(".expected b")).ToBeVisibleAsync();
            await window.Page.Keyboard.TypeAsync(unit.Read(reading));
            await window.Page.Keyboard.PressAsync("Enter");
            await window.Page.WaitForFunctionAsync("was => document.activeElement.name !== was", reading);
            // What a fault shows may look like a slip: the next key is on "No, it reads".
            if (!await window.Page.EvaluateAsync<bool>("!!document.activeElement.closest('.slip')"))
                continue;
            await window.Page.Keyboard.PressAsync("Tab");
            await window.Page.Keyboard.PressAsync("Enter");
            await window.Page.WaitForFunctionAsync("!document.activeElement.closest('.slip')");
        }
    }

    private static Task<string> HeldAsync(this Window window) => window.Page.EvaluateAsync<string>(Held);
}
