using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>A hand that counts what it does: taps (Enter is one too) and characters.</summary>
internal sealed class Hand(Window window)
{
    /// <summary>Taps so far.</summary>
    public int Taps { get; private set; }

    /// <summary>Characters typed so far.</summary>
    public int Characters { get; private set; }

    public async Task TapAsync(ILocator on)
    {
        await on.First.ClickAsync();
        Taps++;
    }

    public async Task TapAsync(AriaRole role, string name)
    {
        await window.PressAsync(name, role);
        Taps++;
    }

    /// <summary>Taps a field and types into it.</summary>
    public async Task FillAsync(string label, string text)
    {
        await TapAsync(window.Page.GetByLabel(label, new() { Exact = false }));
        await window.Page.Keyboard.TypeAsync(text);
        Characters += text.Length;
    }

    /// <summary>Types a value where the tool has put the hand, and Enter.</summary>
    public async Task EnterAsync(string value)
    {
        await window.Page.Keyboard.TypeAsync(value);
        Characters += value.Length;
        await window.Page.Keyboard.PressAsync("Enter");
        Taps++;
    }
}
