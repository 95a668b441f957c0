using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Observed;

/// <summary>Judges what was read at one prediction or another, by one spread, in the scratch of one worker.</summary>
internal readonly record struct Judge(Evidence Evidence, Spread Spread, Worker Worker)
{
    /// <summary>Log likelihood of what was read for a prediction on the scale.</summary>
    public double LogLikelihood(ReadOnlySpan<double> predicted)
    {
        using var judged = At(predicted);
        return judged.Log;
    }

    /// <summary>What was read judged at a prediction on the scale; the judgement is the caller's until he disposes of it.</summary>
    public Judgement At(ReadOnlySpan<double> predicted) => Worker.Judgement(Evidence, Spread).At(predicted, Residuals(predicted));

    /// <summary>
    /// Where on the straight line between two predictions the likelihood is highest, as a share [0..1], and its curvature
    /// there; with no reading dropped.
    /// </summary>
    public (double Share, double Curvature) TopOfLine(ReadOnlySpan<double> low, ReadOnlySpan<double> high)
    {
        var numeric = Evidence.Numeric;
        var n = numeric.Length;
        var z = Residuals(low);
        var d = Worker.Scratch(3, n);
        var any = false;
        for (var k = 0; k < n; k++)
        {
            d[k] = high[numeric[k]] - low[numeric[k]];
            any |= Math.Abs(d[k]) > 1e-9;
        }
        if (!any)
            return (0.5, 0);
        var (along, curvature) = (0.0, 0.0);
        var precision = Spread.Gaussian.Precision;
        for (var k = 0; k < n; k++)
        {
            if (d[k] == 0)
                continue;
            var row = precision.AsSpan(k * n, n);
            along += d[k] * Vectors.Dot(row, z);
            curvature += d[k] * Vectors.Dot(row, d);
        }
        return (Math.Clamp(along / curvature, 0, 1), curvature);
    }

    /// <summary>What was read less what is expected, by number read.</summary>
    private Span<double> Residuals(ReadOnlySpan<double> predicted)
    {
        var numeric = Evidence.Numeric;
        var z = Worker.Residuals(numeric.Length);
        for (var k = 0; k < numeric.Length; k++)
            z[k] = Evidence.Measured(numeric[k]) - predicted[numeric[k]] - Spread.Shift[numeric[k]];
        return z;
    }
}
