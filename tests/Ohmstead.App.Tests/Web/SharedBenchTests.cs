using System.Reflection;
using Bunit;
using Ohmstead.App.Components;
using Ohmstead.App.Tests.Screens;
using Ohmstead.App.Web;
using Ohmstead.Storage;
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

    [Fact]
    public async Task An_entry_that_was_kept_and_seen_may_be_made_again()
    {
        await using var screens = await ScreenBench.OpenAsync(TellingStore.Around);
        TellingStore.CutNextEnd(screens.Bench.Store);
        await Assert.ThrowsAsync<StoreUnusable>(() => screens.Bench.EnterAsync(ScreenBench.UnitId, 1, "bench", new Noted("twice")));
        Assert.Equal(2, (await screens.UnitAsync()).LastNumber);
        await screens.Bench.EnterAsync(ScreenBench.UnitId, 2, "bench", new Noted("twice"));
        Assert.Equal(3, (await screens.UnitAsync()).LastNumber);
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

    public static void Say(IStore telling, StoreNews news) => ((TellingStore)(object)telling).heard?.Invoke(news);

    /// <summary>The next entry is kept, and the answer does not come.</summary>
    public static void CutNextEnd(IStore telling) => ((TellingStore)(object)telling).cutsNext = true;

    protected override object? Invoke(MethodInfo? targetMethod, object?[]? args)
    {
        if (targetMethod!.Name == "add_News")
        {
            heard += (Action<StoreNews>?)args![0];
            return null;
        }
        var done = targetMethod.Invoke(inner, args);
        if (!cutsNext || done is not Task<Appended> appending)
            return done;
        cutsNext = false;
        return CutAsync(appending);
    }

    private static async Task<Appended> CutAsync(Task<Appended> appending)
    {
        await appending;
        throw new StoreUnusable("The database does not answer") { IsUnsure = true };
    }
}
