using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Ohmstead.App.Screens.Papers;
using Ohmstead.App.Screens.Start;
using Ohmstead.App.Screens.Units;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Tests.Screens;

/// <summary>Start, a new unit, "where was I", the look-over and the paperwork, on a real store.</summary>
public class UnitScreenTests
{
    private const string Script = "<script>alert(1)</script>";

    private static IRenderedComponent<T> Show<T>(ScreenBench bench)
        where T : Ohmstead.App.Components.UnitScreen => bench.Context.Render<T>(p => p.Add(s => s.Id, ScreenBench.UnitId));

    private static string At(ScreenBench bench) => new Uri(bench.Context.Services.GetRequiredService<NavigationManager>().Uri).AbsolutePath;

    [Fact]
    public async Task Start_lists_units_by_what_can_be_done_next()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = bench.Context.Render<Start>();
        var row = screen.WaitForElement("a.row");
        Assert.Equal($"/units/{ScreenBench.UnitId}", row.GetAttribute("href"));
        Assert.Contains("Go on with the look-over", row.TextContent, StringComparison.Ordinal);
        await bench.Bench.EnterAsync(ScreenBench.UnitId, 1, "phone", new StageClosed(Stage.LookOver, true, ""));
        screen.WaitForAssertion(() => Assert.Contains("Take the reading", screen.Find("a.row").TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_new_unit_is_taken_in_once_under_a_tag_of_its_own()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = bench.Context.Render<NewUnit>();
        screen.WaitForAssertion(() => Assert.Equal("F-10", screen.Find("#tag").GetAttribute("value")));
        await screen.DoAsync(() => screen.Find("#tag").ChangeAsync("f-9"));
        await screen.DoAsync(() => screen.Find("form").SubmitAsync());
        Assert.Contains("has this tag", screen.WaitForElement("[role=alert]").TextContent, StringComparison.Ordinal);
        await screen.DoAsync(() => screen.Find("#tag").ChangeAsync(" F-10 "));
        await screen.DoAsync(() => screen.Find("#type").ChangeAsync("twin-175"));
        await screen.DoAsync(() => screen.Find("#owner").ChangeAsync(Script));
        await screen.DoAsync(() => screen.Find("form").SubmitAsync());
        screen.WaitForAssertion(() => Assert.EndsWith("/look-over", At(bench), StringComparison.Ordinal));
        var unit = (await bench.Bench.Store.CardsAsync(false, Xunit.TestContext.Current.CancellationToken)).Single(c => c.Tag == "F-10");
        Assert.Equal(("twin-175", Script), (unit.SheetId, unit.Owner));
        var start = bench.Context.Render<Start>();
        start.WaitForAssertion(() => Assert.Contains("&lt;script&gt;", start.Markup, StringComparison.Ordinal));
        Assert.Empty(start.FindAll("script"));
    }

    [Fact]
    public async Task A_tag_that_is_typed_before_the_next_one_was_found_stays()
    {
        await using var bench = await ScreenBench.OpenAsync(FailingStore.Around);
        var cards = FailingStore.Hold(bench.Bench.Store, nameof(IStore.CardsAsync));
        var screen = bench.Context.Render<NewUnit>();
        await screen.DoAsync(() => screen.Find("#tag").ChangeAsync("G-1"));
        cards.SetResult();
        screen.WaitForElement("#type");
        Assert.Equal("G-1", screen.Find("#tag").GetAttribute("value"));
    }

    [Fact]
    public async Task Every_answer_of_the_look_over_is_an_entry_at_once()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show<LookOver>(bench);
        screen.WaitForElement("input[name=sign-track-1-slow]");
        Assert.DoesNotContain(screen.FindAll("input[name=sign-track-1-slow]"), a => a.HasAttribute("checked"));
        await screen.DoAsync(() => screen.FindAll("input[name=sign-track-1-slow]")[0].ChangeAsync("on"));
        screen.WaitForAssertion(() => Assert.True(screen.FindAll("input[name=sign-track-1-slow]")[0].HasAttribute("checked")));
        Assert.Equal(Answer.Yes, (await bench.UnitAsync()).Signs["track-1-slow"]);

        await screen.DoAsync(() =>
            screen.FindAll("fieldset.part label").First(l => l.TextContent == "cracked").QuerySelector("input")!.ChangeAsync("on")
        );
        screen.WaitForAssertion(() => Assert.Single(screen.FindAll("fieldset.part")[0].QuerySelectorAll("input[checked]")));
        await screen.DoAsync(() => screen.Find("#own-cord").ChangeAsync("near the plug"));
        await screen.DoAsync(() => screen.FindAll("input[name=do-cord]")[2].ChangeAsync("on"));
        screen.WaitForAssertion(() => Assert.True(screen.FindAll("input[name=do-cord]")[2].HasAttribute("checked")));
        var noted = (await bench.UnitAsync()).All<ConditionNoted>().Last().Fact;
        Assert.Equal(new ConditionNoted("cord", "cracked; near the plug", Decision.Renew, "") { Title = "Cord" }, noted);

        await screen.DoAsync(() => screen.Find("#complaint").ChangeAsync("It growls."));
        screen.WaitForAssertion(() => Assert.Equal("It growls.", screen.Find("#complaint").GetAttribute("value")));
        Assert.Equal("It growls.", (await bench.UnitAsync()).Card.Complaint);
    }

