using System.Globalization;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Words;

/// <summary>Numbers as a person at the bench reads them: with their unit, in three or four digits, a point for decimals.</summary>
public static class ValueText
{
    private static readonly (double By, string Prefix)[] Prefixes = [(1e9, "G"), (1e6, "M"), (1e3, "k")];

    /// <summary>A value with its unit: <c>18.4 V</c>, <c>286 MΩ</c>, <c>OL</c>.</summary>
    /// <param name="value">In the quantity's unit; positive infinity for OL.</param>
    public static string Of(double value, Quantity quantity) =>
        double.IsPositiveInfinity(value) ? "OL" : $"{Scaled(value, quantity, value)} {UnitOf(quantity, value)}";

    /// <summary>A value as it was read, with every digit that a meter has: <c>13.54 V</c>.</summary>
    public static string Read(double value, Quantity quantity)
    {
        var by = IsResistance(quantity) ? PrefixOf(value).By : 1;
        return $"{(value / by).ToString("0.#####", CultureInfo.InvariantCulture)} {UnitOf(quantity, value)}";
    }

    /// <summary>A value in two digits, for what is only about so: <c>0.76 V</c>, <c>18 V</c>, <c>1.1 kΩ</c>.</summary>
    public static string About(double value, Quantity quantity)
    {
        if (double.IsPositiveInfinity(value) || Math.Abs(value) < 5e-4)
            return Of(value, quantity);
        var step = Math.Pow(10, Math.Floor(Math.Log10(Math.Abs(value))) - 1);
        return Read(Math.Round(value / step) * step, quantity);
    }

    /// <summary>A band in the unit of its upper end: <c>17.6–18.4 V</c>.</summary>
    public static string Band(double low, double high, Quantity quantity)
    {
        if (double.IsPositiveInfinity(low))
            return "OL";
        if (double.IsPositiveInfinity(high))
            return $"{Of(low, quantity)} to OL";
        return $"{Scaled(low, quantity, high)}{(low < 0 ? " to " : "–")}{Scaled(high, quantity, high)} {UnitOf(quantity, high)}";
    }

    /// <summary>A probability: <c>97 %</c>, <c>&lt; 1 %</c>.</summary>
    public static string Percent(double p) =>
        p switch
        {
            < 0.01 => "< 1 %",
            > 0.99 => "> 99 %",
            _ => string.Create(CultureInfo.InvariantCulture, $"{p * 100:F0} %"),
        };

    /// <summary>How sure a probability is, in words.</summary>
    public static string SureOf(double probability) =>
        probability switch
        {
            >= 0.95 => "almost certain",
            >= 0.75 => "very likely",
            >= 0.5 => "likely",
            >= 0.2 => "possible",
            >= 0.05 => "unlikely",
            _ => "very unlikely",
        };

    /// <summary>A plain number with three digits.</summary>
    public static string Number(double value)
    {
        var size = Math.Abs(value);
        if (size is >= 1e6 or (> 0 and < 1e-3))
            return value.ToString("0.##E+0", CultureInfo.InvariantCulture);
        if (size < 0.1)
            return value.ToString("G3", CultureInfo.InvariantCulture);
        var decimals =
            size >= 100 ? 0
            : size >= 10 ? 1
            : size >= 1 ? 2
            : 3;
        return value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    /// <summary>A plain number without needless digits: <c>121.4</c>, <c>4</c>.</summary>
    public static string Plain(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>A share as bare percent without needless digits: <c>52.4</c>.</summary>
    public static string PercentOf(double share) => (share * 100).ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>The unit that a value of a quantity is said in, with the prefix that fits: <c>kΩ</c>, <c>V</c>.</summary>
    public static string UnitOf(Quantity quantity, double like) =>
        quantity switch
        {
            Quantity.Ohms or Quantity.InsulationOhms => $"{PrefixOf(like).Prefix}Ω",
            Quantity.AcAmps => "A",
            Quantity.Watts => "W",
            _ => "V",
        };

    /// <summary>The letter of the unit: Ω, V, A, W.</summary>
    public static string LetterOf(Quantity quantity) =>
        quantity switch
        {
            Quantity.Ohms or Quantity.InsulationOhms => "Ω",
            Quantity.AcAmps => "A",
            Quantity.Watts => "W",
            _ => "V",
        };

    /// <summary>What the meter is set to: <c>V AC</c>, <c>V DC</c>, <c>Ω</c>, <c>MΩ at 500 V</c>.</summary>
    public static string SettingOf(Quantity quantity) =>
        quantity switch
        {
            Quantity.Ohms => "Ω",
            Quantity.InsulationOhms => "MΩ at 500 V",
            Quantity.AcVolts => "V AC",
            Quantity.DcVolts => "V DC",
            Quantity.AcAmps => "A AC",
            _ => "W",
        };

    private static bool IsResistance(Quantity quantity) => quantity is Quantity.Ohms or Quantity.InsulationOhms;

    private static string Scaled(double value, Quantity quantity, double like) =>
        Digits(IsResistance(quantity) ? value / PrefixOf(like).By : value);

    private static string Digits(double value)
    {
        var size = Math.Abs(value);
        // Below a thousandth no bench meter shows anything.
        if (size < 5e-4)
            return "0";
        var format =
            size >= 100 ? "F0"
            : size >= 10 ? "F1"
            : size >= 1 ? "F2"
            : "F3";
        return value.ToString(format, CultureInfo.InvariantCulture);
    }

    /// <summary>Small resistances stay in ohms: that is what the meter shows.</summary>
    private static (double By, string Prefix) PrefixOf(double value)
    {
        foreach (var p in Prefixes)
            if (Math.Abs(value) >= p.By)
                return p;
        return (1, "");
    }
}
