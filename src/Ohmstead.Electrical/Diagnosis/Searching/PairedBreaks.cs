using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>
/// Pairs of faults without a size that together explain a resistance far above the sound one: where two paths stand beside each
/// other, the break of one alone moves the reading a little or not at all, and best first would never come to the pair.
/// </summary>
internal static class PairedBreaks
{
    /// <summary>A reading this many times above the sound one is far.</summary>
    private const double FarFactor = 1000;

    /// <summary>Readings looked at, and the likeliest faults that are paired: some thousand solutions.</summary>
    private const int MostReadings = 4;
    private const int MostClasses = 40;

    /// <summary>What a reading that is explained is worth when pairs are ranked [nat]: about the cost of one left out.</summary>
    private const double WorthOfReading = 12;

    /// <summary>The pairs worth solving, best first.</summary>
    public static (FaultClass First, FaultClass Second)[] Of(FittedHypothesis sound, SearchSetting setting)
    {
        var (evidence, options) = (setting.Evidence, setting.Options);
        int[] far = [.. sound.LeftOut.Where(r => IsFar(evidence, sound.Predicted[r], r)).Take(MostReadings)];
        if (far.Length == 0 || options.MostFaults < 2)
            return [];
        FaultClass[] breaks =
        [
            .. setting
                .Classes.Where(c => !c.HasSize && far.Any(r => c.Moves[r]))
                .OrderByDescending(c => c.LogOdds)
                .ThenBy(c => c.Number)
                .Take(MostClasses),
        ];
        var pairs = breaks.SelectMany((a, n) => breaks.Skip(n + 1).Where(a.CanStandBeside).Select(b => (First: a, Second: b))).ToArray();
        var explained = new int[pairs.Length];
        setting.Workers.Each(
            pairs.Length,
            (n, worker) =>
            {
                if (setting.Guard.IsOver)
                    return;
                using var unit = worker.Predictor.Assume(pairs[n].First.At(0), pairs[n].Second.At(0));
                explained[n] = far.Count(r => unit.Scaled(r) is { } there && evidence.IsNear(r, there, sound.Spread));
            }
        );
        return
        [
            .. Enumerable
                .Range(0, pairs.Length)
                .Where(n => explained[n] > 0)
                .OrderByDescending(n => (explained[n] * WorthOfReading) + pairs[n].First.LogOdds + pairs[n].Second.LogOdds)
                .ThenBy(n => n)
                .Take(options.ExactAdditions)
                .Select(n => pairs[n]),
        ];
    }

    private static bool IsFar(Evidence evidence, double predicted, int reading)
    {
        var taken = evidence.Taken[reading];
        if (taken.Spec.Quantity is not (Quantity.Ohms or Quantity.InsulationOhms))
            return false;
        return taken.Outcome == Outcome.OverRange || taken.Value > FarFactor * evidence.Set.Errors[reading].FromScale(predicted);
    }
}
