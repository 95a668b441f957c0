using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Fitting;

/// <summary>One unit's numbers, linearised about the present fit on the meter's scale: by parameter, then by turn that is in doubt by itself.</summary>
internal sealed class UnitRows
{
    private const double Step = 0.1;

    /// <summary>Step of a fault's size, and its standard deviation (log-uniform over a decade or more), in the logarithm.</summary>
    private const double SizeStep = 0.1,
        SizeDeviation = 1;

    private readonly UnitModel model;
    private readonly ReadingSet set;
    private readonly Predictor predictor;
    private readonly Predictor[] shapePredictors;
    private readonly FaultedUnit unit;
    private readonly Fault[] faults;
    private readonly ImmutableArray<TurnShape> shapes;
    private readonly TakenReading[] taken;
    private readonly double[] measured;
    private readonly double[] residual;
    private readonly double[] slopes;
    private readonly List<double[]> free = [];

    public UnitRows(UnitModel model, FaultedUnit unit, ImmutableArray<TurnShape> shapes)
    {
        (this.model, this.unit, this.shapes, faults) = (model, unit, shapes, [.. unit.Faults]);
        var readings = unit.Readings;
        taken =
        [
            .. readings.Readings.Where(r =>
                r.Outcome == Outcome.Value && !unit.SetAside.Contains(r.Spec.Id) && Judging.IsEvidence(model, r.Spec, r.State)
            ),
        ];
        ReadingSet Set(UnitModel of) => new(of, new FaultCatalogue(of), taken.Select(t => (t.Spec, t.State, readings.ErrorOf(t))));
        set = Set(model);
        predictor = new Predictor(set);
        shapePredictors = [.. shapes.Select(s => new Predictor(Set(s.Moved)))];
        measured = [.. taken.Select((t, r) => set.Errors[r].ToScale(t.Value))];
        residual = new double[measured.Length];
        slopes = new double[measured.Length * Width];
    }

    private int N => measured.Length;

    private int Count => model.Parameters.Length;

    private int Width => Count + shapes.Length;

    /// <summary>
    /// Residuals and slopes (for one of the sheet's spreads, or one deviation of a turn's own doubt) at medians given in these; what
    /// cannot be solved says nothing. A turn's own doubt stays a straight line about the sheet.
    /// </summary>
    public void Linearise(double[] median)
    {
        var factors = new double[Count];
        double?[] At(Predictor by, int moved, Fault[] with)
        {
            for (var p = 0; p < Count; p++)
                factors[p] = Math.Exp((median[p] + (p == moved ? Step : 0)) * model.Parameters[p].Sigma);
            using var assumed = by.Assume(with, factors);
            var values = new double?[N];
            for (var r = 0; r < N; r++)
                values[r] = assumed.Scaled(r);
            return values;
        }
        var centre = At(predictor, -1, faults);
        for (var r = 0; r < N; r++)
            residual[r] = measured[r] - centre[r] ?? 0;
        for (var p = 0; p < Count; p++)
        {
            var moved = At(predictor, p, faults);
            for (var r = 0; r < N; r++)
                slopes[(r * Width) + p] = (moved[r] - centre[r]) / Step ?? 0;
        }
        for (var k = 0; k < shapes.Length; k++)
        {
            var moved = At(shapePredictors[k], -1, faults);
            for (var r = 0; r < N; r++)
            {
                slopes[(r * Width) + Count + k] = (moved[r] - centre[r]) / Math.Log(TurnShape.Step) * shapes[k].Doubt ?? 0;
                residual[r] -= slopes[(r * Width) + Count + k] * median[Count + k];
            }
        }
        free.Clear();
        for (var f = 0; f < faults.Length; f++)
        {
            if (!faults[f].Mode.HasSize)
                continue;
            var larger = (Fault[])faults.Clone();
            larger[f] = larger[f] with { Size = larger[f].Size * Math.Exp(SizeStep) };
            var moved = At(predictor, -1, larger);
            free.Add([.. Enumerable.Range(0, N).Select(r => (moved[r] - centre[r]) / SizeStep * SizeDeviation ?? 0)]);
        }
        foreach (var (fault, probability) in unit.Doubtful)
        {
            var moved = At(predictor, -1, [.. faults, fault]);
            free.Add([.. Enumerable.Range(0, N).Select(r => (moved[r] - centre[r]) * Math.Sqrt(probability * (1 - probability)) ?? 0)]);
        }
    }

