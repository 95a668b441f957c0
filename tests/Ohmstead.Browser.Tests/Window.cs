using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>
/// A window of the browser on the tool. A request to anywhere else, an error of a script, or a violation found by axe on a
/// screen that <see cref="SeeAsync"/> looks at fails the journey.
/// </summary>
internal sealed partial class Window : IAsyncDisposable
{
    private readonly IBrowserContext context;
    private readonly Width width;
    private readonly List<string> wrong = [];

    private Window(IBrowserContext context, IPage page, Width width) => (this.context, Page, this.width) = (context, page, width);

    public IPage Page { get; }

    /// <summary>Opens a window with cookies and storage of its own.</summary>
    /// <param name="scale">Device pixels of a CSS pixel.</param>
    public static async Task<Window> OpenAsync(OpenBrowser browser, Uri address, Width width, float scale = 1)
    {
        var context = await browser.Browser.NewContextAsync(
            new()
            {
                BaseURL = address.ToString(),
                ViewportSize = width == Width.Phone ? new() { Width = 390, Height = 844 } : new() { Width = 1440, Height = 900 },
                DeviceScaleFactor = scale,
                HasTouch = width == Width.Phone,
                ReducedMotion = ReducedMotion.Reduce,
                // A tablet whose person compared the print and went on.
                IgnoreHTTPSErrors = address.Scheme == Uri.UriSchemeHttps,
            }
        );
        context.SetDefaultTimeout(30_000);
        var page = await context.NewPageAsync();
        var window = new Window(context, page, width);
        // Listened to, not stood in the way of: a browser whose requests are held up keeps no file for its next page.
        context.Request += (_, request) =>
        {
            if (new Uri(request.Url) is { Scheme: "http" or "https" } asked && asked.Authority != address.Authority)
                lock (window.wrong)
                    window.wrong.Add($"asked for {request.Url}");
        };
        page.PageError += (_, error) =>
        {
            // Drawn anew under the finger, by findings that arrive: the event was for a button that is gone. What it was to do is asked for by the journey.
            if (!error.Contains("There is no event handler associated with this event", StringComparison.Ordinal))
                window.wrong.Add($"script: {error}");
        };
        page.Console += (_, said) =>
        {
            // A page whose circuit broke answers to nothing any more: that is what to read first.
            if (said.Type == "error" && said.Text.Contains("unhandled exception", StringComparison.OrdinalIgnoreCase))
                window.wrong.Add(said.Text);
        };
        return window;
    }

    /// <summary>Goes to an address of the tool and waits until the page is live.</summary>
    public async Task GoAsync(string path)
    {
        await Page.GotoAsync(path);
        await LiveAsync();
    }

    /// <summary>Waits until the page answers to the hand: what is pressed before that is lost.</summary>
    public Task LiveAsync() => Expect(Page.Locator("main:not([aria-busy])")).ToBeVisibleAsync();

    /// <summary>Presses a button or follows a link by what stands on it.</summary>
    public Task PressAsync(string name, AriaRole role = AriaRole.Button) =>
        Page.GetByRole(role, new() { NameRegex = new Regex($"^{Regex.Escape(name)}") }).First.ClickAsync();

    public Task FollowAsync(string name) => PressAsync(name, AriaRole.Link);

    public Task FillAsync(string label, string text) => Page.GetByLabel(label, new() { Exact = false }).First.FillAsync(text);

    /// <summary>The words of a place, its spaces that hold made plain.</summary>
    public static async Task<string> WordsAsync(ILocator place) => (await place.InnerTextAsync()).Replace('\u00a0', ' ');

    public Task SeesAsync(string text) => Expect(Page.GetByText(text).First).ToBeVisibleAsync();

    public async Task TitledAsync(string title)
    {
        await Expect(Page.Locator("h1")).ToContainTextAsync(title);
        await LiveAsync();
    }

    /// <summary>
    /// Looks at the screen as it stands: nothing runs over its width; axe finds nothing, by day and dim. Where the guide is
    /// being made, its picture is taken.
    /// </summary>
    /// <param name="picture">Name of the guide's picture; empty for none.</param>
    public async Task SeeAsync(string picture = "")
    {
        await LiveAsync();
        await FitsAsync();
        foreach (var light in (string[])["dim", "day"])
        {
            await Page.EvaluateAsync("light => window.ohmstead?.setLight(light)", light);
            // Only the colours change with the light: what does not depend on them is looked at once.
            var found = await Axe.ViolationsAsync(Page, light == "dim" ? [] : ["color-contrast", "link-in-text-block"]);
            Assert.True(found.Length == 0, $"{Page.Url}, {light}: {string.Join("; ", found)}");
        }
        if (picture.Length > 0)
            await Guide.TakeAsync(Page, $"{picture}-{(width == Width.Phone ? "phone" : "desk")}");
    }

    /// <summary>Nothing runs over the width.</summary>
    public async Task FitsAsync()
    {
        var over = await Page.EvaluateAsync<int[]>("[document.documentElement.scrollWidth - innerWidth, innerWidth]");
        Assert.True(
            over[0] <= 0,
            string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"{Page.Url} is {over[0]} px wider than the screen of {over[1]}"
            )
        );
    }

    /// <summary>The text of a PDF that the tool serves.</summary>
    public async Task<string> PdfAsync(string path)
    {
        var answer = await context.APIRequest.GetAsync(path);
        Assert.Equal(200, answer.Status);
        return await Pdf.TextAsync(await answer.BodyAsync());
    }

    /// <summary>Takes the network away, or gives it back.</summary>
    public Task CutAsync(bool isCut) => context.SetOfflineAsync(isCut);

    /// <summary>The status that an address answers with.</summary>
    public async Task<int> StatusAsync(string path) => (await context.APIRequest.GetAsync(path)).Status;

    public async ValueTask DisposeAsync()
    {
        await context.DisposeAsync();
        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
    }
}
