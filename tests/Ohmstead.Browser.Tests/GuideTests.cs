using System.Text.RegularExpressions;

namespace Ohmstead.Browser.Tests;

/// <summary>The guide and its pictures belong together.</summary>
public sealed partial class GuideTests
{
    [Fact]
    public async Task Every_picture_that_the_guide_shows_is_there_and_every_one_there_is_shown()
    {
        var text = await File.ReadAllTextAsync(Path.Combine(Guide.Folder, "README.md"), TestContext.Current.CancellationToken);
        var shown = Picture().Matches(text).Select(m => m.Groups[1].Value).Distinct().Order(StringComparer.Ordinal);
        var there = Directory
            .GetFiles(Path.Combine(Guide.Folder, "pictures"))
            .Select(f => Path.GetFileName(f))
            .Order(StringComparer.Ordinal);
        Assert.Equal(there, shown);
    }

    [GeneratedRegex(@"\(pictures/([^)]+)\)")]
    private static partial Regex Picture();
}
