using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Searching;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Answers;

/// <summary>
/// Probabilities of classes from the sets tried. Each set stands for itself with every further fault that was not tried
/// beside it: those join with their own odds, independently, so faults that the readings hardly concern keep their chances.
/// </summary>
internal sealed class Marginals
{
    private readonly FaultClass[] classes;
    private readonly FaultClass[] shared;

    /// <param name="searches">What was found on each bench that was looked at.</param>
    public Marginals(IReadOnlyList<Search> searches, FaultClass[] classes)
    {
        (this.classes, shared) = (classes, [.. classes.Where(c => c.Lead.IsShared)]);
        var known = searches
            .Select(s => s.Known.Where(h => double.IsFinite(h.LogPosterior)).ToDictionary(h => h.Key, StringComparer.Ordinal))
            .ToArray();
        var all = known
            .SelectMany((sets, s) => sets.Values.Select(h => (Set: h, On: s, Log: h.LogPosterior + searches[s].LogBench)))
            .ToArray();
        var best = all.Max(h => h.Log);
        var kept = all.Where(h => h.Log > best - Search.NegligibleNats)
            .OrderByDescending(h => h.Log)
            .ThenBy(h => h.On)
            .ThenBy(h => h.Set.Key, StringComparer.Ordinal)
            .ToArray();
        Sets = [.. kept.Select(h => h.Set)];
        On = [.. kept.Select(h => searches[h.On])];
        Joining = [.. kept.Select(h => JoiningOdds(h.Set, searches[h.On], known[h.On]))];
        var logs = kept.Select((h, n) => h.Log + LogClusters(Joining[n])).ToArray();
        var sum = Vectors.LogSum(logs);
        LogTotal = sum;
        Weights = [.. logs.Select(l => Math.Exp(l - sum))];
        ByClass = new double[classes.Length];
        for (var n = 0; n < Sets.Length; n++)
        {
            foreach (var c in Sets[n].Classes)
                ByClass[c.Number] += Weights[n];
            AddJoining(n);
        }
    }

    /// <summary>All classes.</summary>
    public IReadOnlyList<FaultClass> Classes => classes;

    /// <summary>The sets that carry weight, best first.</summary>
    public Hypothesis[] Sets { get; }

    /// <summary>By set: the search that found it, and so the bench.</summary>
    public Search[] On { get; }

    /// <summary>Probability of a bench.</summary>
    public double Of(Search search) => Weights.Where((_, n) => On[n] == search).Sum();

    /// <summary>ln Σ of the sets, each with whatever joins it, against the chance that nothing is wrong.</summary>
    public double LogTotal { get; }

    /// <summary>Probability of each set together with whatever joins it.</summary>
    public double[] Weights { get; }

    /// <summary>By set and class: odds of joining it.</summary>
    public double[][] Joining { get; }

    /// <summary>Marginal probability of each class.</summary>
    public double[] ByClass { get; }

    /// <summary>Probability of exactly this set.</summary>
    public double Exactly(int set) => Weights[set] * Math.Exp(-LogClusters(Joining[set]));

    private double[] JoiningOdds(Hypothesis h, Search search, Dictionary<string, Hypothesis> known)
    {
        var relative = Expanded(h, search);
        var odds = new double[classes.Length];
        foreach (var c in classes)
        {
            if (!h.Members.CanAdd(c) || known.ContainsKey(h.Members.With(c, 0).Key))
                continue;
            // A member of the relative that this set gave up has no estimate here: it keeps half of its chance.
            var log = relative.Members.Contains(c) ? c.LogOdds - Math.Log(2) : relative.AddLogOdds[c.Number];
            // What matters was tried exactly; the rest joins with no more than twice its own chance.
            odds[c.Number] = Math.Exp(Math.Min(log, c.LogOdds + Math.Log(2)));
        }
        return odds;
    }

    /// <summary>The set itself where its neighbours were tried, else the one whose neighbour it was.</summary>
    private static ExpandedHypothesis Expanded(Hypothesis h, Search search) =>
        h switch
        {
            ExpandedHypothesis expanded => expanded,
            FoundHypothesis found => search.Expansion(found.From),
            FittedHypothesis { From: { } from } => search.Expansion(from),
            _ => throw new InvalidOperationException("Only the sound unit is found from nowhere, and it is expanded."),
        };

    /// <summary>Odds of joining by element; of what parts share as if they could have it beside their own faults, so that all are independent.</summary>
    private Dictionary<int, double> ElementSums(double[] odds)
    {
        var sums = new Dictionary<int, double>();
        foreach (var c in classes)
            if (!c.Lead.IsShared)
                sums[c.Elements[0]] = sums.GetValueOrDefault(c.Elements[0]) + odds[c.Number];
        foreach (var c in shared)
            sums[c.Elements[0]] = c.Lead.SharedElements.Aggregate(odds[c.Number], (o, e) => o / (1 + sums.GetValueOrDefault(e)));
        return sums;
    }

    private double LogClusters(double[] odds) => ElementSums(odds).Values.Sum(s => Math.Log(1 + s));

    private void AddJoining(int set)
    {
        var sums = ElementSums(Joining[set]);
        foreach (var c in classes)
        {
            var sum = sums[c.Elements[0]];
            var chance = (c.Lead.IsShared ? sum : Joining[set][c.Number]) / (1 + sum);
            foreach (var other in shared)
                if (other.Lead.SharedElements.Contains(c.Elements[0]))
                    chance /= 1 + sums[other.Elements[0]];
            ByClass[c.Number] += Weights[set] * chance;
        }
    }
}
