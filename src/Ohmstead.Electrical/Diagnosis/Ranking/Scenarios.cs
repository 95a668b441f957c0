using Ohmstead.Electrical.Diagnosis.Answers;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Ranking;

/// <summary>
/// What may be wrong, and what the readings not yet taken show then: the probable sets of faults, alone and with one more fault.
/// </summary>
internal sealed class Scenarios
{
    private const int MostSets = 16;
    private const int SetsWithMore = 4;
    private const double LeastWeight = 1e-4;

    /// <summary>One more fault counts down to here.</summary>
    private const double LeastWithMore = LeastWeight / 10;

    private readonly Evidence evidence;
    private readonly ReadingSet set;
    private readonly ReadingRow[] rows;
    private readonly List<Scenario> bases = [];
    private readonly List<OneMore> more = [];
    private readonly double[][] predicted;

    /// <param name="evidence">The readings taken.</param>
    /// <param name="set">Those not taken, with what is known of each in <paramref name="rows"/>; the workers solve them.</param>
    /// <param name="still">Modes that move no reading taken.</param>
    public Scenarios(
        Evidence evidence,
        Marginals marginals,
        List<FaultMode> still,
        double[] odds,
        ReadingSet set,
        ReadingRow[] rows,
        Workers workers
    )
    {
        (this.evidence, this.set, this.rows) = (evidence, set, rows);
        for (var n = 0; n < Math.Min(MostSets, marginals.Sets.Length) && marginals.Weights[n] >= LeastWeight; n++)
            Add(marginals, n, still, odds);
        double[] sound = [.. rows.Select(r => r.Sound)];
        predicted =
        [
            .. bases.Select(b =>
                workers.One(w =>
                {
                    using var unit = w.Predictor.Assume(b.Faults);
                    return unit.ScaledAll().Select((shown, r) => shown ?? sound[r]).ToArray();
                })
            ),
        ];
    }

    /// <summary>What several readings together say of which it is.</summary>
    public JointInformation Joint() =>
        new(
            [.. bases.Select(b => b.Weight), .. more.Select(s => s.Weight < LeastWithMore ? 0 : s.Weight)],
            [.. Enumerable.Range(0, bases.Count), .. more.Select(s => s.Base)]
        );

    /// <summary>The distribution of a reading in each scenario, as weighted normal parts.</summary>
    public List<Component> Of(int reading)
    {
        var parts = new List<Component>();
        for (var b = 0; b < bases.Count; b++)
        {
            var (shift, variance) = Conditional(bases[b], reading);
            parts.Add(new Component(b, bases[b].Weight, predicted[b][reading] + shift, variance));
        }
        var quiet = new double[bases.Count];
        for (var s = 0; s < more.Count; s++)
        {
            var (b, mode, weight) = more[s];
            if (weight < LeastWithMore)
                continue;
            if (rows[reading].Curves[mode.Number] is { } curve)
                parts.AddRange(Along(curve, bases.Count + s, weight, parts[b]));
            else
                quiet[b] += weight;
        }
        for (var b = 0; b < bases.Count; b++)
            parts[b] = parts[b] with { Weight = parts[b].Weight + quiet[b] };
        return parts;
    }

    /// <summary>One more fault in a scenario, at each of the points of its size.</summary>
    private static IEnumerable<Component> Along(double[] curve, int scenario, double weight, Component without)
    {
        for (var k = 0; k < curve.Length; k++)
        {
            var width = (curve[Math.Min(k + 1, curve.Length - 1)] - curve[Math.Max(k - 1, 0)]) / 4;
            yield return new Component(scenario, weight / curve.Length, without.Mean + curve[k], without.Variance + (width * width));
        }
    }

