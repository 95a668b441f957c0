using Bunit;
using Ohmstead.App.Screens.About;

namespace Ohmstead.App.Tests.Screens;

/// <summary>The page that counts what is kept in memory.</summary>
public sealed class InMemoryTests
{
    [Fact]
    public async Task It_counts_a_type_sheet_that_was_read_once_and_found_again()
    {
        await using var bench = await ScreenBench.OpenAsync();
        Assert.Contains("Ready no times. Worked out 1 time.", Row(bench), StringComparison.Ordinal);
        var sheet = await bench.Bench.SheetAsync("twin-175");
        Assert.Same(sheet, await bench.Bench.SheetAsync("twin-175"));
        Assert.Contains("Ready 2 times. Worked out 1 time.", Row(bench), StringComparison.Ordinal);
        Assert.Contains("1\u00a0of\u00a064", Row(bench), StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_names_all_that_is_kept()
    {
        await using var bench = await ScreenBench.OpenAsync();
        Assert.Equal(
            [
                "Units as last read",
                "Type sheets",
                "Units without a type",
                "Findings of units",
                "Minutes of units",
                "Quick lists of types",
                "Circuits as drawn",
            ],
            bench.Context.Render<InMemory>().FindAll("section[aria-labelledby=kept] li > span > b").Select(b => b.TextContent)
        );
    }

    private static string Row(ScreenBench bench) =>
        bench
            .Context.Render<InMemory>()
            .FindAll("li")
            .Single(li => li.TextContent.Contains("Type sheets", StringComparison.Ordinal))
            .TextContent;
}
