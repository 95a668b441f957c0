using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Components;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Cautions;

namespace Ohmstead.App.Tests.Web;

/// <summary>Local codes and licensed practice are named wherever mains is concerned, once.</summary>
public sealed class LocalCodesTests
{
    /// <summary>Every screen of the program, found by its address and not from a list.</summary>
    private static IEnumerable<string> Screens(Guid unit) =>
        typeof(Bench)
            .Assembly.GetTypes()
            .SelectMany(t => t.GetCustomAttributes(typeof(RouteAttribute), false).Cast<RouteAttribute>())
            .Select(r => r.Template.Replace("{Id:guid}", unit.ToString(), StringComparison.Ordinal))
            .Select(r => Regex.Replace(r, @"\{Reading[^}]*\}", "full-1"))
            .Select(r => Regex.Replace(r, @"\{[^}]*\}", "twin-175"));

    [Fact]
    public async Task Every_screen_names_them_once()
    {
        await using var site = await RunningSite.OnPortAsync();
        var screens = Screens(site.UnitId).ToList();
        Assert.True(screens.Count > 15);
        foreach (var screen in screens)
        {
            using var answer = await site.Client.GetAsync(new Uri(screen, UriKind.Relative), Xunit.TestContext.Current.CancellationToken);
            var page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Xunit.TestContext.Current.CancellationToken));
            Assert.True(Regex.Count(page, Regex.Escape(CautionTable.LocalCodes)) == 1, screen);
        }
    }

    public static TheoryData<string> Verbs() =>
        [
            $"predict {Tool.Sample}",
            $"diagnose {Tool.Sample} {Tool.Case("000")}",
            $"plan {Tool.Demo("twin-175.sheet.json")} --reach disc-out",
            $"continuity {Tool.Demo("solo-110.sheet.json")}",
            $"rewire {Tool.Demo("solo-110.sheet.json")}",
            $"draft {Tool.Reference("outlines/direct-60.outline.json")}",
            $"identify {Tool.Sample} {Tool.Reference("outlines/direct-60.outline.json")} --readings {Tool.Case("000")}",
            $"reckon {Tool.Reference("questions/regulation.question.json")}",
            "example",
        ];

    /// <summary>Verbs from which nobody goes to the mains: files, figures and the bench's own keeping.</summary>
    private static readonly string[] Others =
    [
        "check",
        "fit",
        "listen",
        "print",
        "demo",
        "export",
        "move",
        "import",
        "merge",
        "backup",
        "restore",
        "completion",
    ];

    [Fact]
    public void Every_verb_of_the_help_is_one_or_the_other()
    {
        var help = Tool.Run("--help").Out;
        var listed = help[help.IndexOf("Commands:", StringComparison.Ordinal)..]
            .Split('\n')
            .Skip(1)
            .TakeWhile(l => l.Trim().Length > 0)
            .Select(l => Regex.Match(l, @"^  (\w+)"))
            .Where(m => m.Success)
            .Select(m => m.Groups[1].Value);
        Assert.Equal(
            Others.Concat(Verbs().Select(v => v.Data.Split(' ')[0])).Order(StringComparer.Ordinal),
            listed.Order(StringComparer.Ordinal)
        );
    }

    [Theory]
    [MemberData(nameof(Verbs))]
    public void Every_verb_that_leads_to_mains_names_them_once_and_its_json_holds_none(string line)
    {
        var arguments = line.Split(' ');
        var (code, output, error) = Tool.RunOnce(arguments);
        Assert.True(code == 0, error);
        Assert.Equal(1, Regex.Count(output, Regex.Escape(CautionTable.LocalCodes)));
        if (arguments[0] == "example")
            return;
        var json = Tool.Run([.. arguments, "--json"]).Out;
        Assert.DoesNotContain(CautionTable.LocalCodes, json, StringComparison.Ordinal);
    }
}
