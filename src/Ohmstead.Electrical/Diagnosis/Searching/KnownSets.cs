using Ohmstead.Electrical.Diagnosis.Hypotheses;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>The sets of faults tried so far, each in its best form.</summary>
internal sealed class KnownSets
{
    private readonly Dictionary<string, Hypothesis> sets = new(StringComparer.Ordinal);

    public IReadOnlyCollection<Hypothesis> All => sets.Values;

    public Hypothesis Best => sets.Values.MaxBy(h => h.LogPosterior)!;

    /// <summary>Keeps a set that was found, unless it was found better before, or is fitted.</summary>
    public void Register(FoundHypothesis h)
    {
        if (!sets.TryGetValue(h.Key, out var old) || (old is FoundHypothesis && h.LogPosterior > old.LogPosterior))
            sets[h.Key] = h;
    }

    /// <summary>Keeps a set that was fitted, or expanded, in the place of what was known of it.</summary>
    public void Replace(FittedHypothesis h) => sets[h.Key] = h;

    /// <summary>What became of a set whose neighbours were tried.</summary>
    public ExpandedHypothesis Expanded(FittedHypothesis h) => (ExpandedHypothesis)sets[h.Key];

    /// <summary>The set with one more class if it was tried before, from elsewhere, and was not worse than it looks from here.</summary>
    public Hypothesis? AsGood(Neighbourhood place, FaultClass c, double score) =>
        sets.TryGetValue(place.Members.With(c, 0).Key, out var old) && (old is FittedHypothesis || old.LogPosterior > score - 2)
            ? old
            : null;

    /// <summary>Places of the highest scores, best first.</summary>
    public static int[] Highest(double[] scores, int most, double floor) =>
        [.. Enumerable.Range(0, scores.Length).Where(n => scores[n] > floor).OrderByDescending(n => scores[n]).ThenBy(n => n).Take(most)];
}
