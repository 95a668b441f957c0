using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Testing;

/// <summary>What is to be expected of a breaker at so many amps: seconds, the count at which to switch off, how long to wait before the next.</summary>
/// <param name="Answer">By the trips of this unit, or by its type where there are none.</param>
/// <param name="IsOfType">True where the type sheet says how its type trips; false for a usual one.</param>
/// <param name="Misfit">Why the trips of this unit were left out; empty when they were not.</param>
public sealed record BreakerPlan(BreakerAnswer Answer, double Amps, TestQuestion Question, bool IsOfType, string Misfit)
{
    /// <summary>The amps of the limit [A].</summary>
    private const double UsualAmps = 20;

    /// <summary>What a dead short drives [A]; the usual figure of question files.</summary>
    private const double UsualShortAmps = 55;

    /// <summary>Below this a breaker is not one for the track [A]; it is tested at three times what it is rated for.</summary>
    private const double LeastTrackAmps = 4;

    /// <summary>After so many times its own time a bimetal has a twentieth of its heat left.</summary>
    private const double CoolTimes = 3;

    /// <summary>True where the trips of this unit say it.</summary>
    public bool IsOfUnit { get; private init; }

    /// <summary>The expected seconds at these amps.</summary>
    public TripAt Expected => Answer.At[0];

    /// <summary>From one trip to the next [s].</summary>
    public double CoolSeconds => double.IsFinite(Answer.WaitSeconds) ? Answer.WaitSeconds : CoolTimes * Answer.TauSeconds;

    /// <summary>The breakers of a unit, in the order of its sheet.</summary>
    public static ImmutableArray<Resistive> Breakers(TypeSheet sheet) =>
        [.. sheet.Elements.OfType<Resistive>().Where(e => e.Kind == ElementKind.Breaker)];

    /// <summary>How long a plan of tests waits for a breaker to cool [s]: by the first of the unit; 0 where it has none.</summary>
    public static double UsualCoolSeconds(BenchUnit unit, TypeSheet sheet, Shop shop) =>
        Breakers(sheet) is [var first, ..] ? Of(unit, sheet, first, TestAmps(first), shop).CoolSeconds : 0;

    /// <summary>At which amps a breaker is tested.</summary>
    public static double TestAmps(Resistive breaker) =>
        breaker.RatedAmps is > 0 and < LeastTrackAmps ? Math.Round(3 * breaker.RatedAmps, 2) : UsualAmps;

    /// <summary>The plan.</summary>
    /// <param name="sheet">The unit's own sheet.</param>
    /// <param name="amps">Of the bank.</param>
    public static BreakerPlan Of(BenchUnit unit, TypeSheet sheet, Resistive breaker, double amps, Shop shop)
    {
        var (typical, isOfType) = TypicalBreaker.Of(breaker);
        var trips = Trips(unit, breaker.Id).ToList();
        TestQuestion Ask(IEnumerable<BreakerTimed> with) =>
            TestQuestion.Of(
                "breaker",
                [
                    ("trips", with.Select(t => new { amps = t.Amps, seconds = t.Seconds })),
                    ("typical", new { floorAmps = typical.FloorAmps, tauSeconds = typical.TauSeconds }),
                    ("atAmps", new[] { amps }),
                    ("testAmps", amps),
                    ("usableAmps", breaker.RatedAmps),
                    ("slowSeconds", Limit(shop, "breaker")),
                    // What a dead short drives is a figure of units of the usual size; a breaker of another gets the same multiple.
                    ("shortAmps", UsualShortAmps / UsualAmps * TestAmps(breaker)),
                    ("shortSeconds", Limit(shop, "breaker-short")),
                    ("everyOutputThroughIt", BreakerReach.HoldsEveryPost(sheet)),
                ]
            );
        var question = Ask(trips);
        var (answer, refused) = question.Ask<BreakerAnswer>();
        if (answer is not null)
            return new(answer, amps, question, isOfType, "") { IsOfUnit = trips.Count > 0 };
        var alone = Ask([]);
        return new(alone.Ask<BreakerAnswer>().Answer!, amps, alone, isOfType, refused);
    }

    /// <summary>The trips from cold that count: since the breaker was last changed.</summary>
    public static IEnumerable<BreakerTimed> Trips(BenchUnit unit, string breaker)
    {
        var changed = unit.All<PartChanged>().Where(p => p.Fact.Element == breaker).Select(p => p.Entry.Number).DefaultIfEmpty(0).Last();
        return unit.All<BreakerTimed>()
            .Where(t => t.Fact.Breaker == breaker && t.Entry.Number > changed && t.Fact is { Opened: true, Why: "", Seconds: > 0 })
            .Select(t => t.Fact);
    }

    private static double Limit(Shop shop, string id) =>
        shop.TestLimits.FirstOrDefault(l => l.Id == id)?.Value ?? UsualShop.TestLimits.First(l => l.Id == id).Value;
}
