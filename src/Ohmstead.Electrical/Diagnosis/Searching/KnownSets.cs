using Ohmstead.Electrical.Diagnosis.Candidates;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>The sets of faults tried so far, each in its best form.</summary>
internal sealed class KnownSets
{
    private readonly Dictionary<string, Hypothesis> sets = new(StringComparer.Ordinal);

    public IReadOnlyCollection<Hypothesis> All => sets.Values;

    public Hypothesis Best => sets.Values.MaxBy(h => h.LogPosterior)!;

    /// <summary>Keeps a set unless it is known and was better, or is expanded.</summary>
    public void Register(Hypothesis h)
    {
        if (!sets.TryGetValue(h.Key, out var old) || (!old.IsExpanded && h.LogPosterior > old.LogPosterior))
            sets[h.Key] = h;
    }

    /// <summary>The set with one more class if it was tried before, from elsewhere, and was not worse than it looks from here.</summary>
    public Hypothesis? AsGood(Neighbourhood place, FaultClass c, double score)
    {
        var (members, _) = Hypothesis.Insert(place.Classes, place.Shares, c, 0);
        var isKnown = sets.TryGetValue(Hypothesis.KeyOf(members), out var old);
        return isKnown && (old!.IsExpanded || old.LogPosterior > score - 2) ? old : null;
    }

    /// <summary>Places of the highest scores, best first.</summary>
    public static int[] Highest(double[] scores, int most, double floor) =>
        [.. Enumerable.Range(0, scores.Length).Where(n => scores[n] > floor).OrderByDescending(n => scores[n]).ThenBy(n => n).Take(most)];
}
