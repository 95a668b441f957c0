using System.Globalization;
using System.Text;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Commands;

/// <summary>Numbers, bars and rows as a person reads them.</summary>
internal static class Shown
{
    private static readonly (double From, double By, string Prefix)[] Prefixes = [(1e9, 1e9, "G"), (1e6, 1e6, "M"), (1e3, 1e3, "k"), (1, 1, ""), (0, 1e-3, "m")];

    /// <summary>A value with its unit, three or four digits: <c>18.4 V</c>, <c>286 MΩ</c>, <c>OL</c>.</summary>
    public static string Value(double value, Quantity quantity) => double.IsPositiveInfinity(value) ? "OL" : $"{Scaled(value, quantity, value)}{UnitOf(quantity, value)}";

    /// <summary>A band in the unit of its upper end: <c>17.6–18.4 V</c>.</summary>
    public static string Band(double low, double high, Quantity quantity)
    {
        if (double.IsPositiveInfinity(high)) return double.IsPositiveInfinity(low) ? "OL" : $"{Value(low, quantity)} – OL";
        return $"{Scaled(low, quantity, high)} – {Scaled(high, quantity, high)}{UnitOf(quantity, high)}";
    }

    /// <summary>A share of ten characters, drawn.</summary>
    public static string Bar(double share)
    {
        var eighths = (int)Math.Round(Math.Clamp(share, 0, 1) * 80);
        const string parts = " ▏▎▍▌▋▊▉";
        var bar = new StringBuilder(new string('█', eighths / 8));
        if (eighths % 8 > 0) bar.Append(parts[eighths % 8]);
        return bar.ToString().PadRight(10);
    }

    /// <summary>A probability: <c>97 %</c>, <c>&lt; 1 %</c>.</summary>
    public static string Percent(double p) => p switch
    {
        < 0.01 => "< 1 %",
        > 0.99 => "> 99 %",
        _ => string.Create(CultureInfo.InvariantCulture, $"{p * 100:F0} %"),
    };

    /// <summary>A plain number with three digits.</summary>
    public static string Number(double value) => Digits(value);

    /// <summary>Cut to a width with an ellipsis, or padded.</summary>
    public static string Fit(string text, int width) => text.Length <= width ? text.PadRight(width) : text[..(width - 1)] + "…";

    private static string UnitOf(Quantity quantity, double like) => quantity switch
    {
        Quantity.Ohms or Quantity.InsulationOhms => $" {PrefixOf(like).Prefix}Ω",
        Quantity.AcAmps => " A",
        Quantity.Watts => " W",
        _ => " V",
    };

    private static string Scaled(double value, Quantity quantity, double like) =>
        Digits(quantity is Quantity.Ohms or Quantity.InsulationOhms ? value / PrefixOf(like).By : value);

    private static (double From, double By, string Prefix) PrefixOf(double value)
    {
        // Small resistances stay in ohms: that is what the meter shows.
        foreach (var p in Prefixes)
            if (p.From > 0 && Math.Abs(value) >= p.From) return p;
        return (0, 1, "");
    }

    private static string Digits(double value)
    {
        var size = Math.Abs(value);
        var decimals = size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
        return value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
