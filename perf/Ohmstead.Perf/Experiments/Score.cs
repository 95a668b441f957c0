using System.Globalization;

namespace Ohmstead.Perf.Experiments;

/// <summary>Mean average precision, log loss and calibration of fault probabilities.</summary>
internal sealed class Score
{
    private readonly List<double> precision = [];
    private readonly List<double> loss = [];
    private readonly (int Count, double Sum, int True)[] tenths = new (int, double, int)[10];

    public int Units => loss.Count;

    public double MeanAveragePrecision => precision.DefaultIfEmpty(double.NaN).Average();

    public double LogLoss => loss.DefaultIfEmpty(double.NaN).Average();

    /// <summary>Answers at 0.9 or more, and how many of them are true.</summary>
    public (int True, int Count) Sure => (tenths[9].True, tenths[9].Count);

    public void Add(IReadOnlyList<(string Name, double P)> answers, IReadOnlySet<string> truth)
    {
        if (truth.Count > 0)
            precision.Add(AveragePrecision(answers, truth));
        var sum = 0.0;
        foreach (var (name, raw) in answers)
        {
            var p = Math.Clamp(raw, 1e-4, 1 - 1e-4);
            sum -= Math.Log(truth.Contains(name) ? p : 1 - p);
            ref var t = ref tenths[Math.Min((int)(p * 10), 9)];
            t = (t.Count + 1, t.Sum + p, t.True + (truth.Contains(name) ? 1 : 0));
        }
        loss.Add(sum);
    }

    /// <summary>Where probabilities tie, the mean over seeded orders of the tied.</summary>
    private static double AveragePrecision(IReadOnlyList<(string Name, double P)> answers, IReadOnlySet<string> truth)
    {
        const int orders = 40;
        var dice = new Random(1);
        var mean = 0.0;
        for (var o = 0; o < orders; o++)
        {
            var (hits, sum, n) = (0, 0.0, 0);
            foreach (
                var (name, _) in answers
                    .Select(a => (a, Key: dice.Next()))
                    .OrderByDescending(a => Math.Round(a.a.P, 6))
                    .ThenBy(a => a.Key)
                    .Select(a => a.a)
            )
            {
                n++;
                if (truth.Contains(name))
                    sum += ++hits / (double)n;
            }
            mean += sum / truth.Count / orders;
        }
        return mean;
    }

    /// <summary>Largest distance of a tenth with 30 items or more beyond two standard deviations of chance.</summary>
    public double WorstCalibration =>
        tenths
            .Where(t => t.Count >= 30)
            .Select(t => (Mean: t.Sum / t.Count, Share: t.True / (double)t.Count, t.Count))
            .Select(t => Math.Max(0, Math.Abs(t.Mean - t.Share) - (2 * Math.Sqrt(t.Mean * (1 - t.Mean) / t.Count))))
            .DefaultIfEmpty(0)
            .Max();

    /// <summary>A row for each tenth: mean probability, share true, count.</summary>
    public IEnumerable<string> TenthRows() =>
        tenths.Select(
            (t, n) =>
                t.Count == 0
                    ? string.Create(CultureInfo.InvariantCulture, $"| {n / 10.0:F1}–{(n + 1) / 10.0:F1} | – | – | 0 |")
                    : string.Create(
                        CultureInfo.InvariantCulture,
                        $"| {n / 10.0:F1}–{(n + 1) / 10.0:F1} | {t.Sum / t.Count:F3} | {t.True / (double)t.Count:F3} | {t.Count} |"
                    )
        );
}
