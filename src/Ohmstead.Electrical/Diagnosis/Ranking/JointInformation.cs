using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;

namespace Ohmstead.Electrical.Diagnosis.Ranking;

/// <summary>
/// What several readings together tell about the scenario: less than the sum of what each tells, since much of it is the same.
/// Worked out by drawing readings, in a given scenario independent of one another, and asking what is left unknown.
/// </summary>
internal sealed class JointInformation
{
    private const int Draws = 160;
    private const int Seed = 20;

    private readonly double[] weights;
    private readonly int[] baseOf;
    private readonly int[] drawn;
    private readonly double[][] logs;
    private readonly Random dice = new(Seed);

    /// <param name="weights">Of each scenario.</param>
    /// <param name="baseOf">By scenario: the one whose readings it shows where it shows none of its own; itself for the sets.</param>
    public JointInformation(double[] weights, int[] baseOf)
    {
        var all = weights.Sum();
        (this.weights, this.baseOf) = ([.. weights.Select(w => w / all)], baseOf);
        drawn = [.. Enumerable.Range(0, Draws).Select(n => At((n + 0.5) / Draws))];
        logs = [.. drawn.Select(_ => this.weights.Select(w => Math.Log(w)).ToArray())];
    }

    /// <summary>Adds a reading to those taken together.</summary>
    /// <param name="parts">Its distribution in each scenario; a scenario without parts shows what its base shows.</param>
    /// <param name="overRange">Above it the one answer is OL.</param>
    /// <returns>What all so far tell [bit].</returns>
    public double With(IReadOnlyList<Component> parts, double overRange)
    {
        var own = new Component[]?[weights.Length];
        foreach (var g in parts.Where(p => p.Weight > 0).GroupBy(p => p.Scenario))
            own[g.Key] = [.. g];
        var (bits, chances) = (0.0, new double[weights.Length]);
        for (var n = 0; n < Draws; n++)
        {
            var shown = Draw(own[drawn[n]] ?? own[baseOf[drawn[n]]]!);
            for (var s = 0; s < weights.Length; s++)
                if (own[s] is { } mine && weights[s] > 0)
                    chances[s] = Log(mine, shown, overRange);
            for (var s = 0; s < weights.Length; s++)
                if (weights[s] > 0)
                    logs[n][s] += chances[own[s] is null ? baseOf[s] : s];
            bits += (logs[n][drawn[n]] - Math.Log(weights[drawn[n]]) - Vectors.LogSum(logs[n])) / Math.Log(2) / Draws;
        }
        return Math.Max(bits, 0);
    }

    private int At(double share)
    {
        var s = 0;
        for (var sum = weights[0]; sum < share; sum += weights[s])
            s++;
        return s;
    }

    private double Draw(Component[] parts)
    {
        var left = dice.NextDouble() * parts.Sum(p => p.Weight);
        var at = 0;
        while (at < parts.Length - 1 && left > parts[at].Weight)
            left -= parts[at++].Weight;
        var normal = Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
        return parts[at].Mean + (normal * Math.Sqrt(parts[at].Variance));
    }

    /// <summary>Log density of a reading in a scenario, but for a constant; of OL, its log chance.</summary>
    private static double Log(Component[] parts, double shown, double overRange)
    {
        var (sum, all) = (0.0, 0.0);
        foreach (var p in parts)
        {
            var d = shown - p.Mean;
            all += p.Weight;
            sum +=
                p.Weight
                * (
                    shown > overRange
                        ? NormalLaw.Below((p.Mean - overRange) / Math.Sqrt(p.Variance))
                        : Math.Exp(-0.5 * d * d / p.Variance) / Math.Sqrt(p.Variance)
                );
        }
        return Math.Log(Math.Max(sum / all, 1e-30));
    }
}
