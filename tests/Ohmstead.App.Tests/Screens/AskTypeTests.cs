using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Ohmstead.App.Components;
using Ohmstead.App.Screens.Types;
using Ohmstead.App.Screens.Untyped;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Asking;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Tests.Screens;

/// <summary>A unit that no type fits: its type is asked for, drafted, measured, and made again.</summary>
public sealed class AskTypeTests : IAsyncLifetime
{
    private static readonly Guid Id = new(5, 0, 0, new byte[8]);
    private OpenWorkshop workshop = null!;

    public async ValueTask InitializeAsync()
    {
        workshop = await OpenWorkshop.OpenAsync();
        workshop.Screens.Services.AddSingleton(new SiteOptions(0, IsOnLan: false, IsDemo: false));
        await workshop.Bench.EnterAsync(
            Id,
            0,
            "bench",
            new TakenIn("7", "", "", "dead"),
            new PlateRead(120, 90),
            new TerminalNamed("untyped-post-1", "A", IsPost: true),
            new TerminalNamed("untyped-post-2", "B", IsPost: true),
            new TerminalNamed("untyped-post-3", "U", IsPost: true)
        );
    }

    public ValueTask DisposeAsync() => workshop.DisposeAsync();

    private NavigationManager Navigation => workshop.Screens.Services.GetRequiredService<NavigationManager>();

    private string At => new Uri(Navigation.Uri).AbsolutePath;

    /// <summary>Begun from the unit's panel; its id.</summary>
    private async Task<string> BegunAsync()
    {
        var unit = (await workshop.Bench.ReadAsync(Id))!;
        var sheet = await workshop.Bench.SheetOfAsync(unit);
        var panel = workshop.Screens.Render<UntypedPanel>(p => p.Add(s => s.Unit, unit).Add(s => s.Sheet, sheet));
        await panel.DoAsync(() => panel.Find("button").ClickAsync());
        panel.WaitForAssertion(() => Assert.EndsWith("/ask/plate", At, StringComparison.Ordinal));
        return At.Split('/')[2];
    }

    private IRenderedComponent<AskType> Show(string type, string question)
    {
        var screen = workshop.Screens.Render<AskType>(p => p.Add(s => s.KindId, type).Add(s => s.Question, question));
        screen.WaitForElement("form button.do");
        return screen;
    }

    private async Task<KindAnswers> AnswersAsync(string type) => (await OwnTypes.ReadAsync(workshop.Bench, type))!.Value.Type.Answers;

    /// <summary>Answers one question and presses the copper button; ends on the next.</summary>
    private async Task AnswerAsync(string type, string question, string word, string next)
    {
        var screen = Show(type, question);
        await screen.DoAsync(() => screen.Find($"input[value='{word}']").ChangeAsync(word));
        await PressAsync(screen, type, next);
    }

    private async Task PressAsync(IRenderedComponent<AskType> screen, string type, string next)
    {
        await screen.DoAsync(() => screen.Find("form").SubmitAsync());
        screen.WaitForAssertion(() => Assert.Equal($"/kinds/{type}/ask/{next}", At));
    }

    private async Task<string> AnsweredAsync()
    {
        var type = await BegunAsync();
        await PressAsync(Show(type, "plate"), type, "throttles");
        await AnswerAsync(type, "throttles", "1", "runs");
        await AnswerAsync(type, "runs", "roller", "output");
        await AnswerAsync(type, "output", "ac", "posts-1");
        await PressAsync(Show(type, "posts-1"), type, "fixed");
        await PressAsync(Show(type, "fixed"), type, "range");
        await AnswerAsync(type, "range", "none", "whistle");
        await AnswerAsync(type, "whistle", "none", "direction");
        await AnswerAsync(type, "direction", "none", "breaker");
        await AnswerAsync(type, "breaker", "common", "lamp");
        await AnswerAsync(type, "lamp", "none", "name");
        return type;
    }

    private async Task<string> MadeAsync()
    {
        var type = await AnsweredAsync();
        var last = Show(type, "name");
        await last.DoAsync(() => last.Find("form").SubmitAsync());
        last.WaitForAssertion(() => Assert.Equal($"/kinds/{type}", At));
        return type;
    }

    private IRenderedComponent<OneType> Page(string type)
    {
        Navigation.NavigateTo($"/kinds/{type}");
        var page = workshop.Screens.Render<OneType>(p => p.Add(s => s.KindId, type));
        page.WaitForElement("#numbers");
        return page;
    }

