using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Observed;

/// <summary>
/// What was read judged at one prediction: how likely it is, which readings were left out as wrong, and what the others say of
/// sizes and of the sound parameters. It is the caller's, whatever its worker judges meanwhile; disposed of, it is used again.
/// </summary>
internal sealed class Judgement(Worker worker) : IDisposable
{
    private readonly RobustWork robust = new();
    private readonly OverRangeWork overRange = new();
    private Evidence? evidence;
    private Spread? spread;

    /// <summary>Log likelihood of what was read.</summary>
    public double Log { get; private set; }

    /// <summary>By number read: the residual weighted by the precision of those that were not left out.</summary>
    public ReadOnlySpan<double> Weighted => robust.U.AsSpan(0, Evidence.Numeric.Length);

    /// <summary>By number read: true where it was left out as wrong.</summary>
    public ReadOnlySpan<bool> Dropped => robust.Dropped.AsSpan(0, Evidence.Numeric.Length);

    /// <summary>Of the numbers that were not left out.</summary>
    public double[] Precision => robust.PrecisionOr(Spread.Gaussian.Precision);

    private Evidence Evidence => evidence ?? throw new ObjectDisposedException(nameof(Judgement));

    private Spread Spread => spread ?? throw new ObjectDisposedException(nameof(Judgement));

    /// <summary>Takes it into use.</summary>
    public Judgement On(Evidence evidence, Spread spread)
    {
        (this.evidence, this.spread) = (evidence, spread);
        return this;
    }

    /// <param name="predicted">On the meter's scale.</param>
    /// <param name="z">The residuals of the numbers read.</param>
    public Judgement At(ReadOnlySpan<double> predicted, ReadOnlySpan<double> z)
    {
        Log = Spread.Gaussian.RobustLog(z, Evidence.Wrong, robust) + Evidence.OverRange.LogChance(predicted, Spread, overRange);
        return this;
    }

    public void Dispose()
    {
        if (evidence is null)
            return;
        (evidence, spread) = (null, null);
        worker.TakeBack(this);
    }

    /// <summary>What the readings say of something that they have in common: its mean, in its own deviations.</summary>
    public double Common(double[] shared)
    {
        var numeric = Evidence.Numeric;
        var d = new double[numeric.Length];
        for (var k = 0; k < d.Length; k++)
            d[k] = shared[numeric[k]];
        return Vectors.Dot(d, Weighted);
    }

    /// <summary>How far a free size moves: its share's posterior mean.</summary>
    public double ShareMove(double[] direction, double deviation)
    {
        var numeric = Evidence.Numeric;
        var weighted = Weighted;
        var sum = 0.0;
        for (var k = 0; k < numeric.Length; k++)
            sum += direction[numeric[k]] * weighted[k];
        return deviation * deviation * sum;
    }

    /// <summary>
    /// What the readings say of the sound parameters: mean and deviation of each, in the sheet's deviations; readings left out
    /// say nothing.
    /// </summary>
    public (double[] Means, double[] Deviations) Parameters()
    {
        var numeric = Evidence.Numeric;
        var weighted = Weighted;
        var bench = Evidence.Bench;
        var (n, count) = (numeric.Length, Evidence.Set.Model.Parameters.Length);
        var precision = Precision;
        var (means, deviations, slopes) = (new double[count], new double[count], new double[n]);
        for (var p = 0; p < count; p++)
        {
            for (var k = 0; k < n; k++)
                slopes[k] = Spread.Slopes[(numeric[k] * count) + p];
            means[p] = bench.Variances[p] * Vectors.Dot(slopes, weighted);
            var known = 0.0;
            for (var k = 0; k < n; k++)
                if (slopes[k] != 0)
                    known += slopes[k] * Vectors.Dot(precision.AsSpan(k * n, n), slopes);
            var own = bench.Variances[p];
            deviations[p] = Math.Sqrt(Math.Max(own - (own * own * known), 1e-4 * own));
        }
        foreach (var common in bench.Commons)
        {
            for (var k = 0; k < n; k++)
                slopes[k] = Vectors.Dot(Spread.Slopes.AsSpan(numeric[k] * count, count), common);
            var moved = Vectors.Dot(slopes, weighted);
            for (var p = 0; p < count; p++)
                means[p] += common[p] * moved;
        }
        return (means, deviations);
    }

    /// <summary>The readings, numbers and OL, that were left out as wrong.</summary>
    public List<int> LeftOut()
    {
        var numeric = Evidence.Numeric;
        var places = Evidence.OverRange.Places;
        var left = new List<int>();
        for (var k = 0; k < numeric.Length; k++)
            if (robust.Dropped[k])
                left.Add(numeric[k]);
        for (var k = 0; k < places.Length; k++)
            if (overRange.IsLeftOut[k])
                left.Add(places[k]);
        return left;
    }

    /// <summary>Slope of the log likelihood along a line.</summary>
    public double SlopeOfLine(ReadOnlySpan<double> low, ReadOnlySpan<double> high)
    {
        var numeric = Evidence.Numeric;
        var places = Evidence.OverRange.Places;
        var weighted = Weighted;
        var slope = 0.0;
        for (var k = 0; k < numeric.Length; k++)
            slope += (high[numeric[k]] - low[numeric[k]]) * weighted[k];
        for (var k = 0; k < places.Length; k++)
            slope += (high[places[k]] - low[places[k]]) * overRange.Slope[k];
        return slope;
    }

    /// <summary>Gradient and curvature of the log likelihood along directions of the prediction; readings left out say nothing.</summary>
    public void Project(double[][] directions, Span<double> gradient, Span<double> curvature)
    {
        var numeric = Evidence.Numeric;
        var places = Evidence.OverRange.Places;
        var (n, count) = (numeric.Length, directions.Length);
        var precision = Precision;
        var along = new double[count][];
        for (var k = 0; k < count; k++)
        {
            along[k] = new double[n];
            for (var i = 0; i < n; i++)
                along[k][i] = directions[k][numeric[i]];
            gradient[k] = Vectors.Dot(along[k], Weighted);
        }
        var pulled = new double[n];
        for (var k = 0; k < count; k++)
        {
            for (var i = 0; i < n; i++)
                pulled[i] = Vectors.Dot(precision.AsSpan(i * n, n), along[k]);
            for (var j = 0; j < count; j++)
                curvature[(k * count) + j] = Vectors.Dot(pulled, along[j]);
        }
        for (var o = 0; o < places.Length; o++)
        for (var k = 0; k < count; k++)
        {
            var d = directions[k][places[o]];
            gradient[k] += d * overRange.Slope[o];
            for (var j = 0; j < count; j++)
                curvature[(k * count) + j] += d * directions[j][places[o]] * overRange.Curvature[o];
        }
    }
}
