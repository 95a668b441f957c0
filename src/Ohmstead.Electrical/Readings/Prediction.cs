using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>Predicts readings and their bands.</summary>
public static class Prediction
{
    /// <summary>Scale on which values are differenced: nearly linear near zero, logarithmic above; finer than any meter.</summary>
    private static readonly MeterError Scale = new(5, 1e-3, 0, 0);

    private static readonly Meter ScaleMeter = new(Enum.GetValues<Quantity>().ToImmutableDictionary(q => q, _ => Scale));

    private static readonly Meter AveragingScaleMeter = new(ScaleMeter.Errors.SetItem(Quantity.AcVolts, Scale with { IsAveraging = true }));

    /// <summary>
    /// Predicts each reading in its state. Bands are good to a twentieth of their width (<c>docs/methods/bands.md</c>); where a
    /// reading is OL for some units and a number for others they reach to OL. Cost: two to four solutions of a reading for each
    /// parameter of the sheet; some times that with faults of unknown size.
    /// </summary>
    /// <param name="readings">What is read, and the state it is read in.</param>
    /// <param name="faults">The faults assumed; empty for a sound unit.</param>
    /// <param name="isAveraging">Alternating volts as an averaging meter shows them (<see cref="MeterError.IsAveraging"/>).</param>
    public static ImmutableArray<PredictedReading> Run(
        UnitModel model,
        IEnumerable<(ReadingSpec Spec, ReadingState State)> readings,
        ImmutableArray<AssumedFault> faults,
        bool isAveraging = false
    )
    {
        var set = new ReadingSet(model, new FaultCatalogue(model), readings, isAveraging ? AveragingScaleMeter : ScaleMeter);
        Fault[] nominal = [.. faults.Select(f => new Fault(f.Mode, f.Size ?? f.Mode.MiddleSize))];
        var result = new PredictedReading[set.Count];
        // Each thread has scratch of its own, and each reading its own place: the answer does not depend on who did what.
        Parallel.For(
            0,
            set.Count,
            () => new BandFinder(set, new Predictor(set)),
            (r, _, finder) =>
            {
                if (finder.ValueOf(r, nominal) is not { } value)
                {
                    result[r] = PredictedReading.Unsolved(set.SpecOf(r));
                    return finder;
                }
                var (low, high) = finder.Of(r, faults, value);
                var limit = Solution.OverRange(set.SpecOf(r).Quantity);
                double Shown(double v) => v > limit ? double.PositiveInfinity : v;
                result[r] = new PredictedReading(
                    set.SpecOf(r),
                    Shown(value),
                    Shown(Scale.FromScale(low)),
                    Shown(Scale.FromScale(high)),
                    set.CanJudge(r)
                );
                return finder;
            },
            _ => { }
        );
        return ImmutableCollectionsMarshal.AsImmutableArray(result);
    }
}

/// <summary>A reading as predicted: the nominal value and the central 95 % band among units of this kind with these faults.</summary>
/// <param name="Value">In the quantity's unit; positive infinity for OL.</param>
/// <param name="Low">Lower end of the band, the meter's error not included; positive infinity for OL.</param>
/// <param name="High">Upper end of the band.</param>
/// <param name="CanJudge">False when nothing may be concluded from it (<see cref="Judging"/>).</param>
public sealed record PredictedReading(ReadingSpec Spec, double Value, double Low, double High, bool CanJudge = true)
{
    /// <summary>A reading that cannot be solved: anything may be shown, and nothing is concluded from it.</summary>
    internal static PredictedReading Unsolved(ReadingSpec spec) =>
        new(spec, double.PositiveInfinity, 0, double.PositiveInfinity, CanJudge: false);
}

/// <summary>A fault to predict with: a size of null means any size, log-uniform over its range.</summary>
public readonly record struct AssumedFault(FaultMode Mode, double? Size)
{
    /// <summary>True when the size is unknown and can be chosen.</summary>
    internal bool IsFree => Size is null && Mode.HasSize;
}
