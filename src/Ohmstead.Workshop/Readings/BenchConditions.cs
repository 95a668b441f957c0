using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Readings;

/// <summary>What is really so while a reading is taken: the sheet's state of it, with the bench as it stands.</summary>
public static class BenchConditions
{
    /// <summary>
    /// A load on hand stands in where the sheet asks for about as much; for a quite different one the sheet's own is meant,
    /// because a load that is carried forward from one reading is not wanted at the next.
    /// </summary>
    private const double MostLoadRatio = 2.5;

    /// <summary>Farther from the sheet's volts than this it is another supply.</summary>
    private const double MostSupplyRatio = 1.4;

    /// <summary>Above this a "load" of a sheet is the resistance of an instrument [Ω].</summary>
    private const double LeastInstrumentOhms = 1e4;

    /// <summary>
    /// The state of a unit for a reading. The line's real volts take the place of the sheet's where the source is the mains, the
    /// low supply's where it is that; the
    /// windings' temperature counts for every reading; a throttle stands where it really stands when the sheet wants it somewhere
    /// between its stops (at a stop there is nothing to guess); a load on hand takes the place of one about as large.
    /// </summary>
    /// <param name="model">The unit's own sheet.</param>
    public static ReadingState StateOf(UnitModel model, ReadingSpec spec, BenchState bench, Shop shop)
    {
        var sheet = model.Sheet;
        var state = spec.State with { Celsius = bench.Celsius ?? spec.State.Celsius };
        if (SourceVolts(sheet, spec, bench) is { } volts)
            state = state with { Source = state.Source! with { Volts = volts } };
        foreach (var (control, position) in spec.State.Controls)
            if (IsBetweenStops(sheet, control, position) && bench.Throttles.TryGetValue(control, out var at))
                state = state with { Controls = state.Controls.SetItem(control, new ControlPosition(at, "")) };
        if (LoadOnHand(spec, bench, shop) is not { } load)
            return state;
        var ohms = state.Loads.Select(l => IsReplaced(l, load) ? OhmsAt(model, spec, state, l, load) : l.Ohms);
        return state with { Loads = [.. state.Loads.Zip(ohms, (l, o) => l with { Ohms = o })] };
    }

    /// <summary>The load from the shelf that hangs on for this reading, or null for the sheet's own.</summary>
    public static ShopLoad? LoadOnHand(ReadingSpec spec, BenchState bench, Shop shop) =>
        bench.LoadId.Length > 0
        && shop.Loads.FirstOrDefault(l => l.Id == bench.LoadId) is { } load
        && spec.State.Loads.Any(l => IsReplaced(l, load))
            ? load
            : null;

    /// <summary>The loads of the shelf that can stand in for what a reading asks for, nearest first.</summary>
    public static ImmutableArray<ShopLoad> LoadsFor(ReadingSpec spec, Shop shop) =>
        [
            .. shop
                .Loads.Where(l => spec.State.Loads.Any(s => IsReplaced(s, l)))
                .OrderBy(l => spec.State.Loads.Min(s => Math.Abs(Math.Log(l.Ohms / s.Ohms)))),
        ];

    /// <summary>The throttles of a reading that the sheet wants between their stops: those whose place is asked for.</summary>
    public static ImmutableArray<string> LooseThrottles(TypeSheet sheet, ReadingSpec spec) =>
        [
            .. sheet
                .Controls.Where(c => spec.State.Controls.TryGetValue(c.Id, out var p) && IsBetweenStops(sheet, c.Id, p))
                .Select(c => c.Id),
        ];

    /// <summary>A place on a throttle's way from percent [0..1].</summary>
    public static double ShareOf(double percent) => percent / 100;

    /// <summary>True when the reading is fed by a low alternating voltage, whose real volts are asked for.</summary>
    public static bool IsOnLowSupply(TypeSheet sheet, ReadingSpec spec) =>
        spec.State.Source is { IsDirect: false, IsMains: false } && !IsOnMains(sheet, spec);

    /// <summary>What the source of a reading really gives; null where the sheet says it.</summary>
    private static double? SourceVolts(TypeSheet sheet, ReadingSpec spec, BenchState bench)
    {
        if (IsOnMains(sheet, spec))
            return bench.SupplyVolts;
        if (!IsOnLowSupply(sheet, spec) || bench.LowVolts is not { } low)
            return null;
        // The volts of a 24 V supply are not meant where the sheet asks for 12.
        return low / spec.State.Source!.Volts is < MostSupplyRatio and > 1 / MostSupplyRatio ? low : null;
    }

    /// <summary>True when the reading's source is the mains: what is said of the line counts for it.</summary>
    public static bool IsOnMains(TypeSheet sheet, ReadingSpec spec) =>
        spec.State.Source is { IsDirect: false } s && Math.Abs(s.Volts - sheet.SupplyVolts) < 1e-9 * s.Volts;

    private static bool IsBetweenStops(TypeSheet sheet, string control, ControlPosition position) =>
        position.Throttle is > 0 and < 1 && sheet.Controls.Any(c => c.Id == control && c.IsThrottle);

    private static bool IsReplaced(LoadSpec asked, ShopLoad load) =>
        asked.Ohms < LeastInstrumentOhms && load.Ohms / asked.Ohms is < MostLoadRatio and > 1 / MostLoadRatio;

    /// <summary>What a load is at the voltage that it gets: a lamp below its rated volts is less [Ω].</summary>
    private static double OhmsAt(UnitModel model, ReadingSpec spec, ReadingState state, LoadSpec place, ShopLoad load)
    {
        if (!(load is { Volts: > 0, Amps: > 0 }))
            return load.Ohms;
        var across = spec with { Quantity = Quantity.AcVolts, From = place.From, To = place.To };
        var (solver, ohms) = (new ReadingSolver(), load.Ohms);
        // The law of a lamp bends its resistance by V^0.45: each round divides the error by two at least.
        for (var n = 0; n < 24; n++)
        {
            var loaded = state with { Loads = [.. state.Loads.Select(l => l == place ? l with { Ohms = ohms } : l)] };
            if (solver.Solve(new FaultedCircuits(model, across, loaded).Usual, model.Nominal).Value is not { } volts)
                break;
            ohms = LampOhms(load, volts);
        }
        return ohms;
    }

    /// <summary>Tungsten: I = amps·(V/volts)^0.55, never less than a tenth of the hot resistance (docs/formats.md, lamp).</summary>
    private static double LampOhms(ShopLoad lamp, double volts)
    {
        var hot = lamp.Volts / lamp.Amps;
        return Math.Max(hot * Math.Pow(Math.Max(volts, 1e-6) / lamp.Volts, 0.45), hot / 10);
    }
}
