using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>What a diagnosis made of a unit, beside what can be done on it now.</summary>
/// <param name="Number">Number of the last entry that it knew.</param>
/// <param name="Doubts">What it doubts of the readings and the bench.</param>
/// <param name="Next">What can be taken now: a doubted check again first, then what tells most.</param>
public sealed record Diagnosed(
    int Number,
    UnitModel Model,
    UnitReadings Readings,
    DiagnosisResult Result,
    UnitDoubts Doubts,
    FindingsView View,
    ImmutableArray<NextAdvice> Next
)
{
    /// <summary>Proposals whose reasons are worked out.</summary>
    private const int MostReasons = 2;
    private const double LeastBits = 0.005;

    /// <summary>The slips that it found, but for what was read again since, or moved by a repair.</summary>
    /// <param name="unit">As it is now.</param>
    public IEnumerable<SlipWords> SlipsOf(BenchUnit unit) =>
        View.Slips.Where(s =>
            unit.CurrentReadings.LastOrDefault(r => r.Fact.ReadingId == s.Spec.Id).Entry is { } last && last.Number <= Number
        );

    /// <summary>Puts an answer beside what can be done now: the look-over and a moved wire lock readings too.</summary>
    /// <param name="model">The unit's own sheet.</param>
    /// <param name="judged">The same as it was diagnosed, with what was judged by hand.</param>
    public static Diagnosed Of(BenchUnit unit, Shop shop, UnitModel model, UnitModel judged, UnitReadings readings, DiagnosisResult result)
    {
        var doubts = UnitDoubts.Of(readings, result, unit.LastNumber);
        unit = unit with { Doubts = doubts };
        readings = readings with { Doubts = doubts.Checks };
        var open = ReadingOffer
            .All(unit, model, readings, shop)
            .Where(o => o.IsOpen)
            .Select(o => o.Spec.Id)
            .ToHashSet(StringComparer.Ordinal);
        var reasons = new NextReasons(judged, readings, result);
        ImmutableArray<string> Reasons(NextReading next, bool isAgain, int place) =>
            isAgain ? [$"{Sentences.Large(doubts.Why(model.Sheet, next.Spec, CheckEnd.Doubted))}. {doubts.Do(next.Spec)}."]
            : place < MostReasons ? [.. reasons.Of(next)]
            : [];
        var next = NextInOrder
            .Of(model.Sheet, readings, result)
            .Where(n => open.Contains(n.Spec.Id))
            .Select(n => (Reading: n, IsAgain: NextInOrder.IsDoubted(readings, n.Spec)))
            .Where(n => n.IsAgain || n.Reading.Bits > LeastBits)
            .Select(
                (n, place) =>
                    new NextAdvice(n.Reading, Reasons(n.Reading, n.IsAgain, place))
                    {
                        Again = n.IsAgain ? doubts.Again(n.Reading.Spec) : "",
                    }
            );
        return new(unit.LastNumber, model, readings, result, doubts, FindingsView.Of(unit, model, readings, result), [.. next]);
    }
}
