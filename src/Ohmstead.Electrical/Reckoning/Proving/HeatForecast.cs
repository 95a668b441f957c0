using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>
/// The forecast of a heat run: every pair of times, share and cooling law of a fixed grid, weighed by what is known beforehand and by
/// how well it fits. For each of them the final rise follows in closed form, for the readings are linear in it. No drawing of
/// numbers: the same run always gives the same answer.
/// </summary>
internal sealed record HeatForecast(GaussMixture Final, GaussMixture AtOff, bool IsOneCurve)
{
    private const int SlowPoints = 65;
    private const int FastPoints = 11;
    private const int SharePoints = 8;

    /// <summary>Normal deviates that the grid of the slow time reaches to; that of the fast one.</summary>
    private const double SlowReach = 3.2;
    private const double FastReach = 2.4;

    /// <summary>A final rise before anything is read [K]; common practice, no source. Wide: readings soon outweigh it.</summary>
    private const double UsualRise = 55;
    private const double RiseSpread = 30;
    private const double Before = 1 / (RiseSpread * RiseSpread);

    /// <summary>How much better a hotter case cools: exponents and their chances; common practice, no source.</summary>
    private static readonly (double Better, double Chance)[] Cooling = [(0, 0.5), (0.1, 0.3), (0.2, 0.2)];

    /// <summary>Misfit by model beyond the meter's repeat [K].</summary>
    private const double ModelKelvin = 0.25;

    /// <summary>A misfit in squared deviations for each reading that no run on one curve comes to.</summary>
    private const double MostMisfit = 5;

    public static HeatForecast Of(HeatRun run)
    {
        var line = new HeatTimeline(run);
        var celsius = run
            .During.Select(d => d.Ohms)
            .Concat(run.After.Select(a => a.Ohms))
            .Select(o => run.Metal.CelsiusOf(o, run.Cold))
            .ToArray();
        var weights = new CommonError(celsius, run.Metal.K, run.RepeatPercent / 100, ModelKelvin);
        var fast = Grid(FastPoints, FastReach, run.Times.FastMinutes, run.Times.FastSpread)
            .Select(g => new Part(HeatShapes.OfPower(line, g.Value, 0), g.Log, weights))
            .ToArray();
        var (final, atOff, least) = (new GaussMixture(), new GaussMixture(), double.PositiveInfinity);
        var rest = new double[celsius.Length];
        foreach (var slow in Grid(SlowPoints, SlowReach, run.Times.SlowMinutes, run.Times.SlowSpread))
        {
            var room = HeatShapes.OfRoom(line, slow.Value);
            for (var n = 0; n < rest.Length; n++)
                rest[n] = celsius[n] - room[n + 1];
            var (square, ofWinding) = (weights.Square(rest, rest), fast.Select(f => weights.Square(f.Read, rest)).ToArray());
            foreach (var (better, chance) in Cooling)
            {
                var core = new Part(HeatShapes.OfPower(line, slow.Value, better), slow.Log + Math.Log(chance), weights);
                var ofCore = weights.Square(core.Read, rest);
                for (var f = 0; f < fast.Length; f++)
                {
                    var (winding, both) = (fast[f], weights.Square(fast[f].Read, core.Read));
                    for (var k = 0; k < SharePoints; k++)
                    {
                        // The shape is s·winding + (1 − s)·core: its squares follow from theirs.
                        var s = run.Times.LeastShare + ((run.Times.MostShare - run.Times.LeastShare) * (k + 0.5) / SharePoints);
                        var c = 1 - s;
                        var shape = (s * s * winding.Square) + (2 * s * c * both) + (c * c * core.Square);
                        // Normal law of the final rise: before the readings, then with them.
                        var precision = Before + shape;
                        var mean = ((UsualRise * Before) + (s * ofWinding[f]) + (c * ofCore)) / precision;
                        var misfit = square + (UsualRise * UsualRise * Before) - (mean * mean * precision);
                        var log = core.Log + winding.Log - (0.5 * (misfit + Math.Log(precision)));
                        var (deviation, atEnd) = (1 / Math.Sqrt(precision), (s * winding.AtEnd) + (c * core.AtEnd));
                        final.Add(log, mean, deviation);
                        atOff.Add(log, room[0] - run.EndCelsius + (mean * atEnd), deviation * atEnd);
                        least = Math.Min(least, misfit);
                    }
                }
            }
        }
        return new(final.Ready(), atOff.Ready(), least <= MostMisfit * celsius.Length);
    }

