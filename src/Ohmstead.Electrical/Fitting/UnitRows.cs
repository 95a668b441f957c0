using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Fitting;

/// <summary>One unit's numbers, linearised about the present fit on the meter's scale.</summary>
internal sealed class UnitRows
{
    private const double Step = 0.1;

    private readonly UnitModel model;
    private readonly ReadingSet set;
    private readonly Predictor predictor;
    private readonly double[] measured;
    private readonly double[] residual;
    private readonly double[] slopes;

    public UnitRows(UnitModel model, UnitReadings readings)
    {
        this.model = model;
        var taken = readings.Readings.Where(r => r.Outcome == Outcome.Value && Judging.CanJudge(model, r.Spec, r.State)).ToArray();
        set = new ReadingSet(model, new FaultCatalogue(model), taken.Select(t => (t.Spec, t.State, readings.ErrorOf(t))));
        predictor = new Predictor(set);
        measured = [.. taken.Select((t, r) => set.Errors[r].ToScale(t.Value))];
        residual = new double[measured.Length];
        slopes = new double[measured.Length * model.Parameters.Length];
    }

    private int N => measured.Length;

    private int Count => model.Parameters.Length;

    /// <summary>Residuals and slopes (for one of the sheet's spreads) at medians given in the sheet's spreads; what cannot be solved says nothing.</summary>
    public void Linearise(double[] median)
    {
        var factors = new double[Count];
        double?[] At(int moved)
        {
            for (var p = 0; p < Count; p++) factors[p] = Math.Exp((median[p] + (p == moved ? Step : 0)) * model.Parameters[p].Sigma);
            predictor.Begin([], factors);
            return [.. Enumerable.Range(0, N).Select(r => predictor.Scaled(r, []))];
        }
        var centre = At(-1);
        for (var r = 0; r < N; r++) residual[r] = measured[r] - centre[r] ?? 0;
        for (var p = 0; p < Count; p++)
        {
            var moved = At(p);
            for (var r = 0; r < N; r++) slopes[(r * Count) + p] = (moved[r] - centre[r]) / Step ?? 0;
        }
    }

    /// <summary>Adds SᵀΣ⁻¹S and SᵀΣ⁻¹r, Σ the unit's own spread and the meter's error.</summary>
    public void AddInformation(double[] ratio, double[] information, double[] right)
    {
        var precision = Precision(ratio);
        var weighted = Weighted(precision);
        for (var r = 0; r < N; r++)
            for (var p = 0; p < Count; p++)
            {
                var w = weighted[(r * Count) + p];
                if (w == 0) continue;
                right[p] += w * residual[r];
                Vectors.AddScaled(information.AsSpan(p * Count, Count), slopes.AsSpan(r * Count, Count), w);
            }
    }

    /// <summary>Residuals after the medians moved by covariance·right.</summary>
    public void Shift(double[] covariance, double[] right)
    {
        for (var p = 0; p < Count; p++)
        {
            var step = Vectors.Dot(covariance.AsSpan(p * Count, Count), right);
            for (var r = 0; r < N; r++) residual[r] -= slopes[(r * Count) + p] * step;
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
                mean += weighted[(r * Count) + p] * residual[r];
                told += weighted[(r * Count) + p] * slopes[(r * Count) + p];
            }
            mean *= ratio[p];
            told = Math.Clamp(told * ratio[p], 0, 1);
            sum[p] += (mean * mean) + (ratio[p] * (1 - told));
            worth[p] += told;
        }
    }

    private double[] Precision(double[] ratio)
    {
        var covariance = new double[N * N];
        var scaled = new double[Count];
        for (var i = 0; i < N; i++)
        {
            for (var p = 0; p < Count; p++) scaled[p] = slopes[(i * Count) + p] * ratio[p];
            for (var j = 0; j < N; j++)
                covariance[(i * N) + j] = Vectors.Dot(scaled, slopes.AsSpan(j * Count, Count)) + set.ErrorCovariance(i, j);
        }
        var precision = new double[N * N];
        PositiveDefinite.Invert(covariance, precision, N);
        return precision;
    }

    private double[] Weighted(double[] precision)
    {
        var weighted = new double[N * Count];
        for (var i = 0; i < N; i++)
            for (var j = 0; j < N; j++)
                Vectors.AddScaled(weighted.AsSpan(i * Count, Count), slopes.AsSpan(j * Count, Count), precision[(i * N) + j]);
        return weighted;
    }
}