    /// <summary>Adds SᵀΣ⁻¹S and SᵀΣ⁻¹r, Σ the unit's own spread, what its faults leave free, and the meter's error.</summary>
    public void AddInformation(double[] ratio, double[] information, double[] right)
    {
        var precision = Precision(ratio);
        var weighted = Weighted(precision);
        for (var r = 0; r < N; r++)
        for (var p = 0; p < Width; p++)
        {
            var w = weighted[(r * Width) + p];
            if (w == 0)
                continue;
            right[p] += w * residual[r];
            Vectors.AddScaled(information.AsSpan(p * Width, Width), slopes.AsSpan(r * Width, Width), w);
        }
    }

    /// <summary>Residuals after the medians moved by covariance·right.</summary>
    public void Shift(double[] covariance, double[] right)
    {
        for (var p = 0; p < Width; p++)
        {
            var step = Vectors.Dot(covariance.AsSpan(p * Width, Width), right);
            for (var r = 0; r < N; r++)
                residual[r] -= slopes[(r * Width) + p] * step;
        }
    }

    /// <summary>Adds each parameter's expected square of its deviation, and how much of it the readings tell [0..1].</summary>
    public void AddSpreads(double[] ratio, double[] sum, double[] worth)
    {
        var precision = Precision(ratio);
        var weighted = Weighted(precision);
        for (var p = 0; p < Count; p++)
        {
            var (mean, told) = (0.0, 0.0);
            for (var r = 0; r < N; r++)
            {
                mean += weighted[(r * Width) + p] * residual[r];
                told += weighted[(r * Width) + p] * slopes[(r * Width) + p];
            }
            mean *= ratio[p];
            told = Math.Clamp(told * ratio[p], 0, 1);
            sum[p] += (mean * mean) + (ratio[p] * (1 - told));
            worth[p] += told;
        }
    }

    /// <summary>How much each reading alone says about a parameter, or about a turn; the readings by id.</summary>
    public IEnumerable<(string Id, double Information)> Sources(double[] ratio, int column)
    {
        var covariance = Covariance(ratio);
        for (var r = 0; r < N; r++)
            yield return (taken[r].Spec.Id, Math.Pow(slopes[(r * Width) + column], 2) / covariance[(r * N) + r]);
    }

    /// <summary>
    /// How far each reading is from what the medians give, in the deviations that they, the unit's spread, its faults and the meter leave; by id.
    /// </summary>
    public IEnumerable<(string Id, double Deviation)> Deviations(KindMedians medians)
    {
        Linearise(medians.Median);
        var covariance = Covariance(medians.Ratio);
        for (var r = 0; r < N; r++)
        {
            var own = slopes.AsSpan(r * Width, Width).ToArray();
            var doubt = 0.0;
            for (var p = 0; p < Width; p++)
                doubt += own[p] * Vectors.Dot(medians.Covariance.AsSpan(p * Width, Width), own);
            yield return (taken[r].Spec.Id, residual[r] / Math.Sqrt(covariance[(r * N) + r] + doubt));
        }
    }

    private double[] Covariance(double[] ratio)
    {
        var covariance = new double[N * N];
        var scaled = new double[Count];
        for (var i = 0; i < N; i++)
        {
            for (var p = 0; p < Count; p++)
                scaled[p] = slopes[(i * Width) + p] * ratio[p];
            for (var j = 0; j < N; j++)
            {
                var sum = Vectors.Dot(scaled, slopes.AsSpan(j * Width, Count)) + set.ErrorCovariance(i, j);
                foreach (var d in free)
                    sum += d[i] * d[j];
                covariance[(i * N) + j] = sum;
            }
        }
        return covariance;
    }

    private double[] Precision(double[] ratio)
    {
        var precision = new double[N * N];
        PositiveDefinite.Invert(Covariance(ratio), precision, N);
        return precision;
    }

    private double[] Weighted(double[] precision)
    {
        var weighted = new double[N * Width];
        for (var i = 0; i < N; i++)
        for (var j = 0; j < N; j++)
            Vectors.AddScaled(weighted.AsSpan(i * Width, Width), slopes.AsSpan(j * Width, Width), precision[(i * N) + j]);
        return weighted;
    }
}
