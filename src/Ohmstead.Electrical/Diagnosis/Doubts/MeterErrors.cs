using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis.Doubts;

/// <summary>Of a meter that is doubted: by how much it errs, and on which quantities, by the likelihood of what was read.</summary>
internal static class MeterErrors
{
    private static readonly double[] Factors = [1.5, 2, 2.5, 3, 3.5, 4, 5, 6, 8];

    /// <summary>A quantity is named from here on: its readings would be e-fold less likely [nats].</summary>
    private const double LeastNats = 1;

    /// <summary>The factor of the meter's limits under which the readings are likeliest.</summary>
    public static double Factor(Evidence evidence, Hypothesis set, Spread spread, Worker worker) =>
        Factors.MaxBy(f => Log(evidence, evidence.Bench with { ErrorVariance = f * f }, set, spread, worker));

    /// <summary>
    /// The readings of every quantity that would be less likely were the meter as good on it as it is stated, the quantity that says most
    /// first, in each the reading whose own error is largest. What the unit's own spread explains is no error of the meter.
    /// </summary>
    public static IEnumerable<int> Readings(Evidence evidence, Hypothesis set, Spread spread, Worker worker)
    {
        Quantity[] quantities = [.. evidence.Numeric.ToArray().Select(QuantityOf).Distinct()];
        var poor = Log(evidence, evidence.Bench, set, spread, worker);
        var loses = quantities.ToDictionary(q => q, q => poor - Log(evidence, evidence.Bench with { Sound = q }, set, spread, worker));
        var errors = Errors(evidence, set, spread, worker);
        var most = loses.Values.Max();
        return evidence
            .Numeric.ToArray()
            .Select((r, k) => (Reading: r, Loses: loses[QuantityOf(r)], Error: Math.Abs(errors[k])))
            .Where(r => r.Loses >= LeastNats || r.Loses == most)
            .OrderByDescending(r => r.Loses)
            .ThenByDescending(r => r.Error)
            .Select(r => r.Reading);

        Quantity QuantityOf(int reading) => evidence.Taken[reading].Spec.Quantity;
    }

    private static double Log(Evidence evidence, AssumedBench bench, Hypothesis set, Spread spread, Worker worker)
    {
        var on = evidence.On(bench);
        return new Judge(on, on.SpreadOf(spread.Slopes, spread.Shift), worker).LogLikelihood(set.Predicted);
    }

    /// <summary>By number read: its error's mean, given all readings [the meter's limits].</summary>
    private static double[] Errors(Evidence evidence, Hypothesis set, Spread spread, Worker worker)
    {
        using var judged = new Judge(evidence, spread, worker).At(set.Predicted);
        var weighted = judged.Weighted.ToArray();
        var numeric = evidence.Numeric.ToArray();
        return
        [
            .. numeric.Select(r =>
                evidence.Bench.ErrorVariance * numeric.Select((other, k) => evidence.Set.ErrorCovariance(r, other) * weighted[k]).Sum()
            ),
        ];
    }
}
