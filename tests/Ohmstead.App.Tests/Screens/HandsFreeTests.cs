using Bunit;
using Ohmstead.App.Background;
using Ohmstead.App.Screens.Readings;

namespace Ohmstead.App.Tests.Screens;

/// <summary>Hands that hold two probes: nothing is said until a person turns it on, and each thing once.</summary>
public class HandsFreeTests
{
    private static (BunitContext Context, IRenderedComponent<HandsFree> Screen) Show(bool isOn)
    {
        var context = new BunitContext();
        context.JSInterop.Mode = JSRuntimeMode.Loose;
        context.JSInterop.Setup<bool>("ohmstead.hands.isOn").SetResult(isOn);
        context.JSInterop.Setup<bool>("ohmstead.hands.hasVoice").SetResult(true);
        return (context, context.Render<HandsFree>(p => p.Add(h => h.Words, "Post 1, full. Red on post 1, black on post 0.")));
    }

    private static string[] Said(BunitContext context) =>
        [.. context.JSInterop.Invocations["ohmstead.hands.say"].Select(i => (string)i.Arguments[0]!)];

    [Fact]
    public async Task It_is_off_until_it_is_turned_on_and_says_nothing()
    {
        var (context, screen) = Show(isOn: false);
        await using var _ = context;
        Assert.Empty(Said(context));
        Assert.DoesNotContain("foot switch", screen.Markup, StringComparison.Ordinal);
        await screen.DoAsync(() => screen.Find("input").ChangeAsync(true));
        screen.WaitForAssertion(() => Assert.Contains("foot switch", screen.Markup, StringComparison.Ordinal));
        screen.WaitForAssertion(() => Assert.Equal(["Post 1, full. Red on post 1, black on post 0."], Said(context)));
    }

    [Fact]
    public async Task What_was_said_is_not_said_twice_and_what_was_read_is_read_back()
    {
        var (context, screen) = Show(isOn: true);
        await using var _ = context;
        screen.Render(p => p.Add(h => h.Words, "Post 1, full. Red on post 1, black on post 0."));
        screen.Render(p => p.Add(h => h.Words, "14.8 V. 2.4 V low."));
        Assert.Equal(["Post 1, full. Red on post 1, black on post 0.", "14.8 V. 2.4 V low."], Said(context));
    }
}
