using System.Reflection;
using Bunit;
using Ohmstead.App.Components;
using Ohmstead.App.Tests.Screens;
using Ohmstead.App.Web;
using Ohmstead.Storage;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Tests.Web;

/// <summary>What other programs on the same database did is told as if another window had; what was cut off at its end is kept once.</summary>
public sealed class SharedBenchTests
{
    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_entry_of_another_program_is_told_to_every_window_and_a_change_of_the_shop_too()
    {
        await using var screens = await ScreenBench.OpenAsync(TellingStore.Around);
        var (units, shops) = (new List<Guid>(), 0);
        screens.Bench.UnitChanged += units.Add;
        screens.Bench.ShopChanged += () => shops++;
        TellingStore.Say(screens.Bench.Store, new StoreNews(NewsOf.Entries, ScreenBench.UnitId, "", ""));
        Assert.Equal([ScreenBench.UnitId], units);
        TellingStore.Say(screens.Bench.Store, new StoreNews(NewsOf.Document, Guid.Empty, "shop", ""));
        Assert.Equal(1, shops);
    }

    [Fact]
    public async Task What_another_program_found_doubtful_counts_here_too()
    {
        await using var screens = await ScreenBench.OpenAsync(TellingStore.Around);
        var unit = await screens.UnitAsync();
        Assert.True(unit.Doubts.IsEmpty);
        var doubts = new UnitDoubts(1, new(["blades"], 0.3), [], []);
        await screens.Bench.Store.SaveFoundAsync(unit.Id, unit.LastNumber, new NextThing(NextAction.LookOver, "", 1, ""), doubts, Stop);
        // As long as nobody says so, what was read first stays.
        Assert.True((await screens.UnitAsync()).Doubts.IsEmpty);
        TellingStore.Say(screens.Bench.Store, new StoreNews(NewsOf.Found, unit.Id, "", ""));
        Assert.Equal(["blades"], (await screens.UnitAsync()).Doubts.Checks.Readings);
    }

    [Fact]
    public async Task While_the_database_is_away_the_page_says_so_and_no_longer_when_it_is_back()
    {
        await using var screens = await ScreenBench.OpenAsync(TellingStore.Around);
        var notice = screens.Context.Render<OutageNotice>();
        Assert.Equal("", notice.Markup.Trim());
        TellingStore.Say(screens.Bench.Store, new StoreNews(NewsOf.Away, Guid.Empty, "", "The database club on den does not answer"));
        notice.WaitForAssertion(() => Assert.Contains("does not answer. What you typed stays", notice.Markup, StringComparison.Ordinal));
        var units = new List<Guid>();
        screens.Bench.UnitChanged += units.Add;
        TellingStore.Say(screens.Bench.Store, new StoreNews(NewsOf.Back, Guid.Empty, "", ""));
        notice.WaitForAssertion(() => Assert.Equal("", notice.Markup.Trim()));
        // Any unit may have grown meanwhile.
        Assert.Equal([Guid.Empty], units);
    }

    [Fact]
    public async Task An_entry_that_may_have_been_kept_is_there_once_when_it_is_sent_again()
    {
        await using var screens = await ScreenBench.OpenAsync(TellingStore.Around);
        TellingStore.CutNextEnd(screens.Bench.Store);
        var cut = await Assert.ThrowsAsync<StoreUnusable>(() => EnterAsync());
        Assert.Equal("It may not be saved.", Told(cut).Title);
        Assert.Equal(2, (await EnterAsync()).Written.Single().Number);
        Assert.Equal(2, (await screens.UnitAsync()).LastNumber);
        // Said once more on purpose it is another entry.
        Assert.Equal(3, (await EnterAsync()).Written.Single().Number);

        Task<Appended> EnterAsync() => screens.Bench.EnterAsync(ScreenBench.UnitId, 1, "bench", new Noted("the cord is brittle"));
    }

