using Bunit;
using Ohmstead.App.Screens.Days;
using Ohmstead.Workshop.Days;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Tests.Screens;

/// <summary>The bench day: units come with their usual tasks, what is changed is planned anew, what is done drops out.</summary>
public class BenchDayTests
{
    private static async Task<DayBook> KeptAsync(ScreenBench screens)
    {
        var id = DayBook.IdOf(DateOnly.FromDateTime(DateTime.Now));
        return DayBook.Read((await screens.Bench.Store.ReadDocumentAsync(DayBook.DocumentKind, id, CancellationToken.None))!.Text);
    }

    [Fact]
    public async Task A_unit_is_put_on_the_day_with_its_tasks_and_planned()
    {
        await using var screens = await ScreenBench.OpenAsync(ScreenBench.NothingLive);
        var day = screens.Context.Render<BenchDay>();
        day.WaitForElement("#add-unit");
        await day.DoAsync(() => day.Find("#add-unit").ChangeAsync(ScreenBench.UnitId.ToString()));
        day.WaitForElement(".day-list");
        Assert.Equal("Look-over", day.Find(".day-row b:not(.at)").TextContent);
        Assert.Contains("F-9", day.Find(".day-chart").TextContent, StringComparison.Ordinal);
        Assert.Contains("no day can end before", day.Markup, StringComparison.Ordinal);
        Assert.Contains(DayWords.Goal, day.Markup, StringComparison.Ordinal);
        var tasks = (await KeptAsync(screens)).Units.Single().Tasks;
        Assert.Equal(tasks.Length, day.FindAll(".day-row").Count);
        Assert.Equal("Paperwork and return", tasks[^1].Words);
    }

    [Fact]
    public async Task Minutes_are_changed_and_what_cannot_be_is_said()
    {
        await using var screens = await ScreenBench.OpenAsync();
        var day = screens.Context.Render<BenchDay>();
        day.WaitForElement("#add-unit");
        await day.DoAsync(() => day.Find("#add-unit").ChangeAsync(ScreenBench.UnitId.ToString()));
        day.WaitForElement(".day-list");
        var first = $"{ScreenBench.UnitId}-0";
        await day.DoAsync(() => day.Find($"[id='m-{first}']").ChangeAsync("a while"));
        day.WaitForAssertion(() =>
            Assert.Contains("“a while” is not a number", day.Find("[role=alert]").TextContent, StringComparison.Ordinal)
        );
        await day.DoAsync(() => day.Find($"[id='m-{first}']").ChangeAsync("900"));
        day.WaitForAssertion(() =>
            Assert.Contains("Split it, or free more time.", day.Find("[role=alert]").TextContent, StringComparison.Ordinal)
        );
        await day.DoAsync(() => day.Find($"[id='m-{first}']").ChangeAsync("25"));
        day.WaitForAssertion(() => Assert.Contains("25 min", day.Find(".day-row").TextContent, StringComparison.Ordinal));
        await day.DoAsync(() => day.Find($"[id='w-{first}']").ChangeAsync("45"));
        day.WaitForAssertion(() => Assert.Contains("then waits until", day.Find(".day-row").TextContent, StringComparison.Ordinal));
        var task = (await KeptAsync(screens)).Units.Single().Tasks[0];
        Assert.Equal((25, 45), (task.Minutes, task.WaitMinutes));
    }

    [Fact]
    public async Task What_is_done_drops_out_of_the_plan_and_can_be_undone()
    {
        await using var screens = await ScreenBench.OpenAsync();
        var day = screens.Context.Render<BenchDay>();
        day.WaitForElement("#add-unit");
        await day.DoAsync(() => day.Find("#add-unit").ChangeAsync(ScreenBench.UnitId.ToString()));
        day.WaitForElement(".day-list");
        var before = day.FindAll(".day-row").Count;
        await day.DoAsync(() => day.FindAll("button").Single(b => b.TextContent.StartsWith("Done", StringComparison.Ordinal)).ClickAsync());
        day.WaitForAssertion(() => Assert.Equal(before - 1, day.FindAll(".day-row").Count));
        Assert.NotNull((await KeptAsync(screens)).Units.Single().Tasks[0].DoneAt);
        await day.DoAsync(() => day.FindAll("button").Single(b => b.TextContent.StartsWith("Undo", StringComparison.Ordinal)).ClickAsync());
        day.WaitForAssertion(() => Assert.Equal(before, day.FindAll(".day-row").Count));
    }

    [Fact]
    public async Task Hours_that_cannot_be_are_refused_in_words()
    {
        await using var screens = await ScreenBench.OpenAsync();
        var day = screens.Context.Render<BenchDay>();
        day.WaitForElement("#h-from");
        await day.DoAsync(() => day.Find("#h-from").ChangeAsync("18:00"));
        day.WaitForAssertion(() => Assert.Equal("Your hours must begin before they end.", day.Find("[role=alert]").TextContent));
        await day.DoAsync(() => day.Find("#h-from").ChangeAsync("08:30"));
        day.WaitForAssertion(() => Assert.Empty(day.FindAll("[role=alert]")));
        Assert.Equal(510, (await KeptAsync(screens)).Free[0].From);
    }

