using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Likelihoods;

/// <summary>
/// The distribution of a unit's readings around a prediction on the meter's scale: spread of the sound parameters plus the
/// meter's error (rectangular limit 1: variance 1/3, its shared part common to a quantity). Holds the precision matrix.
/// </summary>
internal sealed class Gaussian
{
    public Gaussian(double[] covariance, int n)
    {
        N = n;
        Covariance = covariance;
        Precision = new double[n * n];
        LogDeterminant = PositiveDefinite.Invert(covariance, Precision, n);
    }

    public int N { get; }

    public double[] Covariance { get; }

    public double[] Precision { get; }

    public double LogDeterminant { get; }

    /// <summary>A residual less what the others say of it, and the precision of that.</summary>
    /// <param name="without">Those that say nothing.</param>
    public (double Off, double Precision) Beside(int i, ReadOnlySpan<double> z, ReadOnlySpan<bool> without)
    {
        var kept = new List<int>(N);
        for (var k = 0; k < N; k++)
            if (k == i || !without[k])
                kept.Add(k);
        var m = kept.Count;
        var (own, inverse) = (new double[m * m], new double[m * m]);
        for (var a = 0; a < m; a++)
        for (var b = 0; b < m; b++)
            own[(a * m) + b] = Covariance[(kept[a] * N) + kept[b]];
        PositiveDefinite.Invert(own, inverse, m);
        var at = kept.IndexOf(i);
        var u = 0.0;
        for (var b = 0; b < m; b++)
            u += inverse[(at * m) + b] * z[kept[b]];
        return (u / inverse[(at * m) + at], inverse[(at * m) + at]);
    }

    /// <summary>
    /// Log density of the residuals where any reading may be wrong altogether: dropping one frees it, and gives it the density of
    /// a wrong one. Readings are dropped one by one while that gains; what the other choice at each would add is counted.
    /// </summary>
    /// <param name="work">Scratch that holds the precision while readings are dropped.</param>
    /// <returns>Log density, and which readings were dropped in <paramref name="work"/>.</returns>
    public double RobustLog(ReadOnlySpan<double> z, WrongReadings wrong, RobustWork work)
    {
        work.Reset(N);
        var u = work.U;
        var q = 0.0;
        for (var i = 0; i < N; i++)
        {
            u[i] = Vectors.Dot(Precision.AsSpan(i * N, N), z);
            q += u[i] * z[i];
        }
        var log = -0.5 * (q + LogDeterminant + (N * NormalLaw.Log2Pi));
        var precision = Precision;
        while (true)
        {
            var (best, gain, others) = (-1, 0.0, 0.0);
            for (var i = 0; i < N; i++)
            {
                if (work.Dropped[i])
                    continue;
                var p = precision[(i * N) + i];
                var (off, square) = (u[i] / p, 0.5 * u[i] * u[i] / p);
                if (!wrong.IsWorthALook(i, off, square))
                    continue;
                var g = square + (0.5 * (NormalLaw.Log2Pi - Math.Log(p))) + wrong.LogDensity(i, off, p);
                others += Math.Log(1 + Math.Exp(Math.Min(g, 0)));
                if (g > gain)
                    (best, gain) = (i, g);
            }
            // Both count, the reading right and the reading wrong: next to the threshold that is up to ln 2 more.
            if (best < 0)
                return log + others;
            precision = work.Drop(Precision, best);
            log += gain + Math.Log(1 + Math.Exp(-gain));
        }
    }
}
