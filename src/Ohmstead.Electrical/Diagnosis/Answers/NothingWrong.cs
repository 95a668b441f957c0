using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Diagnosis.Answers;

/// <summary>How likely it is that nothing is wrong, before and after.</summary>
internal static class NothingWrong
{
    /// <summary>ln of one over the chance that no fault is there which any reading could show.</summary>
    public static double LogChance(FaultCatalogue catalogue, double[] odds, List<FaultMode> still)
    {
        var (all, quiet) = (catalogue.Sums(odds, catalogue.Modes), catalogue.Sums(odds, still));
        return Enumerable.Range(0, all.Length).Sum(e => Math.Log((1 + all[e]) / (1 + quiet[e])));
    }

    /// <summary>Probability that nothing is wrong.</summary>
    public static double Probability(
        FaultCatalogue catalogue,
        double[] odds,
        FaultClass[] classes,
        Marginals marginals,
        List<FaultMode> still
    )
    {
        var quiet = catalogue.Sums(odds, still);
        var noneFound = Enumerable.Range(0, marginals.Sets.Length).Where(n => marginals.Sets[n].Classes.Length == 0).Sum(marginals.Exactly);
        return noneFound * quiet.Aggregate(1.0, (p, o) => p / (1 + o));
    }
}
