using Ohmstead.App.Background;
using Ohmstead.App.Demo;
using Ohmstead.App.Screens.Readings;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Job;

[assembly: AssemblyFixture(typeof(Ohmstead.App.Tests.Web.DemoSite))]

namespace Ohmstead.App.Tests.Web;

/// <summary>The invented workshop, served once for all tests that only look at its screens and findings.</summary>
public sealed class DemoSite : IAsyncLifetime
{
    private RunningSite site = null!;
    private IReadOnlyList<UnitCard> cards = [];

    internal Bench Bench => site.Bench;

    internal HttpClient Client => site.Client;

    internal UnitCard Card(string tag) => cards.Single(c => c.Tag == tag);

    public async ValueTask InitializeAsync()
    {
        site = await RunningSite.OnPortAsync(new HastyClock());
        await DemoWorkshop.FillAsync(Bench, Xunit.TestContext.Current.CancellationToken);
        cards = [.. await Bench.Store.CardsAsync(withHandedBack: true, CancellationToken.None)];
    }

    public ValueTask DisposeAsync() => site.DisposeAsync();

    /// <summary>
    /// Returns when the findings of a unit are worked out, so that its screens show them; those that the desk still has are not worked out
    /// again. Null for a unit without any.
    /// </summary>
    internal async Task<Diagnosed?> AnswerAsync(UnitCard card)
    {
        var desk = site.Get<UnitDiagnoses>();
        if (desk.Of(card.Id) is { Latest: { } known, Progress: null })
            return known;
        var done = new TaskCompletionSource();
        void Look(Guid id)
        {
            if (id == card.Id && desk.Of(id) is { Progress: null })
                done.TrySetResult();
        }
        desk.Changed += Look;
        desk.Ask(card.Id);
        await done.Task.WaitAsync(TimeSpan.FromMinutes(3));
        desk.Changed -= Look;
        return desk.Of(card.Id).Latest;
    }

    /// <summary>Waits a hundredth as long as it is asked to: a search begins at once.</summary>
    private sealed class HastyClock : TimeProvider
    {
        private const int Times = 100;

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
            System.CreateTimer(
                callback,
                state,
                dueTime > TimeSpan.Zero ? dueTime / Times : dueTime,
                period > TimeSpan.Zero ? period / Times : period
            );
    }
}
