namespace Ohmstead.Electrical.Diagnosis.Likelihoods;

/// <summary>The spread of readings around a prediction: slopes by parameter, shift of the mean, and the Gaussian of the numbers read.</summary>
internal sealed record Spread(double[] Slopes, double[] Shift, Gaussian Gaussian)
{
    /// <summary>The parameters about which it was worked out, in their deviations; null at the nominal ones.</summary>
    public double[]? About { get; init; }
}
