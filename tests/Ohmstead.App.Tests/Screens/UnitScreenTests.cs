using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Ohmstead.App.Screens.Start;
using Ohmstead.App.Screens.Units;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Tests.Screens;

/// <summary>Start, a new unit, "where was I" and the look-over, on a real store.</summary>
public class UnitScreenTests
{
    private const string Script = "<script>alert(1)</script>";

    private static IRenderedComponent<T> Show<T>(ScreenBench bench)
        where T : Ohmstead.App.Components.UnitScreen =>
        bench.Context.Render<T>(p => p.Add(s => s.Id, ScreenBench.UnitId));

    private static string At(ScreenBench bench) =>
        new Uri(bench.Context.Services.GetRequiredService<NavigationManager>().Uri).AbsolutePath;

    [Fact]
    public async Task Start_lists_units_by_what_can_be_done_next()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = bench.Context.Render<Start>();
        var row = screen.WaitForElement("a.row");
        Assert.Equal($"/units/{ScreenBench.UnitId}", row.GetAttribute("href"));
        Assert.Contains("Go on with the look-over", row.TextContent, StringComparison.Ordinal);
        await bench.Bench.EnterAsync(ScreenBench.UnitId, 1, "phone", new StageClosed(Stage.LookOver, true, ""));
        screen.WaitForAssertion(() =>
            Assert.Contains("Take the reading", screen.Find("a.row").TextContent, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task A_new_unit_is_taken_in_once_under_a_tag_of_its_own()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = bench.Context.Render<NewUnit>();
        Assert.Equal("F-10", screen.Find("#tag").GetAttribute("value"));
        screen.Find("#tag").Change("f-9");
        screen.Find("form").Submit();
        Assert.Contains("has this tag", screen.WaitForElement("[role=alert]").TextContent, StringComparison.Ordinal);
        screen.Find("#tag").Change(" F-10 ");
        screen.Find("#type").Change("twin-175");
        screen.Find("#owner").Change(Script);
        screen.Find("form").Submit();
        screen.WaitForAssertion(() => Assert.EndsWith("/look-over", At(bench), StringComparison.Ordinal));
        var unit = (await bench.Bench.Store.CardsAsync(false, Xunit.TestContext.Current.CancellationToken)).Single(c =>
            c.Tag == "F-10"
        );
        Assert.Equal(("twin-175", Script), (unit.SheetId, unit.Owner));
        var start = bench.Context.Render<Start>();
        start.WaitForAssertion(() => Assert.Contains("&lt;script&gt;", start.Markup, StringComparison.Ordinal));
        Assert.Empty(start.FindAll("script"));
    }

    [Fact]
    public async Task Every_answer_of_the_look_over_is_an_entry_at_once()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show<LookOver>(bench);
        var asked = screen.FindAll("input[name=sign-track-1-slow]");
        Assert.DoesNotContain(asked, a => a.HasAttribute("checked"));
        asked[0].Change("on");
        screen.WaitForAssertion(() =>
            Assert.True(screen.FindAll("input[name=sign-track-1-slow]")[0].HasAttribute("checked"))
        );
        Assert.Equal(Answer.Yes, (await bench.UnitAsync()).Signs["track-1-slow"]);

        var cracked = screen.FindAll("fieldset.part label").First(l => l.TextContent == "cracked");
        cracked.QuerySelector("input")!.Change("on");
        screen.WaitForAssertion(() =>
            Assert.Single(screen.FindAll("fieldset.part")[0].QuerySelectorAll("input[checked]"))
        );
        screen.Find("#own-cord").Change("near the plug");
        screen.FindAll("input[name=do-cord]")[2].Change("on");
        screen.WaitForAssertion(() => Assert.True(screen.FindAll("input[name=do-cord]")[2].HasAttribute("checked")));
        var noted = (await bench.UnitAsync()).All<ConditionNoted>().Last().Fact;
        Assert.Equal(new ConditionNoted("cord", "cracked; near the plug", Decision.Renew, ""), noted);

        screen.Find("#complaint").Change("It growls.");
        screen.WaitForAssertion(() => Assert.Equal("It growls.", screen.Find("#complaint").GetAttribute("value")));
        Assert.Equal("It growls.", (await bench.UnitAsync()).Card.Complaint);
    }

