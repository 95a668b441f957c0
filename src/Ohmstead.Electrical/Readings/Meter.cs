using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>A meter: its error for each quantity.</summary>
public sealed record Meter(ImmutableDictionary<Quantity, MeterError> Errors)
{
    /// <summary>A usual cheap meter (common practice, no source).</summary>
    public static Meter Usual { get; } =
        new(
            new Dictionary<Quantity, MeterError>
            {
                [Quantity.Ohms] = new(0.8, 0.05, 0, 0),
                [Quantity.InsulationOhms] = new(5, 20e3, 0, 0),
                [Quantity.AcVolts] = new(0.8, 0.03, 0, 0),
                [Quantity.DcVolts] = new(0.8, 0.03, 0, 0),
                [Quantity.AcAmps] = new(0.8, 0.01, 0, 0),
                [Quantity.Watts] = new(0.8, 0.5, 0, 0),
            }.ToImmutableDictionary()
        );

    /// <summary>The error for a quantity.</summary>
    public MeterError For(Quantity quantity) => Errors[quantity];

    /// <summary>True when its alternating volts are those of an averaging meter.</summary>
    public bool IsAveraging => Errors[Quantity.AcVolts].IsAveraging;
}

/// <summary>The error of one range of a meter: ± (percent of the value + floor), taken as a rectangular distribution.</summary>
/// <param name="Percent">Share of the value [%].</param>
/// <param name="Floor">Fixed part, in the quantity's unit.</param>
/// <param name="Shared">Share of the limit [0..1] that is one common error of all readings of the quantity.</param>
/// <param name="LeadOhms">What the probes read when joined, still in the values [Ω].</param>
public sealed record MeterError(double Percent, double Floor, double Shared, double LeadOhms)
{
    /// <summary>
    /// True when alternating volts are rectified, averaged and scaled to be right for a sine: what is shown is π/(2√2) times the
    /// mean of |v|, the mean of v removed first. False for true RMS.
    /// </summary>
    public bool IsAveraging { get; init; }

    /// <summary>What the probes and their leads add to a reading of a quantity: only ohms have them in.</summary>
    public double LeadsIn(Quantity quantity) => quantity == Quantity.Ohms ? LeadOhms : 0;

    /// <summary>The limit of error at a value, in the quantity's unit.</summary>
    public double LimitAt(double value) => (Percent / 100 * Math.Abs(value)) + Floor;

    /// <summary>
    /// A value on a scale on which the limit of error is 1 everywhere: t = ln(1 + p|v|/f)/p with the value's sign. Small
    /// values stay linear, large ones become logarithmic, as the spread of resistances wants.
    /// </summary>
    public double ToScale(double value)
    {
        var (p, f) = (Percent / 100, Math.Max(Floor, 1e-9));
        return p < 1e-9 ? value / f : Math.Sign(value) * Math.Log(1 + (p * Math.Abs(value) / f)) / p;
    }

    /// <summary>The value at a place on the scale of <see cref="ToScale"/>.</summary>
    public double FromScale(double t)
    {
        var (p, f) = (Percent / 100, Math.Max(Floor, 1e-9));
        return p < 1e-9 ? t * f : Math.Sign(t) * f / p * (Math.Exp(p * Math.Abs(t)) - 1);
    }
}
