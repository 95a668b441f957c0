using Ohmstead.Electrical.Diagnosis.Candidates;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Sizes;

/// <summary>Fits the sizes of a set of faults together by Gauss–Newton, and integrates over them by Laplace's method.</summary>
internal static class SizeFit
{
    private const int MostRounds = 6;
    private const int MostPulls = 8;
    private const double Step = 0.01;
    private const double Enough = 0.01;

    /// <summary>
    /// Moves the sizes to the best explanation with this spread, then fills the hypothesis' fit, evidence and deviations.
    /// </summary>
    /// <param name="solve">Solves the readings at given shares; with a class, only what it moves differs from the given ones.</param>
    public static void Run(
        Hypothesis h,
        Spread spread,
        Evidence evidence,
        Worker worker,
        Func<double[], double[], FaultClass?, double[]> solve
    )
    {
        int[] free = [.. Enumerable.Range(0, h.Classes.Length).Where(k => h.Classes[k].IsContinuous)];
        var log = Log(h, h.Predicted, h.Shares, spread, evidence, worker);
        Pull(h, free, spread, evidence, worker, solve, ref log);
        var overSizes = Climb(h, free, spread, evidence, worker, solve, ref log);
        var surface = SizeSurface.Over(h, spread, evidence, worker, solve, overSizes);
        if (surface.Better is { } better)
        {
            // The climb got stuck below what the surface shows: once more from there.
            var predicted = solve(better, h.Predicted, null);
            var now = Log(h, predicted, better, spread, evidence, worker);
            if (now > log)
            {
                (h.Shares, h.Predicted, log) = (better, predicted, now);
                overSizes = Climb(h, free, spread, evidence, worker, solve, ref log);
                surface = SizeSurface.Over(h, spread, evidence, worker, solve, overSizes);
            }
        }
        using var judged = evidence.Judge(h.Predicted, spread, worker);
        (h.LogFit, h.LeftOut) = (log, judged.LeftOut());
        h.LogEvidence = log + overSizes + surface.Correction + evidence.TellTales.Log(h.Classes) + DiscreteShare(h);
    }

    /// <summary>Gauss–Newton to the best sizes. Fills directions and deviations.</summary>
    /// <returns>ln ∫ over the sizes relative to the best, by Laplace's method.</returns>
    private static double Climb(
        Hypothesis h,
        int[] free,
        Spread spread,
        Evidence evidence,
        Worker worker,
        Func<double[], double[], FaultClass?, double[]> solve,
        ref double log
    )
    {
        var (gradient, curvature, sides) = (new double[free.Length], new double[free.Length * free.Length], new double[free.Length][]);
        for (var round = 0; free.Length > 0; round++)
        {
            Differentiate(h, spread, evidence, worker, solve, free, gradient, curvature, sides);
            if (round == MostRounds)
                break;
            var step = Newton(h, free, gradient, curvature);
            if (step.All(s => Math.Abs(s) < 1e-4))
                break;
            var gained = TryStep(h, free, step, spread, evidence, worker, solve, ref log);
            if (gained < Enough && round > 0 || gained <= 0)
                break;
        }
        h.Directions = new double[]?[h.Classes.Length];
        for (var k = 0; k < free.Length; k++)
            h.Directions[free[k]] = sides[k];
        return Laplace(h, free, gradient, curvature);
    }

    /// <summary>A few whole turns: each size has an equal share.</summary>
    public static double DiscreteShare(Hypothesis h) => h.Classes.Where(c => c.IsDiscrete).Sum(c => -Math.Log(c.PointShares.Length));

    private static double Log(Hypothesis h, double[] predicted, double[] shares, Spread spread, Evidence evidence, Worker worker)
    {
        var density = 0.0;
        for (var k = 0; k < h.Classes.Length; k++)
            density += h.Classes[k].LogDensity(shares[k]);
        return evidence.LogLikelihood(predicted, spread, worker) + density;
    }

    /// <summary>
    /// A reading that is left out as wrong pulls no size, though it may be right and the size wrong: each size that moves it
    /// is tried at the value that explains it.
    /// </summary>
    private static void Pull(
        Hypothesis h,
        int[] free,
        Spread spread,
        Evidence evidence,
        Worker worker,
        Func<double[], double[], FaultClass?, double[]> solve,
        ref double log
    )
    {
        if (free.Length == 0)
            return;
        using var judged = evidence.Judge(h.Predicted, spread, worker);
        var left = judged.LeftOut().Where(r => evidence.Taken[r].Outcome == Outcome.Value);
        var tries = 0;
        foreach (var r in left)
        foreach (var k in free)
        {
            if (!h.Classes[k].Moves[r] || tries++ >= MostPulls)
                continue;
            var shares = (double[])h.Shares.Clone();
            var predicted = h.Predicted;
            for (var n = 0; n < 4; n++)
            {
                var near = (double[])shares.Clone();
                var step = near[k] > 0.5 ? -Step : Step;
                near[k] += step;
                var slope = (solve(near, predicted, h.Classes[k])[r] - predicted[r]) / step;
                if (Math.Abs(slope) < 1)
                    break;
                var to = Math.Clamp(shares[k] + ((evidence.Measured(r) - predicted[r]) / slope), 0, 1);
                var moved = Math.Abs(to - shares[k]);
                shares[k] = to;
                predicted = solve(shares, predicted, h.Classes[k]);
                if (moved < 1e-3)
                    break;
            }
            var now = Log(h, predicted, shares, spread, evidence, worker);
            if (now > log)
                (h.Shares, h.Predicted, log) = (shares, predicted, now);
        }
    }

