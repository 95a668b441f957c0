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

    /// <summary>From this ratio of its ends a band spans a decade, or nearly.</summary>
    private const double LeastDecade = 8;

    /// <summary>Works out the band. Cost: two solutions of the reading for each parameter of the sheet, some milliseconds.</summary>
    public static Expectation Of(UnitModel model, ReadingSpec spec, ReadingState state, Meter meter) =>
        Of(Prediction.Run(model, [(spec, state)], [], meter.IsAveraging)[0], meter.For(spec.Quantity));

    /// <summary>The band of a prediction on a meter.</summary>
    public static Expectation Of(PredictedReading p, MeterError meter)
    {
        var quantity = p.Spec.Quantity;
        var leads = meter.LeadsIn(quantity);
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

    /// <summary>
    /// True when a value is judged by how many times it is off, not by how much: insulation, and whatever else spreads over a
    /// decade or nearly. An insulation path spreads log-normally by 0.63 in the logarithm, a band from 1/3.4 to 3.4 times.
    /// </summary>
    public bool SpansDecades => Quantity == Quantity.InsulationOhms || (Low > 0 && High / Low > LeastDecade);

    /// <summary>How a value stands to the band, on the scale on which the quantity spreads.</summary>
    /// <param name="value">As the meter shows it; positive infinity for OL.</param>
    public Standing Judge(double value)
    {
        if (!CanJudge)
            return new(Side.NotJudged, 0, 0);
        var side =
            Holds(value) ? Side.Within
            : value < Low ? Side.Below
            : Side.Above;
        var end = side == Side.Below || (side == Side.Within && value < Value) ? Low : High;
        var fromNominal = double.IsInfinity(value) && double.IsInfinity(Value) ? 0 : Math.Abs(value - Value);
        return new(side, side == Side.Within ? 0 : Math.Abs(value - end), fromNominal == 0 ? 0 : DeviationsAt(value, end, fromNominal))
        {
            TimesOut = side == Side.Within ? 0 : Ratio(value, end),
        };
    }

    private double DeviationsAt(double value, double end, double fromNominal)
    {
        if (double.IsInfinity(fromNominal) || double.IsInfinity(end))
            return double.PositiveInfinity;
        // Below a millionth of the band's end nothing is smaller yet: a logarithm of 0 would say nothing.
        var isLogarithmic = SpansDecades && Value > 0 && end > 0;
        var (distance, whole) = isLogarithmic
            ? (Math.Log(Math.Max(value, end * 1e-6) / Value), Math.Log(end / Value))
            : (fromNominal, end - Value);
        return BandDeviations * Math.Abs(distance) / Math.Max(Math.Abs(whole), 1e-12);
    }

    /// <summary>How many times one value is the other, the larger over the smaller; 0 where their signs differ.</summary>
    private static double Ratio(double a, double b)
    {
        if (a * b < 0)
            return 0;
        var (small, large) = (Math.Min(Math.Abs(a), Math.Abs(b)), Math.Max(Math.Abs(a), Math.Abs(b)));
        return large == small ? 1 : large / Math.Max(small, 1e-12);
    }

    /// <summary>True when a value lies in the band.</summary>
    public bool Holds(double value) => value >= Low && value <= High;

    /// <summary>True when the two bands have no value in common.</summary>
    public bool IsApartFrom(Expectation other) => Low > other.High || other.Low > High;
}
