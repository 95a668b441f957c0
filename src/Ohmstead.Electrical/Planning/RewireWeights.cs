using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Planning;

/// <summary>How well sets of up to two mistakes explain what was read.</summary>
internal sealed class RewireWeights
{
    /// <summary>A reading that lies farther off than so many deviations says no more against a mistake: it may be a slip.</summary>
    private const double FarthestDeviations = 7;

    /// <summary>Mistakes of which pairs are guessed, the likeliest alone first: a sheet of forty wires has thousands.</summary>
    private const int MostPaired = 600;

    /// <summary>Pairs of mistakes solved exactly, the likeliest by their sum first.</summary>
    private const int ExactPairs = 60;

    /// <summary>Spread besides the meter's error that hardly counts [limits].</summary>
    private const double LittleSpread = 0.3;

    /// <summary>What a slipped probe leaves of a density (common practice, no source).</summary>
    private const double SlipDensity = 1e-3;

    private const double LeastProbability = 1e-4;

    private readonly MistakeTable table;
    private readonly double[] eye;
    private readonly int[] of;
    private readonly double[] measured;
    private readonly Gaussian usual;

    /// <param name="read">Readings taken, with their place on the meter's scale.</param>
    /// <param name="eye">By mistake: what an eye adds to its log odds [nat].</param>
    public RewireWeights(MistakeTable table, List<(int Reading, double Shown)> read, double[] eye)
    {
        (this.table, this.eye) = (table, eye);
        of = [.. read.Select(r => r.Reading)];
        measured = new double[table.Set.Count];
        foreach (var (reading, shown) in read)
            measured[reading] = shown;
        usual = table.Law(of, table.Right);
    }

    /// <summary>Sets with their probabilities, likeliest first.</summary>
    public List<(int[] Mistakes, double Probability)> All()
    {
        var logs = new List<(int[] Mistakes, double Log)> { ([], Log(table.Right)) };
        var singles = new double[table.Mistakes.Length];
        Parallel.For(0, singles.Length, m => singles[m] = Single(m));
        logs.AddRange(singles.Select((log, m) => ((int[])[m], log)));
        var pairs = LikelyPairs([.. Enumerable.Range(0, singles.Length).OrderByDescending(m => singles[m]).Take(MostPaired)]);
        var exact = new double[pairs.Length];
        Parallel.For(0, pairs.Length, n => exact[n] = Exact(pairs[n]));
        logs.AddRange(pairs.Select((p, n) => ((int[])[p.A.Mistake, p.B.Mistake], exact[n])));
        var all = Vectors.LogSum([.. logs.Select(l => l.Log)]);
        return
        [
            .. logs.Select(l => (l.Mistakes, Probability: Math.Exp(l.Log - all)))
                .Where(l => l.Probability > LeastProbability || l.Mistakes.Length == 0)
                .OrderByDescending(l => l.Probability),
        ];
    }

    /// <summary>
    /// The squared distance between two lists of readings, in deviations. A reading that lies very far off counts as a slip would.
    /// </summary>
    public static double Square(Gaussian law, int[] of, double[] measured, double[] shown)
    {
        Span<double> z = stackalloc double[of.Length];
        for (var k = 0; k < z.Length; k++)
        {
            var farthest = FarthestDeviations * Math.Sqrt(law.Covariance[(k * of.Length) + k]);
            z[k] = Math.Clamp(measured[of[k]] - shown[of[k]], -farthest, farthest);
        }
        return Form(law, z, z);
    }

    private double Log(double[] shown)
    {
        var law = table.Law(of, shown);
        var log = -(Square(law, of, measured, shown) + law.LogDeterminant) / 2;
        for (var k = 0; k < of.Length; k++)
            log += Bounded(of[k], measured[of[k]] - shown[of[k]], law.Covariance[(k * of.Length) + k]);
        return log;
    }

    /// <summary>
    /// A meter's error has a limit, a normal law has none: where hardly anything else varies, the law of the error itself (uniform
    /// within its limit, with a little spread) takes the normal law's place, down to the chance of a slip.
    /// </summary>
    /// <returns>What that adds to the log likelihood.</returns>
    private double Bounded(int reading, double off, double variance)
    {
        var spread = Math.Sqrt(Math.Max(variance - table.Set.ErrorCovariance(reading, reading), 1e-4));
        if (spread > LittleSpread || table.Set.Errors[reading].Shared > 0)
            return 0;
        var bounded = (NormalLaw.Below((off + 1) / spread) - NormalLaw.Below((off - 1) / spread)) / 2;
        var farthest = FarthestDeviations * FarthestDeviations * variance;
        var normal = Math.Exp(-Math.Min(off * off, farthest) / (2 * variance)) / Math.Sqrt(2 * Math.PI * variance);
        return Math.Min(0, Math.Log(Math.Max(bounded, SlipDensity)) - Math.Log(normal));
    }

