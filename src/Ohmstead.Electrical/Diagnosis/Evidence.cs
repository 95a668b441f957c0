using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>What was read and told on one unit, and how likely it is for a set of faults.</summary>
internal sealed class Evidence
{
    private const double IntermittentChance = 0.3;
    private const double JumpWithoutCause = 0.005;
    private const double ScaleWidth = 300;

    private readonly double[] measured;
    private readonly int[] numeric;
    private readonly int[] overRange;
    private readonly int[] jumps;
    private readonly double[] limits;
    private readonly Told[] told;
    private readonly double logWrong;

    public Evidence(ReadingLibrary library, UnitReadings readings, double wrongReadingChance)
    {
        Taken = [.. readings.Readings.Where(r => r.IsTaken)];
        Set = new ReadingSet(library.Model, library.Catalogue, Taken.Select(t => (t.Spec, t.State)), readings.Meter);
        numeric = [.. Places(Outcome.Value)];
        overRange = [.. Places(Outcome.OverRange)];
        jumps = [.. Places(Outcome.Jumps)];
        measured = [.. Taken.Select((t, n) => Set.Errors[n].ToScale(t.Value))];
        limits = [.. Enumerable.Range(0, Set.Count).Select(Set.OverRangeOnScale)];
        told = [.. readings.Told];
        logWrong = Math.Log(wrongReadingChance / ScaleWidth);
    }

    public TakenReading[] Taken { get; }

    public ReadingSet Set { get; }

    /// <summary>Places of the readings that are numbers.</summary>
    public ReadOnlySpan<int> Numeric => numeric;

    private IEnumerable<int> Places(Outcome outcome) => Enumerable.Range(0, Taken.Length).Where(n => Taken[n].Outcome == outcome);

    /// <summary>The measured value on the meter's scale.</summary>
    public double Measured(int reading) => measured[reading];

    /// <summary>The Gaussian around a prediction from the slopes (readings × parameters).</summary>
    public Spread SpreadOf(double[] slopes, double[] shift)
    {
        var (n, count) = (numeric.Length, Set.Model.Parameters.Length);
        var covariance = new double[n * n];
        for (var i = 0; i < n; i++)
            for (var j = 0; j <= i; j++)
            {
                var (a, b) = (numeric[i], numeric[j]);
                var sum = Vectors.Dot(slopes.AsSpan(a * count, count), slopes.AsSpan(b * count, count)) + Set.ErrorCovariance(a, b);
                covariance[(i * n) + j] = covariance[(j * n) + i] = sum;
            }
        return new Spread(slopes, shift, new Gaussian(covariance, n));
    }

    /// <summary>
    /// The spread with the sizes of some faults left free to a deviation (of their share): what neighbours of a set are judged
    /// with, since the sizes may have to give way to a new fault.
    /// </summary>
    public Spread Free(Spread spread, IEnumerable<double[]> directions, double deviation)
    {
        var n = numeric.Length;
        var covariance = (double[])spread.Gaussian.Covariance.Clone();
        var any = false;
        foreach (var d in directions)
        {
            any = true;
            for (var i = 0; i < n; i++)
                for (var j = 0; j < n; j++) covariance[(i * n) + j] += deviation * deviation * d[numeric[i]] * d[numeric[j]];
        }
        return any ? spread with { Gaussian = new Gaussian(covariance, n) } : spread;
    }

    /// <summary>How far a free size moves at the prediction last judged by this worker: its share's posterior mean.</summary>
    public double ShareMove(double[] direction, double deviation, Worker worker)
    {
        var sum = 0.0;
        for (var k = 0; k < numeric.Length; k++) sum += direction[numeric[k]] * worker.Robust.U[k];
        return deviation * deviation * sum;
    }

    /// <summary>Log likelihood of what was read for a prediction on the scale.</summary>
    public double LogLikelihood(ReadOnlySpan<double> predicted, Spread spread, Worker worker)
    {
        var z = worker.Residuals(numeric.Length);
        for (var k = 0; k < numeric.Length; k++) z[k] = measured[numeric[k]] - predicted[numeric[k]] - spread.Shift[numeric[k]];
        var log = spread.Gaussian.RobustLog(z, logWrong, worker.Robust);
        var count = Set.Model.Parameters.Length;
        foreach (var r in overRange)
        {
            var row = spread.Slopes.AsSpan(r * count, count);
            var sigma = Math.Sqrt(Vectors.Dot(row, row) + 1e-6);
            log += Math.Log(Math.Max(NormalLaw.Below((predicted[r] - limits[r]) / sigma), 1e-6));
        }
        return log;
    }