    [Fact]
    public async Task The_questions_begin_with_what_was_entered_and_end_in_a_type_that_the_unit_is_of()
    {
        await workshop.Bench.EnterAsync(
            Id,
            5,
            "bench",
            new ReadingEntered("untyped-blades", Shown.Number(7.6), BenchState.AsSheet) { Title = "Between the plug blades" }
        );
        var type = await MadeAsync();
        var unit = (await workshop.Bench.ReadAsync(Id))!;
        Assert.Equal(type, unit.Card.SheetId);
        // What was read before stays with the unit, under the type's own name for it.
        Assert.Equal(["blades"], unit.CurrentReadings.Select(r => r.Fact.ReadingId));
        var sheet = (await workshop.Bench.SheetOfAsync(unit))!;
        Assert.Equal("Single-throttle unit, 90 W", sheet.Title);
        Assert.Equal(
            ["post-A", "post-B", "post-U"],
            sheet
                .Elements.SelectMany(e => e.OtherTerminals.Append(e.From).Append(e.To))
                .Where(t => t.StartsWith("post-", StringComparison.Ordinal))
                .Select(t => t.Replace("-a", "-A", StringComparison.Ordinal))
                .Distinct()
                .Order(StringComparer.Ordinal)
        );
        var page = Page(type);
        page.WaitForAssertion(() => Assert.Contains("drafted from its plate and your answers", page.Markup, StringComparison.Ordinal));
        Assert.Contains("Next reading", page.Find("a.do").TextContent, StringComparison.Ordinal);
        Assert.Contains(
            page.FindAll(".own-number"),
            r => r.TextContent.Contains("Plate watts", StringComparison.Ordinal) && r.TextContent.Contains("90 W", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task An_answer_is_on_the_disk_before_the_next_and_is_there_after_a_reload()
    {
        var type = await BegunAsync();
        var screen = Show(type, "plate");
        Assert.Equal("90", screen.Find("#a-watts").GetAttribute("value"));
        await screen.DoAsync(() => screen.Find("#a-watts").ChangeAsync("eighty"));
        screen.WaitForAssertion(() => Assert.Contains("saved", screen.Find("[role=status]").TextContent, StringComparison.Ordinal));
        Assert.Equal("eighty", (await AnswersAsync(type)).Watts);
        Assert.Equal("eighty", Show(type, "plate").Find("#a-watts").GetAttribute("value"));
        // Begun again from the unit, the same one goes on.
        Assert.Equal(type, await BegunAsync());
    }

    [Fact]
    public async Task A_refusal_stands_at_its_question_and_nothing_goes_on()
    {
        var type = await BegunAsync();
        var plate = Show(type, "plate");
        await plate.DoAsync(() => plate.Find("#a-watts").ChangeAsync("eighty"));
        await plate.DoAsync(() => plate.Find("form").SubmitAsync());
        plate.WaitForAssertion(() =>
            Assert.Contains("“eighty” is not a number", plate.Find("[role=alert]").TextContent, StringComparison.Ordinal)
        );
        Assert.EndsWith("/ask/plate", At, StringComparison.Ordinal);
        var count = Show(type, "throttles");
        await count.DoAsync(() => count.Find("form").SubmitAsync());
        count.WaitForAssertion(() => Assert.Contains("Choose one", count.Find("[role=alert]").TextContent, StringComparison.Ordinal));
        // From a later question the way back to it is a link.
        await count.DoAsync(() => count.Find("input[value='1']").ChangeAsync("1"));
        await count.DoAsync(() => count.Find("form").SubmitAsync());
        count.WaitForAssertion(() => Assert.Equal(OwnTypes.Address(type, "plate"), count.Find("[role=alert] a").GetAttribute("href")));
    }

    [Fact]
    public async Task I_dont_know_is_an_answer_and_the_drawing_marks_what_is_new()
    {
        var type = await AnsweredAsync();
        var screen = Show(type, "breaker");
        screen.WaitForAssertion(() =>
            Assert.Contains("breaker, between", screen.Find("svg").ParentElement!.OuterHtml + screen.Markup, StringComparison.Ordinal)
        );
        Assert.Contains(", new", screen.Markup, StringComparison.Ordinal);
        await screen.DoAsync(() =>
            screen.FindAll("button").Single(b => b.TextContent.StartsWith("I don’t know", StringComparison.Ordinal)).ClickAsync()
        );
        screen.WaitForAssertion(() => Assert.Equal($"/kinds/{type}/ask/lamp", At));
        Assert.Equal(KindAnswers.Unknown, (await AnswersAsync(type)).Breaker);
    }

    [Fact]
    public async Task A_changed_answer_makes_a_new_version_and_a_measured_unit_keeps_its_own()
    {
        var type = await MadeAsync();
        await workshop.Bench.EnterAsync(Id, 6, "bench", new ReadingEntered("blades", Shown.Number(7.1), BenchState.AsSheet));
        await AnswerAsync(type, "breaker", "throttle", "lamp");
        var page = Page(type);
        await page.DoAsync(() => page.FindAll("button").Single(b => b.TextContent == "Make a new version").ClickAsync());
        page.WaitForAssertion(() => Assert.Contains("Saved as a new version", page.Markup, StringComparison.Ordinal));
        var unit = (await workshop.Bench.ReadAsync(Id))!;
        Assert.Equal(1, unit.SheetVersion);
        Assert.Contains((await workshop.Bench.SheetOfAsync(unit))!.Elements, e => e.Id == "breaker");
        Assert.Contains((await workshop.Bench.SheetAsync(type))!.Elements, e => e.Id == "breaker-a");
        await page.DoAsync(() =>
            page.FindAll("button").Single(b => b.TextContent.StartsWith("Use the newest", StringComparison.Ordinal)).ClickAsync()
        );
        page.WaitForAssertion(() => Assert.DoesNotContain("Use the newest", page.Markup, StringComparison.Ordinal));
        Assert.Contains((await workshop.Bench.SheetOfAsync((await workshop.Bench.ReadAsync(Id))!))!.Elements, e => e.Id == "breaker-a");
    }

    [Fact]
    public async Task Readings_make_numbers_of_the_next_version_and_a_number_is_put_right_in_its_place()
    {
        var type = await MadeAsync();
        await workshop.Bench.EnterAsync(Id, 6, "bench", new ReadingEntered("blades", Shown.Number(7.1), BenchState.AsSheet));
        var page = Page(type);
        await page.DoAsync(() => page.FindAll("button").Single(b => b.TextContent == "Learn from 1 reading").ClickAsync());
        page.WaitForAssertion(() =>
            Assert.Contains("drafted from its plate and 1 reading. Bands are wide", page.Markup, StringComparison.Ordinal)
        );
        page.WaitForAssertion(() => Assert.Contains("Measured", Row(page, "Primary, ohms").TextContent, StringComparison.Ordinal));
        await page.DoAsync(() => Row(page, "Primary, ohms").QuerySelector("button")!.ClickAsync());
        await page.DoAsync(() => page.Find(".own-number form input").ChangeAsync("6.5"));
        await page.DoAsync(() => page.Find(".own-number form").SubmitAsync());
        page.WaitForAssertion(() => Assert.Contains("6.50 Ω", Row(page, "Primary, ohms").TextContent, StringComparison.Ordinal));
        Assert.Equal(3, (await workshop.Bench.Store.ReadDocumentAsync(Bench.SheetKind, type, CancellationToken.None))!.Version);
        // The unit that was measured first is judged by what it was measured with.
        Assert.Equal(1, (await workshop.Bench.ReadAsync(Id))!.SheetVersion);
    }

    [Fact]
    public async Task A_type_that_shares_the_plate_offers_itself_with_its_chance()
    {
        await MadeAsync();
        var next = new Guid(6, 0, 0, new byte[8]);
        await workshop.Bench.EnterAsync(
            next,
            0,
            "bench",
            new TakenIn("8", "", "", ""),
            new PlateRead(120, 90),
            new ReadingEntered("untyped-blades", Shown.Number(7.7), BenchState.AsSheet)
        );
        var screen = workshop.Screens.Render<NameType>(p => p.Add(s => s.Id, next));
        screen.WaitForAssertion(() =>
            Assert.Contains("None of these", screen.Find("[aria-labelledby=fits]").TextContent, StringComparison.Ordinal)
        );
        var offered = screen.Find("[aria-labelledby=fits]").TextContent;
        Assert.Contains("1 type has this plate", offered, StringComparison.Ordinal);
        Assert.Matches("Single-throttle unit, 90 W, nothing wrong[6-9][0-9].%", offered);
    }

    [Fact]
    public async Task The_text_editor_stays()
    {
        var type = await MadeAsync();
        Navigation.NavigateTo($"/kinds/{type}/text");
        var page = workshop.Screens.Render<OneType>(p => p.Add(s => s.KindId, type));
        Assert.Contains("\"own-", page.WaitForElement("#code").GetAttribute("value"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_from_another_bench_stands_beside_ones_own_and_never_over_it()
    {
        var type = await MadeAsync();
        var sheet = await workshop.TextAsync(Bench.SheetKind, type);
        var own = (await OwnTypes.ReadAsync(workshop.Bench, type))!.Value.Type;
        var put = TypeEdit.Put(sheet, own.Made!, "elements.primary.ohms", 6.5)!.Value;
        var theirs = TypeFile.Write(put.Text, own with { Made = put.Made }, []);
        var brought = await BroughtIn.KeepAsync(workshop.Bench, "club.type.json", theirs);
        Assert.True(brought.IsUsable);
        Assert.NotEqual(type, brought.Id);
        Assert.Equal(sheet, await workshop.TextAsync(Bench.SheetKind, type));
        var page = Page(brought.Id);
        Assert.Contains("6.50 Ω", Row(page, "Primary, ohms").TextContent, StringComparison.Ordinal);
        Assert.Contains("You said so", Row(page, "Primary, ohms").TextContent, StringComparison.Ordinal);
    }

    private static AngleSharp.Dom.IElement Row(IRenderedComponent<OneType> page, string name) =>
        page.FindAll(".own-number").Single(r => r.TextContent.TrimStart().StartsWith(name, StringComparison.Ordinal));
}
