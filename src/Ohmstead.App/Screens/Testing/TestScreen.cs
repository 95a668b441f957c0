using System.Collections.Immutable;
using Ohmstead.App.Screens.Readings;
using Ohmstead.Electrical.TypeSheets;
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

    /// <summary>The tests of the unit, in the order of their sorts.</summary>
    protected ImmutableArray<BenchTest> Tests { get; private set; } = [];

    /// <summary>Now, by the clock of the bench.</summary>
    protected DateTimeOffset Now => Bench.Time.GetUtcNow();

    /// <summary>The lock of the mains, as it is for readings.</summary>
    protected ImmutableArray<LockReason> Locks => TestList.LocksOf(Tests);

    /// <summary>How long a plan waits for a breaker to cool [s].</summary>
    protected double CoolSeconds =>
        Model?.Sheet.Elements.OfType<Resistive>().FirstOrDefault(e => e.Kind == ElementKind.Breaker) is { } breaker
            ? BreakerPlan.Of(Unit!, Model.Sheet, breaker, BreakerPlan.TestAmps(breaker), Shop).CoolSeconds
            : 0;

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
