using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Ohmstead.App.Screens.Readings;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Testing;

namespace Ohmstead.App.Screens.Testing;

/// <summary>A screen of tests: the list as it is now, what each came to, and a clock that goes on while the screen is open.</summary>
public abstract class TestScreen : ReadingScreen
{
    /// <summary>The screen is drawn so often while a clock runs: a second never seems to last two.</summary>
    private static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(250);

    private ITimer? beat;

    [Inject]
    private IJSRuntime Script { get; set; } = null!;

    /// <summary>The tests of the unit, in the order of their sorts.</summary>
    protected ImmutableArray<BenchTest> Tests { get; private set; } = [];

    /// <summary>Now, by the clock of the bench.</summary>
    protected DateTimeOffset Now => Bench.Time.GetUtcNow();

    /// <summary>The lock of the mains, as it is for readings.</summary>
    protected ImmutableArray<LockReason> Locks => TestList.LocksOf(Tests);

    /// <summary>How long a plan waits for a breaker to cool [s].</summary>
    protected double CoolSeconds => Tests.IsEmpty ? 0 : BreakerPlan.UsualCoolSeconds(Unit!, Model!.Sheet, Shop);

    /// <inheritdoc/>
    protected override async Task UnitReadAsync()
    {
        await base.UnitReadAsync();
        Tests = Trouble.Length > 0 || Model is null ? [] : TestList.Of(Unit!, Model, Shop, Offers);
    }

    /// <summary>What a test came to, worked out beside the screen.</summary>
    protected Task<TestResult> WorkOutAsync(BenchTest test)
    {
        var (unit, model, shop) = (Unit!, Model!, Shop);
        return WorkOutAsync(() => TestResult.Of(test, unit, model, shop, TestBand.Of(test, model, shop, unit.Bench)));
    }

    /// <summary>A test is left out; says why that was refused, or nothing.</summary>
    protected async Task<string> LeaveAsync(BenchTest test, string why)
    {
        var left = TestEntry.Leave(test, why);
        if (!left.Facts.IsEmpty)
            await EnterAsync([.. left.Facts]);
        return left.Refused;
    }

    /// <summary>The shop's limit of a sort of test is changed; says why that was refused, or nothing.</summary>
    protected async Task<string> SaveLimitAsync(TestSort sort, string value, string source, string date)
    {
        if (TestBounds.InShop(sort, Shop) is not { } limit)
            return "";
        if (ShopEdit.TestLimit(Shop, limit, value, source, date).Problem is { Length: > 0 } problem)
            return problem;
        await Bench.EditShopAsync(shop => ShopEdit.TestLimit(shop, limit, value, source, date).Shop!);
        await UnitReadAsync();
        StateHasChanged();
        return "";
    }

    /// <summary>Calls the page's script. A window that is gone hears nothing, and the next one asks the journal.</summary>
    protected async Task ScriptAsync(string name, params object[] with)
    {
        try
        {
            await Script.InvokeVoidAsync(name, with);
        }
        catch (JSDisconnectedException) { }
    }

    /// <summary>Begins to beat; once.</summary>
    protected void StartClock() =>
        beat ??= Bench.Time.CreateTimer(
            _ =>
                _ = InvokeAsync(async () =>
                {
                    await BeatAsync();
                    StateHasChanged();
                }),
            null,
            Beat,
            Beat
        );

    /// <summary>At each beat, before the screen is drawn.</summary>
    protected virtual Task BeatAsync() => Task.CompletedTask;

    /// <inheritdoc/>
    public override void Dispose()
    {
        beat?.Dispose();
        base.Dispose();
        GC.SuppressFinalize(this);
    }
}
