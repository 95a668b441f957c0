using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>
/// What a meter shows on 95 % of sound units under the conditions that are really so: the band among units, widened by the
/// meter's error, its leads still in the value.
/// </summary>
/// <param name="Value">On the nominal unit; positive infinity for OL.</param>
/// <param name="Low">Lower end; positive infinity for OL.</param>
/// <param name="High">Upper end; positive infinity when OL may be shown.</param>
/// <param name="CanJudge">False when nothing may be concluded from it (<see cref="Judging"/>).</param>
public sealed record Expectation(Quantity Quantity, double Value, double Low, double High, bool CanJudge = true)
{
    /// <summary>A rectangular error's standard deviation is limit/√3; 1.96 of them hold 95 % of a normal law.</summary>
    private const double LimitsIn95Percent = BandDeviations / 1.7320508;

    private const double BandDeviations = 1.959964;

    /// <summary>Works out the band. Cost: two solutions of the reading for each parameter of the sheet, some milliseconds.</summary>
    public static Expectation Of(UnitModel model, ReadingSpec spec, ReadingState state, Meter meter) =>
        Of(Prediction.Run(model, [(spec, state)], [], meter.IsAveraging)[0], meter.For(spec.Quantity));

    /// <summary>The band of a prediction on a meter.</summary>
    public static Expectation Of(PredictedReading p, MeterError meter)
    {
        var quantity = p.Spec.Quantity;
        var leads = quantity == Quantity.Ohms ? meter.LeadOhms : 0;
        var middle = double.IsPositiveInfinity(p.High) ? p.Low : Math.Clamp(p.Value, p.Low, p.High);
        var low = middle - double.Hypot(middle - p.Low, LimitsIn95Percent * meter.LimitAt(p.Low)) + leads;
        var high = middle + double.Hypot(p.High - middle, LimitsIn95Percent * meter.LimitAt(p.High)) + leads;
        if (double.IsPositiveInfinity(p.Low))
            low = double.PositiveInfinity;
        if (double.IsPositiveInfinity(p.High))
            high = double.PositiveInfinity;
        // Only a direct voltage has a sign.
        return new(quantity, p.Value + leads, quantity == Quantity.DcVolts ? low : Math.Max(low, 0), high, p.CanJudge);
    }

    /// <summary>How a value stands to the band.</summary>
    /// <param name="value">As the meter shows it; positive infinity for OL.</param>
    public Standing Judge(double value)
    {
        if (!CanJudge)
            return new(Side.NotJudged, 0, 0);
        var isBelow = value < Low;
        var end = isBelow || (Holds(value) && value < Value) ? Low : High;
        var off = double.IsInfinity(value) && double.IsInfinity(Value) ? 0 : Math.Abs(value - Value);
        var deviations =
            off == 0 ? 0
            : double.IsInfinity(off) || double.IsInfinity(end) ? double.PositiveInfinity
            : BandDeviations * off / Math.Max(Math.Abs(end - Value), 1e-12);
        return new(
            Holds(value) ? Side.Within
                : isBelow ? Side.Below
                : Side.Above,
            off,
            deviations
        );
    }

    /// <summary>True when a value lies in the band.</summary>
    public bool Holds(double value) => value >= Low && value <= High;

    /// <summary>True when the two bands have no value in common.</summary>
    public bool IsApartFrom(Expectation other) => Low > other.High || other.Low > High;
}
