using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
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

    /// <summary>On a drafted sheet a spread weighs as if it had been seen on this many units: what is in doubt there is the kind, not the spread.</summary>
    private const double DraftedUnits = 20;

    /// <summary>Deviation of what a drafted sheet has no doubt about, in the parameter's own spread.</summary>
    private const double FixedDeviation = 0.01;

    /// <summary>
    /// Each unit's parameters are drawn about the sheet's medians with the sheet's spreads; medians by generalised least
    /// squares around the present fit, spreads by expectation–maximisation, both repeated (key laird-ware). The model is linear
    /// in the logarithms near the fit. On a drafted sheet the doubt about the kind is the prior of the medians, and taps and the ends of
    /// sliders' runs are moved apart. Cost: units × readings × parameters solutions a round.
    /// </summary>
    /// <param name="units">Readings of sound units, each with its own meter and conditions; OL and jumps are passed over.</param>
    /// <returns>Every value, then every spread; <see cref="FittedParameter.Determined"/> tells which the readings support.</returns>
    public static FitResult Run(UnitModel model, ImmutableArray<UnitReadings> units)
    {
        var found = Medians(model, [.. units.Select(u => new FaultedUnit(u))], keepSpreads: false, MostRounds, SmallStep);
        return new FitResult([.. Values(model, found), .. Spreads(model, found)], found.Rounds, found.LastStep)
        {
            Turns = [.. Turns(found)],
        };
    }

    /// <summary>The medians from units that may be faulty, their faults known.</summary>
    /// <param name="keepSpreads">The spreads of units are left as they are.</param>
    internal static KindMedians Medians(
        UnitModel model,
        ImmutableArray<FaultedUnit> units,
        bool keepSpreads,
        int mostRounds,
        double smallStep
    )
    {
        var shapes = TurnShape.Of(model);
        var isDrafted = model.Parameters.Any(p => p.KindSigma > 0);
        double[] prior =
        [
            .. model.Parameters.Select(
                (p, n) => isDrafted ? Math.Max(DoubtOf(model, shapes, n) / p.Sigma, FixedDeviation) : PriorDeviation
            ),
            .. shapes.Select(_ => 1.0),
        ];
        double[] usual = [.. model.Parameters.Select(p => p.UnitSigma * p.UnitSigma / (p.Sigma * p.Sigma))];
        var (median, ratio) = (new double[prior.Length], (double[])usual.Clone());
        var rows = units.Select(u => new UnitRows(model, u, shapes)).ToArray();
        var (information, worth, rounds, step) = (Array.Empty<double>(), new double[usual.Length], 0, double.PositiveInfinity);
        while (rounds < mostRounds && step > smallStep)
        {
            rounds++;
            foreach (var r in rows)
                r.Linearise(median);
            (step, information) = MoveMedians(rows, median, ratio, prior);
            if (!keepSpreads)
                worth = MoveSpreads(rows, ratio, usual, isDrafted ? DraftedUnits : PriorUnits);
        }
        return new(model, shapes, rows, median, information, ratio, worth, prior, rounds, step);
    }

    /// <summary>Doubt about a median, that of the taps left out where they have their own.</summary>
    private static double DoubtOf(UnitModel model, ImmutableArray<TurnShape> shapes, int parameter) =>
        shapes.FirstOrDefault(s => s.Winding == parameter)?.Doubt ?? model.Parameters[parameter].KindSigma;

    /// <summary>Generalised least squares; returns the largest step [spreads] and the covariance of the medians.</summary>
    private static (double Step, double[] Covariance) MoveMedians(UnitRows[] rows, double[] median, double[] ratio, double[] prior)
    {
        var n = median.Length;
        var (information, right) = (new double[n * n], new double[n]);
        for (var p = 0; p < n; p++)
        {
            information[(p * n) + p] = 1 / (prior[p] * prior[p]);
            right[p] = -median[p] / (prior[p] * prior[p]);
        }
        foreach (var r in rows)
            r.AddInformation(ratio, information, right);
        var covariance = new double[n * n];
        PositiveDefinite.Invert(information, covariance, n);
        var worst = 0.0;
        for (var p = 0; p < n; p++)
        {
            var step = Vectors.Dot(covariance.AsSpan(p * n, n), right);
            median[p] += step;
            worst = Math.Max(worst, Math.Abs(step));
        }
        foreach (var r in rows)
            r.Shift(covariance, right);
        return (worst, covariance);
    }

    /// <summary>Expectation–maximisation of the variances relative to the sheet's; returns how many units' worth is known of each.</summary>
    private static double[] MoveSpreads(UnitRows[] rows, double[] ratio, double[] usual, double priorUnits)
    {
        var n = ratio.Length;
        var (sum, worth) = (new double[n], new double[n]);
        foreach (var r in rows)
            r.AddSpreads(ratio, sum, worth);
        for (var p = 0; p < n; p++)
            ratio[p] = (sum[p] + (priorUnits * usual[p])) / (rows.Length + priorUnits);
        return worth;
    }

    private static IEnumerable<FittedParameter> Values(UnitModel model, KindMedians found)
    {
        for (var p = 0; p < model.Parameters.Length; p++)
        {
            var parameter = model.Parameters[p];
            var error = found.ErrorOf(p);
            var value = parameter.Nominal * Math.Exp(found.Median[p] * parameter.Sigma);
            yield return new FittedParameter(
                parameter.Path,
                value,
                value * error * parameter.Sigma,
                parameter.KindSigma > 0 ? found.IsMeasured(p) : error <= DeterminedWithin * Math.Max(1, Math.Sqrt(found.Ratio[p]))
            );
        }
    }

    private static IEnumerable<FittedParameter> Turns(KindMedians found) =>
        found.Shapes.Select(
            (s, k) => new FittedParameter(s.Path, found.TurnOf(k), found.TurnOf(k) * found.TurnErrorOf(k), found.IsTurnMeasured(k))
        );

    private static IEnumerable<FittedParameter> Spreads(UnitModel model, KindMedians found)
    {
        var (ratio, worth) = (found.Ratio, found.Worth);
        for (var p = 0; p < ratio.Length; p++)
        {
            var parameter = model.Parameters[p];
            var cut = parameter.Path.LastIndexOf('.');
            var spread = parameter.Sigma * Math.Sqrt(ratio[p]);
            yield return new FittedParameter(
                $"{parameter.Path[..cut]}.spread{parameter.Path[cut..]}",
                spread,
                spread / Math.Sqrt(2 * (worth[p] + PriorUnits)),
                worth[p] >= DeterminedUnits
            );
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
public sealed record FitResult(ImmutableArray<FittedParameter> Parameters, int Rounds, double LastStep)
{
    /// <summary>Of a drafted sheet, the turns of taps and of the ends of sliders' runs.</summary>
    public ImmutableArray<FittedParameter> Turns { get; init; } = [];
}
