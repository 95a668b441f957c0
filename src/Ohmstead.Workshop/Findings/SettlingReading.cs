using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>A reading that would tell faults apart which are alike so far.</summary>
/// <param name="Minutes">How long it takes, opening included [min].</param>
/// <param name="Values">What it would show with each: "Worn roller", "0.41 V".</param>
/// <param name="IsOpen">False while a cold check before it has not passed.</param>
public sealed record SettlingReading(ReadingSpec Spec, double Minutes, ImmutableArray<(string Fault, string Value)> Values, bool IsOpen)
{
    private const int MostReadings = 3;

    /// <summary>Values apart by this many limits of the meter's error and by this share of themselves are two values.</summary>
    private const double LimitsApart = 2;
    private const double ShareApart = 0.25;

    /// <summary>The readings not yet taken that would show different values with one or the other of the two likeliest; quick ones first.</summary>
    public static ImmutableArray<SettlingReading> For(
        UnitModel model,
        UnitReadings readings,
        DiagnosisResult result,
        ImmutableArray<FaultProbability> alike
    )
    {
        var tellers = new List<SettlingReading>();
        foreach (var next in result.Next)
        {
            var values = alike.Take(2).Select(f => ValueWith(model, readings, next.Spec, f)).ToArray();
            if (
                values[0] is not { } first
                || values[1] is not { } second
                || !AreApart(first, second, readings.Meter.For(next.Spec.Quantity))
            )
                continue;
            var shown = alike
                .Take(2)
                .Zip([first, second], (f, v) => (PartNames.Headline(model.Sheet, f.Mode), ValueText.About(v, next.Spec.Quantity)));
            tellers.Add(new(next.Spec, next.Minutes, [.. shown], next.BlockedBy.IsEmpty));
        }
        return [.. tellers.OrderByDescending(t => t.IsOpen).ThenBy(t => t.Minutes).Take(MostReadings)];
    }

    /// <summary>What the nominal unit shows with one fault of its estimated size; null where it cannot be solved.</summary>
    private static double? ValueWith(UnitModel model, UnitReadings readings, ReadingSpec spec, FaultProbability f) =>
        FaultEffect.ValueWith(
            model,
            spec,
            readings.StateOf(model.Sheet, spec),
            new Fault(f.Mode, f.Size ?? f.Mode.MiddleSize),
            readings.Meter
        );

    private static bool AreApart(double a, double b, MeterError error)
    {
        if (double.IsInfinity(a) || double.IsInfinity(b))
            return double.IsInfinity(a) != double.IsInfinity(b);
        var limit = error.LimitAt(a) + error.LimitAt(b);
        return Math.Abs(a - b) > Math.Max(LimitsApart * limit / 2, ShareApart * Math.Min(Math.Abs(a), Math.Abs(b)));
    }
}
