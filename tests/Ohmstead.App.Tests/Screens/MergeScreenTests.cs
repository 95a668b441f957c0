using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Ohmstead.App.Background;
using Ohmstead.App.Screens.Merging;
using Ohmstead.App.Screens.Start;
using Ohmstead.App.Web;
using Ohmstead.Storage;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Tests.Screens;

/// <summary>The other bench on the screen: it comes in, and what contradicts is asked about.</summary>
public sealed class MergeScreenTests
{
    private static readonly DateTimeOffset Noon = new(2026, 3, 4, 12, 0, 0, TimeSpan.Zero);

    private static async Task<ScreenBench> OpenAsync()
    {
        var screens = await ScreenBench.OpenAsync();
        screens.Context.Services.AddSingleton(new MergeWork(screens.Bench));
        return screens;
    }

    /// <summary>Another bench had the unit as it was taken in, and entered something of its own.</summary>
    private static async Task FromOtherAsync(ScreenBench screens, params Fact[] facts)
    {
        var first = (await screens.UnitAsync()).Journal[0];
        var theirs = new List<NewEntry>
        {
            new(first.Id, first.At, first.By, first.Fact) { Bench = first.Bench, After = [] },
        };
        foreach (var fact in facts)
            theirs.Add(
                new(new Guid(77, (short)theirs.Count, 0, new byte[8]), Noon.AddMinutes(theirs.Count), "bench", fact)
                {
                    Bench = "c0ffee00",
                    After = [theirs[^1].Id],
                }
            );
        await screens.Bench.Store.MergeAsync(ScreenBench.UnitId, theirs, Xunit.TestContext.Current.CancellationToken);
    }

    private static async Task<ScreenBench> DisagreeingAsync()
    {
        var screens = await OpenAsync();
        await screens.Bench.EnterAsync(ScreenBench.UnitId, 1, "bench", new StageClosed(Stage.LookOver, true, ""));
        await FromOtherAsync(screens, new StageClosed(Stage.LookOver, false, ""));
        return screens;
    }

    [Fact]
    public async Task A_question_names_both_benches_and_an_answer_is_entered_and_ends_it()
    {
        await using var screens = await DisagreeingAsync();
        var start = screens.Context.Render<Start>();
        Assert.Contains("1 question", start.Find(".notice").TextContent, StringComparison.Ordinal);
        await BenchNaming.SaveAsync(screens.Bench, "Laptop");
        var page = screens.Context.Render<MergeBenches>();
        var answers = page.FindAll("fieldset button");
        Assert.Equal(2, answers.Count);
        Assert.Contains(answers, a => a.TextContent.Contains("Look-over: done (Laptop", StringComparison.Ordinal));
        var other = answers.Single(a => a.TextContent.Contains("Look-over: reopened (Bench C0FF", StringComparison.Ordinal));
        Assert.Contains("4 Mar 2026", other.TextContent, StringComparison.Ordinal);
        other.Click();
        page.WaitForAssertion(() => Assert.Contains("All questions are answered", page.Markup, StringComparison.Ordinal));
        var unit = await screens.UnitAsync();
        Assert.DoesNotContain(Stage.LookOver, unit.ClosedStages);
        Assert.Equal(4, unit.Journal.Length);
        start.WaitForAssertion(() => Assert.Empty(start.FindAll(".notice")));
    }

    [Fact]
    public async Task The_unit_says_what_came_from_which_bench()
    {
        await using var screens = await DisagreeingAsync();
        var part = screens.Context.Render<FromBenches>(p => p.Add(f => f.Unit, screens.UnitAsync().Result));
        Assert.Equal(2, part.FindAll("li").Count);
        Assert.Contains("Bench C0FF", part.Markup, StringComparison.Ordinal);
        Assert.Contains("1 question", part.Markup, StringComparison.Ordinal);
        await using var alone = await OpenAsync();
        var unit = await alone.UnitAsync();
        Assert.Empty(alone.Context.Render<FromBenches>(p => p.Add(f => f.Unit, unit)).Markup.Trim());
    }