    /// <summary>A screen read it, which whoever pressed may not have seen.</summary>
    [Fact]
    public async Task An_entry_that_was_kept_and_read_is_there_once_when_it_is_sent_again()
    {
        await using var screens = await ScreenBench.OpenAsync(TellingStore.Around);
        await CutAsync(screens, new Noted("twice"));
        var unit = await screens.UnitAsync();
        Assert.Equal(2, unit.LastNumber);
        Assert.Equal([unit.Journal[^1].Id], screens.Bench.SavedAllTheSame(unit, "bench"));
        Assert.Empty(screens.Bench.SavedAllTheSame(unit, "phone"));
        Assert.Equal(2, await NoteAsync(screens, "twice"));
        // It was answered: once more on purpose it is another entry.
        Assert.Equal(3, await NoteAsync(screens, "twice"));
    }

    [Fact]
    public async Task An_entry_that_was_kept_may_be_made_again_after_other_words_and_after_it_was_told()
    {
        await using var screens = await ScreenBench.OpenAsync(TellingStore.Around);
        await CutAsync(screens, new Noted("twice"));
        Assert.Equal(3, await NoteAsync(screens, "something else"));
        Assert.Equal(4, await NoteAsync(screens, "twice"));
        await CutAsync(screens, new Noted("again"));
        screens.Bench.ToldSaved(ScreenBench.UnitId, "bench");
        Assert.Equal(6, await NoteAsync(screens, "again"));
    }

    /// <summary>What a repair leaves is worked out from the unit, which has that repair by now.</summary>
    [Fact]
    public async Task A_repair_that_was_kept_is_there_once_whatever_readings_it_leaves_the_second_time()
    {
        await using var screens = await ScreenBench.OpenAsync(TellingStore.Around);
        var repair = new PartChanged("lamp-1", PartChange.Renewed, null, "");
        await CutAsync(screens, repair with { Keeps = ["blades"] });
        await screens.Bench.EnterAsync(ScreenBench.UnitId, 2, "bench", repair);
        Assert.Single((await screens.UnitAsync()).All<PartChanged>());
    }

    [Fact]
    public async Task What_is_put_on_the_shelf_of_the_drawer_and_may_have_been_kept_is_there_once_when_it_is_sent_again()
    {
        await using var screens = await ScreenBench.OpenAsync(TellingStore.Around);
        var (drawer, bin) = (screens.Bench.Drawer, new Guid(31, 0, 0, new byte[8]));
        await drawer.EnterAsync(new BinSaid(bin) { Name = "Roller" }, new BinCounted(bin, 5));
        TellingStore.CutNextEnd(screens.Bench.Store);
        await Assert.ThrowsAsync<StoreUnusable>(() => drawer.EnterAsync(new PartsUsed(bin, 2, "a job")));
        drawer.ReadAgain();
        Assert.Equal(3, (await drawer.ReadAsync()).Find(bin)!.Count);
        Assert.True(drawer.IsSavedAllTheSame(""));
        await drawer.EnterAsync(new PartsUsed(bin, 2, "a job"));
        Assert.Equal(3, (await drawer.ReadAsync()).Find(bin)!.Count);
        // Two more on purpose.
        await drawer.EnterAsync(new PartsUsed(bin, 2, "a job"));
        Assert.Equal(1, (await drawer.ReadAsync()).Find(bin)!.Count);
    }

    /// <summary>The tablet's "2 taken out" is not the laptop's, though the words are the same.</summary>
    [Fact]
    public async Task The_same_from_a_device_and_from_this_machine_are_two_entries_also_where_one_may_have_been_kept()
    {
        await using var screens = await ScreenBench.OpenAsync(TellingStore.Around);
        var (drawer, bin) = (screens.Bench.Drawer, new Guid(31, 0, 0, new byte[8]));
        await drawer.EnterAsync(new BinSaid(bin) { Name = "Roller" }, new BinCounted(bin, 9));
        await CutAsync(screens, new Noted("the cord is brittle"));
        TellingStore.CutNextEnd(screens.Bench.Store);
        await Assert.ThrowsAsync<StoreUnusable>(() => drawer.EnterAsync(new PartsUsed(bin, 2, "a job")));
        await AtTabletAsync(() => drawer.EnterAsync(new PartsUsed(bin, 2, "a job")));
        await AtTabletAsync(() => NoteAsync(screens, "the cord is brittle"));
        drawer.ReadAgain();
        var read = await drawer.ReadAsync();
        var unit = await screens.UnitAsync();
        Assert.Equal(5, read.Find(bin)!.Count);
        Assert.Equal(2, unit.All<Noted>().Count());
        Assert.Equal(
            [("bench", null), ("Tablet", "0badcafe")],
            read.Entries.Where(e => e.Facts[0] is PartsUsed).Select(e => (e.By, e.Bench))
        );
        // Each is told of its own.
        Assert.True(drawer.IsSavedAllTheSame("") && !drawer.IsSavedAllTheSame("0badcafe"));
        Assert.Single(screens.Bench.SavedAllTheSame(unit, "bench"));
        Assert.Empty(screens.Bench.SavedAllTheSame(unit, "bench", "0badcafe"));
        drawer.ToldSaved("0badcafe");
        Assert.True(drawer.IsSavedAllTheSame(""));
        drawer.ToldSaved("");
        Assert.False(drawer.IsSavedAllTheSame(""));
    }

