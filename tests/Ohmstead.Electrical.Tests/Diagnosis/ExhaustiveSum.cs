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

    /// <summary>A wrong reading of which nothing can be said: half of them, anywhere on the scale.</summary>
    private const double Nowhere = WrongChance * 0.5 / 300;
    private const int Rounds = 3;
    private const double Farthest = 3;

    /// <summary>A squared distance that no parameter makes good.</summary>
    private const double Hopeless = 60;

    private readonly (int Reading, double Scaled)[] taken;
    private readonly (double Shift, double Chance)[][] misnoted;
    private readonly Dictionary<string, double> weights = new(StringComparer.Ordinal);
    private double all;

    public ExhaustiveSum(IEnumerable<(int Reading, double Value)> values)
    {
        taken = [.. values.Select(v => (v.Reading, ToScale(v.Reading, v.Value)))];
        misnoted = [.. taken.Select(t => Misnoted(t.Reading, t.Scaled))];
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
            Add(
                part + 1,
                [.. faults, $"{SmallLadder.Parts[part].Id}:{mode}"],
                odds * percent / (100 - percent),
                changed,
                set,
                value is null ? [.. sized, part] : sized
            );
        }
    }

    /// <summary>
    /// The mean of the likelihood over the sizes, which lie evenly on a logarithmic scale: over cells, and over parts of those
    /// cells that matter and across which it changes.
    /// </summary>
    private double Likelihood(double[] ohms, bool[] isFixed, int[] sized)
    {
        if (sized.Length == 0)
            return Density(ohms, isFixed);
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
        for (var round = 0; round < Rounds; round++)
        {
            for (var p = 0; p < ohms.Length; p++)
                if (!isFixed[p])
                    at[p] = ohms[p] * Math.Exp(SmallLadder.Parts[p].Sigma * z[p]);
            for (var p = 0; p < ohms.Length; p++)
                slopes[p] = isFixed[p] ? new double[n] : Slopes(at, p);
            for (var i = 0; i < n; i++)
            {
                residual[i] = taken[i].Scaled - Scaled(taken[i].Reading, at);
                for (var p = 0; p < ohms.Length; p++)
                    residual[i] += slopes[p][i] * z[p];
                for (var j = 0; j <= i; j++)
                {
                    covariance[i, j] = i == j ? 1.0 / 3 : 0;
                    foreach (var s in slopes)
                        covariance[i, j] += s[i] * s[j];
                    covariance[j, i] = covariance[i, j];
                }
            }
            var pull = new Factors(covariance).Pull(residual, out var square);
            if (square > Hopeless)
                break;
            // Farther out than this the parameters explain nothing: something else is wrong.
            for (var p = 0; p < ohms.Length; p++)
            {
                z[p] = 0;
                for (var i = 0; i < n; i++)
                    z[p] += slopes[p][i] * pull[i];
                z[p] = Math.Clamp(z[p], -Farthest, Farthest);
            }
        }
        return WithTwoWrong(residual, covariance);
    }

    /// <summary>Nobody is wrong, or one of them, or two.</summary>
    private double WithTwoWrong(double[] residual, double[,] covariance)
    {
        var (n, moved, all) = (residual.Length, (double[])residual.Clone(), new Factors(covariance));
        var sum = all.Density(moved);
        Factors[] without = [.. Enumerable.Range(0, n).Select(a => new Factors(covariance, a))];
        for (var a = 0; a < n; a++)
        {
            sum += Nowhere * without[a].Density(moved);
            for (var b = 0; b < a; b++)
            {
                sum += Nowhere * Nowhere * new Factors(covariance, a, b).Density(moved);
                foreach (var (shift, chance) in misnoted[b])
                {
                    moved[b] = residual[b] + shift;
                    sum += Nowhere * chance * without[a].Density(moved);
                }
                moved[b] = residual[b];
            }
            foreach (var (shift, chance) in misnoted[a])
            {
                moved[a] = residual[a] + shift;
                sum += chance * all.Density(moved);
                for (var b = 0; b < a; b++)
                {
                    sum += chance * Nowhere * without[b].Density(moved);
                    foreach (var (second, also) in misnoted[b])
                    {
                        moved[b] = residual[b] + second;
                        sum += chance * also * all.Density(moved);
                    }
                    moved[b] = residual[b];
                }
            }
            moved[a] = residual[a];
        }
        return sum;
    }

    /// <summary>
    /// How far a reading moves on the scale when it is put right after a point, a prefix or a sign went wrong, and the chance times the
    /// stretch of the scale at that place, no more than 1.
    /// </summary>
    private static (double Shift, double Chance)[] Misnoted(int reading, double scaled)
    {
        var error = SmallLadder.ErrorOf(reading);
        var value = error.FromScale(scaled);
        (double Times, double Share)[] ways = [(10, 0.16), (0.1, 0.16), (1000, 0.03), (0.001, 0.03), (-1, 0.03)];
        return
        [
            .. ways.Select(w =>
            {
                var meant = value / w.Times;
                var stretch = error.LimitAt(value) / error.LimitAt(meant) / Math.Abs(w.Times);
                return ((Math.Sign(meant) * ToScale(reading, Math.Abs(meant))) - scaled, WrongChance * w.Share * Math.Min(1, stretch));
            }),
        ];
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

    private static double Scaled(int reading, double[] ohms) => ToScale(reading, SmallLadder.Readings[reading].Of(ohms));

    /// <summary>The scale on which the limit of error, percent of the value and a floor, is 1.</summary>
    private static double ToScale(int reading, double value)
    {
        var error = SmallLadder.ErrorOf(reading);
        var p = error.Percent / 100;
        return Math.Log(1 + (p * value / error.Floor)) / p;
    }

    /// <summary>Cholesky's factors of the covariance of the readings that are kept.</summary>
    private sealed class Factors
    {
        private readonly int[] kept;
        private readonly double[,] low;
        private readonly double logHeight;

        public Factors(double[,] covariance, params int[] without)
        {
            kept = new int[covariance.GetLength(0) - without.Length];
            for (var (i, k) = (0, 0); i < covariance.GetLength(0); i++)
                if (Array.IndexOf(without, i) < 0)
                    kept[k++] = i;
            low = new double[kept.Length, kept.Length];
            for (var i = 0; i < kept.Length; i++)
            {
                for (var j = 0; j <= i; j++)
                {
                    var sum = covariance[kept[i], kept[j]];
                    for (var k = 0; k < j; k++)
                        sum -= low[i, k] * low[j, k];
                    low[i, j] = i == j ? Math.Sqrt(sum) : sum / low[j, j];
                }
                logHeight -= Math.Log(low[i, i]) + (0.5 * Math.Log(2 * Math.PI));
            }
        }

        /// <summary>The normal density of what is left of the readings kept.</summary>
        public double Density(double[] residual)
        {
            Span<double> x = stackalloc double[kept.Length];
            return Math.Exp(logHeight - (0.5 * Forward(residual, x)));
        }

        /// <summary>Σ⁻¹·r, and r·Σ⁻¹·r.</summary>
        public double[] Pull(double[] residual, out double square)
        {
            var x = new double[kept.Length];
            square = Forward(residual, x);
            for (var i = x.Length - 1; i >= 0; i--)
            {
                for (var k = i + 1; k < x.Length; k++)
                    x[i] -= low[k, i] * x[k];
                x[i] /= low[i, i];
            }
            return x;
        }

        private double Forward(double[] residual, Span<double> x)
        {
            var square = 0.0;
            for (var i = 0; i < x.Length; i++)
            {
                x[i] = residual[kept[i]];
                for (var j = 0; j < i; j++)
                    x[i] -= low[i, j] * x[j];
                x[i] /= low[i, i];
                square += x[i] * x[i];
            }
            return square;
        }
    }
}
