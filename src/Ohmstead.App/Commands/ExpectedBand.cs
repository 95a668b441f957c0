using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Commands;

/// <summary>
/// What this meter shows on 95 % of units: the band among units, widened by the meter's error, its leads still in the value.
/// </summary>
/// <param name="Value">The nominal unit's value on this meter; positive infinity for OL.</param>
internal readonly record struct ExpectedBand(Quantity Quantity, double Value, double Low, double High)
{
    /// <summary>A rectangular error's standard deviation is limit/√3; 1.96 of them hold 95 % of a normal law.</summary>
    private const double LimitsIn95Percent = 1.959964 / 1.7320508;

    public static ExpectedBand Of(PredictedReading p, MeterError meter)
    {
        var quantity = p.Spec.Quantity;
        var leads = quantity == Quantity.Ohms ? meter.LeadOhms : 0;
        var middle = double.IsPositiveInfinity(p.High) ? p.Low : Math.Clamp(p.Value, p.Low, p.High);
        var low = middle - double.Hypot(middle - p.Low, LimitsIn95Percent * meter.LimitAt(p.Low)) + leads;
        var high = middle + double.Hypot(p.High - middle, LimitsIn95Percent * meter.LimitAt(p.High)) + leads;
        if (double.IsPositiveInfinity(p.Low)) low = double.PositiveInfinity;
        if (double.IsPositiveInfinity(p.High)) high = double.PositiveInfinity;
        // Only a direct voltage has a sign.
        return new(quantity, p.Value + leads, quantity == Quantity.DcVolts ? low : Math.Max(low, 0), high);
    }

    public bool Holds(double value) => value >= Low && value <= High;

    public bool IsApartFrom(ExpectedBand other) => Low > other.High || other.Low > High;

    public override string ToString() => Shown.Band(Low, High, Quantity);
}