    private static async Task AtTabletAsync(Func<Task> act)
    {
        Asker.Begin(new Asker("0badcafe", "Tablet", () => true));
        await act();
    }

    [Fact]
    public async Task What_others_doubted_while_the_database_was_away_counts_when_it_is_back_and_what_could_not_be_saved_here_too()
    {
        await using var screens = await ScreenBench.OpenAsync(TellingStore.Around);
        var unit = await screens.UnitAsync();
        var theirs = new UnitDoubts(1, new(["blades"], 0.3), [], []);
        await screens.Bench.Store.SaveFoundAsync(unit.Id, unit.LastNumber, new NextThing(NextAction.LookOver, "", 1, ""), theirs, Stop);
        var told = new List<Guid>();
        screens.Bench.DoubtsChanged += told.Add;
        Back();
        Assert.Equal(["blades"], (await screens.UnitAsync()).Doubts.Checks.Readings);
        Assert.Contains(Guid.Empty, told);
        screens.Bench.Doubt(unit, new UnitDoubts(1, new(["left"], 0.3), [], []), isSaved: false);
        Back();
        Assert.Equal(["left"], (await screens.UnitAsync()).Doubts.Checks.Readings);

        void Back() => TellingStore.Say(screens.Bench.Store, new StoreNews(NewsOf.Back, Guid.Empty, "", ""));
    }

    private static async Task CutAsync(ScreenBench screens, Fact fact)
    {
        TellingStore.CutNextEnd(screens.Bench.Store);
        await Assert.ThrowsAsync<StoreUnusable>(() => screens.Bench.EnterAsync(ScreenBench.UnitId, 1, "bench", fact));
    }

    private static async Task<int> NoteAsync(ScreenBench screens, string words)
    {
        await screens.Bench.EnterAsync(ScreenBench.UnitId, 2, "bench", new Noted(words));
        return (await screens.UnitAsync()).LastNumber;
    }

    private static Mishap Told(Exception broken)
    {
        var mishaps = new Mishaps(Microsoft.Extensions.Logging.Abstractions.NullLogger.Instance);
        mishaps.Say(broken, isKept: false);
        return mishaps.Now!;
    }
}

/// <summary>A store that says news when a test wants it to, and may lose the answer to an entry.</summary>
public class TellingStore : DispatchProxy
{
    private IStore inner = null!;
    private Action<StoreNews>? heard;
    private bool cutsNext;

    public static IStore Around(IStore store)
    {
        var telling = Create<IStore, TellingStore>();
        ((TellingStore)(object)telling).inner = store;
        return telling;
    }

    public static void Say(IStore telling, StoreNews news) => Of(telling).heard?.Invoke(news);

    /// <summary>The next entry is kept, and the answer does not come.</summary>
    public static void CutNextEnd(IStore telling) => Of(telling).cutsNext = true;

    private static TellingStore Of(IStore store) => (TellingStore)(object)(store is AskedStore asked ? asked.Inner : store);

    protected override object? Invoke(MethodInfo? targetMethod, object?[]? args)
    {
        if (targetMethod!.Name == "add_News")
        {
            heard += (Action<StoreNews>?)args![0];
            return null;
        }
        var done = targetMethod.Invoke(inner, args);
        if (!cutsNext || done is not (Task<Appended> or Task<DocumentSaved>))
            return done;
        cutsNext = false;
        return CutAsync((dynamic)done);
    }

    private static async Task<T> CutAsync<T>(Task<T> writing)
    {
        await writing;
        throw new StoreUnusable("The database does not answer") { IsUnsure = true };
    }
}
