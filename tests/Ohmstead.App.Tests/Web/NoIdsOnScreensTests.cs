using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Components;
using Ohmstead.App.Web;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Tests.Web;

/// <summary>No id of a sheet and no count of 0 things is shown on a screen: every address of every unit of the invented workshop, as it is shown with the findings worked out.</summary>
public sealed partial class NoIdsOnScreensTests(DemoSite demo)
{
    private const string Unit = "{Id:guid}";

    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    /// <summary>What is not read as words: scripts, styles, the text of a sheet in its editor.</summary>
    [GeneratedRegex("<(script|style|textarea|code)\\b.*?</\\1>|<!--.*?-->", RegexOptions.Singleline)]
    private static partial Regex NotRead();

    [GeneratedRegex("\\s(?:aria-label|alt|title|placeholder)=\"([^\"]*)\"")]
    private static partial Regex Spoken();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex(@"\{[^}]*\}")]
    private static partial Regex Open();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    private static List<string> Templates { get; } =
    [
        .. typeof(Bench)
            .Assembly.GetTypes()
            .SelectMany(t => t.GetCustomAttributes(typeof(RouteAttribute), false).Cast<RouteAttribute>())
            .Select(r => r.Template),
    ];

    [Theory]
    [MemberData(nameof(FilledDemo.Tags), MemberType = typeof(FilledDemo))]
    public async Task No_screen_of_a_unit_of_the_invented_workshop_shows_an_id_or_counts_nothing(string tag)
    {
        var card = demo.Card(tag);
        var unit = (await demo.Bench.ReadAsync(card.Id))!;
        var sheet = (await demo.Bench.SheetOfAsync(unit))!;
        var templates = Templates.Where(t => t.Contains(Unit, StringComparison.Ordinal)).ToList();
        Assert.True(templates.Count > 10);
        await demo.AnswerAsync(card);
        var pages = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var template in templates)
            if (
                await PageAsync(
                    Open().Replace(template.Replace(Unit, card.Id.ToString(), StringComparison.Ordinal), sheet.Readings[^1].Id)
                ) is
                { } page
            )
                pages[template] = page;
        Nothing(sheet, pages);
        Assert.True(pages.Count > 10, "too few screens were looked at");
        Assert.True(
            pages.Values.Any(p => p.Contains("Likely faults", StringComparison.Ordinal))
                == (card.SheetId.Length > 0 && unit.CurrentReadings.Any()),
            "the findings were not looked at"
        );
    }

    [Theory]
    [InlineData("F-036", "twin-175")]
    [InlineData("F-042", "solo-110")]
    [InlineData("F-039", "step-230", Traits = ["kind", "long"])]
    public async Task No_reading_of_a_type_shows_an_id_or_counts_nothing(string tag, string type)
    {
        var card = demo.Card(tag);
        Assert.Equal(type, card.SheetId);
        var sheet = (await demo.Bench.SheetAsync(type))!;
        var pages = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var reading in sheet.Readings)
            pages[reading.Id] = (await PageAsync($"/units/{card.Id}/reading/{reading.Id}"))!;
        Nothing(sheet, pages);
    }

    [Fact]
    public async Task No_screen_of_the_workshop_shows_an_id_or_counts_nothing()
    {
        foreach (var type in (string[])["twin-175", "solo-110", "step-230"])
        {
            var pages = new Dictionary<string, string>(StringComparer.Ordinal);
            foreach (var template in Templates.Where(t => !t.Contains(Unit, StringComparison.Ordinal)))
                if (await PageAsync(Open().Replace(template, type)) is { } page)
                    pages[template] = page;
            Assert.True(pages.Count > 5, "too few screens were looked at");
            Nothing((await demo.Bench.SheetAsync(type))!, pages);
        }
    }

    /// <summary>The text of a page; null for an address that names nothing.</summary>
    private async Task<string?> PageAsync(string path)
    {
        using var answer = await demo.Client.GetAsync(new Uri(path, UriKind.Relative), Stop);
        return answer.StatusCode == HttpStatusCode.OK ? await answer.Content.ReadAsStringAsync(Stop) : null;
    }

    private static void Nothing(TypeSheet sheet, IReadOnlyDictionary<string, string> pages)
    {
        var ids = NoIdsTests.Ids(sheet);
        NoIdsTests.Nothing(pages.SelectMany(page => Said(page.Value).Select(line => NoIdsTests.Shows(ids, line, page.Key))));
        NoIdsTests.Nothing(
            pages.Select(page =>
                SillyCounts.In(Spaces().Replace(string.Join(' ', Said(page.Value)), " ")) is { Length: > 0 } silly
                    ? $"{page.Key}: {silly}"
                    : ""
            )
        );
    }

    /// <summary>The lines that a page shows and that a screen reader says.</summary>
    private static IEnumerable<string> Said(string page)
    {
        var read = NotRead().Replace(page, " ");
        var said = string.Join('\n', Spoken().Matches(read).Select(m => m.Groups[1].Value).Append(Tag().Replace(read, "\n")));
        return WebUtility.HtmlDecode(said).Split('\n').Where(l => l.Trim().Length > 0);
    }
}
