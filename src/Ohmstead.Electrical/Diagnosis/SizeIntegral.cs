namespace Ohmstead.Electrical.Diagnosis;

/// <summary>The likelihood of one added fault, integrated over its size along a curve of predicted readings.</summary>
internal static class SizeIntegral
{
    private const int Steps = 36;

    /// <param name="origin">Prediction to which the curve's points are added.</param>
    /// <param name="bestShare">The share of the size that explains best.</param>
    /// <param name="bestLog">Its log likelihood with the size's prior density.</param>
    /// <returns>ln ∫ likelihood · prior density over the share.</returns>
    public static double Log(FaultClass c, double[][] curve, ReadOnlySpan<double> origin, Evidence evidence, Spread spread, Worker worker, out double bestShare, out double bestLog)
    {
        var at = worker.Scratch(origin.Length);
        (bestShare, bestLog) = (0, double.NegativeInfinity);
        var count = c.IsContinuous ? Steps + 1 : curve.Length;
        Span<double> logs = stackalloc double[count];
        for (var k = 0; k < count; k++)
        {
            var share = c.IsContinuous ? k / (double)Steps : c.PointShares[k];
            if (c.IsContinuous) CurveShape.At(c.PointShares, curve, share, at);
            else curve[k].CopyTo(at);
            for (var r = 0; r < origin.Length; r++) at[r] += origin[r];
            var log = evidence.LogLikelihood(at, spread, worker) + c.LogDensity(share);
            if (log > bestLog) (bestShare, bestLog) = (share, log);
            logs[k] = log + (c.IsContinuous && k is 0 or Steps ? Math.Log(0.5) : 0);
        }
        return Vectors.LogSum(logs) - Math.Log(c.IsContinuous ? Steps : count);
    }
}