    /// <summary>
    /// Where on the straight line between two predictions the likelihood is highest, as a share [0..1], and its curvature
    /// there; with no reading dropped.
    /// </summary>
    public (double Share, double Curvature) TopOfLine(ReadOnlySpan<double> low, ReadOnlySpan<double> high, Spread spread, Worker worker)
    {
        var n = numeric.Length;
        var d = worker.Scratch(3, n);
        var z = worker.Residuals(n);
        var any = false;
        for (var k = 0; k < n; k++)
        {
            var r = numeric[k];
            d[k] = high[r] - low[r];
            any |= Math.Abs(d[k]) > 1e-9;
            z[k] = measured[r] - low[r] - spread.Shift[r];
        }
        if (!any) return (0.5, 0);
        var (along, curvature) = (0.0, 0.0);
        var precision = spread.Gaussian.Precision;
        for (var k = 0; k < n; k++)
        {
            if (d[k] == 0) continue;
            var row = precision.AsSpan(k * n, n);
            along += d[k] * Vectors.Dot(row, z);
            curvature += d[k] * Vectors.Dot(row, d);
        }
        return (Math.Clamp(along / Math.Max(curvature, 1e-12), 0, 1), curvature);
    }

    /// <summary>The readings that the last judgement of this worker left out as wrong.</summary>
    public List<int> LeftOut(Worker worker)
    {
        var left = new List<int>();
        for (var k = 0; k < numeric.Length; k++)
            if (worker.Robust.Dropped[k]) left.Add(numeric[k]);
        return left;
    }

    /// <summary>Slope of the log likelihood along a line at the prediction last judged by this worker.</summary>
    public double SlopeOfLine(ReadOnlySpan<double> low, ReadOnlySpan<double> high, Worker worker)
    {
        var slope = 0.0;
        for (var k = 0; k < numeric.Length; k++) slope += (high[numeric[k]] - low[numeric[k]]) * worker.Robust.U[k];
        return slope;
    }

    /// <summary>
    /// Gradient and curvature of the log likelihood along directions of the prediction, with the readings dropped by the last
    /// <see cref="LogLikelihood"/> of this worker left out.
    /// </summary>
    public void Project(double[][] directions, Spread spread, Worker worker, Span<double> gradient, Span<double> curvature)
    {
        var (n, count) = (numeric.Length, directions.Length);
        var precision = worker.Robust.PrecisionOr(spread.Gaussian.Precision);
        var along = new double[count][];
        for (var k = 0; k < count; k++)
        {
            along[k] = new double[n];
            for (var i = 0; i < n; i++) along[k][i] = directions[k][numeric[i]];
            gradient[k] = Vectors.Dot(along[k], worker.Robust.U.AsSpan(0, n));
        }
        var weighted = new double[n];
        for (var k = 0; k < count; k++)
        {
            for (var i = 0; i < n; i++) weighted[i] = Vectors.Dot(precision.AsSpan(i * n, n), along[k]);
            for (var j = 0; j < count; j++) curvature[(k * count) + j] = Vectors.Dot(weighted, along[j]);
        }
    }

    /// <summary>Log likelihood of what was told and of readings that jumped, for a set of classes.</summary>
    public double LogTold(ReadOnlySpan<FaultClass> classes)
    {
        var log = 0.0;
        foreach (var t in told)
        {
            var (none, any) = (1.0, false);
            foreach (var c in classes)
                if (GivenOf(c.Lead, t.Observation) is { } chance) (none, any) = (none * (1 - chance), true);
            var yes = any ? 1 - none : t.Observation.Otherwise;
            log += Math.Log(Math.Clamp(t.Yes ? yes : 1 - yes, 1e-4, 1));
        }
        foreach (var r in jumps)
        {
            var still = 1 - JumpWithoutCause;
            foreach (var c in classes)
                if (IsIntermittent(c.Lead) && c.Moves[r]) still *= 1 - IntermittentChance;
            log += Math.Log(1 - still);
        }
        return log;
    }

    /// <summary>What observations and jumps say of a mode: modes that differ here are not merged.</summary>
    public string ToldKey(FaultMode mode) => string.Join('|', told.Select(t => GivenOf(mode, t.Observation)?.ToString("R", System.Globalization.CultureInfo.InvariantCulture) ?? ""))
        + (jumps.Length > 0 && IsIntermittent(mode) ? "i" : "");

    /// <summary>True when an observation or a jump speaks of this mode.</summary>
    public bool IsToldOf(FaultMode mode) => told.Any(t => GivenOf(mode, t.Observation) is not null);

    private static double? GivenOf(FaultMode mode, Observation o)
    {
        foreach (var (fault, chance) in o.Given)
            if (fault == mode.Name) return chance;
        return null;
    }

    private static bool IsIntermittent(FaultMode m) => m.Mode is "open" or "resistive" or "worn" or "stuck-open" && m.Kind is not ("winding" or "rectifier" or "lamp" or "resistor");
}
