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
}
