using Bunit;
using Ohmstead.App.Screens.About;

namespace Ohmstead.App.Tests.Screens;

/// <summary>The page that counts what is kept in memory.</summary>
public sealed class InMemoryTests
{
    [Fact]
    public async Task It_counts_a_type_sheet_that_was_read_once_and_found_again()
    {
        await using var bench = await ScreenBench.OpenAsync();
        Assert.Contains("Ready no times. Worked out 1 time.", Row(bench), StringComparison.Ordinal);
        var sheet = await bench.Bench.SheetAsync("twin-175");
        Assert.Same(sheet, await bench.Bench.SheetAsync("twin-175"));
        Assert.Contains("Ready 2 times. Worked out 1 time.", Row(bench), StringComparison.Ordinal);
        Assert.Contains("1\u00a0of\u00a064", Row(bench), StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_names_all_that_is_kept()
    {
        await using var bench = await ScreenBench.OpenAsync();
        Assert.Equal(
            [
                "Units as last read",
                "Type sheets",
                "Units without a type",
                "Findings of units",
                "Minutes of units",
                "Quick lists of types",
                "Circuits as drawn",
            ],
            bench.Context.Render<InMemory>().FindAll("section[aria-labelledby=kept] li > span > b").Select(b => b.TextContent)
        );
    }

    [Fact]
    public async Task What_is_under_way_is_listed_with_how_far_it_is_and_only_what_nobody_waits_for_is_stopped_here()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var page = bench.Context.Render<InMemory>();
        var (told, go) = (new TaskCompletionSource(), new TaskCompletionSource());
        var later = bench.Bench.Work.LaterAsync(
            "Findings of old units",
            async work =>
            {
                work.Tell(0.4);
                told.SetResult();
                await go.Task.WaitAsync(work.Stopped);
            },
            Xunit.TestContext.Current.CancellationToken
        );
        await told.Task;
        var awaited = bench.Bench.Work.Begin(
            "A plan",
            work => work.Stopped.WaitHandle.WaitOne(TimeSpan.FromSeconds(30)),
            Xunit.TestContext.Current.CancellationToken
        );
        page.WaitForState(() => page.Markup.Contains("A plan", StringComparison.Ordinal));
        Assert.Contains("Findings of old units, 40 % done", page.Markup, StringComparison.Ordinal);
        await page.DoAsync(() => page.FindAll("button").Single().ClickAsync());
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => later);
        page.WaitForState(() => !page.Markup.Contains("Findings of old units", StringComparison.Ordinal));
        awaited.Stop();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => awaited.Answer);
    }

    [Fact]
    public async Task Where_a_person_waits_the_work_shows_how_far_it_is_and_one_press_stops_it()
    {
        await using var bench = await ScreenBench.OpenAsync();
        using var further = new ManualResetEventSlim();
        var work = bench.Bench.Work.Begin(
            "Which type fits",
            w =>
            {
                further.Wait(CancellationToken.None);
                w.Tell(0.25);
                return w.Stopped.WaitHandle.WaitOne(TimeSpan.FromSeconds(30));
            },
            Xunit.TestContext.Current.CancellationToken
        );
        var shown = bench.Context.Render<Ohmstead.App.Components.WorkingOn>(p => p.Add(c => c.Work, work).Add(c => c.Words, "Comparing."));
        Assert.Equal("Comparing.", shown.Find("[role=status]").TextContent);
        Assert.Empty(shown.FindAll("progress"));
        further.Set();
        Assert.Equal("0.25", shown.WaitForElement("progress").GetAttribute("value"));
        await shown.DoAsync(() => shown.Find("button").ClickAsync());
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => work.Answer);
    }

    private static string Row(ScreenBench bench) =>
        bench
            .Context.Render<InMemory>()
            .FindAll("li")
            .Single(li => li.TextContent.Contains("Type sheets", StringComparison.Ordinal))
            .TextContent;
}
