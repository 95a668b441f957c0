using System.Text.RegularExpressions;

namespace Ohmstead.App.Tests.Web;

public sealed class PrintStyleTests
{
    /// <summary>A bar is a colored ground, and a browser leaves grounds off paper unless it is told that they matter.</summary>
    [Fact]
    public async Task A_printed_page_keeps_the_ink_of_its_bars()
    {
        await using var site = await RunningSite.OnPortAsync();
        var page = await site.Client.GetStringAsync(new Uri("/", UriKind.Relative), Xunit.TestContext.Current.CancellationToken);
        var address = Regex.Match(page, "href=\"([^\"]*ohmstead\\.css[^\"]*)\"").Groups[1].Value;
        var style = await site.Client.GetStringAsync(new Uri(address, UriKind.Relative), Xunit.TestContext.Current.CancellationToken);
        Assert.Matches(@"@media print\s*\{[^@]*body\s*\{[^}]*[^-]print-color-adjust:\s*exact", style);
    }
}
