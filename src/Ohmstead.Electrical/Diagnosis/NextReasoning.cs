using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>
/// Works out why a reading is proposed: what it would show under each of the probable sets of faults, as far as that differs;
/// or which fault it would bring to light that nothing taken has shown; and how many readings wait for it.
/// </summary>
public sealed class NextReasoning
{
    /// <summary>A less probable set is not weighed [probability].</summary>
    private const double LeastProbable = 0.05;

    private const int MostSets = 6;
    private const int MostTried = 30;
    private const int MostSuspects = 3;

    private readonly UnitModel model;
    private readonly UnitReadings taken;
    private readonly DiagnosisResult result;
    private readonly ImmutableArray<FaultSetProbability> sets;
    private readonly HashSet<FaultMode> common;

    /// <summary>Takes a diagnosis and what it was made from.</summary>
    /// <param name="model">The unit.</param>
    /// <param name="taken">What was read, and the meter that reads on.</param>
    /// <param name="result">The diagnosis of these readings.</param>
    public NextReasoning(UnitModel model, UnitReadings taken, DiagnosisResult result)
    {
        (this.model, this.taken, this.result) = (model, taken, result);
        sets = [.. result.Hypotheses.Where(h => h.Probability >= LeastProbable).Take(MostSets)];
        if (sets.IsEmpty)
            sets = [.. result.Hypotheses.Take(1).DefaultIfEmpty(new FaultSetProbability([], 1))];
        common = [.. sets.Select(h => h.Faults.AsEnumerable()).Aggregate((a, b) => a.Intersect(b))];
    }

    /// <summary>
    /// The reasons for one reading. Cost: up to 36 predictions of it (<see cref="Prediction"/>), each some hundred solutions.
    /// </summary>
    /// <param name="next">One of the diagnosis' next readings.</param>
    public NextReason Of(NextReading next)
    {
        var groups = Groups(next);
        return new NextReason(
            groups,
            groups.Length > 1 ? [] : Suspects(next, groups[0].Expected),
            result.Next.Count(n => n.BlockedBy.Contains(next.Spec.Id))
        );
    }

    private ImmutableArray<ExpectedGroup> Groups(NextReading next)
    {
        var groups = new List<(Expectation Expected, List<ImmutableArray<FaultMode>> Beyond)>();
        foreach (var set in sets)
        {
            var expected = Expected(next, set.Faults);
            var beyond = set.Faults.RemoveAll(common.Contains);
            var home = groups.FindIndex(g => !g.Expected.IsApartFrom(expected));
            if (home < 0)
                groups.Add((expected, [beyond]));
            else
                groups[home].Beyond.Add(beyond);
        }
        return [.. groups.OrderByDescending(g => g.Expected.Value).Select(g => new ExpectedGroup(g.Expected, Smallest(g.Beyond)))];
    }

    private static ImmutableArray<ImmutableArray<FaultMode>> Smallest(List<ImmutableArray<FaultMode>> sets) =>
        [.. sets.Where(a => !sets.Exists(b => b.Length < a.Length && b.All(a.Contains)))];

    private ImmutableArray<FaultMode> Suspects(NextReading next, Expectation usual)
    {
        var best = sets[0].Faults;
        return
        [
            .. result
                .Faults.Where(f => !best.Any(m => m.Element == f.Mode.Element))
                .Take(MostTried)
                .Select(f => f.Mode)
                .Where(m => !usual.Holds(Expected(next, best.Add(m)).Value))
                .Take(MostSuspects),
        ];
    }

    private Expectation Expected(NextReading next, ImmutableArray<FaultMode> faults)
    {
        var sized = faults.Select(m => new AssumedFault(m, SizeOf(m))).ToImmutableArray();
        var state = taken.StateOf(model.Sheet, next.Spec);
        var predicted = Prediction.Run(model, [(next.Spec, state)], sized, taken.Meter.IsAveraging);
        return Expectation.Of(predicted[0], taken.Meter.For(next.Spec.Quantity));
    }

    private double SizeOf(FaultMode m) => result.Faults.First(f => f.Mode == m).Size ?? m.MiddleSize;
}
