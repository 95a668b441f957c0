using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Fitting;

/// <summary>Fits a sheet's values and spreads to the readings of units found sound.</summary>
public static class Fit
{
    private const int MostRounds = 8;
    private const double SmallStep = 1e-3;

    /// <summary>Deviation of a median about the sheet's value before any reading, in the parameter's own spreads: hardly a bound.</summary>
    private const double PriorDeviation = 6;

    /// <summary>A spread weighs as if it had been seen on this many units.</summary>
    private const double PriorUnits = 2;

    /// <summary>A value counts as determined when its standard error is at most this many of its spreads.</summary>
    private const double DeterminedWithin = 1.5;

    /// <summary>A spread counts as determined when the readings are worth at least this many units seen directly.</summary>
    private const double DeterminedUnits = 4;

    /// <summary>
    /// Each unit's parameters are drawn about the sheet's medians with the sheet's spreads; medians by generalised least
    /// squares around the present fit, spreads by expectation–maximisation, both repeated (key laird-ware). The model is linear
    /// in the logarithms near the fit. Cost: units × readings × parameters solutions a round.
    /// </summary>
    /// <param name="units">Readings of sound units, each with its own meter and conditions; OL and jumps are passed over.</param>
    /// <returns>Every value, then every spread; <see cref="FittedParameter.Determined"/> tells which the readings support.</returns>
    public static FitResult Run(UnitModel model, ImmutableArray<UnitReadings> units)
    {
        var count = model.Parameters.Length;
        var (median, ratio) = (new double[count], new double[count]);
        Array.Fill(ratio, 1);
        var rows = units.Select(u => new UnitRows(model, u)).ToArray();
        var (information, worth, rounds, step) = (Array.Empty<double>(), Array.Empty<double>(), 0, double.PositiveInfinity);
        while (rounds < MostRounds && step > SmallStep)
        {
            rounds++;
            foreach (var r in rows) r.Linearise(median);
            (step, information) = MoveMedians(rows, median, ratio);
            worth = MoveSpreads(rows, median, ratio);
        }
        return new FitResult([.. Values(model, median, information, ratio), .. Spreads(model, ratio, worth)], rounds, step);
    }

    /// <summary>Generalised least squares; returns the largest step [spreads] and the covariance of the medians.</summary>
    private static (double Step, double[] Covariance) MoveMedians(UnitRows[] rows, double[] median, double[] ratio)
    {
        var n = median.Length;
        var (information, right) = (new double[n * n], new double[n]);
        for (var p = 0; p < n; p++)
        {
            information[(p * n) + p] = 1 / (PriorDeviation * PriorDeviation);
            right[p] = -median[p] / (PriorDeviation * PriorDeviation);
        }
        foreach (var r in rows) r.AddInformation(ratio, information, right);
        var covariance = new double[n * n];
        PositiveDefinite.Invert(information, covariance, n);
        var worst = 0.0;
        for (var p = 0; p < n; p++)
        {
            var step = Vectors.Dot(covariance.AsSpan(p * n, n), right);
            median[p] += step;
            worst = Math.Max(worst, Math.Abs(step));
        }
        foreach (var r in rows) r.Shift(covariance, right);
        return (worst, covariance);
    }

    /// <summary>Expectation–maximisation of the variances relative to the sheet's; returns how many units' worth is known of each.</summary>
    private static double[] MoveSpreads(UnitRows[] rows, double[] median, double[] ratio)
    {
        var n = median.Length;
        var (sum, worth) = (new double[n], new double[n]);
        foreach (var r in rows) r.AddSpreads(ratio, sum, worth);
        for (var p = 0; p < n; p++) ratio[p] = (sum[p] + PriorUnits) / (rows.Length + PriorUnits);
        return worth;
    }

    private static IEnumerable<FittedParameter> Values(UnitModel model, double[] median, double[] covariance, double[] ratio)
    {
        var n = median.Length;
        for (var p = 0; p < n; p++)
        {
            var parameter = model.Parameters[p];
            var error = Math.Sqrt(covariance[(p * n) + p]);
            var value = parameter.Nominal * Math.Exp(median[p] * parameter.Sigma);
            yield return new FittedParameter(parameter.Path, value, value * error * parameter.Sigma, error <= DeterminedWithin * Math.Max(1, Math.Sqrt(ratio[p])));
        }
    }

    private static IEnumerable<FittedParameter> Spreads(UnitModel model, double[] ratio, double[] worth)
    {
        for (var p = 0; p < ratio.Length; p++)
        {
            var parameter = model.Parameters[p];
            var cut = parameter.Path.LastIndexOf('.');
            var spread = parameter.Sigma * Math.Sqrt(ratio[p]);
            yield return new FittedParameter($"{parameter.Path[..cut]}.spread{parameter.Path[cut..]}", spread, spread / Math.Sqrt(2 * (worth[p] + PriorUnits)), worth[p] >= DeterminedUnits);
        }
    }
}

/// <summary>A value or a spread of a sheet as the readings have it.</summary>
/// <param name="Path">Where it stands in the sheet; a spread as <c>….spread.ohms</c>.</param>
/// <param name="Value">Estimate, in the quantity's unit; a spread is relative.</param>
/// <param name="StandardError">Of the estimate, in the same unit.</param>
/// <param name="Determined">False when the readings hardly say anything about it: then the value is the sheet's own, little moved.</param>
public sealed record FittedParameter(string Path, double Value, double StandardError, bool Determined);

/// <summary>What the readings of sound units say about their sheet, and how the iteration ended.</summary>
public sealed record FitResult(ImmutableArray<FittedParameter> Parameters, int Rounds, double LastStep);
