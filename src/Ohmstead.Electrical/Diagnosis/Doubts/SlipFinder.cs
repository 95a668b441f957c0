using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis.Answers;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis.Doubts;

/// <summary>
/// Which readings were probably noted or taken wrongly, and how: under each probable set of faults a reading is laid beside what the
/// others expect of it, right, at one of the places where a slip puts it, or anywhere.
/// </summary>
internal sealed class SlipFinder(Evidence evidence, Marginals marginals, Workers workers)
{
    /// <summary>From here on a slip is named.</summary>
    private const double LeastProbability = 0.5;

    /// <summary>Sets that carry less, or come after so many, move no probability to speak of.</summary>
    private const double LeastWeight = 0.01;
    private const int MostSets = 12;

    /// <summary>The slips, by their place among the readings that take part.</summary>
    public IReadOnlyDictionary<int, ProbableSlip> Find()
    {
        var views = Views();
        var all = views.Sum(v => v.Weight);
        var wrong = new Dictionary<int, double>();
        for (var k = 0; k < evidence.Numeric.Length; k++)
            if (views.Sum(v => v.Weight * v.At[k].Wrong) / all is >= LeastProbability and var probability)
                wrong[evidence.Numeric[k]] = probability;
        var slips = new Dictionary<int, ProbableSlip>();
        new ExchangedReadings(marginals.On[0], workers).Find(wrong, slips);
        for (var k = 0; k < evidence.Numeric.Length; k++)
        {
            var r = evidence.Numeric[k];
            if (wrong.TryGetValue(r, out var probability) && !slips.ContainsKey(r))
                slips[r] = Named(views.MaxBy(v => v.Weight * v.At[k].Wrong)!, k, probability);
        }
        return slips;
    }

    private List<SlipView> Views()
    {
        var sets = Enumerable
            .Range(0, marginals.Sets.Length)
            .Where(n => n == 0 || marginals.Weights[n] >= LeastWeight)
            .OrderByDescending(n => marginals.Weights[n])
            .Take(MostSets)
            .ToArray();
        var views = new SlipView[sets.Length];
        workers.Each(
            sets.Length,
            (n, worker) =>
            {
                var (set, on) = (marginals.Sets[sets[n]], marginals.On[sets[n]]);
                views[n] = SlipView.Of(marginals.Weights[sets[n]], set, new(on.Evidence, set.Spread, worker));
            }
        );
        return [.. views];
    }

    private ProbableSlip Named(SlipView view, int k, double probability)
    {
        var r = evidence.Numeric[k];
        var (value, id) = (evidence.Value(r), evidence.Taken[r].Spec.Id);
        var (off, precision) = (view.At[k].Off, view.At[k].Precision);
        var shares = evidence.Wrong.Shares(k, off, precision);
        var best = Array.IndexOf(shares, shares.Max());
        if (best < WrongReadings.Points.Length)
            return new(id, WrongReadings.Points[best].Kind, null, Rounded(value / WrongReadings.Points[best].Times), probability);
        var elsewhere = new Elsewhere(evidence.Set.Model, evidence.Set.Catalogue, view.Set.Members.Faults());
        var way = elsewhere.Best(evidence.Taken[r], evidence.Set.Errors[r], 1 / precision);
        return new(id, way.Kind, way.With, null, probability);
    }

    /// <summary>A tenth of 35 is 3.5, with no digit more.</summary>
    private static double Rounded(double value) => Math.Abs(value) is > 1e-9 and < 1e15 ? (double)Math.Round((decimal)value, 9) : value;
}

/// <summary>Every number read as one set of faults sees it, by place among the numbers.</summary>
/// <param name="Weight">Probability of the set.</param>
/// <param name="Set">The set.</param>
/// <param name="At">Off: what was noted less what the others expect [meter's limits]; the precision of that; the chance that it is wrong.</param>
internal sealed record SlipView(double Weight, Hypothesis Set, (double Off, double Precision, double Wrong)[] At)
{
    public static SlipView Of(double weight, Hypothesis set, Judge judge)
    {
        var (on, spread) = (judge.Evidence, judge.Spread);
        using var judged = judge.At(set.Predicted);
        var n = on.Numeric.Length;
        var dropped = judged.Dropped;
        var u = judged.Weighted;
        var kept = judged.Precision;
        var at = new (double, double, double)[n];
        var z = new double[n];
        for (var k = 0; k < n; k++)
        {
            var r = on.Numeric[k];
            z[k] = on.Measured(r) - set.Predicted[r] - spread.Shift[r];
        }
        for (var k = 0; k < n; k++)
        {
            var own = kept[(k * n) + k];
            var (off, precision) = dropped[k] ? spread.Gaussian.Beside(k, z, dropped) : (u[k] / own, own);
            var gain =
                (0.5 * off * off * precision) + (0.5 * (NormalLaw.Log2Pi - Math.Log(precision))) + on.Wrong.LogDensity(k, off, precision);
            at[k] = (off, precision, 1 / (1 + Math.Exp(-gain)));
        }
        return new(weight, set, at);
    }
}
