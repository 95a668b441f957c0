using System.Globalization;
using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Ohmstead.App.Components;
using Ohmstead.App.Screens.Owner;
using Ohmstead.App.Screens.Types;
using Ohmstead.App.Screens.Units;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Asking;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Tests.Screens;

/// <summary>Years are entered at the type; the unit is asked one detail at a time, and says how old it is.</summary>
public class DatingScreenTests
{
    private const string Type = "twin-175";

    private static readonly KindDates Dates = new(
        1946,
        1955,
        [
            new("cord", "Cord", "", 60, "", [new("cloth", "cloth", null, 1950, 1), new("plastic", "gray plastic", 1961, null, 1)]),
            new("vents", "Vents", "on the case", 3, "", [new("slots", "slots", null, 1949, 1), new("round", "round holes", 1950, null, 1)]),
            new("cover", "Wire cover", "", 10, "", [new("cotton", "cotton", null, 1951, 1), new("rubber", "rubber", 1952, null, 1)]),
        ]
    );

    private static async Task<ScreenBench> WithDatesAsync(params Fact[] facts)
    {
        var bench = await ScreenBench.OpenAsync(facts);
        await bench.Bench.SaveDocumentAsync(KindDates.DocumentKind, Type, 0, KindDates.Write(Dates));
        return bench;
    }

    private static Task PressAsync(IRenderedComponent<IComponent> screen, string words) =>
        screen.DoAsync(() => screen.FindAll("button").First(b => b.TextContent.StartsWith(words, StringComparison.Ordinal)).ClickAsync());

    private static string Address(ScreenBench bench) =>
        new Uri(bench.Context.Services.GetRequiredService<NavigationManager>().Uri).AbsolutePath;

    private static IRenderedComponent<HowOld> Screen(ScreenBench bench, string? detail = null) =>
        bench.Context.Render<HowOld>(p => p.Add(s => s.Id, ScreenBench.UnitId).Add(s => s.Detail, detail));

