using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Job;

/// <summary>A pair of posts as a supply: its own readings where it has them, its type sheet where not.</summary>
/// <param name="Outlet">The pair, and the most that it may carry.</param>
/// <param name="Volts">At no load, on the type's line voltage [V].</param>
/// <param name="SourceOhms">Behind it [Ω].</param>
/// <param name="IsRead">The volts are those of this very unit.</param>
public sealed record PostSupply(Outlet Outlet, double Volts, double SourceOhms, bool IsRead)
{
    /// <summary>Two readings of a pair are of different currents when these lie so far apart [A]: less is lost in the meter's last digit.</summary>
    private const double LeastApartAmps = 0.5;

    /// <summary>Every pair of a unit's posts that carries something.</summary>
    public static ImmutableArray<PostSupply> All(JudgedUnit judged)
    {
        if (judged.Sheet is not { } sheet || judged.Outlets.IsEmpty)
            return [];
        var model = new UnitModel(sheet);
        return [.. judged.Outlets.Select(o => Of(o, judged.Unit, model, judged.Shop))];
    }

    /// <summary>The posts of the rails, of which most is asked: those with the highest volts; null for none.</summary>
    public static PostSupply? Rails(IEnumerable<PostSupply> supplies) => supplies.MaxBy(s => s.Volts);

    private static PostSupply Of(Outlet outlet, BenchUnit unit, UnitModel model, Shop shop)
    {
        var limit = outlet.Limit;
        var ofSheet = Math.Max(0, (limit.IdleVolts - limit.LoadedVolts) / limit.Amps);
        var supply = model.Sheet.SupplyVolts;
        ImmutableArray<LoadPoint> read =
        [
            .. unit
                .CurrentReadings.Where(r => r.Fact.Shown.Kind == ShownKind.Value && !unit.Doubts.Checks.Readings.Contains(r.Fact.ReadingId))
                .GroupBy(r => r.Fact.ReadingId, StringComparer.Ordinal)
                .Select(g => (Spec: model.Sheet.FindReading(g.Key), g.Last().Fact))
                .Where(r => r.Spec is { } spec && IsSameSetting(model.Sheet, spec, outlet.Spec))
                .Select(r => Point(r.Fact, BenchConditions.StateOf(model, r.Spec!, r.Fact.Bench, shop))),
        ];
        // A line through two points holds where no rectifier lies in the path.
        if (
            outlet.Spec.Quantity == Quantity.AcVolts
            && read.Length > 1
            && read.Max(p => p.Amps) - read.Min(p => p.Amps) > LeastApartAmps
            && new Regulation(supply, read, []).Answer() is RegulationAnswer { SourceOhms: >= 0 } line
        )
            return new(outlet, line.NoLoadVolts, line.SourceOhms, true);
        return read.FirstOrDefault(p => p.Amps == 0) is { Volts: > 0 } idle
            ? new(outlet, idle.Volts * supply / idle.SupplyVolts, ofSheet, true)
            : new(outlet, limit.IdleVolts, ofSheet, false);
    }

    private static bool IsSameSetting(TypeSheet sheet, ReadingSpec spec, ReadingSpec of) =>
        spec.Quantity == of.Quantity
        && IsPair(spec.From, spec.To, of)
        && BenchConditions.IsOnMains(sheet, spec)
        && spec.State is { Lifted.IsEmpty: true, Joined.IsEmpty: true, Source: { HasLamp: false, SeriesOhms: 0 } }
        && spec.State.Controls.Count == of.State.Controls.Count
        && spec.State.Controls.All(c => of.State.Controls.TryGetValue(c.Key, out var at) && at == c.Value)
        && spec.State.Loads.All(l => IsPair(l.From, l.To, of) && l.Henries == 0);

    private static bool IsPair(string a, string b, ReadingSpec of) => (a == of.From && b == of.To) || (a == of.To && b == of.From);

    private static LoadPoint Point(ReadingEntered read, ReadingState state)
    {
        var volts = Math.Abs(read.Shown.Value);
        return new(state.Loads.Sum(l => volts / l.Ohms), volts, state.Source!.Volts);
    }
}
