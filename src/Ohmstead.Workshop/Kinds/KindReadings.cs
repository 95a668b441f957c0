using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Kinds;

/// <summary>What the units of a kind have read so far.</summary>
public static class KindReadings
{
    /// <summary>Makes a median distance the standard deviation of a normal law: 1/Φ⁻¹(3/4).</summary>
    private const double MedianToDeviation = 1.4826022;

    /// <summary>
    /// For each reading of the sheet the last value of each unit as it is now. Readings under another load or with a throttle
    /// elsewhere than the sheet says are left out, and units to practice on; volts on the mains are divided by what the line really gave.
    /// </summary>
    public static ImmutableArray<KindReading> Of(UnitModel kind, IEnumerable<BenchUnit> units, Shop shop)
    {
        var sheet = kind.Sheet;
        var values = sheet.Readings.ToDictionary(r => r.Id, _ => new List<UnitValue>(), StringComparer.Ordinal);
        var open = sheet.Readings.ToDictionary(r => r.Id, _ => 0, StringComparer.Ordinal);
        foreach (var unit in units.Where(u => !u.IsPractice))
        foreach (var reading in unit.CurrentReadings.GroupBy(r => r.Fact.ReadingId, StringComparer.Ordinal).Select(g => g.Last().Fact))
        {
            if (sheet.FindReading(reading.ReadingId) is not { } spec)
                continue;
            if (reading.Shown.Kind == ShownKind.OverRange)
                open[spec.Id]++;
            if (reading.Shown.Kind != ShownKind.Value)
                continue;
            var state = BenchConditions.StateOf(kind, spec, reading.Bench, shop);
            if (!state.Loads.SequenceEqual(spec.State.Loads) || !state.Controls.All(c => spec.State.Controls[c.Key] == c.Value))
                continue;
            values[spec.Id].Add(new(unit.Id, unit.Card.Tag, AtLine(sheet, spec, state, reading.Shown.Value)));
        }
        return [.. sheet.Readings.Select(r => Of(r, values[r.Id], open[r.Id]))];
    }

    /// <summary>The median of some values; 0 of none.</summary>
    public static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        if (sorted.Length == 0)
            return 0;
        return sorted.Length % 2 == 1 ? sorted[sorted.Length / 2] : (sorted[(sorted.Length / 2) - 1] + sorted[sorted.Length / 2]) / 2;
    }

    private static KindReading Of(ReadingSpec spec, List<UnitValue> values, int open)
    {
        var median = Median(values.Select(v => v.Value));
        var spread = values.Count < 3 ? 0 : MedianToDeviation * Median(values.Select(v => Math.Abs(v.Value - median)));
        return new(spec, [.. values.OrderBy(v => v.Value)], median, spread, open);
    }

    /// <summary>Volts follow the line; currents and watts of a core do not in proportion, so they stay.</summary>
    private static double AtLine(TypeSheet sheet, ReadingSpec spec, ReadingState state, double value) =>
        spec.Quantity is Quantity.AcVolts or Quantity.DcVolts
        && BenchConditions.IsOnMains(sheet, spec)
        && state.Source is { Volts: > 0 } source
            ? value * spec.State.Source!.Volts / source.Volts
            : value;
}

/// <summary>What the units of a kind have read of one reading.</summary>
/// <param name="Values">The last value of each unit, smallest first; volts on the mains brought to the sheet's line.</param>
/// <param name="Median">Of the values; 0 when there are none.</param>
/// <param name="Spread">Robust standard deviation: 1.4826 times the median distance from the median; 0 below three values.</param>
/// <param name="Open">Units that showed OL.</param>
public sealed record KindReading(ReadingSpec Spec, ImmutableArray<UnitValue> Values, double Median, double Spread, int Open)
{
    /// <summary>How many spreads a value lies from the median; null where the spread is not known.</summary>
    public double? Deviations(double value) => Spread > 0 ? (value - Median) / Spread : null;
}

/// <summary>A value of one unit.</summary>
public sealed record UnitValue(Guid UnitId, string Tag, double Value);
