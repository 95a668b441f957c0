using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>A throttle swept from stop to stop: where it is read, what a sound unit shows there, what was shown.</summary>
public static class ThrottleSweep
{
    /// <summary>Rows of the table: from stop to stop in tenths of the way.</summary>
    public const int Rows = 11;

    /// <summary>The position of the throttle in a row of the table, from 0 to 1.</summary>
    public static double PositionOf(int row) => (double)row / (Rows - 1);

    /// <summary>The row of the table that a point is in.</summary>
    public static int RowOf(SweepPoint point) => (int)Math.Round(point.Position * (Rows - 1));

    /// <summary>A sweep as it was typed, row by row; empty rows for none.</summary>
    public static string[] Typed(SweepTaken? sweep)
    {
        var typed = Enumerable.Repeat("", Rows).ToArray();
        foreach (var point in sweep?.Points ?? [])
            if (RowOf(point) is >= 0 and < Rows and var row)
                typed[row] = ValueText.Plain(point.Volts);
        return typed;
    }

    /// <summary>The readings that can be swept: AC volts from the mains, nothing connected, one throttle away from rest.</summary>
    public static ImmutableArray<(string Control, ReadingSpec Spec)> Of(TypeSheet sheet) =>
        [
            .. sheet
                .Controls.Where(c => c.IsThrottle)
                .Select(c => (c.Id, sheet.Readings.FirstOrDefault(r => IsOf(sheet, r, c.Id))))
                .Where(p => p.Item2 is not null)
                .Select(p => (p.Id, p.Item2!)),
        ];

    /// <summary>What a sound unit shows in each row, as the bench is now.</summary>
    public static ImmutableArray<Expectation> Expected(UnitModel model, ReadingSpec spec, string control, BenchState bench, Shop shop)
    {
        var (state, meter) = (BenchConditions.StateOf(model, spec, bench, shop), MeterInHand.Of(bench, shop));
        ReadingState At(int row) => state with { Controls = state.Controls.SetItem(control, new ControlPosition(PositionOf(row), "")) };
        return [.. Enumerable.Range(0, Rows).Select(row => Expectation.Of(model, spec, At(row), meter))];
    }

    /// <summary>The highest volts of a picture of it, at least 1 [V].</summary>
    public static double MostVolts(ImmutableArray<Expectation> expected, SweepTaken? sweep) =>
        expected.Select(e => e.High).Concat((sweep?.Points ?? []).Select(p => p.Volts)).Append(1).Max();

    /// <summary>Reads the table: volts as typed, one for each tenth of the way; empty rows are left out.</summary>
    public static TypedFact Enter(ReadingOffer offer, string control, IReadOnlyList<string> volts, BenchState bench)
    {
        if (!offer.IsOpen)
            return new(null, "Locked until the checks before it pass.");
        var points = ImmutableArray.CreateBuilder<SweepPoint>();
        for (var n = 0; n < volts.Count; n++)
        {
            if (volts[n].Trim().Length == 0)
                continue;
            var number = NumberText.Read(volts[n], Quantity.AcVolts);
            if (number.Problem.Length > 0)
                return new(null, $"At {ValueText.PercentOf((double)n / (volts.Count - 1))} %: {number.Problem}");
            if (number.Value > 1000)
                return new(null, $"At {ValueText.PercentOf((double)n / (volts.Count - 1))} %: must be 0 to 1000 V.");
            points.Add(new((double)n / (volts.Count - 1), number.Value));
        }
        return points.Count < 2
            ? new(null, "Enter the volts at two positions or more.")
            : new(new SweepTaken(offer.Spec.Id, control, points.ToImmutable(), bench), "");
    }

    /// <summary>The last sweep of a throttle that speaks of the unit as it is now; null for none.</summary>
    public static SweepTaken? Last(BenchUnit unit, string control) =>
        unit.All<SweepTaken>().LastOrDefault(s => s.Fact.Control == control && unit.IsOfNow(s.Entry, s.Fact.ReadingId)).Fact;

    private static bool IsOf(TypeSheet sheet, ReadingSpec r, string throttle) =>
        r.Quantity == Quantity.AcVolts
        && BenchConditions.IsOnMains(sheet, r)
        && r.State is { Loads: [], Lifted: [], Source.HasLamp: false, Controls: { Count: 1 } controls }
        && controls.ContainsKey(throttle);
}
