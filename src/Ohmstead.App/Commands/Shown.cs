using System.Globalization;
using System.Text;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary>Numbers, bars and rows as a person reads them.</summary>
internal static class Shown
{
    /// <summary>Columns that every table keeps within.</summary>
    public const int Width = 96;

    private static readonly (double By, string Prefix)[] Prefixes = [(1e9, "G"), (1e6, "M"), (1e3, "k")];

    /// <summary>What a sheet is called: its title, or its id.</summary>
    public static string NameOf(TypeSheet sheet) => sheet.Title.Length > 0 ? sheet.Title : PartNames.Unknown(sheet.Id, "A type without a title");

    /// <summary>A value with its unit, three or four digits: <c>18.4 V</c>, <c>286 MΩ</c>, <c>OL</c>.</summary>
    public static string Value(double value, Quantity quantity) => double.IsPositiveInfinity(value) ? "OL" : $"{Scaled(value, quantity, value)} {UnitOf(quantity, value)}";

    /// <summary>A value as it was read, with every digit that a meter has: <c>13.54 V</c>.</summary>
    public static string Read(double value, Quantity quantity)
    {
        var by = quantity is Quantity.Ohms or Quantity.InsulationOhms ? PrefixOf(value).By : 1;
        return $"{(value / by).ToString("0.#####", CultureInfo.InvariantCulture)} {UnitOf(quantity, value)}";
    }

    /// <summary>A band in the unit of its upper end: <c>17.6–18.4 V</c>.</summary>
    public static string Band(double low, double high, Quantity quantity)
    {
        if (double.IsPositiveInfinity(low)) return "OL";
        if (double.IsPositiveInfinity(high)) return $"{Value(low, quantity)} to OL";
        return $"{Scaled(low, quantity, high)}{(low < 0 ? " to " : "–")}{Scaled(high, quantity, high)} {UnitOf(quantity, high)}";
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
    public static string Number(double value)
    {
        var size = Math.Abs(value);
        if (size is >= 1e6 or (> 0 and < 1e-3)) return value.ToString("0.##E+0", CultureInfo.InvariantCulture);
        if (size < 0.1) return value.ToString("G3", CultureInfo.InvariantCulture);
        var decimals = size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
        return value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    /// <summary>Cut to a width with an ellipsis, or padded.</summary>
    public static string Fit(string text, int width) => Cut(text, width).PadRight(width);

    /// <summary>Cut to a width with an ellipsis.</summary>
    public static string Cut(string text, int width) => text.Length <= width ? text : text[..(width - 1)].TrimEnd() + "…";

    /// <summary>Words in lines of at most <see cref="Width"/> columns, the lines after the first moved in.</summary>
    public static string Wrapped(string text, int indent)
    {
        var lines = new StringBuilder();
        var column = 0;
        foreach (var word in text.TrimStart().Split(' '))
        {
            if (column > 0 && column + 1 + word.Length > Width)
            {
                lines.Append('\n').Append(' ', indent + 2);
                column = indent + 2;
            }
            else
            {
                var gap = column == 0 ? indent : 1;
                lines.Append(' ', gap);
                column += gap;
            }
            lines.Append(word);
            column += word.Length;
        }
        return lines.ToString();
    }

    /// <summary>Ids that one types, in lines of their own.</summary>
    public static string Ids(IEnumerable<string> ids) => Wrapped(string.Join(' ', ids), 5);

    private static string UnitOf(Quantity quantity, double like) => quantity switch
    {
        Quantity.Ohms or Quantity.InsulationOhms => $"{PrefixOf(like).Prefix}Ω",
        Quantity.AcAmps => "A",
        Quantity.Watts => "W",
        _ => "V",
    };

    private static string Scaled(double value, Quantity quantity, double like) =>
        Digits(quantity is Quantity.Ohms or Quantity.InsulationOhms ? value / PrefixOf(like).By : value);

    private static string Digits(double value)
    {
        var size = Math.Abs(value);
        // Below a thousandth no bench meter shows anything.
        if (size < 5e-4) return "0";
        return value.ToString(size >= 100 ? "F0" : size >= 10 ? "F1" : size >= 1 ? "F2" : "F3", CultureInfo.InvariantCulture);
    }

    /// <summary>Small resistances stay in ohms: that is what the meter shows.</summary>
    private static (double By, string Prefix) PrefixOf(double value)
    {
        foreach (var p in Prefixes)
            if (Math.Abs(value) >= p.By) return p;
        return (1, "");
    }
}
