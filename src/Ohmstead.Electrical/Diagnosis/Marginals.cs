using Ohmstead.Electrical.Readings;

using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>
/// Probabilities of classes from the sets tried. Each set stands for itself with every further fault that was not tried
/// beside it: those join with their own odds, independently, so faults that the readings hardly concern keep their chances.
/// </summary>
internal sealed class Marginals
{
    private const double NegligibleNats = 25;

    private readonly FaultClass[] classes;
    private readonly Dictionary<string, Hypothesis> known;

    public Marginals(IEnumerable<Hypothesis> sets, FaultClass[] classes)
    {
        this.classes = classes;
        known = sets.Where(h => double.IsFinite(h.LogPosterior)).ToDictionary(h => h.Key, StringComparer.Ordinal);
        var best = known.Values.Max(h => h.LogPosterior);
        Sets = [.. known.Values.Where(h => h.LogPosterior > best - NegligibleNats).OrderByDescending(h => h.LogPosterior).ThenBy(h => h.Key, StringComparer.Ordinal)];
        Joining = [.. Sets.Select(JoiningOdds)];
        var logs = Sets.Select((h, n) => h.LogPosterior + LogClusters(Joining[n])).ToArray();
        var all = Vectors.LogSum(logs);
        Weights = [.. logs.Select(l => Math.Exp(l - all))];
        ByClass = new double[classes.Length];
        for (var n = 0; n < Sets.Length; n++)
        {
            foreach (var c in Sets[n].Classes) ByClass[c.Number] += Weights[n];
            AddJoining(n);
        }
    }

    /// <summary>All classes.</summary>
    public IReadOnlyList<FaultClass> Classes => classes;

    /// <summary>The sets that carry weight, best first.</summary>
    public Hypothesis[] Sets { get; }

    /// <summary>Probability of each set together with whatever joins it.</summary>
    public double[] Weights { get; }

    /// <summary>By set and class: odds of joining it.</summary>
    public double[][] Joining { get; }

    /// <summary>Marginal probability of each class.</summary>
    public double[] ByClass { get; }

    /// <summary>Probability of exactly this set.</summary>
    public double Exactly(int set) => Weights[set] * Math.Exp(-LogClusters(Joining[set]));

    private double[] JoiningOdds(Hypothesis h)
    {
        var from = h;
        while (from.AddLogOdds is null && from.Parent is not null) from = from.Parent;
        var odds = new double[classes.Length];
        if (from.AddLogOdds is null) return odds;
        foreach (var c in classes)
        {
            if (h.Contains(c) || h.Classes.Any(o => o.Elements.Length == 1 && c.Elements.Length == 1 && o.Elements[0] == c.Elements[0])) continue;
            var (members, _) = Hypothesis.Insert(h.Classes, h.Shares, c, 0);
            if (known.ContainsKey(Hypothesis.KeyOf(members))) continue;
            // A member of the relative that this set gave up has no estimate here: it keeps half of its chance.
            var log = from.Contains(c) ? c.LogOdds - Math.Log(2) : from.AddLogOdds[c.Number];
            // What matters was tried exactly; the rest joins with no more than twice its own chance.
            odds[c.Number] = Math.Exp(Math.Min(log, c.LogOdds + Math.Log(2)));
        }
        return odds;
    }

    private Dictionary<int, double> ElementSums(double[] odds)
    {
        var sums = new Dictionary<int, double>();
        foreach (var c in classes) sums[c.Elements[0]] = sums.GetValueOrDefault(c.Elements[0]) + odds[c.Number];
        return sums;
    }

    private double LogClusters(double[] odds) => ElementSums(odds).Values.Sum(s => Math.Log(1 + s));

    private void AddJoining(int set)
    {
        var sums = ElementSums(Joining[set]);
        foreach (var c in classes) ByClass[c.Number] += Weights[set] * Joining[set][c.Number] / (1 + sums[c.Elements[0]]);
    }
}
