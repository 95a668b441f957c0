namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>
/// The posterior of every set of faults of the <see cref="SmallLadder"/>, by summing over all sets and sizes on a grid that is fine where it matters.
/// It shares the model's assumptions with the diagnosis and nothing else: parameters log-normal and followed along their slope
/// on the meter's scale where all the readings say they lie (as in the diagnosis; against quadrature: BentSpreadTests), the meter's error of limit 1 with its variance of 1/3 as normal, any reading wrong with 1 in 1,000: half of them
/// anywhere, the others by a decimal point, a prefix or a sign.
/// </summary>
internal sealed class ExhaustiveSum
{
    private const int Cells = 80;
    private const int Parts = 9;
    private const double WrongChance = 1e-3;
    private const double ScaleWidth = 300;
    private const int Rounds = 3;
    private const double Farthest = 3;

    /// <summary>A squared distance that no parameter makes good.</summary>
    private const double Hopeless = 60;


    private readonly (int Reading, double Scaled)[] taken;
    private readonly Dictionary<string, double> weights = new(StringComparer.Ordinal);
    private double all;

    public ExhaustiveSum(IEnumerable<(int Reading, double Value)> values)
    {
        taken = [.. values.Select(v => (v.Reading, ToScale(v.Reading, v.Value)))];
        Add(0, [], 1, [.. SmallLadder.Parts.Select(p => p.Ohms)], new bool[SmallLadder.Parts.Length], []);
    }

    public double Sound => weights.GetValueOrDefault("") / all;

    /// <summary>Chance of a fault, over all sets.</summary>
    public double Marginal(string fault) => weights.Where(w => w.Key.Split(' ').Contains(fault)).Sum(w => w.Value) / all;

    private void Add(int part, string[] faults, double odds, double[] ohms, bool[] isFixed, int[] sized)
    {
        if (part == SmallLadder.Parts.Length)
        {
            var weight = odds * Likelihood(ohms, isFixed, sized);
            weights[string.Join(' ', faults)] = weight;
            all += weight;
            return;
        }
        Add(part + 1, faults, odds, ohms, isFixed, sized);
        foreach (var (mode, percent, value) in SmallLadder.Modes[part])
        {
            var (changed, set) = ((double[])ohms.Clone(), (bool[])isFixed.Clone());
            (changed[part], set[part]) = (value ?? 1, true);
            Add(part + 1, [.. faults, $"{SmallLadder.Parts[part].Id}:{mode}"], odds * percent / (100 - percent), changed, set, value is null ? [.. sized, part] : sized);
        }
    }

    /// <summary>
    /// The mean of the likelihood over the sizes, which lie evenly on a logarithmic scale: over cells, and over parts of those
    /// cells that matter and across which it changes.
    /// </summary>
    private double Likelihood(double[] ohms, bool[] isFixed, int[] sized)
    {
        if (sized.Length == 0) return Density(ohms, isFixed);
        double At(double share)
        {
            ohms[sized[0]] = SmallLadder.LeastSize * Math.Pow(SmallLadder.MostSize / SmallLadder.LeastSize, share);
            return Likelihood(ohms, isFixed, sized[1..]);
        }
        var coarse = Enumerable.Range(0, Cells).Select(k => At((k + 0.5) / Cells)).ToArray();
        var (sum, most) = (0.0, coarse.Max());
        for (var k = 0; k < Cells; k++)
        {
            double[] around = [coarse[Math.Max(k - 1, 0)], coarse[k], coarse[Math.Min(k + 1, Cells - 1)]];
            var isFine = around.Max() > 1e-5 * most && around.Max() > 1.1 * around.Min();
            sum += isFine ? Enumerable.Range(0, Parts).Average(n => At((k + ((n + 0.5) / Parts)) / Cells)) : coarse[k];
        }
        return sum / Cells;
    }

