using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Components;
using Ohmstead.App.Demo;
using Ohmstead.App.Web;

namespace Ohmstead.App.Tests.Web;

/// <summary>No id of a sheet is shown on a screen: every address of every unit of the invented workshop, as it is first shown.</summary>
public sealed partial class NoIdsOnScreensTests
{
    /// <summary>What is not read as words: scripts, styles, the text of a sheet in its editor.</summary>
    [GeneratedRegex("<(script|style|textarea|code)\\b.*?</\\1>|<!--.*?-->", RegexOptions.Singleline)]
    private static partial Regex NotRead();

    [GeneratedRegex("\\s(?:aria-label|alt|title|placeholder)=\"([^\"]*)\"")]
    private static partial Regex Spoken();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [Fact]
    public async Task No_screen_of_any_unit_of_the_invented_workshop_shows_an_id()
    {
        await using var site = await RunningSite.OnPortAsync();
        await DemoWorkshop.FillAsync(site.Bench, Xunit.TestContext.Current.CancellationToken);
        var templates = typeof(Bench).Assembly.GetTypes()
            .SelectMany(t => t.GetCustomAttributes(typeof(RouteAttribute), false).Cast<RouteAttribute>())
            .Select(r => r.Template)
            .Where(t => t.Contains("{Id:guid}", StringComparison.Ordinal))
            .ToList();
        Assert.True(templates.Count > 10);
        var (looked, shown) = (0, new List<string>());
        foreach (var card in await site.Bench.Store.CardsAsync(withHandedBack: true, CancellationToken.None))
        {
            if (await site.Bench.SheetAsync(card.SheetId) is not { } sheet) continue;
            var ids = NoIdsTests.Ids(sheet);
            foreach (var template in templates)
            {
                var path = Regex.Replace(template.Replace("{Id:guid}", card.Id.ToString(), StringComparison.Ordinal), @"\{[^}]*\}", sheet.Readings.IsEmpty ? "none" : sheet.Readings[^1].Id);
                using var answer = await site.Client.GetAsync(new Uri(path, UriKind.Relative), Xunit.TestContext.Current.CancellationToken);
                if (answer.StatusCode != HttpStatusCode.OK) continue;
                var page = NotRead().Replace(await answer.Content.ReadAsStringAsync(Xunit.TestContext.Current.CancellationToken), " ");
                var said = string.Join('\n', Spoken().Matches(page).Select(m => m.Groups[1].Value).Append(Tag().Replace(page, "\n")));
                foreach (var line in WebUtility.HtmlDecode(said).Split('\n').Where(l => l.Trim().Length > 0))
                    shown.Add(NoIdsTests.Shows(ids, line, template));
                looked++;
            }
        }
        NoIdsTests.Nothing(shown);
        Assert.True(looked > 100, "too few screens were looked at");
    }
}