    private void Add(Marginals marginals, int n, List<FaultMode> still, double[] odds)
    {
        var (h, weight, at) = (marginals.Sets[n], marginals.Weights[n], bases.Count);
        bases.Add(new Scenario(h.Members.Faults(), weight, h.Predicted, h.Spread));
        if (n >= SetsWithMore)
            return;
        var elementOf = set.Catalogue.ElementOf;
        var held = h.Classes.SelectMany(c => c.Elements.Concat(c.Modes.SelectMany(m => m.SharedElements))).ToHashSet();
        bool IsFree(FaultMode m) => !held.Contains(elementOf[m.Number]) && !m.SharedElements.Any(held.Contains);
        foreach (var m in still)
            if (IsFree(m))
                more.Add(new(at, m, weight * odds[m.Number]));
        foreach (var c in marginals.Classes)
            for (var k = 0; k < c.Modes.Length; k++)
                if (IsFree(c.Modes[k]))
                    more.Add(new(at, c.Modes[k], weight * marginals.Joining[n][c.Number] * c.Odds[k] / c.Odds.Sum()));
        // A class of several modes stands for whichever of them it is: they are scenarios of their own.
        for (var k = 0; k < h.Classes.Length; k++)
            foreach (var other in h.Classes[k].Modes.Skip(1))
                AddTwin(bases[at], h, k, other);
    }

    /// <summary>Another mode of the k-th class at the same size, as far as its own range lets it.</summary>
    private void AddTwin(Scenario of, Hypothesis h, int k, FaultMode other)
    {
        var c = h.Classes[k];
        var share = h.SharesOfModes(k)[c.Modes.IndexOf(other)];
        if (share * of.Weight < LeastWeight)
            return;
        var twin = new FaultClass(c.Number, [other], [.. set.Catalogue.Modes.Select(_ => 1.0)], set.Catalogue.ElementOf);
        var at = twin.HasSize ? Math.Clamp(Math.Log(c.SizeAt(h.Shares[k]) / twin.Min) / Math.Log(twin.Max / twin.Min), 0, 1) : 0;
        bases.Add(of with { Weight = of.Weight * share, Faults = [.. of.Faults[..k], twin.At(at), .. of.Faults[(k + 1)..]] });
    }

    /// <summary>Shift of the mean and variance of an untaken reading, given the readings taken and a set of faults.</summary>
    private (double Shift, double Variance) Conditional(Scenario s, int reading)
    {
        var row = rows[reading].Slopes;
        var variance = Vectors.Dot(row, row) + (1.0 / 3);
        var (n, count) = (evidence.Numeric.Length, row.Length);
        var (cross, z) = (new double[n], new double[n]);
        for (var k = 0; k < n; k++)
        {
            var taken = evidence.Numeric[k];
            cross[k] = Vectors.Dot(row, s.Spread.Slopes.AsSpan(taken * count, count));
            z[k] = evidence.Measured(taken) - s.Taken[taken] - s.Spread.Shift[taken];
            if (Math.Abs(z[k]) > 6 * Math.Sqrt(s.Spread.Gaussian.Covariance[(k * n) + k]))
                cross[k] = 0;
        }
        var (shift, gained) = (rows[reading].Shift, 0.0);
        for (var k = 0; k < n; k++)
        {
            if (cross[k] == 0)
                continue;
            var precision = s.Spread.Gaussian.Precision.AsSpan(k * n, n);
            shift += cross[k] * Vectors.Dot(precision, z);
            gained += cross[k] * Vectors.Dot(precision, cross);
        }
        return (shift, n == 0 ? variance : Math.Max(variance - gained, 1.0 / 3));
    }
}

/// <summary>A probable set of faults.</summary>
/// <param name="Weight">Its probability.</param>
/// <param name="Taken">What it predicts of the readings taken, on the meter's scale, and the spread about that.</param>
internal sealed record Scenario(Fault[] Faults, double Weight, double[] Taken, Likelihoods.Spread Spread);

/// <summary>One more fault in a scenario.</summary>
/// <param name="Base">The scenario, by its place.</param>
/// <param name="Weight">Probability of the two together.</param>
internal readonly record struct OneMore(int Base, FaultMode Mode, double Weight);
