using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Testing;

/// <summary>What sound units show in a test that is held against that.</summary>
public static class TestBand
{
    /// <summary>
    /// The range, for a reading that was taken under the conditions it was taken in, else under those of now; null for a test that is held
    /// against something else. Cost: that of <see cref="Expectation"/>, some milliseconds.
    /// </summary>
    /// <param name="model">The unit's own sheet.</param>
    public static Expectation? Of(BenchTest test, UnitModel model, Shop shop, Journal.BenchState bench)
    {
        if (test is not { Sort: TestSort.NoLoadWatts or TestSort.NoLoadVolts or TestSort.LoadedVolts, Offer: { } offer })
            return null;
        var then = test.Taken is not null && offer.Last is { } last ? last.Fact.Bench : bench;
        var state = BenchConditions.StateOf(model, offer.Spec, then, shop);
        return Expectation.Of(model, offer.Spec, state, MeterInHand.Of(then, shop));
    }
}