    [Fact]
    public async Task What_another_window_entered_is_told_and_stays()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var (one, two) = (Show<LookOver>(bench), Show<LookOver>(bench));
        await one.DoAsync(() => one.FindAll("input[name=sign-track-1-slow]")[1].ChangeAsync("on"));
        two.WaitForAssertion(() => Assert.Contains("no (bench)", two.Find(".notice").TextContent, StringComparison.Ordinal));
        Assert.True(two.FindAll("input[name=sign-track-1-slow]")[1].HasAttribute("checked"));
        Assert.Empty(one.FindAll(".notice"));
        await two.DoAsync(() => two.FindAll("input[name=sign-track-2-slow]")[0].ChangeAsync("on"));
        one.WaitForElement(".notice");
        var signs = (await bench.UnitAsync()).Signs;
        Assert.Equal((Answer.No, Answer.Yes), (signs["track-1-slow"], signs["track-2-slow"]));
        await two.DoAsync(() => two.Find(".notice button").ClickAsync());
        two.WaitForAssertion(() => Assert.Empty(two.FindAll(".notice")));
    }

    [Fact]
    public async Task Damage_is_marked_without_a_pointer_and_taken_back()
    {
        await using var bench = await ScreenBench.OpenAsync(new PhotoAdded(new string('a', 64), "front", ""));
        var screen = Show<LookOver>(bench);
        await screen.DoAsync(() => screen.Find(".photos button").ClickAsync());
        await screen.DoAsync(() => screen.FindAll("#photos button").First(b => b.TextContent == "Mark damage").ClickAsync());
        await screen.DoAsync(() => screen.Find("#photos form").SubmitAsync());
        screen.WaitForAssertion(() =>
            Assert.Contains("what the damage is", screen.Find("[role=alert]").TextContent, StringComparison.Ordinal)
        );
        await screen.DoAsync(() => screen.Find("#across").InputAsync("25"));
        await screen.DoAsync(() => screen.Find("#down").InputAsync("70"));
        await screen.DoAsync(() => screen.Find("#damage").ChangeAsync("a crack"));
        await screen.DoAsync(() => screen.Find("#photos form").SubmitAsync());
        screen.WaitForElement(".marks li");
        var damage = (await bench.UnitAsync()).All<DamagePinned>().Single().Fact;
        Assert.Equal(new DamagePinned(new string('a', 64), 0.25, 0.7, "a crack"), damage);
        Assert.Contains("left:25%;top:70%", screen.Markup, StringComparison.Ordinal);
        await screen.DoAsync(() => screen.Find(".marks button").ClickAsync());
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll(".marks li")));
        Assert.Empty((await bench.UnitAsync()).All<DamagePinned>());
    }

    [Fact]
    public async Task A_unit_opens_on_the_last_thing_done_the_shut_gates_and_the_next_thing()
    {
        await using var bench = await ScreenBench.OpenAsync(new StageClosed(Stage.LookOver, true, ""), ScreenBench.Read("blades", 3.8));
        var screen = Show<UnitOverview>(bench);
        screen.WaitForAssertion(() =>
            Assert.Contains("Between the plug blades: 3.8 Ω", screen.Find(".last").TextContent, StringComparison.Ordinal)
        );
        Assert.EndsWith("/reading/blades-posts", screen.Find("a.do.big").GetAttribute("href"), StringComparison.Ordinal);
        Assert.Contains("4 checks to pass before you plug it in", screen.Markup, StringComparison.Ordinal);
        Assert.Equal(7, screen.FindAll("a.stage").Count);
        Assert.DoesNotContain("Type not known yet", screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_paper_of_the_table_is_printed_from_the_paperwork_page()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show<UnitPapers>(bench);
        screen.WaitForElement("#record", TimeSpan.FromSeconds(20));
        var links = screen.FindAll("a").Select(link => link.GetAttribute("href")).ToList();
        Assert.All(PaperTable.All, paper => Assert.Contains($"/units/{ScreenBench.UnitId}/papers/{paper.Id}.pdf", links));
    }

    [Fact]
    public async Task The_journal_corrects_takes_back_and_puts_back()
    {
        await using var bench = await ScreenBench.OpenAsync(ScreenBench.Read("blades", 38));
        var screen = Show<UnitOverview>(bench);
        await screen.DoAsync(() => screen.Find("button[aria-label^='Correct: Between']").ClickAsync());
        Assert.Equal("38 Ω", screen.WaitForElement("#right").GetAttribute("value"));
        await screen.DoAsync(() => screen.Find("#right").ChangeAsync("lots"));
        await screen.DoAsync(() => screen.Find(".entry-line form").SubmitAsync());
        screen.WaitForAssertion(() => Assert.NotEqual("", screen.Find("[role=alert]").TextContent));
        await screen.DoAsync(() => screen.Find("#right").ChangeAsync("3,8"));
        await screen.DoAsync(() => screen.Find(".entry-line form").SubmitAsync());
        screen.WaitForAssertion(() => Assert.Contains("corrected:", screen.Markup, StringComparison.Ordinal));
        Assert.Equal(["blades 3.8 Value"], await bench.StandingAsync());
        await screen.DoAsync(() => screen.Find("button[aria-label^='Undo: Between']").ClickAsync());
        screen.WaitForAssertion(() => Assert.Contains("undone", screen.Markup, StringComparison.Ordinal));
        Assert.Empty(await bench.StandingAsync());
        await screen.DoAsync(() => screen.Find("button[aria-label^='Redo: Between']").ClickAsync());
        screen.WaitForAssertion(() => Assert.DoesNotContain("<b>undone</b>", screen.Markup, StringComparison.Ordinal));
        Assert.Equal(["blades 38 Value"], await bench.StandingAsync());
        Assert.Equal(5, (await bench.UnitAsync()).Journal.Length);
    }

    /// <summary>Found, mended, looked at again: the screen asks one thing after the other, and the mains opens with the last.</summary>
    [Fact]
    public async Task Bare_wire_is_said_with_what_it_locks_and_is_not_ended_by_one_tap()
    {
        await using var bench = await ScreenBench.OpenAsync(ScreenBench.NothingLive);
        var screen = Show<LookOver>(bench);
        AngleSharp.Dom.IElement Cord() => screen.Find("#part-cord");
        Task SeeAsync(string answer) =>
            screen.DoAsync(() =>
                Cord().QuerySelectorAll("label.pick").First(l => l.TextContent == answer).QuerySelector("input")!.ChangeAsync("on")
            );
        Task PressAsync(string word) =>
            screen.DoAsync(() =>
                Cord().QuerySelectorAll(".warning button").First(b => b.TextContent.StartsWith(word, StringComparison.Ordinal)).ClickAsync()
            );
        await SeeAsync("crumbling, bare wire showing");
        screen.WaitForAssertion(() => Assert.Contains("Mains is locked.", Cord().TextContent, StringComparison.Ordinal));
        await SeeAsync("good");
        screen.WaitForAssertion(() => Assert.Contains("Say what was done.", Cord().TextContent, StringComparison.Ordinal));
        Assert.Contains("Mains stays locked. Cord", screen.Markup, StringComparison.Ordinal);
        await PressAsync("Made good");
        screen.WaitForAssertion(() => Assert.Empty(Cord().QuerySelectorAll(".warning")));
        // A slip of the finger leaves the list as it was.
        await SeeAsync("crumbling, bare wire showing");
        screen.WaitForAssertion(() => Assert.NotEmpty(Cord().QuerySelectorAll(".warning")));
        await PressAsync("Marked by mistake");
        screen.WaitForAssertion(() => Assert.Empty(Cord().QuerySelectorAll(".warning")));
        Assert.DoesNotContain(
            (await bench.UnitAsync()).All<ConditionNoted>(),
            c => c.Entry.Number > 7 && c.Fact.Words.Contains("bare", StringComparison.Ordinal) && c.Fact.Decision == Decision.Open
        );
    }

    [Fact]
    public async Task What_could_not_be_looked_at_is_signed_for_by_name()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show<LookOver>(bench);
        AngleSharp.Dom.IElement Form() => screen.Find("#part-sleeves form");
        void Alert(string words) =>
            screen.WaitForAssertion(() =>
                Assert.Contains(words, screen.Find("#part-sleeves [role=alert]").TextContent, StringComparison.Ordinal)
            );
        await screen.DoAsync(() => Form().SubmitAsync());
        Alert("Say why");
        await screen.DoAsync(() => screen.Find("#why-sleeves").ChangeAsync("the cover is riveted"));
        await screen.DoAsync(() => Form().SubmitAsync());
        Alert("who signs");
        await screen.DoAsync(() => screen.Find("#signed-sleeves").ChangeAsync("A. B."));
        await screen.DoAsync(() => Form().SubmitAsync());
        screen.WaitForAssertion(() => Assert.Contains("signed by A. B.: the cover is riveted", screen.Markup, StringComparison.Ordinal));
        Assert.Equal(
            new NotLookedAt("sleeves", "the cover is riveted", "A. B.") { Title = "Sleeving" },
            (await bench.UnitAsync()).All<NotLookedAt>().Single().Fact
        );
    }

    [Fact]
    public async Task Symptoms_are_ticked_ahead_from_the_owners_words_and_count_only_when_saved()
    {
        await using var bench = await ScreenBench.OpenAsync();
        await bench.Bench.EnterAsync(ScreenBench.UnitId, 1, "bench", new CardChanged("F-9", "twin-175", "", "", "Track 2 is slow.", ""));
        var screen = Show<LookOver>(bench);
        screen.WaitForAssertion(() => Assert.True(screen.FindAll("input[name=sign-track-2-slow]")[0].HasAttribute("checked")));
        Assert.DoesNotContain(screen.FindAll("input[name=sign-track-1-slow]"), i => i.HasAttribute("checked"));
        Assert.Contains("Ticked from “slow”: check it.", screen.Markup, StringComparison.Ordinal);
        Assert.Empty((await bench.UnitAsync()).Signs);
        await screen.DoAsync(() => screen.FindAll("button").First(b => b.TextContent == "Save the ticked one").ClickAsync());
        screen.WaitForAssertion(() => Assert.DoesNotContain("Ticked from", screen.Markup, StringComparison.Ordinal));
        Assert.Equal(("track-2-slow", Answer.Yes), (await bench.UnitAsync()).Signs.Select(s => (s.Key, s.Value)).Single());
    }

    [Fact]
    public async Task A_unit_with_open_checks_goes_back_only_not_to_be_plugged_in_and_the_list_says_so()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show<ReturnUnit>(bench);
        screen.WaitForElement(".way.locked");
        Assert.Contains("things are open", screen.Find("h1").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(screen.FindAll("button.way"), b => b.TextContent.Contains("working", StringComparison.Ordinal));
        await screen.DoAsync(() => screen.Find("button.way").ClickAsync());
        screen.WaitForAssertion(() => Assert.Equal("Say who returns it.", screen.Find("[role=alert]").TextContent));
        await screen.DoAsync(() => screen.Find("#by").ChangeAsync("A. B."));
        await screen.DoAsync(() => screen.Find("button.way").ClickAsync());
        screen.WaitForAssertion(() => Assert.Equal("Returned, not to be plugged in", screen.Find("h1").TextContent));
        Assert.Equal(new Returned(ReturnManner.NotToBePluggedIn, "A. B."), (await bench.UnitAsync()).All<Returned>().Single().Fact);
        var list = bench.Context.Render<Ohmstead.App.Screens.Start.HandedBack>();
        list.WaitForAssertion(() =>
            Assert.Contains("Returned, not to be plugged in", list.Find("a.row").TextContent, StringComparison.Ordinal)
        );
        await screen.DoAsync(() => screen.FindAll("button").First(b => b.TextContent == "Back on the bench").ClickAsync());
        screen.WaitForAssertion(() => Assert.Contains("things are open", screen.Find("h1").TextContent, StringComparison.Ordinal));
        Assert.Null((await bench.UnitAsync()).HandedBack);
    }

    /// <summary>The unit's own page names each lock, its limit, and where it is put right.</summary>
    [Fact]
    public async Task A_failed_check_and_a_wire_on_the_wrong_terminal_are_said_on_the_units_page()
    {
        await using var bench = await ScreenBench.OpenAsync([
            .. ScreenBench.NothingLive,
            ScreenBench.Read("insulation-core", 20e3),
            ScreenBench.Read("insulation-posts", 2.05e6),
            new JointSeen(WiringState.Left, "post-2", [new WireEnd("w-1.to", "red"), new WireEnd("w-2.to", "blue")], "", 0, 0),
        ]);
        var text = System.Text.RegularExpressions.Regex.Replace(
            Show<UnitOverview>(bench).WaitForElement("section[aria-labelledby=where]").TextContent,
            @"\s+",
            " "
        );
        Assert.Contains(
            "Both blades to the core, 500 V20 kΩ: failed the type sheet's limit, at least 2.00 MΩ. A measured failure cannot be waived",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Both blades to all posts, 500 V2.05 MΩ: too close to the type sheet's limit, at least 2.00 MΩ. Read it again, or use a better meter",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Mains is locked. red wire of post 1, its end at post 1: on post 2, should be on post 1.",
            text,
            StringComparison.OrdinalIgnoreCase
        );
        Assert.DoesNotContain("a little", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Readings_are_not_marked_as_done_around_a_check()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show<UnitOverview>(bench);
        await screen.DoAsync(() => screen.FindAll("button").First(b => b.TextContent == "Readings: mark as done").ClickAsync(new()));
        screen.WaitForAssertion(() => Assert.Contains("Not yet.", screen.Find("[role=alert]").TextContent, StringComparison.Ordinal));
        Assert.DoesNotContain(
            screen.FindAll("button"),
            b =>
                b.TextContent.StartsWith("Paperwork", StringComparison.Ordinal)
                || b.TextContent.StartsWith("Wiring", StringComparison.Ordinal)
        );
        Assert.Empty((await bench.UnitAsync()).All<StageClosed>());
    }
}