    /// <summary>Log odds of one mistake, integrated over its size.</summary>
    private double Single(int m)
    {
        var logs = Segments(m).Select(s => Along(m, s, table.Right)).Select(f => f.LogShare + Log(f.Shown)).ToArray();
        return table.Mistakes[m].LogOdds + eye[m] + Vectors.LogSum(logs);
    }

    private IEnumerable<int> Segments(int m) => Enumerable.Range(0, Math.Max(1, table.Wrong[m].Length - 1));

    /// <summary>
    /// The size on one stretch of a mistake's curve that fits best beside another change, by the law of rightly wired units;
    /// and the share of the sizes, in logarithm, that fits as well.
    /// </summary>
    private Fit Along(int m, int segment, double[] beside)
    {
        var (curve, sizes) = (table.Wrong[m], table.Mistakes[m].Sizes);
        double Shift(int r) => beside[r] - table.Right[r];
        if (curve.Length == 1)
            return new Fit(m, sizes[0], [.. curve[0].Select((x, r) => table.Cut(r, x + Shift(r)))], 0);
        Span<double> z = stackalloc double[of.Length];
        Span<double> d = stackalloc double[of.Length];
        for (var k = 0; k < of.Length; k++)
        {
            z[k] = measured[of[k]] - curve[segment][of[k]] - Shift(of[k]);
            d[k] = curve[segment + 1][of[k]] - curve[segment][of[k]];
        }
        var bend = Form(usual, d, d);
        var t = bend > 0 ? Math.Clamp(Form(usual, z, d) / bend, 0, 1) : 0.5;
        var shown = new double[table.Set.Count];
        for (var r = 0; r < shown.Length; r++)
            shown[r] = table.Cut(r, curve[segment][r] + (t * (curve[segment + 1][r] - curve[segment][r])) + Shift(r));
        return new Fit(
            m,
            sizes[segment] * Math.Pow(sizes[segment + 1] / sizes[segment], t),
            shown,
            (0.5 * Math.Log(Math.Min(1, 2 * Math.PI / Math.Max(bend, 1e-9)))) - Math.Log(curve.Length - 1)
        );
    }

    /// <summary>The pairs that would explain the readings best if what two mistakes do added up.</summary>
    private (Fit A, Fit B)[] LikelyPairs(int[] paired)
    {
        var guesses = new List<(Fit A, Fit B, double Log)>[paired.Length];
        Parallel.For(
            0,
            guesses.Length,
            n =>
            {
                var a = paired[n];
                guesses[n] = [];
                var firsts = Segments(a).Select(s => Along(a, s, table.Right)).ToList();
                foreach (var b in paired)
                {
                    // A pair stands once: the sized one second, so that its size is fitted beside the other.
                    if (b == a || IsSecond(a, b))
                        continue;
                    foreach (var first in firsts)
                    foreach (var s in Segments(b))
                    {
                        var second = Along(b, s, first.Shown);
                        var log = Odds(first, second) - (Square(usual, of, measured, second.Shown) / 2);
                        guesses[n].Add((first, second, log));
                    }
                }
                guesses[n] = [.. guesses[n].OrderByDescending(g => g.Log).Take(ExactPairs)];
            }
        );
        return
        [
            .. guesses
                .SelectMany(g => g)
                .OrderByDescending(g => g.Log)
                .DistinctBy(g => (g.A.Mistake, g.B.Mistake))
                .Take(ExactPairs)
                .Select(g => (g.A, g.B)),
        ];
    }

    private bool IsSecond(int a, int b)
    {
        var (first, second) = (table.Wrong[a].Length, table.Wrong[b].Length);
        return first > second || (first == second && a > b);
    }

    private double Exact((Fit A, Fit B) pair) =>
        Odds(pair.A, pair.B)
        + Log(table.Shown([(table.Mistakes[pair.A.Mistake], pair.A.Size), (table.Mistakes[pair.B.Mistake], pair.B.Size)]));

    private double Odds(Fit a, Fit b) =>
        table.Mistakes[a.Mistake].LogOdds + eye[a.Mistake] + table.Mistakes[b.Mistake].LogOdds + eye[b.Mistake] + a.LogShare + b.LogShare;

    private static double Form(Gaussian law, ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var sum = 0.0;
        for (var k = 0; k < x.Length; k++)
            sum += x[k] * Vectors.Dot(law.Precision.AsSpan(k * x.Length, x.Length), y);
        return sum;
    }

    /// <summary>A mistake at the size that fits best, what it shows, and the logarithm of the share of sizes like it.</summary>
    private sealed record Fit(int Mistake, double Size, double[] Shown, double LogShare);
}
