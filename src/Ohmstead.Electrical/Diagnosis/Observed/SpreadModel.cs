using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Observed;

/// <summary>The spread of the readings of a set of faults, from the slopes of that very set.</summary>
internal sealed class SpreadModel
{
    /// <summary>A movement of a fiftieth of the meter's limit adds a thousandth to its variance.</summary>
    private const double LeastSlope = 0.02;

    /// <summary>A bend smaller than this does not count [limits of the meter's error].</summary>
    private const double StraightWithin = 0.3;

    /// <summary>No parameter is followed farther than this [its standard deviations].</summary>
    private const double FarthestMean = 3;

    /// <summary>Nearer than this is the same place [standard deviations].</summary>
    private const double SamePlace = 0.1;

    private readonly Evidence evidence;
    private readonly Workers workers;
    private readonly bool[] usual;
    private readonly bool[] matters;
    private readonly double[] soundSlopes;
    private readonly double[] soundShift;

    public SpreadModel(Evidence evidence, ReadingRow[] rows, Workers workers)
    {
        (this.evidence, this.workers) = (evidence, workers);
        soundSlopes = [.. rows.SelectMany(r => r.Slopes)];
        soundShift = [.. rows.Select(r => r.Shift)];
        usual = [.. soundSlopes.Select(s => Math.Abs(s) > LeastSlope)];
        var count = evidence.Set.Model.Parameters.Length;
        matters = [.. Enumerable.Range(0, count).Select(p => rows.Any(r => Math.Abs(r.Slopes[p]) > LeastSlope))];
    }

    /// <summary>The spread about a set: its own where it was fitted, else worked out.</summary>
    public Spread Of(Hypothesis h) => h is FittedHypothesis ? h.Spread : Of(h.Members, h.Predicted);

    /// <summary>
    /// The spread about a set of faults: of readings that its faults move, the slopes of the parameters are worked out again;
    /// the others are as in the sound unit.
    /// </summary>
    public Spread Of(Members set, double[] predicted)
    {
        if (set.Count == 0)
            return evidence.SpreadOf(soundSlopes, soundShift);
        var (n, count) = (evidence.Set.Count, evidence.Set.Model.Parameters.Length);
        var which = new bool[n * count];
        var moved = new bool[n];
        for (var r = 0; r < n; r++)
        {
            moved[r] = set.Classes.Any(c => c.Moves[r]);
            if (!moved[r])
                continue;
            for (var p = 0; p < count; p++)
                which[(r * count) + p] = usual[(r * count) + p] || (set.AreRewired(r) && matters[p]);
        }
        var (slopes, shift) = Slopes(set.Faults(), predicted, which);
        for (var r = 0; r < n; r++)
        {
            if (moved[r])
                continue;
            Array.Copy(soundSlopes, r * count, slopes, r * count, count);
            shift[r] = soundShift[r];
        }
        return evidence.SpreadOf(slopes, shift);
    }

    /// <summary>
    /// The spread about the parameters that the readings point to: a response that bends is a straight line only near by.
    /// Null where the line holds there within the meter's error, or was worked out there already.
    /// </summary>
    public Spread? About(Members set, double[] predicted, Spread spread)
    {
        var (n, count) = (evidence.Set.Count, evidence.Set.Model.Parameters.Length);
        var faults = set.Faults();
        var (means, steps) = workers.One(w =>
        {
            using var judged = new Judge(evidence, spread, w).At(predicted);
            return judged.Parameters();
        });
        for (var p = 0; p < count; p++)
        {
            var farthest = FarthestMean * evidence.Bench.DeviationOf(p);
            means[p] = Math.Clamp(means[p], -farthest, farthest);
        }
        if (spread.About is { } was && means.Zip(was, (a, b) => Math.Abs(a - b)).Max() < SamePlace)
            return null;
        double[] factors = [.. means.Select((m, p) => Math.Exp(m * evidence.Set.Model.Parameters[p].Sigma))];
        var there = workers.One(w =>
        {
            using var unit = w.Predictor.Assume(faults, factors);
            return unit.ScaledAll();
        });
        double Line(int r) => predicted[r] + spread.Shift[r] + Vectors.Dot(spread.Slopes.AsSpan(r * count, count), means);
        double There(int r) => there[r] ?? Line(r);
        var bent = evidence.Numeric.ToArray().Where(r => Math.Abs(There(r) - Line(r)) > StraightWithin).ToArray();
        if (bent.Length == 0)
            return null;
        var (slopes, shift) = ((double[])spread.Slopes.Clone(), (double[])spread.Shift.Clone());
        workers.Each(
            bent.Length,
            (k, worker) =>
            {
                var r = bent[k];
                bool[] which = [.. Enumerable.Range(0, count).Select(p => usual[(r * count) + p] || (set.AreRewired(r) && matters[p]))];
                var own = slopes.AsSpan(r * count, count);
                var bends = new double[count];
                worker.Predictor.SlopesAbout(r, faults, There(r), (double[])factors.Clone(), steps, which, own, bends);
                shift[r] = There(r) + bends.Sum() - Vectors.Dot(own, means) - predicted[r];
            }
        );
        return evidence.SpreadOf(slopes, shift) with { About = means };
    }

    private (double[] Slopes, double[] Shift) Slopes(Faults.Fault[] faults, double[] centre, bool[] which)
    {
        var (n, count) = (centre.Length, evidence.Set.Model.Parameters.Length);
        var slopes = new double[n * count];
        var shift = new double[n];
        // Rows are shared out, so that both threads work; each row is one reading.
        workers.Each(
            n,
            (r, worker) =>
            {
                if (!which.AsSpan(r * count, count).Contains(true))
                    return;
                var bends = new double[count];
                worker.Predictor.SlopesOf(r, faults, centre[r], which.AsSpan(r * count, count), slopes.AsSpan(r * count, count), bends);
                shift[r] = bends.Sum();
            }
        );
        return (slopes, shift);
    }
}
