using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Diagnosis.Candidates;

/// <summary>A set of fault classes with its fitted sizes and how well it explains the readings.</summary>
internal sealed class Hypothesis(FaultClass[] classes, double[] shares)
{
    /// <summary>The classes, in order of number.</summary>
    public FaultClass[] Classes { get; } = classes;

    /// <summary>Fitted size of each as a share of its logarithmic range.</summary>
    public double[] Shares { get; set; } = shares;

    /// <summary>Standard deviation of each share; filled when the set is expanded.</summary>
    public double[] Deviations { get; set; } = [];

    /// <summary>Movement of the readings for a unit of each share; null where there is no size to fit. Filled when expanded.</summary>
    public double[]?[] Directions { get; set; } = [];

    /// <summary>Predicted readings on the meter's scale.</summary>
    public double[] Predicted { get; set; } = [];

    /// <summary>Readings that are left out as wrong altogether at these sizes.</summary>
    public List<int> LeftOut { get; set; } = [];

    /// <summary>Log likelihood at the fitted sizes.</summary>
    public double LogFit { get; set; } = double.NegativeInfinity;

    /// <summary>Log likelihood integrated over the sizes.</summary>
    public double LogEvidence { get; set; } = double.NegativeInfinity;

    /// <summary>Sum of the log prior odds.</summary>
    public double LogPrior { get; } = classes.Sum(c => c.LogOdds);

    public double LogPosterior => LogPrior + LogEvidence;

    public bool IsExpanded { get; set; }

    public Hypothesis? Parent { get; init; }

    /// <summary>By class: log of the posterior ratio of adding it; filled when the set is expanded.</summary>
    public double[]? AddLogOdds { get; set; }

    /// <summary>Spread around the prediction; filled when the set is expanded.</summary>
    public Spread? Spread { get; set; }

    /// <summary>Its own spread, or that of the nearest set on the way it was found.</summary>
    public Spread? NearestSpread => Spread ?? Parent?.NearestSpread;

    /// <summary>How the k-th member's probability divides among the modes of its class.</summary>
    public double[] SharesOfModes(int k) => Classes[k].SharesOfModes(Shares[k], Deviations.Length > k ? Deviations[k] : 0.05);

    public Fault[] Faults() => [.. Classes.Select((c, k) => c.At(Shares[k]))];

    public bool Contains(FaultClass c) => Array.IndexOf(Classes, c) >= 0;

    public string Key => KeyOf(Classes);

    public static string KeyOf(IEnumerable<FaultClass> classes) =>
        string.Join(',', classes.Select(c => c.Number.ToString(System.Globalization.CultureInfo.InvariantCulture)));

    /// <summary>The classes and shares with one more, in order.</summary>
    public static (FaultClass[] Classes, double[] Shares) Insert(FaultClass[] classes, double[] shares, FaultClass c, double share)
    {
        var at = 0;
        while (at < classes.Length && classes[at].Number < c.Number)
            at++;
        var (all, sizes) = (new FaultClass[classes.Length + 1], new double[classes.Length + 1]);
        Array.Copy(classes, all, at);
        Array.Copy(shares, sizes, at);
        (all[at], sizes[at]) = (c, share);
        Array.Copy(classes, at, all, at + 1, classes.Length - at);
        Array.Copy(shares, at, sizes, at + 1, shares.Length - at);
        return (all, sizes);
    }

    /// <summary>The classes and shares without the k-th.</summary>
    public static (FaultClass[] Classes, double[] Shares) Without(FaultClass[] classes, double[] shares, int k) =>
        ([.. classes.Where((_, n) => n != k)], [.. shares.Where((_, n) => n != k)]);
}