    [Fact]
    public async Task What_another_window_entered_is_told_and_stays()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var (one, two) = (Show<LookOver>(bench), Show<LookOver>(bench));
        one.FindAll("input[name=sign-track-1-slow]")[1].Change("on");
        two.WaitForElement(".notice");
        Assert.Contains("no (bench)", two.Find(".notice").TextContent, StringComparison.Ordinal);
        Assert.True(two.FindAll("input[name=sign-track-1-slow]")[1].HasAttribute("checked"));
        Assert.Empty(one.FindAll(".notice"));
        two.FindAll("input[name=sign-track-2-slow]")[0].Change("on");
        one.WaitForElement(".notice");
        var signs = (await bench.UnitAsync()).Signs;
        Assert.Equal((Answer.No, Answer.Yes), (signs["track-1-slow"], signs["track-2-slow"]));
        two.Find(".notice button").Click();
        Assert.Empty(two.FindAll(".notice"));
    }

    [Fact]
    public async Task Damage_is_marked_without_a_pointer_and_taken_back()
    {
        await using var bench = await ScreenBench.OpenAsync(new PhotoAdded(new string('a', 64), "front", ""));
        var screen = Show<LookOver>(bench);
        screen.Find(".photos button").Click();
        screen.FindAll("#photos button").First(b => b.TextContent == "Mark damage").Click();
        screen.Find("#photos form").Submit();
        Assert.Contains("what the damage is", screen.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        screen.Find("#across").Input("25");
        screen.Find("#down").Input("70");
        screen.Find("#damage").Change("a crack");
        screen.Find("#photos form").Submit();
        screen.WaitForElement(".marks li");
        var damage = (await bench.UnitAsync()).All<DamagePinned>().Single().Fact;
        Assert.Equal(new DamagePinned(new string('a', 64), 0.25, 0.7, "a crack"), damage);
        Assert.Contains("left:25%;top:70%", screen.Markup, StringComparison.Ordinal);
        screen.Find(".marks button").Click();
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll(".marks li")));
        Assert.Empty((await bench.UnitAsync()).All<DamagePinned>());
    }

    [Fact]
    public async Task A_unit_opens_on_the_last_thing_done_the_shut_gates_and_the_next_thing()
    {
        await using var bench = await ScreenBench.OpenAsync(
            new StageClosed(Stage.LookOver, true, ""),
            ScreenBench.Read("blades", 3.8)
        );
        var screen = Show<WhereWasI>(bench);
        Assert.Contains("Between the plug blades: 3.8 Ω", screen.Find(".last").TextContent, StringComparison.Ordinal);
        Assert.EndsWith(
            "/reading/blades-posts",
            screen.Find("a.do.big").GetAttribute("href"),
            StringComparison.Ordinal
        );
        Assert.Contains("4 gates still shut", screen.Markup, StringComparison.Ordinal);
        Assert.Equal(6, screen.FindAll("a.stage").Count);
    }

    [Fact]
    public async Task The_journal_corrects_takes_back_and_puts_back()
    {
        await using var bench = await ScreenBench.OpenAsync(ScreenBench.Read("blades", 38));
        var screen = Show<WhereWasI>(bench);
        screen.Find("button[aria-label^='Correct: Between']").Click();
        Assert.Equal("38 Ω", screen.Find("#right").GetAttribute("value"));
        screen.Find("#right").Change("lots");
        screen.Find(".entry-line form").Submit();
        Assert.NotEqual("", screen.Find("[role=alert]").TextContent);
        screen.Find("#right").Change("3,8");
        screen.Find(".entry-line form").Submit();
        screen.WaitForAssertion(() => Assert.Contains("corrected:", screen.Markup, StringComparison.Ordinal));
        Assert.Equal(["blades 3.8 Value"], await bench.StandingAsync());
        screen.Find("button[aria-label^='Take back: Between']").Click();
        screen.WaitForAssertion(() => Assert.Contains("taken back", screen.Markup, StringComparison.Ordinal));
        Assert.Empty(await bench.StandingAsync());
        screen.Find("button[aria-label^='Put back: Between']").Click();
        screen.WaitForAssertion(() => Assert.DoesNotContain("taken back", screen.Markup, StringComparison.Ordinal));
        Assert.Equal(["blades 38 Value"], await bench.StandingAsync());
        Assert.Equal(5, (await bench.UnitAsync()).Journal.Length);
    }
}
