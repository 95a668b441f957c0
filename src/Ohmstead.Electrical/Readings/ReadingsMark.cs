using System.Globalization;
using System.Text;

namespace Ohmstead.Electrical.Readings;

/// <summary>By what a drafted sheet knows the readings that it was drafted from: their numbers, whatever they are called.</summary>
public static class ReadingsMark
{
    /// <summary>The mark of some readings: 16 hexadecimal digits (FNV-1a of their values in order).</summary>
    public static string Of(UnitReadings readings)
    {
        const ulong start = 14695981039346656037,
            prime = 1099511628211;
        var values = readings
            .Readings.Where(r => r.Outcome == Outcome.Value)
            .Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.Spec.Quantity} {r.Value:R}"))
            .Order(StringComparer.Ordinal);
        var mark = Encoding.UTF8.GetBytes(string.Join('\n', values)).Aggregate(start, (hash, b) => unchecked((hash ^ b) * prime));
        return mark.ToString("x16", CultureInfo.InvariantCulture);
    }
}
