using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>A hand that counts what it does: taps (Enter is one too) and characters.</summary>
internal sealed class Hand
{
    private readonly Window window;

    private Hand(Window window) => this.window = window;

    /// <summary>
    /// The browser's own count, kept over the pages of the window: what the person's hand did, whatever the test says. A tap on an answer's
    /// words is passed on to its button as a second click: what is counted is the finger.
    /// </summary>
    private const string Count = """
        for (const [type, name] of [['pointerup', () => 'taps'], ['keydown', e => e.key === 'Enter' ? 'taps' : e.key.length === 1 && 'characters']])
            addEventListener(type, e => {
                const counted = e.isTrusted && name(e);
                if (counted) sessionStorage.setItem(`hand-${counted}`, Number(sessionStorage.getItem(`hand-${counted}`)) + 1);
            }, true);
        """;

    /// <summary>A hand on a window, which counts beside it from its first page on.</summary>
    public static async Task<Hand> OnAsync(Window window)
    {
        await window.Page.AddInitScriptAsync(Count);
        return new(window);
    }

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
        var box = window.Page.GetByLabel(label, new() { Exact = false }).First;
        await TapAsync(box);
        await window.Page.Keyboard.TypeAsync(text);
        await Expect(box).ToHaveValueAsync(text);
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

    /// <summary>Holds the counts against the browser's own, and writes them into the guide, or holds them against it.</summary>
    public async Task CountedAsync(string what, Width width)
    {
        Assert.Equal(
            [Taps, Characters],
            await window.Page.EvaluateAsync<int[]>("['taps', 'characters'].map(c => Number(sessionStorage.getItem(`hand-${c}`)))")
        );
        await Guide.CountAsync(what, width, Taps, Characters);
    }
}
