using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>A reading as predicted: the nominal value and the central 95 % band among units of this kind with these faults.</summary>
/// <param name="Value">In the quantity's unit; positive infinity for OL.</param>
/// <param name="Low">Lower end of the band, the meter's error not included; positive infinity for OL.</param>
/// <param name="High">Upper end of the band.</param>
public sealed record PredictedReading(ReadingSpec Spec, double Value, double Low, double High);

/// <summary>A fault to predict with: a size of null means any size, log-uniform over its range.</summary>
public readonly record struct AssumedFault(FaultMode Mode, double? Size);

/// <summary>Predicts readings and their bands.</summary>
public static class Prediction
{
    /// <summary>Quantiles of the band, in standard deviations.</summary>
    private const double Half = 1.959964;

    /// <summary>Size points for a fault of any size: the band is that of their mixture.</summary>
    private const int SizePoints = 12;

    /// <summary>Scale on which values are differenced: nearly linear near zero, logarithmic above; finer than any meter.</summary>
    private static readonly MeterError Scale = new(5, 1e-3, 0, 0);

    private static readonly Meter ScaleMeter = new(Enum.GetValues<Quantity>().ToImmutableDictionary(q => q, _ => Scale));

    private static readonly Meter AveragingScaleMeter = new(ScaleMeter.Errors.SetItem(Quantity.AcVolts, Scale with { IsAveraging = true }));

    /// <summary>
    /// Predicts each reading in its state. The band comes from the slopes of the reading along every parameter (wide ones
    /// across ± one deviation, see <see cref="Predictor"/>) on a logarithmic scale, good to a tenth of its width; it fails
    /// where a reading is OL for some units and a number for others, there it reaches to OL.
    /// </summary>
    /// <param name="readings">What is read, and the state it is read in.</param>
    /// <param name="faults">The faults assumed; empty for a sound unit.</param>
    /// <param name="isAveraging">Alternating volts as an averaging meter shows them (<see cref="MeterError.IsAveraging"/>).</param>
    public static ImmutableArray<PredictedReading> Run(
        UnitModel model, IEnumerable<(ReadingSpec Spec, ReadingState State)> readings, ImmutableArray<AssumedFault> faults, bool isAveraging = false)
    {
        var set = new ReadingSet(model, new FaultCatalogue(model), readings, isAveraging ? AveragingScaleMeter : ScaleMeter);
        var predictor = new Predictor(set);
        Fault[] nominal = [.. faults.Select(f => new Fault(f.Mode, f.Size ?? f.Mode.MiddleSize))];
        var result = ImmutableArray.CreateBuilder<PredictedReading>(set.Count);
        for (var r = 0; r < set.Count; r++)
        {
            predictor.Begin(nominal);
            var value = predictor.Value(r, nominal);
            var parts = SizeSets(faults).Select(f => PartOf(predictor, set, r, f)).ToArray();
            var limit = Solution.OverRange(set.SpecOf(r).Quantity);
            double Shown(double v) => v > limit ? double.PositiveInfinity : v;
            result.Add(new PredictedReading(set.SpecOf(r), Shown(value), Shown(Scale.FromScale(Quantile(parts, -Half))), Shown(Scale.FromScale(Quantile(parts, Half)))));
        }
        return result.MoveToImmutable();
    }

    /// <summary>
    /// Mean, deviation and skewness of a reading on the scale when each parameter moves it by a·z + b·z², z standard normal:
    /// mean b, variance a² + 2b², third moment 6a²b + 8b³, each summed over the parameters.
    /// </summary>
    private static Part PartOf(Predictor predictor, ReadingSet set, int reading, Fault[] faults)
    {
        var count = set.Model.Parameters.Length;
        var which = new bool[count];
        Array.Fill(which, true);
        var (slopes, bends) = (new double[count], new double[count]);
        predictor.Begin(faults);
        var centre = predictor.Scaled(reading, faults);
        predictor.SlopesOf(reading, faults, centre, which, slopes, bends);
        var (mean, variance, third) = (centre, 0.0, 0.0);
        for (var p = 0; p < count; p++)
        {
            var (a, b) = (slopes[p], bends[p]);
            mean += b;
            variance += (a * a) + (2 * b * b);
            third += (6 * a * a * b) + (8 * b * b * b);
        }
        return new Part(mean, Math.Sqrt(variance), variance > 0 ? third / Math.Pow(variance, 1.5) : 0);
    }

    private readonly record struct Part(double Mean, double Sigma, double Skewness);

    /// <summary>The sets of sized faults that stand for faults of any size: evenly over the logarithmic range, in step for several.</summary>
    private static IEnumerable<Fault[]> SizeSets(ImmutableArray<AssumedFault> faults)
    {
        var any = faults.Count(f => f.Size is null && f.Mode.HasSize);
        var points = any == 0 ? 1 : SizePoints;
        for (var k = 0; k < points; k++)
        {
            var turn = 0;
            yield return [.. faults.Select(f =>
            {
                if (f.Size is { } size) return new Fault(f.Mode, size);
                if (!f.Mode.HasSize) return new Fault(f.Mode, f.Mode.MiddleSize);
                // Several are stepped by coprime strides, so that large and small sizes meet.
                int[] strides = [1, 5, 7, 11];
                var place = ((k * strides[turn % 4]) + (turn++ / 4)) % points;
                return new Fault(f.Mode, f.Mode.SizeAt((place + 0.5) / points));
            })];
        }
    }

    /// <summary>
    /// The quantile at Φ(z): of one part by Cornish and Fisher's expansion with its skewness (key cornish-fisher), of a mixture
    /// over sizes by bisection.
    /// </summary>
    private static double Quantile(Part[] parts, double z)
    {
        if (parts.Length == 1) return parts[0].Mean + (parts[0].Sigma * (z + (parts[0].Skewness / 6 * ((z * z) - 1))));
        var target = NormalLaw.Below(z);
        var (low, high) = (parts.Min(p => p.Mean - (6 * p.Sigma)), parts.Max(p => p.Mean + (6 * p.Sigma)));
        for (var n = 0; n < 100; n++)
        {
            var middle = (low + high) / 2;
            if (parts.Average(p => NormalLaw.Below((middle - p.Mean) / Math.Max(p.Sigma, 1e-12))) < target) low = middle;
            else high = middle;
        }
        return (low + high) / 2;
    }
}
