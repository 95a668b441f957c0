using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>The pictures of docs/guide: taken by the journeys when <c>./test guide</c> asks for them.</summary>
internal static class Guide
{
    public static string Folder { get; } = Path.Combine(RunningTool.Root, "docs", "guide");

    private static readonly bool IsMade = Environment.GetEnvironmentVariable("OHMSTEAD_GUIDE") == "1";

    public static async Task TakeAsync(IPage page, string name)
    {
        // Only what the guide shows is kept.
        if (
            !IsMade
            || !(await File.ReadAllTextAsync(Path.Combine(Folder, "README.md"))).Contains(
                $"pictures/{name}.png",
                StringComparison.Ordinal
            )
        )
            return;
        await page.EvaluateAsync("document.activeElement?.blur(); window.scrollTo(0, 0)");
        await page.ScreenshotAsync(new() { Path = Path.Combine(Folder, "pictures", $"{name}.png") });
    }

    /// <summary>The row of the guide's table of counts: written where the guide is made, else held against what was counted.</summary>
    public static async Task CountAsync(string what, Width width, int taps, int characters)
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