    [Fact]
    public async Task Years_and_details_are_entered_and_kept_and_what_is_wrong_is_said()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = bench.Context.Render<YearsOfType>(p => p.Add(s => s.KindId, Type));
        await screen.DoAsync(() => screen.Find("#first").ChangeAsync("1955"));
        await screen.DoAsync(() => screen.Find("#last").ChangeAsync("1946"));
        await screen.DoAsync(() => screen.Find("#made").ParentElement!.QuerySelector("form")!.SubmitAsync());
        screen.WaitForAssertion(() => Assert.Equal("The last year is before the first.", screen.Find(".warning").TextContent));
        Assert.Null((await TypeDates.ReadAsync(bench.Bench, Type)).Dates);
        await screen.DoAsync(() => screen.Find("#first").ChangeAsync("1941"));
        await screen.DoAsync(() => screen.Find("#made").ParentElement!.QuerySelector("form")!.SubmitAsync());
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll(".warning")));

        await PressAsync(screen, "Vents");
        screen.WaitForElement("#t-vents-new");
        await screen.DoAsync(() => screen.Find("#t-vents-new").ChangeAsync("slots"));
        await screen.DoAsync(() => screen.Find("#l-vents-new").ChangeAsync("1943"));
        await screen.DoAsync(() => screen.Find("#t-vents-new").Closest("form")!.SubmitAsync());
        screen.WaitForElement("#t-vents-slots");
        Assert.Contains("Slots: until 1943, give or take 1 year", screen.Markup, StringComparison.Ordinal);
        // The next one begins empty.
        Assert.Equal("", screen.Find("#t-vents-new").GetAttribute("value") ?? "");
        var kept = (await TypeDates.ReadAsync(bench.Bench, Type)).Dates!;
        Assert.Equal((1941, 1946, 3.0), (kept.FirstYear, kept.LastYear, kept.Details[0].SwappedPercent));
        Assert.Equal("slots", Assert.Single(kept.Details[0].Variants).Id);

        await screen.DoAsync(() => screen.Find("#p-vents").ChangeAsync("8"));
        await screen.DoAsync(() => screen.Find("#p-vents").Closest("form")!.SubmitAsync());
        screen.WaitForAssertion(() => Assert.Contains("8 of 100 units", screen.Markup, StringComparison.Ordinal));
        await PressAsync(screen, "Take it away: slots");
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll("#t-vents-slots")));
        await PressAsync(screen, "Take it away: Vents");
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll("#d-vents")));
        Assert.Empty((await TypeDates.ReadAsync(bench.Bench, Type)).Dates!.Details);
    }

    /// <summary>A form is saved while others are being filled in: what was typed there is still there.</summary>
    [Fact]
    public async Task What_is_typed_in_one_form_stays_when_another_is_saved()
    {
        await using var bench = await WithDatesAsync();
        var screen = bench.Context.Render<YearsOfType>(p => p.Add(s => s.KindId, Type));
        string? Shown(string field) => screen.Find(field).GetAttribute("value");
        await screen.DoAsync(() => screen.Find("#w-cord").ChangeAsync("behind the case"));
        await screen.DoAsync(() => screen.Find("#t-cord-cloth").ChangeAsync("brown cloth"));
        await screen.DoAsync(() => screen.Find("#f-vents-slots").ChangeAsync("1944"));
        await screen.DoAsync(() => screen.Find("#t-vents-new").ChangeAsync("oval"));
        await screen.DoAsync(() => screen.Find("#last").ChangeAsync("1956"));
        await screen.DoAsync(() => screen.Find("#p-vents").ChangeAsync("8"));
        await screen.DoAsync(() => screen.Find("#p-vents").Closest("form")!.SubmitAsync());
        screen.WaitForAssertion(() => Assert.Contains("8 of 100 units", screen.Markup, StringComparison.Ordinal));
        await PressAsync(screen, "Take it away: round holes");
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll("#t-vents-round")));
        Assert.Equal(
            ["behind the case", "brown cloth", "1944", "oval", "1956", "8"],
            new[] { "#w-cord", "#t-cord-cloth", "#f-vents-slots", "#t-vents-new", "#last", "#p-vents" }.Select(Shown)
        );
        // What another form changed of a kept value is shown; so is what another window changed of the years.
        await TypeDates.ChangeAsync(bench.Bench, Type, d => new(d with { FirstYear = 1944 }, ""));
        await screen.DoAsync(() => screen.Find("#t-vents-slots").Closest("form")!.SubmitAsync());
        screen.WaitForAssertion(() => Assert.Equal("1944", Shown("#first")));
        await screen.DoAsync(() => screen.Find("#made").ParentElement!.QuerySelector("form")!.SubmitAsync());
        screen.WaitForAssertion(() => Assert.Equal("1956", Shown("#last")));
        var kept = (await TypeDates.ReadAsync(bench.Bench, Type)).Dates!;
        Assert.Equal((1944, 1956, ""), (kept.FirstYear, kept.LastYear, kept.Details[0].Where));
    }

    [Fact]
    public async Task A_detail_that_another_window_took_away_is_said_to_be_gone_and_one_taken_away_here_comes_back()
    {
        await using var bench = await WithDatesAsync();
        var screen = bench.Context.Render<YearsOfType>(p => p.Add(s => s.KindId, Type));
        var was = (await bench.Bench.Store.ReadDocumentAsync(KindDates.DocumentKind, Type, CancellationToken.None))!.Text;
        await PressAsync(screen, "Take it away: Cord");
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll("#d-cord")));
        await PressAsync(screen, "Undo: put back cord");
        screen.WaitForElement("#t-cord-plastic");
        async Task<string> KeptAsync() => KindDates.Write((await TypeDates.ReadAsync(bench.Bench, Type)).Dates! with { Said = null });
        Assert.Equal(was, await KeptAsync());
        // One look of it too.
        await PressAsync(screen, "Take it away: gray plastic");
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll("#t-cord-plastic")));
        Assert.NotEqual(was, await KeptAsync());
        await PressAsync(screen, "Undo: put back gray plastic");
        screen.WaitForElement("#t-cord-plastic");
        Assert.Equal(was, await KeptAsync());
        Assert.DoesNotContain(screen.FindAll("button"), b => b.TextContent.StartsWith("Undo", StringComparison.Ordinal));
        await TypeDates.ChangeAsync(bench.Bench, Type, d => new(DatesEdit.Without(d, "vents"), ""));
        await screen.DoAsync(() => screen.Find("#p-vents").Closest("form")!.SubmitAsync());
        screen.WaitForAssertion(() => Assert.Equal("This detail is no longer there.", screen.Find(".warning").TextContent));
        Assert.DoesNotContain("Saved.", screen.Markup, StringComparison.Ordinal);
    }

    /// <summary>The answer of a database that is far away comes when the form that was pressed is gone.</summary>
    [Fact]
    public async Task What_is_taken_away_can_be_put_back_also_where_the_store_answers_late()
    {
        await using var bench = await ScreenBench.OpenAsync(FailingStore.Around);
        await bench.Bench.SaveDocumentAsync(KindDates.DocumentKind, Type, 0, KindDates.Write(Dates));
        var screen = bench.Context.Render<YearsOfType>(p => p.Add(s => s.KindId, Type));
        screen.WaitForElement("#d-cord");
        var saved = FailingStore.Hold(bench.Bench.Store, nameof(IStore.SaveDocumentAsync));
        var press = PressAsync(screen, "Take it away: Cord");
        saved.SetResult();
        await press;
        await PressAsync(screen, "Undo: put back cord");
        screen.WaitForElement("#d-cord");
    }

    [Fact]
    public async Task How_many_were_made_in_each_year_is_entered_beside_the_years()
    {
        await using var bench = await WithDatesAsync();
        await TypeDates.ChangeAsync(bench.Bench, Type, d => new(d with { FirstYear = 1949, LastYear = 1951 }, ""));
        var screen = bench.Context.Render<YearsOfType>(p => p.Add(s => s.KindId, Type));
        Assert.Equal(["y-1949", "y-1950", "y-1951"], screen.FindAll(".year-fields input").Select(i => i.Id));
        foreach (var (year, many) in new[] { ("1949", "8"), ("1950", "1") })
            await screen.DoAsync(() => screen.Find($"#y-{year}").ChangeAsync(many));
        await screen.DoAsync(() => screen.Find("#made").ParentElement!.QuerySelector("form")!.SubmitAsync());
        screen.WaitForAssertion(() => Assert.StartsWith("1951: how many?", screen.Find(".warning").TextContent, StringComparison.Ordinal));
        Assert.Equal("8", screen.Find("#y-1949").GetAttribute("value"));
        await screen.DoAsync(() => screen.Find("#y-1951").ChangeAsync("1"));
        await screen.DoAsync(() => screen.Find("#made").ParentElement!.QuerySelector("form")!.SubmitAsync());
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll(".warning")));
        Assert.Equal([8, 1, 1], (await TypeDates.ReadAsync(bench.Bench, Type)).Dates!.Shares!.Value);
        await screen.DoAsync(() => screen.Find("#last").ChangeAsync("1952"));
        await screen.DoAsync(() => screen.Find("#made").ParentElement!.QuerySelector("form")!.SubmitAsync());
        screen.WaitForElement("#y-1952");
        screen.WaitForAssertion(() =>
            Assert.Contains("A year that you added counts as an average year", screen.Markup, StringComparison.Ordinal)
        );
        Assert.Equal([8, 1, 1, 10 / 3.0], (await TypeDates.ReadAsync(bench.Bench, Type)).Dates!.Shares!.Value);
    }

    /// <summary>What a later version wrote is not shown as nothing, nor written over.</summary>
    [Fact]
    public async Task What_cannot_be_read_is_said_to_be_so_and_stays()
    {
        const string later = """{ "ohmstead": "dating/2", "details": [] }""";
        await using var bench = await ScreenBench.OpenAsync();
        await bench.Bench.SaveDocumentAsync(KindDates.DocumentKind, Type, 0, later);
        const string said = "The years and details that are kept of this type cannot be used, and stay as they are. ";
        var years = bench.Context.Render<YearsOfType>(p => p.Add(s => s.KindId, Type));
        years.WaitForAssertion(() => Assert.StartsWith(said, years.Find(".warning").TextContent, StringComparison.Ordinal));
        Assert.Empty(years.FindAll("form"));
        var asked = Screen(bench);
        asked.WaitForAssertion(() => Assert.StartsWith(said, asked.Find(".warning").TextContent, StringComparison.Ordinal));
        Assert.DoesNotContain("This type has no years yet", asked.Markup, StringComparison.Ordinal);
        var brought = await BroughtIn.KeepAsync(bench.Bench, "x.json", KindDates.Write(Dates with { Type = Type }));
        Assert.StartsWith($"x.json: {said}", brought.Refused, StringComparison.Ordinal);
        Assert.Equal("", await TypeDates.CopyAsync(bench.Bench, Type, "copy"));
        foreach (var id in new[] { Type, "copy" })
            Assert.Equal(later, (await bench.Bench.Store.ReadDocumentAsync(KindDates.DocumentKind, id, CancellationToken.None))!.Text);
    }

    [Fact]
    public async Task A_file_whose_years_cannot_be_used_is_refused_before_anything_is_kept()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var sheet = await File.ReadAllTextAsync(Tool.Demo("solo-110.sheet.json"), CancellationToken.None);
        var own = new OwnType(new KindAnswers(), null, new MadeType("", new(1, 0, 0), [], [], []), []);
        var text = TypeFile.Write(sheet, own, [], Dates with { Details = [] });
        var parsed = System.Text.Json.Nodes.JsonNode.Parse(text)!;
        parsed["dating"]!.AsObject().Remove("details");
        var brought = await BroughtIn.KeepAsync(bench.Bench, "club.type.json", parsed.ToJsonString());
        Assert.Equal("The years and details in this file cannot be used. It has no details. Ask for the file again.", brought.Refused);
        Assert.Null(await bench.Bench.Store.ReadDocumentAsync(KindDates.DocumentKind, "solo-110", CancellationToken.None));
        var twice = KindDates.Write(Dates with { Type = Type, Details = [Dates.Details[0], Dates.Details[0]] });
        Assert.Equal(
            "x.json holds years and details that cannot be used. Two details have the id \"cord\".",
            (await BroughtIn.KeepAsync(bench.Bench, "x.json", twice)).Refused
        );
        // More than fit beside what is here: nothing is added, and it is said.
        await bench.Bench.SaveDocumentAsync(KindDates.DocumentKind, Type, 0, KindDates.Write(Dates));
        var many = Dates with
        {
            Type = Type,
            Details = [.. Enumerable.Range(0, 40).Select(n => Dates.Details[1] with { Id = FormattableString.Invariant($"d{n}") })],
        };
        Assert.Equal(
            "x.json: What came cannot be put beside what is here. It has more than 40 details.",
            (await BroughtIn.KeepAsync(bench.Bench, "x.json", KindDates.Write(many))).Refused
        );
        Assert.Equal(3, (await TypeDates.ReadAsync(bench.Bench, Type)).Dates!.Details.Length);
    }

    [Fact]
    public async Task What_two_windows_change_both_stays()
    {
        await using var bench = await WithDatesAsync();
        var (one, other) = (
            bench.Context.Render<YearsOfType>(p => p.Add(s => s.KindId, Type)),
            bench.Context.Render<YearsOfType>(p => p.Add(s => s.KindId, Type))
        );
        await PressAsync(one, "Plug");
        await PressAsync(other, "Post nuts");
        other.WaitForElement("#d-post-nuts");
        Assert.Equal(
            ["cord", "vents", "cover", "plug", "post-nuts"],
            (await TypeDates.ReadAsync(bench.Bench, Type)).Dates!.Details.Select(d => d.Id)
        );
    }

    [Fact]
    public async Task A_unit_whose_type_has_no_years_is_led_to_where_they_are_entered()
    {
        await using var bench = await ScreenBench.OpenAsync();
        Assert.Equal($"/kinds/{Type}/years", Screen(bench).WaitForElement("a.do").GetAttribute("href"));
    }

    [Fact]
    public async Task One_detail_is_asked_at_a_time_the_best_first_and_I_do_not_know_is_an_answer()
    {
        await using var bench = await WithDatesAsync();
        var screen = Screen(bench);
        screen.WaitForAssertion(() => Assert.Contains("Nothing seen so far", screen.Markup, StringComparison.Ordinal));
        Assert.EndsWith("/dating/vents", screen.Find("a.do").GetAttribute("href"), StringComparison.Ordinal);
        var asked = Screen(bench, "vents");
        asked.WaitForAssertion(() => Assert.Contains("Where to look: on the case.", asked.Markup, StringComparison.Ordinal));
        // Years would lead the eye.
        Assert.DoesNotMatch("19[45][0-9]", asked.Find("[role=group]").TextContent);
        await PressAsync(asked, "Round holes");
        asked.WaitForAssertion(() => Assert.EndsWith("/dating/cover", Address(bench), StringComparison.Ordinal));
        var last = Assert.Single((await bench.UnitAsync()).All<DetailSeen>()).Fact;
        Assert.Equal(new DetailSeen("vents", "round", "Vents", "round holes"), last);
        await PressAsync(Screen(bench, "cover"), "I don’t know");
        await PressAsync(Screen(bench, "cord"), "Gray plastic");
        bench
            .Context.Render<HowOld>(p => p.Add(s => s.Id, ScreenBench.UnitId))
            .WaitForAssertion(() => Assert.EndsWith("/dating", Address(bench), StringComparison.Ordinal));
        Assert.Equal(DetailSeen.CannotTell, (await bench.UnitAsync()).All<DetailSeen>().Single(d => d.Fact.Detail == "cover").Fact.Shows);
    }

    [Fact]
    public async Task The_range_is_said_and_drawn_and_what_argues_against_it_is_named()
    {
        await using var bench = await WithDatesAsync(
            new DetailSeen("vents", "round", "Vents", "round holes"),
            new DetailSeen("cover", "cotton", "Wire cover", "cotton"),
            new DetailSeen("cord", "plastic", "Cord", "gray plastic")
        );
        var screen = Screen(bench);
        var answer = (await TypeDates.OfAsync(bench.Bench, await bench.UnitAsync()))!.Answer!;
        screen.WaitForAssertion(() => Assert.Equal(answer.Words[0], screen.Find("#years").TextContent));
        Assert.Contains("One detail speaks against these years: Cord (gray plastic).", screen.Markup, StringComparison.Ordinal);
        Assert.Contains(
            "▲ Speaks against these years: probably swapped later",
            screen.Find(".word.look").TextContent,
            StringComparison.Ordinal
        );
        // A bar for each year, as tall as its chance; those of the range are filled, and the line under them is as long.
        var bars = screen.FindAll("svg.years rect");
        Assert.Equal(10, bars.Count);
        Assert.Equal(answer.To - answer.From + 1, screen.FindAll("svg.years rect.in").Count);
        double At(IElement bar, string name) => double.Parse(bar.GetAttribute(name)!, CultureInfo.InvariantCulture);
        var best = answer.Years.Max(y => y.Percent);
        foreach (var (bar, year) in bars.Zip(answer.Years))
            Assert.Equal(162 * year.Percent / best, At(bar, "height"), 0.01);
        Assert.Equal(
            FormattableString.Invariant($"M{36 * (answer.From - 1946)} 174V181H{36 * (answer.To - 1945)}V174"),
            screen.Find("svg.years .range").GetAttribute("d")
        );
        Assert.Contains("\"question\": \"dating\"", screen.Find("pre").TextContent, StringComparison.Ordinal);
        // On its own page, with a way there.
        var unit = bench.Context.Render<UnitOverview>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        unit.WaitForAssertion(() => Assert.Contains(unit.FindAll("a"), a => a.TextContent == answer.Words[0]));
    }

    [Fact]
    public async Task Years_travel_with_their_type_and_add_to_those_that_are_here()
    {
        await using var bench = await WithDatesAsync();
        var text = KindDates.Write(
            Dates with
            {
                Type = Type,
                Details = [.. Dates.Details, Dates.Details[0] with { Id = "knob", Title = "Knob" }],
            }
        );
        var brought = await BroughtIn.KeepAsync(bench.Bench, "x.dating.json", text);
        Assert.Equal((Type, true, ""), (brought.Id, brought.IsUsable, brought.Refused));
        Assert.Equal(["cord", "vents", "cover", "knob"], (await TypeDates.ReadAsync(bench.Bench, Type)).Dates!.Details.Select(d => d.Id));
        var strange = await BroughtIn.KeepAsync(bench.Bench, "x.dating.json", KindDates.Write(Dates with { Type = "not-here" }));
        Assert.Equal("x.dating.json holds years and details of a type that is not here. Bring in its type sheet first.", strange.Refused);
        // In the file of a type of one's own.
        var sheet = await File.ReadAllTextAsync(Tool.Demo("solo-110.sheet.json"), CancellationToken.None);
        var own = new OwnType(new KindAnswers(), null, new MadeType("", new(1, 0, 0), [], [], []), []);
        var came = await BroughtIn.KeepAsync(bench.Bench, "club.type.json", TypeFile.Write(sheet, own, [], Dates));
        Assert.Equal("solo-110", came.Id);
        Assert.Equal(3, (await TypeDates.ReadAsync(bench.Bench, "solo-110")).Dates!.Details.Length);
    }
}
