using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Ranking;

/// <summary>Mutual information between scenario and reading.</summary>
internal static class Information
{
    /// <summary>Gauss–Hermite nodes and weights for the standard normal, five points (key abramowitz-stegun, table 25.10).</summary>
    private static readonly (double Node, double Weight)[] Nodes =
    [
        (-2.85697001387, 0.0112574113),
        (-1.35562617997, 0.2220759220),
        (0, 0.5333333333),
        (1.35562617997, 0.2220759220),
        (2.85697001387, 0.0112574113),
    ];

    /// <summary>
    /// Σ P(h)·E[log₂ p(t|h)/p(t)] over the parts; a reading above <paramref name="overRange"/> is the one answer OL.
    /// </summary>
    public static double Bits(List<Component> parts, double overRange)
    {
        var total = parts.Sum(p => p.Weight);
        if (total <= 0 || parts.Count < 2)
            return 0;
        var kept = parts.Where(p => p.Weight > 0).OrderBy(p => p.Scenario).ToArray();
        var open = kept.Select(p => NormalLaw.Below((p.Mean - overRange) / Math.Sqrt(p.Variance))).ToArray();
        var own = kept.GroupBy(p => p.Scenario).ToDictionary(g => g.Key, g => g.Sum(p => p.Weight));
        var openOf = new Dictionary<int, double>();
        for (var k = 0; k < kept.Length; k++)
            openOf[kept[k].Scenario] = openOf.GetValueOrDefault(kept[k].Scenario) + (open[k] * kept[k].Weight);
        var allOpen = openOf.Values.Sum() / total;
        var bits = openOf.Sum(o => o.Value > 0 ? o.Value / total * Math.Log2(o.Value / own[o.Key] / allOpen) : 0);
        for (var k = 0; k < kept.Length; k++)
        {
            if (open[k] > 1 - 1e-9)
                continue;
            foreach (var (node, weight) in Nodes)
            {
                var t = kept[k].Mean + (node * Math.Sqrt(kept[k].Variance));
                if (t > overRange)
                    continue;
                var (mine, all) = Densities(kept, t, kept[k].Scenario);
                bits += kept[k].Weight / total * weight * Math.Log2(mine / own[kept[k].Scenario] / (all / total));
            }
        }
        return Math.Max(bits, 0);
    }

    private static (double Mine, double All) Densities(Component[] parts, double t, int scenario)
    {
        var (mine, all) = (0.0, 0.0);
        foreach (var p in parts)
        {
            var d = t - p.Mean;
            var q = d * d / p.Variance;
            if (q > 80)
                continue;
            var density = p.Weight * Math.Exp(-0.5 * q) / Math.Sqrt(p.Variance);
            all += density;
            if (p.Scenario == scenario)
                mine += density;
        }
        return (mine, all);
    }
}

/// <summary>One normal part of a scenario's distribution of a reading; weights need not add up to 1.</summary>
internal readonly record struct Component(int Scenario, double Weight, double Mean, double Variance);