    /// <summary>Two people: each sees what is next for them, begins it, asks for more time and ends it; the other gets the next one.</summary>
    [Fact]
    public async Task On_a_club_day_each_begins_and_ends_what_is_theirs()
    {
        await using var screens = await ScreenBench.OpenAsync();
        var day = await ClubAsync(screens);
        day.WaitForAssertion(() => Assert.Equal(["Ann", "Ben"], day.FindAll(".day-who .at").Select(a => a.TextContent)));
        Assert.Equal("All 2 units ready by", day.Find(".day-plan p b").TextContent[..20]);
        await PressAsync(day, "Begin: Ann");
        day.WaitForAssertion(() => Assert.Contains("until", day.Find(".day-who li").TextContent, StringComparison.Ordinal));
        var begun = (await KeptAsync(screens)).Units.SelectMany(u => u.Tasks).Single(t => t.IsGoingOn);
        Assert.Equal(("Ann", 20), (begun.By, begun.Minutes));
        await PressAsync(day, "10 min more: Ann");
        day.WaitForAssertion(() => Assert.Contains("saved", day.Find("[role=status]").TextContent, StringComparison.Ordinal));
        begun = (await KeptAsync(screens)).Units.SelectMany(u => u.Tasks).Single(t => t.IsGoingOn);
        Assert.InRange(begun.Minutes, 30, 31);
        await PressAsync(day, "Done: Ann");
        day.WaitForAssertion(() => Assert.DoesNotContain("10 min more", day.Markup, StringComparison.Ordinal));
        var show = screens.Context.Render<ShowDay>();
        show.WaitForAssertion(() => Assert.Equal(["Ann", "Ben"], show.FindAll(".day-who .at").Select(a => a.TextContent)));
        Assert.Empty(show.FindAll("button"));
    }

    /// <summary>A database far away answers late, and who presses does not wait for it.</summary>
    [Fact]
    public async Task What_is_pressed_while_the_press_before_is_being_saved_counts_too()
    {
        await using var screens = await ScreenBench.OpenAsync(FailingStore.Around);
        var day = await ClubAsync(screens);
        await PressAsync(day, "Begin: Ann");
        day.WaitForAssertion(() => Assert.Contains("until", day.Find(".day-who li").TextContent, StringComparison.Ordinal));
        var saved = FailingStore.Hold(screens.Bench.Store, nameof(IStore.SaveDocumentAsync));
        Task[] presses =
        [
            PressAsync(day, "10 min more: Ann"),
            PressAsync(day, "Done: Ann"),
            day.DoAsync(() => day.Find($"[id='m-{Unit(2, "").Id}-0']").ChangeAsync("25")),
            day.DoAsync(() => day.Find($"[id='w-{Unit(2, "").Id}-0']").ChangeAsync("45")),
            day.DoAsync(() => day.Find("#p-to-Ben").ChangeAsync("23:00")),
        ];
        Assert.DoesNotContain(presses, p => p.IsCompleted);
        saved.SetResult();
        await Task.WhenAll(presses);
        Assert.DoesNotContain("another window", day.Markup, StringComparison.Ordinal);
        var kept = await KeptAsync(screens);
        var done = Assert.Single(kept.Units.SelectMany(u => u.Tasks), t => t.DoneAt is not null);
        Assert.InRange(done.Minutes, 30, 31);
        Assert.Equal((25, 45), (kept.Units[1].Tasks[0].Minutes, kept.Units[1].Tasks[0].WaitMinutes));
        Assert.Equal(23 * 60, kept.People[1].To);
    }

    /// <summary>Two presses on "Remove" of the first task, before the first was answered: the second one is not the next task's.</summary>
    [Fact]
    public async Task A_press_on_what_is_no_longer_there_takes_nothing_else()
    {
        await using var screens = await ScreenBench.OpenAsync(FailingStore.Around);
        var day = await ClubAsync(screens);
        var saved = FailingStore.Hold(screens.Bench.Store, nameof(IStore.SaveDocumentAsync));
        Task RemoveAsync() =>
            day.DoAsync(() =>
                day.Find(".day-unit")
                    .QuerySelectorAll("button")
                    .First(b => b.TextContent.StartsWith("Remove", StringComparison.Ordinal))
                    .ClickAsync()
            );
        Task[] presses = [RemoveAsync(), RemoveAsync()];
        saved.SetResult();
        await Task.WhenAll(presses);
        day.WaitForAssertion(() =>
            Assert.Contains("The tasks changed while you pressed", day.Find("[role=alert]").TextContent, StringComparison.Ordinal)
        );
        Assert.Equal(["Repair"], (await KeptAsync(screens)).Units[0].Tasks.Select(t => t.Words));
    }

    /// <summary>A day for Ann and Ben, with two units.</summary>
    private static async Task<IRenderedComponent<BenchDay>> ClubAsync(ScreenBench screens)
    {
        await screens.Bench.SaveDocumentAsync(
            DayBook.DocumentKind,
            DayBook.IdOf(DateOnly.FromDateTime(DateTime.Now)),
            0,
            (DayBook.Usual with { Free = [new(0, DayHours.Day)], Units = [Unit(1, "F-1"), Unit(2, "F-2")] }).Write()
        );
        var day = screens.Context.Render<BenchDay>();
        day.WaitForElement("#new-person");
        foreach (var name in new[] { "Ann", "Ben" })
        {
            await day.DoAsync(() => day.Find("#new-person").ChangeAsync(name));
            await day.DoAsync(() => day.Find("#new-person").Closest("form")!.SubmitAsync());
            day.WaitForAssertion(() => Assert.Contains($"p-from-{name}", day.Markup, StringComparison.Ordinal));
        }
        return day;
    }

    private static DayBookUnit Unit(int id, string tag) =>
        new(new(id, 0, 0, new byte[8]), tag, [new("Look-over", 20, "", 0, null), new("Repair", 30, "", 0, null)], null);

    private static Task PressAsync(IRenderedComponent<BenchDay> day, string name) =>
        day.DoAsync(() =>
            day.FindAll("button")
                .Single(b =>
                    string.Join(' ', b.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
                        .StartsWith(name, StringComparison.Ordinal)
                )
                .ClickAsync()
        );
}
