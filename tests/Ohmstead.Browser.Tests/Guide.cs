using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>The pictures of docs/guide: taken by the journeys when <c>./test guide</c> asks for them.</summary>
internal static class Guide
{
    public static string Folder { get; } = Path.Combine(RunningTool.Root, "docs", "guide");

    /// <summary>Journeys run side by side, and each writes its row.</summary>
    private static readonly SemaphoreSlim Pen = new(1);

    private static readonly bool IsMade = Environment.GetEnvironmentVariable("OHMSTEAD_GUIDE") == "1";

    /// <summary>The guide as it was before a row of it was written.</summary>
    private static readonly Lazy<string> Text = new(() => File.ReadAllText(Path.Combine(Folder, "README.md")));

    public static async Task TakeAsync(IPage page, string name)
    {
        // Only what the guide shows is kept.
        if (!IsMade || !Text.Value.Contains($"pictures/{name}.png", StringComparison.Ordinal))
            return;
        await page.EvaluateAsync("document.activeElement?.blur(); window.scrollTo(0, 0)");
        await page.ScreenshotAsync(new() { Path = Path.Combine(Folder, "pictures", $"{name}.png") });
    }

    /// <summary>The row of the guide's table of counts: written where the guide is made, else held against what was counted.</summary>
    public static async Task CountAsync(string what, Width width, int taps, int characters)
    {
        await Pen.WaitAsync();
        try
        {
            await WriteAsync(what, width, taps, characters);
        }
        finally
        {
            Pen.Release();
        }
    }

    private static async Task WriteAsync(string what, Width width, int taps, int characters)
    {
        var file = Path.Combine(Folder, "README.md");
        var lines = await File.ReadAllLinesAsync(file);
        var row = Array.FindIndex(lines, l => l.StartsWith($"| {what} |", StringComparison.Ordinal));
        Assert.True(row >= 0, $"docs/guide/README.md has no row “{what}”.");
        var cells = lines[row].Split('|');
        var counted = string.Create(System.Globalization.CultureInfo.InvariantCulture, $" {taps} taps, {characters} characters ");
        var cell = width == Width.Phone ? 2 : 3;
        if (!IsMade)
        {
            Assert.Equal(counted, cells[cell]);
            return;
        }
        cells[cell] = counted;
        lines[row] = string.Join('|', cells);
        await File.WriteAllLinesAsync(file, lines);
    }
}
