using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Testing;

/// <summary>The limit of a test, with where it comes from.</summary>
public static class TestBounds
{
    /// <summary>Of the limits that come from the type itself.</summary>
    public const string OwnBand = "this type’s own range of sound units, from its type sheet";

    /// <summary>The shop's limit that a test is held against; null where the type sheet says it.</summary>
    public static ShopLimit? InShop(TestSort sort, Shop shop) =>
        IdOf(sort) is { } id ? shop.Limits.Concat(shop.TestLimits).FirstOrDefault(l => l.Id == id) : null;

    /// <summary>The limit of a test; null where nothing can be judged.</summary>
    /// <param name="band">What sound units show, for a test that is held against that; null where it is not known yet.</param>
    /// <param name="leadOhms">What the test leads read when touched together [Ω].</param>
    public static TestBound? Of(BenchTest test, Shop shop, Expectation? band, double leadOhms)
    {
        if (test.Sort is TestSort.NoLoadWatts or TestSort.NoLoadVolts or TestSort.LoadedVolts)
            return band is { CanJudge: true, Low: var low, High: var high } && low < high && !double.IsInfinity(high)
                ? new(low, high, ValueText.LetterOf(test.Quantity), OwnBand)
                : null;
        if (test.Sort == TestSort.Insulation && test.Offer!.Spec.Limits is { MinSource: LimitSource.TypeSheet, Min: > 0 } own)
            return new(own.Min / test.UnitsPerLimit, null, "MΩ", "the type sheet");
        if (InShop(test.Sort, shop) is not { } limit)
            return null;
        return test.Sort switch
        {
            TestSort.Insulation or TestSort.SecondaryToCore => new(limit.Value / test.UnitsPerLimit, null, "MΩ", limit.Source),
            TestSort.GroundWire => new(
                null,
                (limit.Value / 1000) + leadOhms,
                "Ω",
                leadOhms > 0 ? $"{limit.Source}; your test leads, {ValueText.Plain(leadOhms)} Ω, are in it" : limit.Source
            ),
            TestSort.WhistleFirst or TestSort.WhistleSecond => new(limit.Value, null, "V", limit.Source),
            _ => new(null, limit.Value, limit.Unit, limit.Source),
        };
    }

    private static string? IdOf(TestSort sort) =>
        sort switch
        {
            TestSort.Insulation => "insulation",
            TestSort.SecondaryToCore => "insulation-secondary",
            TestSort.GroundWire => "ground",
            TestSort.Regulation => "regulation",
            TestSort.WhistleFirst => "whistle-1",
            TestSort.WhistleSecond => "whistle-2",
            TestSort.TouchCurrent => "touch-current",
            TestSort.Breaker => "breaker",
            TestSort.HeatRun => "rise",
            _ => null,
        };
}
