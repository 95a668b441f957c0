using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Searching;

namespace Ohmstead.Electrical.Diagnosis.Answers;

/// <summary>Adds up what a search has found before it is done: that costs no solution.</summary>
internal static class SoFar
{
    public static EarlyAnswer Of(Search search, FaultClass[] classes)
    {
        var marginals = new Marginals([search], classes);
        return new(
            search.Expanded,
            [
                .. classes
                    .Select(c => Of(c, marginals))
                    .OrderByDescending(f => f.Likeliest)
                    .ThenBy(f => f.Finding.Modes[0].Number)
                    .Select(f => f.Finding),
            ]
        );
    }

    /// <summary>With the probability of its likeliest mode by itself, by which findings come in order.</summary>
    private static (EarlyFinding Finding, double Likeliest) Of(FaultClass c, Marginals marginals)
    {
        var (share, deviation) = FaultTable.SizeOf(c, marginals);
        var shares = c.SharesOfModes(share, deviation);
        var modes = c.Modes.Select((mode, n) => (Mode: mode, Share: shares[n])).OrderByDescending(m => m.Share);
        var probability = marginals.ByClass[c.Number];
        return (new([.. modes.Select(m => m.Mode)], probability), probability * shares.Max());
    }
}
