using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>
/// A scale with the band of sound units on it and the place of what was read. Places run from 0 (left) to 1 (right); what lies
/// beyond the scale stands at its end. Resistances that span decades stand on a logarithmic scale.
/// </summary>
/// <param name="Ticks">Places and labels.</param>
/// <param name="Value">Place of what was read; null for nothing yet.</param>
/// <param name="IsOpenRight">True when OL lies in the band: it then runs on to the right end.</param>
public sealed record BandPicture(
    ImmutableArray<(double Place, string Label)> Ticks,
    double Low,
    double High,
    double? Value,
    bool IsOpenRight
)
{
    /// <summary>The band takes about this share of the scale.</summary>
    private const double BandShare = 0.3;

    private const double DecadeRatio = 8;

    /// <summary>Below this no band of a resistance is drawn in decades [Ω].</summary>
    private const double LeastDecades = 1e4;

    /// <summary>The largest resistance that a scale shows; OL stands beyond it.</summary>
    private const double MostOhms = 1e10;

    /// <summary>Lays out the scale.</summary>
    /// <param name="value">What was read; positive infinity for OL, null for nothing yet.</param>
    public static BandPicture Of(Expectation expected, double? value)
    {
        var isOpen = double.IsPositiveInfinity(expected.High);
        var low = Math.Min(expected.Low, expected.Quantity == Quantity.InsulationOhms ? MostOhms / 10 : 20e6);
        var high = isOpen ? Math.Max(low * 10, expected.Quantity == Quantity.InsulationOhms ? 1e9 : 20e6) : expected.High;
        // A tester of insulation is read in decades, and so are the megohms that leak across an open place.
        return
            expected.Quantity == Quantity.InsulationOhms
            || (expected.Quantity == Quantity.Ohms && high > LeastDecades && low > 0 && high / low > DecadeRatio)
            ? Decades(Math.Max(Math.Min(low, high), LeastDecades / 10), Math.Max(high, LeastDecades), value, isOpen)
            : Even(low, high, value, isOpen, expected.Quantity);
    }

    private static BandPicture Even(double low, double high, double? value, bool isOpen, Quantity quantity)
    {
        var width = Math.Max(high - low, Math.Max(Math.Abs(high), 1e-3) * 1e-3);
        var margin = width * (1 - BandShare) / BandShare / 2;
        var (from, to) = (low - margin, high + margin);
        if (low >= 0)
            from = Math.Max(from, 0);
        // What was read is shown where it is, as long as the band does not shrink to a line for it.
        if (value is { } v && double.IsFinite(v))
            (from, to) = (
                Math.Min(from, Math.Max(v - (width / 2), low - (6 * width))),
                Math.Max(to, Math.Min(v + (width / 2), high + (6 * width)))
            );
        double Place(double x) => Math.Clamp((x - from) / (to - from), 0, 1);
        var step = NiceStep((to - from) / 5);
        var ticks = ImmutableArray.CreateBuilder<(double, string)>();
        for (var t = Math.Ceiling(from / step) * step; t <= to + (step * 1e-9); t += step)
            ticks.Add((Place(t), Math.Abs(to) >= 1000 ? ValueText.Read(t, quantity) : Label(t, step)));
        return new(ticks.ToImmutable(), Place(low), Place(high), value is { } w ? Place(w) : null, isOpen);
    }

    private static BandPicture Decades(double low, double high, double? value, bool isOpen)
    {
        var (from, to) = (Math.Floor(Math.Log10(low) - 1), Math.Ceiling(Math.Log10(high) + 0.5));
        if (value is { } v && v > 0 && double.IsFinite(v))
            (from, to) = (Math.Min(from, Math.Floor(Math.Log10(v))), Math.Max(to, Math.Ceiling(Math.Log10(v))));
        double Place(double x) =>
            x <= 0 ? 0
            : double.IsPositiveInfinity(x) ? 1
            : Math.Clamp((Math.Log10(x) - from) / (to - from), 0, 1);
        var step = (int)Math.Ceiling((to - from) / 6);
        var ticks = Enumerable
            .Range((int)from, (int)(to - from) + 1)
            .Where(d => (d - (int)from) % step == 0)
            .Select(d => (Place(Math.Pow(10, d)), ValueText.Read(Math.Pow(10, d), Quantity.Ohms)));
        return new([.. ticks], Place(low), isOpen ? 1 : Place(high), value is { } w ? Place(w) : null, isOpen);
    }

    private static double NiceStep(double rough)
    {
        var ten = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        return ten
            * (
                (rough / ten) switch
                {
                    <= 1 => 1,
                    <= 2 => 2,
                    <= 5 => 5,
                    _ => 10,
                }
            );
    }

    private static string Label(double tick, double step)
    {
        var decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 0, 4);
        var rounded = Math.Round(tick, decimals);
        return (rounded == 0 ? 0 : rounded).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
