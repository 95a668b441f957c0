using System.Collections.Immutable;

namespace Ohmstead.Workshop.Testing;

/// <summary>The tests that are due in the order in which they cost least waiting: while something cools, what makes no heat is done.</summary>
/// <param name="Lines">One after the other.</param>
/// <param name="Minutes">From the first to the last, waiting in it.</param>
/// <param name="WaitMinutes">Of these, with nothing to do on this unit.</param>
public sealed record TestPlan(ImmutableArray<PlanLine> Lines, double Minutes, double WaitMinutes)
{
    /// <summary>A winding falls to its core in a quarter of this, the core to the room by two thirds [min]; common practice, no source.</summary>
    public const double HeatRunCoolMinutes = 60;

    /// <summary>What is done first; null where nothing is due.</summary>
    public BenchTest? Next => Lines is [{ Test: { } first }, ..] ? first : null;

    /// <summary>What is due and can be done while a breaker cools; null for nothing.</summary>
    public static BenchTest? Meanwhile(IEnumerable<BenchTest> tests) =>
        tests.FirstOrDefault(t => t is { IsDue: true, Sort: TestSort.TouchCurrent or TestSort.SecondaryToCore or TestSort.GroundWire });

    /// <summary>Puts those that are due in order.</summary>
    /// <param name="tests">Of the unit.</param>
    /// <param name="coolSeconds">From the last load until a breaker counts as cold [s].</param>
    public static TestPlan Of(IEnumerable<BenchTest> tests, double coolSeconds)
    {
        var left = tests.Where(t => t.IsDue).OrderBy(t => PlaceOf(t.Sort)).ToList();
        var lines = ImmutableArray.CreateBuilder<PlanLine>();
        var (now, waited, warmUntil) = (0.0, 0.0, (double?)null);
        double ReadyAt(BenchTest test) =>
            warmUntil is not { } warm ? 0
            : test.Sort == TestSort.Breaker ? warm + (coolSeconds / 60)
            : test.Sort == TestSort.HeatRun ? warm + HeatRunCoolMinutes
            : 0;
        while (left.Count > 0)
        {
            var next = left.Find(t => ReadyAt(t) <= now + 1e-9);
            if (next is null)
            {
                var until = left.Min(ReadyAt);
                lines.Add(new(now, null, until - now, false));
                (waited, now) = (waited + until - now, until);
                continue;
            }
            var isMeanwhile = left.Exists(t => PlaceOf(t.Sort) < PlaceOf(next.Sort) && ReadyAt(t) > now);
            lines.Add(new(now, next, next.Minutes, isMeanwhile));
            left.Remove(next);
            now += next.Minutes;
            if (Heats(next.Sort))
                warmUntil = now;
        }
        return new(lines.ToImmutable(), now, waited);
    }

    private static bool Heats(TestSort sort) =>
        sort is TestSort.LoadedVolts or TestSort.WhistleFirst or TestSort.WhistleSecond or TestSort.Breaker or TestSort.HeatRun;

    /// <summary>
    /// First the insulation, all of it before any mains; then from no load to a heavy one; what can be done at any time fills the waits.
    /// </summary>
    private static int PlaceOf(TestSort sort) =>
        sort switch
        {
            TestSort.Insulation => 0,
            TestSort.SecondaryToCore => 1,
            TestSort.NoLoadWatts => 2,
            TestSort.NoLoadVolts => 3,
            TestSort.LoadedVolts => 4,
            TestSort.WhistleFirst => 5,
            TestSort.WhistleSecond => 6,
            TestSort.Breaker => 7,
            TestSort.GroundWire => 8,
            TestSort.TouchCurrent => 9,
            TestSort.HeatRun => 10,
            _ => 11,
        };
}

/// <summary>A line of the plan.</summary>
/// <param name="AtMinutes">When it begins, from the start.</param>
/// <param name="Test">What is done; null for waiting.</param>
/// <param name="Minutes">How long.</param>
/// <param name="IsMeanwhile">True where it is done while something else cools.</param>
public sealed record PlanLine(double AtMinutes, BenchTest? Test, double Minutes, bool IsMeanwhile);
