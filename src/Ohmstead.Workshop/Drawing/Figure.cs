using System.Globalization;

namespace Ohmstead.Workshop.Drawing;

/// <summary>Numbers as text in drawings: invariant, no more than two decimals.</summary>
internal static class Figure
{
    public static string Of(double number) => Math.Round(number, 2).ToString("0.##", CultureInfo.InvariantCulture);
}