    [Fact]
    public async Task One_tag_on_two_units_is_asked_about_and_one_of_them_gets_another()
    {
        await using var screens = await OpenAsync();
        var other = new Guid(8, 0, 0, new byte[8]);
        await screens.Bench.Store.MergeAsync(
            other,
            [
                new(new Guid(78, 0, 0, new byte[8]), Noon, "bench", new TakenIn("F-9", "", "B. Brass", ""))
                {
                    Bench = "c0ffee00",
                    After = [],
                },
            ],
            Xunit.TestContext.Current.CancellationToken
        );
        Assert.Equal(1, await OpenQuestions.CountAsync(screens.Bench.Store));
        var page = screens.Context.Render<MergeBenches>();
        page.Find($"#tag-{other}").Change("F-10");
        page.FindAll("fieldset button").Single(b => b.TextContent.Contains("B. Brass", StringComparison.Ordinal)).Click();
        page.WaitForAssertion(() => Assert.Contains("All questions are answered", page.Markup, StringComparison.Ordinal));
        Assert.Equal("F-10", (await screens.Bench.ReadAsync(other))!.Card.Tag);
        Assert.Equal("B. Brass", (await screens.Bench.ReadAsync(other))!.Card.Owner);
    }

    [Fact]
    public async Task Both_may_keep_their_tag()
    {
        await using var screens = await OpenAsync();
        await screens.Bench.Store.MergeAsync(
            new Guid(8, 0, 0, new byte[8]),
            [new(new Guid(78, 0, 0, new byte[8]), Noon, "bench", new TakenIn("F-9", "", "", "")) { Bench = "c0ffee00", After = [] }],
            Xunit.TestContext.Current.CancellationToken
        );
        var page = screens.Context.Render<MergeBenches>();
        page.FindAll("fieldset button").Single(b => b.TextContent == "Both keep it").Click();
        page.WaitForAssertion(() => Assert.Contains("All questions are answered", page.Markup, StringComparison.Ordinal));
        Assert.Equal(0, await OpenQuestions.CountAsync(screens.Bench.Store));
    }

    [Fact]
    public async Task Another_folder_comes_in_with_a_backup_first_and_says_what_came()
    {
        await using var screens = await OpenAsync();
        var stop = Xunit.TestContext.Current.CancellationToken;
        var folder = Directory.CreateTempSubdirectory("ohmstead-other-").FullName;
        await using (var other = await Store.OpenAsync(folder, TimeProvider.System, stop))
        {
            await other.AppendAsync(
                new Guid(8, 0, 0, new byte[8]),
                0,
                [new(new Guid(78, 0, 0, new byte[8]), Noon, "bench", new TakenIn("F-11", "", "", ""))],
                stop
            );
            var shop = ShopText.Write(UsualShop.Make() with { Name = "The club" });
            await other.SaveDocumentAsync(Shop.DocumentKind, Shop.DocumentId, 0, shop, Noon, stop);
        }
        var page = screens.Context.Render<MergeBenches>();
        page.Find("form").Submit();
        Assert.Contains("Type the folder first", page.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        page.Find("#path").Change(folder);
        page.Find("form").Submit();
        page.WaitForAssertion(
            () => Assert.Contains("1 new unit, no units with new entries, 1 new entry", page.Markup, StringComparison.OrdinalIgnoreCase),
            TimeSpan.FromSeconds(20)
        );
        var backups = Path.Combine(((Store)screens.Bench.Store).Folder, MergeWork.BackupFolder);
        Assert.Single(Directory.GetDirectories(backups), d => File.Exists(Path.Combine(d, "workshop.db")));
        // The settings of the other bench are shown beside one's own, and used when somebody says so twice.
        Assert.Contains("The club", page.Markup, StringComparison.Ordinal);
        Assert.NotEqual("The club", (await screens.Bench.ShopAsync()).Name);
        page.FindAll("button").Single(b => b.TextContent.StartsWith("Use these", StringComparison.Ordinal)).Click();
        page.FindAll("button").Single(b => b.TextContent == "Yes, use these").Click();
        page.WaitForAssertion(() => Assert.Contains("These are your Shop settings now", page.Markup, StringComparison.Ordinal));
        Assert.Equal("The club", (await screens.Bench.ShopAsync()).Name);
        Directory.Delete(folder, true);
    }

    [Fact]
    public async Task What_is_no_workshop_is_told_with_what_to_name_instead()
    {
        await using var screens = await OpenAsync();
        var page = screens.Context.Render<MergeBenches>();
        page.Find("#path").Change(Path.Combine(Path.GetTempPath(), "there-is-none"));
        page.Find("form").Submit();
        page.WaitForAssertion(() => Assert.Contains("Nothing was merged", page.Markup, StringComparison.Ordinal), TimeSpan.FromSeconds(20));
        Assert.Contains("Name a data folder, a backup or a zip.", page.Markup, StringComparison.Ordinal);
    }
}