    private static void Differentiate(
        Hypothesis h,
        Spread spread,
        Evidence evidence,
        Worker worker,
        Func<double[], double[], FaultClass?, double[]> solve,
        int[] free,
        double[] gradient,
        double[] curvature,
        double[][] sides
    )
    {
        for (var k = 0; k < free.Length; k++)
        {
            var shares = (double[])h.Shares.Clone();
            var step = shares[free[k]] > 0.5 ? -Step : Step;
            shares[free[k]] += step;
            sides[k] = solve(shares, h.Predicted, h.Classes[free[k]]);
            for (var r = 0; r < sides[k].Length; r++)
                sides[k][r] = (sides[k][r] - h.Predicted[r]) / step;
        }
        using var judged = evidence.Judge(h.Predicted, spread, worker);
        judged.Project(sides, gradient, curvature);
    }

    /// <summary>The Newton step with sizes kept in their range; one at its bound that wants to leave stays.</summary>
    private static double[] Newton(Hypothesis h, int[] free, double[] gradient, double[] curvature)
    {
        var n = free.Length;
        var step = new double[n];
        var held = new bool[n];
        for (var pass = 0; pass <= n; pass++)
        {
            var (a, b) = ((double[])curvature.Clone(), (double[])gradient.Clone());
            for (var k = 0; k < n; k++)
            {
                a[(k * n) + k] += 1e-3 + (1e-6 * a[(k * n) + k]);
                if (!held[k])
                    continue;
                for (var j = 0; j < n; j++)
                    a[(k * n) + j] = a[(j * n) + k] = 0;
                (a[(k * n) + k], b[k]) = (1, 0);
            }
            Solving.SmallSolve.InPlace(a, b, n);
            var changed = false;
            for (var k = 0; k < n; k++)
            {
                var to = Math.Clamp(h.Shares[free[k]] + b[k], 0, 1);
                step[k] = Math.Clamp(to - h.Shares[free[k]], -0.35, 0.35);
                if (!held[k] && step[k] == 0 && b[k] != 0)
                    held[k] = changed = true;
            }
            if (!changed)
                break;
        }
        return step;
    }

    private static double TryStep(
        Hypothesis h,
        int[] free,
        double[] step,
        Spread spread,
        Evidence evidence,
        Worker worker,
        Func<double[], double[], FaultClass?, double[]> solve,
        ref double log
    )
    {
        for (var scale = 1.0; scale > 0.1; scale *= 0.4)
        {
            var shares = (double[])h.Shares.Clone();
            for (var k = 0; k < free.Length; k++)
                shares[free[k]] = Math.Clamp(shares[free[k]] + (scale * step[k]), 0, 1);
            var predicted = solve(shares, h.Predicted, free.Length == 1 ? h.Classes[free[0]] : null);
            var now = Log(h, predicted, shares, spread, evidence, worker);
            if (now <= log)
                continue;
            var gained = now - log;
            (h.Shares, h.Predicted, log) = (shares, predicted, now);
            return gained;
        }
        return 0;
    }

    private static double Laplace(Hypothesis h, int[] free, double[] gradient, double[] curvature)
    {
        SetDeviations(h, free, curvature);
        return LogIntegral([.. free.Select(k => h.Shares[k])], gradient, curvature);
    }

    /// <summary>ln ∫ over sizes relative to the best: one size after another, each parabola cut to its range; those left follow its mean and variance.</summary>
    public static double LogIntegral(double[] shares, double[] gradient, double[] curvature)
    {
        var n = shares.Length;
        var (a, g) = ((double[])curvature.Clone(), (double[])gradient.Clone());
        var sum = 0.0;
        for (var k = 0; k < n; k++)
        {
            var cut = NormalLaw.Cut(shares[k], g[k], Math.Max(a[(k * n) + k], 1e-9));
            sum += cut.LogIntegral;
            for (var i = k + 1; i < n; i++)
            {
                g[i] -= a[(i * n) + k] * (cut.Mean - shares[k]);
                for (var j = k + 1; j < n; j++)
                    a[(i * n) + j] -= a[(i * n) + k] * a[(j * n) + k] * cut.Variance;
            }
        }
        // No integral over the range is above the highest point.
        return Math.Min(sum, 0);
    }

    /// <summary>Deviation of each size with the others free to trade off: the diagonal of the inverse curvature.</summary>
    private static void SetDeviations(Hypothesis h, int[] free, double[] curvature)
    {
        var n = free.Length;
        h.Deviations = new double[h.Classes.Length];
        // A size that nothing fixes still lies within its range.
        var (a, inverse) = ((double[])curvature.Clone(), new double[n * n]);
        for (var k = 0; k < n; k++)
            a[(k * n) + k] += 4;
        PositiveDefinite.Invert(a, inverse, n);
        for (var k = 0; k < n; k++)
            h.Deviations[free[k]] = Math.Sqrt(Math.Max(inverse[(k * n) + k], 1e-12));
    }
}