    private double Density(double[] ohms, bool[] isFixed)
    {
        var (n, z, at) = (taken.Length, new double[ohms.Length], (double[])ohms.Clone());
        var (residual, covariance, slopes) = (new double[n], new double[n, n], new double[ohms.Length][]);
        int[] every = [.. Enumerable.Range(0, n)];
        for (var round = 0; round < Rounds; round++)
        {
            for (var p = 0; p < ohms.Length; p++)
                if (!isFixed[p]) at[p] = ohms[p] * Math.Exp(SmallLadder.Parts[p].Sigma * z[p]);
            for (var p = 0; p < ohms.Length; p++)
                slopes[p] = isFixed[p] ? new double[n] : Slopes(at, p);
            for (var i = 0; i < n; i++)
            {
                residual[i] = taken[i].Scaled - Scaled(taken[i].Reading, at);
                for (var p = 0; p < ohms.Length; p++) residual[i] += slopes[p][i] * z[p];
                for (var j = 0; j <= i; j++)
                {
                    covariance[i, j] = i == j ? 1.0 / 3 : 0;
                    foreach (var s in slopes) covariance[i, j] += s[i] * s[j];
                    covariance[j, i] = covariance[i, j];
                }
            }
            var (pull, square, _) = Solve(residual, covariance, every);
            if (square > Hopeless) break;
            // Farther out than this the parameters explain nothing: something else is wrong.
            for (var p = 0; p < ohms.Length; p++)
            {
                z[p] = 0;
                for (var i = 0; i < n; i++) z[p] += slopes[p][i] * pull[i];
                z[p] = Math.Clamp(z[p], -Farthest, Farthest);
            }
        }
        // Nobody is wrong, or one of them, or two.
        var sum = Normal(residual, covariance, every);
        for (var a = 0; a < n; a++)
            foreach (var (first, chance) in WrongNoted(a, residual[a]))
            {
                sum += chance * Among(first is null ? [a] : [], (a, first));
                for (var b = 0; b < a; b++)
                    foreach (var (second, also) in WrongNoted(b, residual[b]))
                        sum += chance * also * Among([.. new[] { (a, first), (b, second) }.Where(w => w.Item2 is null).Select(w => w.Item1)], (a, first), (b, second));
            }
        return sum;

        double Among(int[] without, params (int At, double? Residual)[] meant)
        {
            var moved = (double[])residual.Clone();
            foreach (var (at, to) in meant) moved[at] = to ?? 0;
            return Normal(moved, covariance, [.. every.Except(without)]);
        }
    }

    /// <summary>
    /// How a reading can be wrong: what would then be left of it (null: nothing can be said), and the chance times the stretch of the
    /// scale at that place, no more than 1.
    /// </summary>
    private IEnumerable<(double? Residual, double Chance)> WrongNoted(int at, double residual)
    {
        yield return (null, WrongChance * 0.5 / ScaleWidth);
        var (reading, error) = (taken[at].Reading, SmallLadder.ErrorOf(taken[at].Reading));
        var value = error.FromScale(taken[at].Scaled);
        foreach (var (times, share) in new[] { (10, 0.16), (0.1, 0.16), (1000, 0.03), (0.001, 0.03), (-1, 0.03) })
        {
            var meant = value / times;
            var scaled = Math.Sign(meant) * ToScale(reading, Math.Abs(meant));
            var stretch = error.LimitAt(value) / error.LimitAt(meant) / Math.Abs(times);
            yield return (residual + scaled - taken[at].Scaled, WrongChance * share * Math.Min(1, stretch));
        }
    }

    private double[] Slopes(double[] ohms, int part)
    {
        const double step = 0.05;
        var (value, sigma) = (ohms[part], SmallLadder.Parts[part].Sigma);
        ohms[part] = value * Math.Exp(step * sigma);
        var up = taken.Select(t => Scaled(t.Reading, ohms)).ToArray();
        ohms[part] = value * Math.Exp(-step * sigma);
        var slopes = taken.Select((t, i) => (up[i] - Scaled(t.Reading, ohms)) / (2 * step)).ToArray();
        ohms[part] = value;
        return slopes;
    }

    private static double Normal(double[] residual, double[,] covariance, int[] kept)
    {
        if (kept.Length == 0) return 1;
        var (_, square, logDeterminant) = Solve(residual, covariance, kept);
        return Math.Exp(-0.5 * (square + logDeterminant + (kept.Length * Math.Log(2 * Math.PI))));
    }

    /// <summary>Σ⁻¹·r of the readings kept, r·Σ⁻¹·r and ln |Σ|, by Cholesky's factors.</summary>
    private static (double[] Pull, double Square, double LogDeterminant) Solve(double[] residual, double[,] covariance, int[] kept)
    {
        var n = kept.Length;
        var (low, x) = (new double[n, n], new double[n]);
        var (square, logDeterminant) = (0.0, 0.0);
        for (var i = 0; i < n; i++)
        {
            x[i] = residual[kept[i]];
            for (var j = 0; j <= i; j++)
            {
                var sum = covariance[kept[i], kept[j]];
                for (var k = 0; k < j; k++) sum -= low[i, k] * low[j, k];
                low[i, j] = i == j ? Math.Sqrt(sum) : sum / low[j, j];
                if (j < i) x[i] -= low[i, j] * x[j];
            }
            x[i] /= low[i, i];
            square += x[i] * x[i];
            logDeterminant += 2 * Math.Log(low[i, i]);
        }
        for (var i = n - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < n; k++) x[i] -= low[k, i] * x[k];
            x[i] /= low[i, i];
        }
        return (x, square, logDeterminant);
    }

    private static double Scaled(int reading, double[] ohms) => ToScale(reading, SmallLadder.Readings[reading].Of(ohms));

    /// <summary>The scale on which the limit of error, percent of the value and a floor, is 1.</summary>
    private static double ToScale(int reading, double value)
    {
        var error = SmallLadder.ErrorOf(reading);
        var p = error.Percent / 100;
        return Math.Log(1 + (p * value / error.Floor)) / p;
    }
}
