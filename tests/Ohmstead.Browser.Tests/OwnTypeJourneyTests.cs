using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>
/// A unit of a kind that nobody wrote, described in words only: from an empty folder to a first finding. One throttle with a roller,
/// one tap, the breaker in the common, no whistle; nothing joins its post A inside.
/// </summary>
public sealed class OwnTypeJourneyTests(OpenBrowser browser)
{
    private const int MostTaps = 60;

    [Fact]
    public async Task A_unit_that_no_type_fits_has_its_first_finding_within_sixty_taps()
    {
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, Width.Phone);
        var hand = await Hand.OnAsync(window);
        await window.GoAsync("/");
        await hand.TapAsync(AriaRole.Link, "Your own unit");
        await window.TitledAsync("Take in a unit");
        await hand.TapAsync(AriaRole.Button, "Take it in, describe its type");
        await window.TitledAsync("What does the plate say?");
        await hand.FillAsync("Watts", "90");
        await NextAsync(window, hand, "How many throttles?");
        await ChooseAsync(window, hand, "One", "What does the throttle run on?");
        await ChooseAsync(window, hand, "A roller", "What comes out to the track?");
        await ChooseAsync(window, hand, "AC", "Which posts does the throttle feed?");
        await hand.FillAsync("Post for the track", "A");
        await hand.FillAsync("The other post", "U");
        await hand.FillAsync("Volts at low", "6");
        await hand.FillAsync("Volts at full", "18");
        await window.SeeAsync("type-posts");
        await NextAsync(window, hand, "Which other posts are there?");
        await hand.FillAsync("Mark", "B");
        await hand.FillAsync("Volts", "14");
        await NextAsync(window, hand, "Is there a range lever?");
        // A tablet that was closed goes on where it was, with every answer.
        await window.Page.ReloadAsync();
        await window.TitledAsync("Is there a range lever?");
        await window.SeesAsync("What I have so far");
        await ChooseAsync(window, hand, "There is none", "Is there a whistle lever?");
        await ChooseAsync(window, hand, "There is none", "What changes the direction?");
        await ChooseAsync(window, hand, "Nothing on the unit", "Where is the breaker?");
        await ChooseAsync(window, hand, "In the common", "Is there a pilot lamp?");
        await ChooseAsync(window, hand, "There is none", "Look it over");
        await window.SeesAsync("A and U, 6 V low, 18 V full");
        await window.SeeAsync("type-answers");
        await FitAsync(window);
        await hand.TapAsync(AriaRole.Button, "Make the type sheet");
        await Expect(window.Page.Locator("#next")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await window.SeeAsync("type-made");
        await FitAsync(window);
        await hand.TapAsync(window.Page.Locator("a.do"));
        await window.TitledAsync("Post");
        await ReadColdAsync(window, hand);
        Assert.InRange(hand.Taps, 1, MostTaps);
    }

    /// <summary>Cold readings as the tool asks for them, until a finding is there: the post of the throttle is open, all else as drafted.</summary>
    private static async Task ReadColdAsync(Window window, Hand hand)
    {
        for (var n = 0; n < 6; n++)
        {
            var title = await Window.WordsAsync(window.Page.Locator("h1").First);
            var shown =
                title.Contains("500 V", StringComparison.Ordinal) ? "200"
                : title.Contains("blade", StringComparison.OrdinalIgnoreCase) && !title.Contains("post", StringComparison.OrdinalIgnoreCase)
                    ? "7.8"
                : title.Contains("post A", StringComparison.Ordinal) || title.Contains("blade", StringComparison.OrdinalIgnoreCase) ? "OL"
                : title.Contains("post B", StringComparison.Ordinal) ? "0.45"
                : "OL";
            await Expect(window.Page.Locator(".value-side form input:focus")).ToBeVisibleAsync();
            await hand.EnterAsync(shown);
            if (title.Contains("post A", StringComparison.Ordinal))
                break;
            var next = window.Page.Locator("a.do").Filter(new() { HasText = "Next" });
            await Expect(next).ToBeVisibleAsync(new() { Timeout = 60_000 });
            await hand.TapAsync(next);
            await Expect(window.Page.Locator("h1").First).Not.ToHaveTextAsync(title);
        }
        await hand.TapAsync(AriaRole.Link, "Findings");
        await window.TitledAsync("Findings");
        await Expect(window.Page.Locator("article.finding").First).ToBeVisibleAsync(new() { Timeout = 120_000 });
        await window.SeesAsync("drafted from its plate and your answers. Bands are wide.");
        await window.SeeAsync("type-findings");
    }

    /// <summary>From the smallest phone to a laptop, and as the phone that it is again.</summary>
    private static async Task FitAsync(Window window)
    {
        foreach (var width in new[] { 320, 720, 1440, 390 })
        {
            await window.Page.SetViewportSizeAsync(width, 844);
            await window.FitsAsync();
        }
    }

    private static async Task ChooseAsync(Window window, Hand hand, string answer, string next)
    {
        await hand.TapAsync(window.Page.Locator("label.answer").Filter(new() { HasText = answer }));
        await NextAsync(window, hand, next);
    }

    private static async Task NextAsync(Window window, Hand hand, string next)
    {
        await hand.TapAsync(AriaRole.Button, "Next");
        await window.TitledAsync(next);
    }
}
