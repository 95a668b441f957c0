using Microsoft.Extensions.Logging.Abstractions;
using Ohmstead.App.Background;
using Ohmstead.App.Demo;
using Ohmstead.App.Tests.Screens;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Tests.Web;

/// <summary>The one place that knows who writes: what a device enters carries its mark, what it may not enter is refused.</summary>
public sealed class AskedStoreTests
{
    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_entry_of_a_device_carries_its_mark_and_its_name()
    {
        await using var screens = await ScreenBench.OpenAsync();
        await As(new Asker("0badcafe", "Tablet at the vise", () => true), () => NoteAsync(screens, "bench", "by the vise"));
        await As(new Asker("0badcafe", "Tablet at the vise", () => true), () => NoteAsync(screens, "Ann", "by hand"));
        await NoteAsync(screens, "bench", "at the laptop");
        var notes = (await screens.UnitAsync()).All<Noted>().Select(n => (n.Fact.Words, n.Entry.Bench, n.Entry.By)).ToList();
        Assert.Contains(("by the vise", "0badcafe", "Tablet at the vise"), notes);
        Assert.Contains(("by hand", "0badcafe", "Ann"), notes);
        Assert.Contains(("at the laptop", screens.Bench.Store.Bench, "bench"), notes);
    }

    [Fact]
    public async Task What_may_only_look_writes_by_no_method_of_the_store()
    {
        await using var screens = await ScreenBench.OpenAsync();
        var (store, unit) = (screens.Bench.Store, await screens.UnitAsync());
        var entry = new NewEntry(Guid.NewGuid(), DateTimeOffset.UnixEpoch, "bench", new Noted("x"));
        Func<Task>[] writes =
        [
            () => store.AppendAsync(unit.Id, unit.LastNumber, [entry], Stop),
            () => store.AppendAllAsync([new(unit.Id, [entry])], Stop),
            () => store.MergeAsync(unit.Id, [entry], Stop),
            () => store.MergeDocumentsAsync([new("shop", "shop", 1, DateTimeOffset.UnixEpoch, "{}")], Stop),
            () => store.SaveDocumentAsync("shop", "x", 0, "{}", DateTimeOffset.UnixEpoch, Stop),
            () => screens.Bench.Photos.KeepAsync(Stream.Null, 1, DateTimeOffset.UnixEpoch, Stop),
            () => screens.Bench.Photos.KeepRecordingAsync(Stream.Null, 1, DateTimeOffset.UnixEpoch, Stop),
        ];
        foreach (var write in writes)
        {
            var refused = await Assert.ThrowsAsync<NotAllowed>(() => As(new Asker("0badcafe", "Tablet", () => false), write));
            Assert.StartsWith("This device may only look.", Mishaps.Why(refused), StringComparison.Ordinal);
        }
        Assert.Equal(unit.LastNumber, (await screens.UnitAsync()).LastNumber);
        // Every method of the store is of one kind or the other: a new one that writes is thought of here.
        string[] reads = ["ReadAsync", "CardsAsync", "NextAsync", "FittedAsync", "SearchAsync", "VersionsAsync", "ContradictedAsync"];
        string[] readsToo =
        [
            "OnBenchAsync",
            "HandedBackAsync",
            "TwiceTaggedAsync",
            "CountOfTypesAsync",
            "DocumentKindsAsync",
            "ReadDocumentAsync",
            "DocumentsAsync",
            "SheetAsync",
            "get_Bench",
            "get_Caches",
            "add_News",
            "remove_News",
        ];
        string[] written = ["AppendAsync", "AppendAllAsync", "MergeAsync", "MergeDocumentsAsync", "SaveDocumentAsync", "SaveFoundAsync"];
        Assert.Empty(typeof(IStore).GetMethods().Select(m => m.Name).Except([.. reads, .. readsToo, .. written]));
    }

    [Fact]
    public async Task It_is_asked_anew_at_every_entry()
    {
        await using var screens = await ScreenBench.OpenAsync();
        var may = true;
        var asker = new Asker("0badcafe", "Tablet", () => may);
        await As(asker, () => NoteAsync(screens, "bench", "first"));
        may = false;
        await Assert.ThrowsAsync<NotAllowed>(() => As(asker, () => NoteAsync(screens, "bench", "second")));
        Assert.Single((await screens.UnitAsync()).All<Noted>());
    }

    [Fact]
    public async Task What_the_tool_found_out_is_kept_whoever_looked()
    {
        await using var screens = await ScreenBench.OpenAsync();
        var unit = await screens.UnitAsync();
        var found = new UnitDoubts(1, new(["blades"], 0.3), [], []);
        await As(
            new Asker("0badcafe", "Tablet", () => false),
            () =>
                screens.Bench.Store.SaveFoundAsync(unit.Id, unit.LastNumber, new(Workshop.Job.NextAction.LookOver, "", 1, ""), found, Stop)
        );
        Assert.Equal(["blades"], (await screens.Bench.Store.ReadAsync(unit.Id, Stop))!.Doubts.Checks.Readings);
    }

    [Fact]
    public async Task What_names_files_of_the_machine_or_opens_a_port_there_is_for_the_machine_alone()
    {
        await using var screens = await ScreenBench.OpenAsync();
        var merge = new MergeWork(screens.Bench, NullLogger<MergeWork>.Instance);
        await using var demo = new DemoOpener(TimeProvider.System, (_, _) => throw new InvalidOperationException());
        var asker = new Asker("0badcafe", "Tablet", () => true);
        await Assert.ThrowsAsync<NotAllowed>(() => As(asker, () => Try(() => merge.Begin("/etc", () => { }))));
        await Assert.ThrowsAsync<NotAllowed>(() => As(asker, () => Try(merge.Stop)));
        await Assert.ThrowsAsync<NotAllowed>(() => As(asker, () => demo.OpenAsync(new Uri("http://127.0.0.1/"))));
        Assert.False(merge.IsRunning);
    }

    [Fact]
    public async Task Whoever_only_looks_turns_no_page_on_the_second_screen()
    {
        await using var screens = await ScreenBench.OpenAsync();
        var (asked, unit) = (screens.Bench.Asked, await screens.UnitAsync());
        async Task AskAsync(string reading)
        {
            await Task.Yield();
            asked.Ask(unit.Id, reading, unit.LastNumber);
        }
        await As(new Asker("0badcafe", "Tablet", () => false), () => AskAsync("blades"));
        Assert.Null(asked.Of(unit));
        await As(new Asker("0badcafe", "Tablet", () => true), () => AskAsync("blades"));
        Assert.Equal("blades", asked.Of(unit)?.Reading);
    }

    private static async Task NoteAsync(ScreenBench screens, string by, string words) =>
        await screens.Bench.EnterAsync(ScreenBench.UnitId, (await screens.UnitAsync()).LastNumber, by, new Noted(words));

    private static async Task Try(Action act)
    {
        await Task.Yield();
        act();
    }

    /// <summary>As a request does that a device sent: what comes of it asks as the device, nothing else does.</summary>
    private static async Task As(Asker asker, Func<Task> act)
    {
        Asker.Begin(asker);
        await act();
    }
}
