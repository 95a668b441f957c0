namespace Ohmstead.Browser.Tests;

/// <summary>A window finds what it is there to find: a journey over a broken screen fails.</summary>
public sealed class WindowTests(OpenBrowser browser, RunningDemo demo)
{
    [Fact]
    public async Task Axe_finds_a_picture_without_words_and_text_that_is_too_pale()
    {
        await using var window = await Window.OpenAsync(browser, demo.Tool.Address, Width.Desk);
        await window.Page.SetContentAsync("<main><h1>Types</h1><img src='data:,'><p style='color:#bbb;background:#fff'>Pale</p></main>");
        var all = await Axe.ViolationsAsync(window.Page);
        Assert.Contains(all, v => v.StartsWith("image-alt:", StringComparison.Ordinal));
        Assert.Contains(
            all,
            v => v.StartsWith("color-contrast:", StringComparison.Ordinal) && v.Contains("Pale", StringComparison.Ordinal)
        );
        Assert.StartsWith(
            "color-contrast:",
            Assert.Single(await Axe.ViolationsAsync(window.Page, "color-contrast")),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_request_to_another_address_fails_the_journey()
    {
        var window = await Window.OpenAsync(browser, demo.Tool.Address, Width.Desk);
        await window.Page.SetContentAsync("<img src='http://127.0.0.2:9/picture.png'>");
        var failed = await Assert.ThrowsAnyAsync<Xunit.Sdk.XunitException>(async () => await window.DisposeAsync());
        Assert.Contains("127.0.0.2:9", failed.Message, StringComparison.Ordinal);
    }
}