    /// <summary>One mass's answer to the power: at the last switch-off, at each reading, and its weighed square.</summary>
    private sealed class Part(double[] shape, double log, CommonError weights)
    {
        public double[] Read { get; } = shape[1..];

        public double AtEnd { get; } = shape[0];

        public double Square { get; } = weights.Square(shape[1..], shape[1..]);

        public double Log { get; } = log;
    }

    private static (double Value, double Log)[] Grid(int points, double reach, double median, double spread) =>
        spread == 0
            ? [(median, 0)]
            :
            [
                .. Enumerable
                    .Range(0, points)
                    .Select(n => (2.0 * reach * n / (points - 1)) - reach)
                    .Select(z => (median * Math.Exp(spread * z), -0.5 * z * z)),
            ];
}

/// <summary>
/// Errors of temperatures by ohms: each reading's own, and that of the cold reading, which all share. W = (D + c·vvᵀ)⁻¹ by Sherman
/// and Morrison.
/// </summary>
internal sealed class CommonError
{
    private readonly double[] own;
    private readonly double[] shared;
    private readonly double divisor;

    public CommonError(double[] celsius, double k, double repeat, double modelKelvin)
    {
        // A share of the ohms is the same share of k + t.
        own = [.. celsius.Select(t => 1 / ((repeat * repeat * (k + t) * (k + t)) + (modelKelvin * modelKelvin)))];
        shared = [.. celsius.Select(t => repeat * (k + t))];
        divisor = 1 + shared.Select((v, n) => v * v * own[n]).Sum();
    }

    /// <summary>aᵀWb.</summary>
    public double Square(double[] a, double[] b)
    {
        var (all, left, right) = (0.0, 0.0, 0.0);
        for (var n = 0; n < own.Length; n++)
        {
            all += own[n] * a[n] * b[n];
            left += own[n] * a[n] * shared[n];
            right += own[n] * b[n] * shared[n];
        }
        return all - (left * right / divisor);
    }
}

/// <summary>A weighted sum of normal laws.</summary>
internal sealed class GaussMixture
{
    /// <summary>Parts below this share of the heaviest change no digit that is shown.</summary>
    private const double LeastLog = -12;

    private List<(double Weight, double Mean, double Deviation)> parts = [];

    public void Add(double log, double mean, double deviation) => parts.Add((log, mean, deviation));

    /// <summary>Turns logarithms into shares; to be called once, after the last part.</summary>
    public GaussMixture Ready()
    {
        var most = parts.Max(p => p.Weight);
        parts = [.. parts.Where(p => p.Weight > most + LeastLog).Select(p => (Math.Exp(p.Weight - most), p.Mean, p.Deviation))];
        var all = parts.Sum(p => p.Weight);
        parts = [.. parts.Select(p => (p.Weight / all, p.Mean, p.Deviation))];
        return this;
    }

    /// <summary>The chance of more than a value.</summary>
    public double Above(double value) =>
        parts.Sum(p =>
            p.Weight
            * (
                p.Deviation > 0 ? NormalLaw.Below((p.Mean - value) / p.Deviation)
                : p.Mean > value ? 1
                : 0
            )
        );

    /// <summary>The value below which a share lies.</summary>
    public double At(double share)
    {
        var (low, high) = (parts.Min(p => p.Mean - (9 * p.Deviation)), parts.Max(p => p.Mean + (9 * p.Deviation)));
        for (var n = 0; n < 50 && high - low > 1e-5 * Math.Max(1, Math.Abs(high)); n++)
        {
            var middle = (low + high) / 2;
            if (1 - Above(middle) < share)
                low = middle;
            else
                high = middle;
        }
        return (low + high) / 2;
    }
}
