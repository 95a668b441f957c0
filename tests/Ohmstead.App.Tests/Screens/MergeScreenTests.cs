using Bunit;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Ohmstead.App.Background;
using Ohmstead.App.Screens.Merging;
using Ohmstead.App.Screens.Start;
using Ohmstead.App.Screens.Types;
using Ohmstead.App.Web;
using Ohmstead.Storage;
using Ohmstead.Workshop.Dating;
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
        screens.Context.Services.AddSingleton(new MergeWork(screens.Bench, NullLogger<MergeWork>.Instance));
        return screens;
    }

    private static Task<int> CountAsync(ScreenBench screens) => OpenQuestions.CountAsync(screens.Bench.Store);

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

    /// <summary>Years that two benches entered apart: the question is counted, asked, answered, and asked no more.</summary>
    [Fact]
    public async Task Years_of_a_type_that_differ_are_asked_about()
    {
        await using var screens = await OpenAsync();
        var first = new KindDates(1946, 1955, []);
        var mine = first.ChangedTo(first with { FirstYear = 1944 });
        var both = mine.Join(first.ChangedTo(first with { FirstYear = 1948 }));
        await screens.Bench.SaveDocumentAsync(KindDates.DocumentKind, "twin-175", 0, KindDates.Write(mine));
        Assert.Equal(0, await CountAsync(screens));
        await screens.Bench.SaveDocumentAsync(KindDates.DocumentKind, "twin-175", 1, KindDates.Write(both));
        Assert.Equal(1, await CountAsync(screens));
        var years = screens.Context.Render<YearsOfType>(p => p.Add(s => s.KindId, "twin-175"));
        Assert.Equal("/merge#y-twin-175", years.Find(".notice a").GetAttribute("href"));
        var screen = screens.Context.Render<MergeBenches>();
        screen.WaitForElement("#y-twin-175");
        Assert.Equal("Two benches entered different years of making. Which ones are right?", screen.Find("#y-twin-175 legend").TextContent);
        Assert.Equal(["1948 to 1955", "1944 to 1955"], screen.FindAll("#y-twin-175 button").Select(b => b.TextContent));
        screen.Do(() => screen.FindAll("#y-twin-175 button")[1].Click());
        screen.WaitForAssertion(() => Assert.Contains("All questions are answered.", screen.Markup, StringComparison.Ordinal));
        Assert.Equal(0, await CountAsync(screens));
        Assert.Equal(1944, (await TypeDates.ReadAsync(screens.Bench, "twin-175")).Dates!.FirstYear);
    }

    /// <summary>What it would bring is written beside the workshop, up to 2 GB.</summary>
    [Fact]
    public async Task Of_a_file_that_a_device_sends_no_byte_is_read()
    {
        await using var screens = await OpenAsync();
        var (screen, sent) = (screens.Context.Render<MergeBenches>(), new Sent());
        var chosen = screen.FindComponent<InputFile>().Instance.OnChange;
        await Assert.ThrowsAsync<NotAllowed>(() =>
            screen.InvokeAsync(async () =>
            {
                Asker.Begin(new Asker("0badcafe", "Tablet", () => true));
                await chosen.InvokeAsync(new InputFileChangeEventArgs([sent]));
            })
        );
        Assert.Equal(0, sent.Opened);
    }

    [Fact]
    public async Task A_second_merge_while_one_runs_leaves_nothing_of_its_own_behind()
    {
        await using var screens = await OpenAsync();
        var (work, folder) = (
            screens.Context.Services.GetRequiredService<MergeWork>(),
            Directory.CreateTempSubdirectory("ohmstead-other-")
        );
        await (await Store.OpenAsync(folder.FullName, TimeProvider.System, Stop)).DisposeAsync();
        var (isThere, ended, second) = (new TaskCompletionSource(), new TaskCompletionSource(), 0);
        using var held = new ManualResetEventSlim();
        screens.Bench.Drawer.Changed += () =>
        {
            isThere.TrySetResult();
            held.Wait(TimeSpan.FromSeconds(20), Stop);
        };
        work.Begin(folder.FullName, ended.SetResult);
        await isThere.Task.WaitAsync(TimeSpan.FromSeconds(20), Stop);
        work.Begin(folder.FullName, () => second++);
        Assert.Equal((1, false), (second, ended.Task.IsCompleted));
        held.Set();
        await ended.Task.WaitAsync(TimeSpan.FromSeconds(20), Stop);
        Assert.Equal(1, second);
        folder.Delete(true);
    }

    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    /// <summary>A file that tells whether it was read.</summary>
    private sealed class Sent : IBrowserFile
    {
        public int Opened { get; private set; }

        public string Name => "bench.zip";

        public DateTimeOffset LastModified => Noon;

        public long Size => 100;

        public string ContentType => "application/zip";

        public Stream OpenReadStream(long maxAllowedSize = 512000, CancellationToken cancellationToken = default)
        {
            Opened++;
            return new MemoryStream(new byte[Size]);
        }
    }

    [Fact]
    public async Task A_merge_that_breaks_off_on_an_error_of_the_program_says_so()
    {
        await using var screens = await OpenAsync();
        var (work, folder) = (
            screens.Context.Services.GetRequiredService<MergeWork>(),
            Directory.CreateTempSubdirectory("ohmstead-other-")
        );
        await (await Store.OpenAsync(folder.FullName, TimeProvider.System, Xunit.TestContext.Current.CancellationToken)).DisposeAsync();
        screens.Bench.Drawer.Changed += () => throw new FormatException();
        var ended = new TaskCompletionSource();
        work.Begin(folder.FullName, ended.SetResult);
        await ended.Task.WaitAsync(TimeSpan.FromSeconds(20), Xunit.TestContext.Current.CancellationToken);
        Assert.Contains("FormatException", work.Trouble, StringComparison.Ordinal);
        folder.Delete(recursive: true);
    }

    private static async Task<ScreenBench> DisagreeingAsync()
    {
        var screens = await OpenAsync();
        await screens.Bench.EnterAsync(ScreenBench.UnitId, 1, "bench", new StageClosed(Stage.LookOver, true, ""));
        await FromOtherAsync(screens, new StageClosed(Stage.LookOver, false, ""));
        return screens;
    }

    /// <summary>Presses what is there now: the page is drawn again when its names were read.</summary>
    private static async Task PressAsync(IRenderedComponent<MergeBenches> page, Func<string, bool> words)
    {
        page.WaitForAssertion(() => Assert.Single(page.FindAll("button"), b => words(b.TextContent)), TimeSpan.FromSeconds(20));
        await page.DoAsync(() => page.FindAll("button").Single(b => words(b.TextContent)).ClickAsync(new()));
    }

    private static async Task TypeAsync(IRenderedComponent<MergeBenches> page, string box, string words)
    {
        page.WaitForElement(box, TimeSpan.FromSeconds(20));
        await page.DoAsync(() => page.Find(box).ChangeAsync(new() { Value = words }));
    }

    private static void Sees(IRenderedComponent<MergeBenches> page, string words) =>
        page.WaitForAssertion(() => Assert.Contains(words, page.Markup, StringComparison.Ordinal), TimeSpan.FromSeconds(20));

    [Fact]
    public async Task A_question_names_both_benches_and_an_answer_is_entered_and_ends_it()
    {
        await using var screens = await DisagreeingAsync();
        var start = screens.Context.Render<Start>();
        start.WaitForAssertion(() => Assert.Contains("1 question", start.Find(".notice").TextContent, StringComparison.Ordinal));
        await BenchNaming.SaveAsync(screens.Bench, "Laptop");
        var page = screens.Context.Render<MergeBenches>();
        Sees(page, "Look-over: done (Laptop");
        Assert.Equal(2, page.FindAll("fieldset button").Count);
        await PressAsync(
            page,
            w =>
                w.Contains("Look-over: reopened (Bench C0FF", StringComparison.Ordinal)
                && w.Contains("4 Mar 2026", StringComparison.Ordinal)
        );
        Sees(page, "All questions are answered");
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
        part.WaitForAssertion(() => Assert.Equal(2, part.FindAll("li").Count));
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
        Assert.Equal(1, await CountAsync(screens));
        var page = screens.Context.Render<MergeBenches>();
        await TypeAsync(page, $"#tag-{other}", "F-10");
        await PressAsync(page, w => w.Contains("B. Brass", StringComparison.Ordinal));
        Sees(page, "All questions are answered");
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
        await PressAsync(page, w => w == "Both keep it");
        Sees(page, "All questions are answered");
        Assert.Equal(0, await CountAsync(screens));
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
        await PressAsync(page, w => w == "Merge");
        Sees(page, "Type the folder first");
        await TypeAsync(page, "#path", folder);
        await PressAsync(page, w => w == "Merge");
        Sees(page, "1 new unit, no units with new entries, 1 new entry");
        var backups = Path.Combine(((Store)screens.Bench.Itself).Folder, MergeWork.BackupFolder);
        Assert.Single(Directory.GetDirectories(backups), d => File.Exists(Path.Combine(d, "workshop.db")));
        // The settings of the other bench are shown beside one's own, and used when somebody says so twice.
        Sees(page, "The club");
        Assert.NotEqual("The club", (await screens.Bench.ShopAsync()).Name);
        await PressAsync(page, w => w.StartsWith("Use these", StringComparison.Ordinal));
        await PressAsync(page, w => w == "Yes, use these");
        Sees(page, "These are your Shop settings now");
        Assert.Equal("The club", (await screens.Bench.ShopAsync()).Name);
        Directory.Delete(folder, true);
    }

    [Fact]
    public async Task What_is_no_workshop_is_told_with_what_to_name_instead()
    {
        await using var screens = await OpenAsync();
        var page = screens.Context.Render<MergeBenches>();
        await TypeAsync(page, "#path", Path.Combine(Path.GetTempPath(), "there-is-none"));
        await PressAsync(page, w => w == "Merge");
        Sees(page, "Nothing was merged");
        Assert.Contains("Name a data folder, a backup or a zip.", page.Markup, StringComparison.Ordinal);
    }
}
