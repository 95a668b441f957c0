using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Diagnosis.Answers;

/// <summary>
/// The most probable whole sets of faults. A class of modes that nothing tells apart stands for each of them by its share, so
/// that every one of a pair of twins is named.
/// </summary>
internal static class WholeSets
{
    private const int Most = 200;

    /// <param name="catalogue">Which modes are of one element.</param>
    /// <param name="soundProbability">Probability of no fault at all.</param>
    public static ImmutableArray<FaultSetProbability> Of(Marginals marginals, FaultCatalogue catalogue, double soundProbability)
    {
        var all = new List<FaultSetProbability>();
        for (var n = 0; n < Math.Min(marginals.Sets.Length, Most); n++)
        {
            if (marginals.Sets[n].Classes.Length > 0)
                all.AddRange(Named(marginals.Sets[n], marginals.Exactly(n), catalogue));
        }
        if (soundProbability > 0)
            all.Add(new([], soundProbability));
        // Two sets of classes, and one set on two benches, can name the same modes.
        return
        [
            .. all.GroupBy(s => string.Join(',', s.Faults.Select(m => m.Name)), StringComparer.Ordinal)
                .Select(g => g.First() with { Probability = g.Sum(s => s.Probability) })
                .OrderByDescending(s => s.Probability)
                .Take(Most),
        ];
    }

    /// <summary>Every choice of one mode for each class; of independent choices the best of a part are enough for the best of all.</summary>
    private static IEnumerable<FaultSetProbability> Named(Hypothesis h, double probability, FaultCatalogue catalogue)
    {
        List<(ImmutableArray<FaultMode> Modes, double Share)> sets = [([], 1)];
        for (var k = 0; k < h.Classes.Length; k++)
        {
            var (modes, shares) = (h.Classes[k].Modes, h.SharesOfModes(k));
            sets =
            [
                .. sets.SelectMany(s => modes.Select((m, n) => (Modes: s.Modes.Add(m), Share: s.Share * shares[n])))
                    .Where(s => s.Share > 0 && !s.Modes[..^1].Any(m => catalogue.Clash(m, s.Modes[^1])))
                    .OrderByDescending(s => s.Share)
                    .Take(Most),
            ];
        }
        return sets.Select(s => new FaultSetProbability([.. s.Modes.OrderBy(m => m.Number)], probability * s.Share));
    }
}
