using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Testing;

/// <summary>How far a post's volts drop to 5 A, from its readings with no load and with one.</summary>
/// <param name="Percent">Drop at 5 A [%].</param>
/// <param name="StandardUncertainty">Of that [%]: every reading off by itself, which two of one meter seldom are.</param>
/// <param name="SourceOhms">Behind the post [Ω].</param>
/// <param name="Question">What was asked.</param>
public sealed record PostDrop(double Percent, double StandardUncertainty, double SourceOhms, TestQuestion Question)
{
    /// <summary>The load of the limit [A].</summary>
    public const double Amps = 5;

    /// <summary>What the windings lose at a load, by the ohms behind the post [W].</summary>
    public double LossWatts(double amps) => SourceOhms * amps * amps;

    /// <summary>The drop; null while one of the readings is missing, or where they say nothing of it.</summary>
    /// <param name="model">The unit's own sheet.</param>
    public static PostDrop? Of(BenchTest test, UnitModel model, Shop shop)
    {
        var points = ImmutableArray.CreateBuilder<Point>();
        foreach (var offer in test.Pair)
            if (offer.Last is { Fact: { Shown.Kind: ShownKind.Value } read } && offer.Doubted.Length == 0)
                points.Add(PointOf(offer, read, model, shop));
        var all = points.ToImmutable();
        if (!all.Any(p => p.Amps == 0) || !all.Any(p => p.Amps > 0))
            return null;
        var supply = model.Sheet.SupplyVolts;
        if (AnswerOf(all, supply) is not { } answer)
            return null;
        // Each reading off by one standard deviation, one after the other; squares add.
        var square = all.Select((p, n) => AnswerOf(all.SetItem(n, p with { Volts = p.Volts + p.StandardError }), supply))
            .Sum(moved => moved is { } m ? Math.Pow(m.At[0].RegulationPercent - answer.At[0].RegulationPercent, 2) : 0);
        return new(answer.At[0].RegulationPercent, Math.Sqrt(square), answer.SourceOhms, Ask(all, supply));
    }

    private static RegulationAnswer? AnswerOf(ImmutableArray<Point> points, double supply) =>
        Ask(points, supply).Ask<RegulationAnswer>().Answer is { } answer && answer.At[0].Volts > 0 ? answer : null;

    private static TestQuestion Ask(ImmutableArray<Point> points, double supply) =>
        TestQuestion.Of(
            "regulation",
            [
                ("supplyVolts", supply),
                (
                    "points",
                    points.Select(p => new
                    {
                        amps = p.Amps,
                        volts = p.Volts,
                        supplyVolts = p.SupplyVolts,
                    })
                ),
                ("atAmps", new[] { Amps }),
            ]
        );

    private static Point PointOf(ReadingOffer offer, ReadingEntered read, UnitModel model, Shop shop)
    {
        var volts = read.Shown.Value;
        var load = BenchConditions.StateOf(model, offer.Spec, read.Bench, shop).Loads;
        return new(
            load.IsEmpty ? 0 : volts / load[0].Ohms,
            volts,
            read.Bench.SupplyVolts ?? model.Sheet.SupplyVolts,
            MeterInHand.ErrorFor(offer.Spec.Quantity, read.Bench, shop).LimitAt(volts) / Math.Sqrt(3)
        );
    }

    private sealed record Point(double Amps, double Volts, double SupplyVolts, double StandardError);
}
