using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Experiments.Benches;

/// <summary>Draws faults that no catalogue lists.</summary>
internal static class UnlistedFaults
{
    private static readonly Func<UnitModel, Random, UnlistedFault?>[] Kinds =
    [
        TenPrimaryTurns,
        BaredTurn,
        LoosePlates,
        AnotherLamp,
        AnotherRectifier,
        SwappedWires,
        TwoInOnePart,
        OutOfRange,
    ];

    /// <summary>The kind of this number, counted round; the next one where a sheet has nothing for it.</summary>
    public static UnlistedFault Draw(UnitModel model, int number, Random dice) =>
        Enumerable.Range(0, Kinds.Length).Select(k => Kinds[(number + k) % Kinds.Length](model, dice)).First(u => u is not null)!;

    /// <summary>Ten turns of the first core's reference winding take one to four times the core's loss through a bad spot.</summary>
    private static UnlistedFault? TenPrimaryTurns(UnitModel model, Random dice)
    {
        const int turns = 10;
        var (sheet, core) = (model.Sheet, model.Sheet.Cores[0]);
        var primary = (Winding)sheet.Elements[model.ReferenceWindings[0]];
        var volts = turns / primary.Turns * sheet.SupplyVolts;
        var watts = sheet.SupplyVolts * sheet.SupplyVolts / core.LossOhms * LogUniform(dice, 1, 4);
        var first = Math.Floor(dice.NextDouble() * (primary.Turns - turns));
        return Shorted(sheet, primary, first, turns, volts * volts / watts, "ten turns shorted");
    }

    /// <summary>Two neighbouring turns touch where a contact runs on the bared wire, or anywhere in a secondary without one.</summary>
    private static UnlistedFault? BaredTurn(UnitModel model, Random dice)
    {
        var sheet = model.Sheet;
        var bared = sheet.Windings.FirstOrDefault(w => w.Sliders.Length > 0) ?? sheet.Windings.Skip(1).MaxBy(w => w.Turns);
        if (bared is null)
            return null;
        var (from, to) = bared.Sliders is [var s, ..] ? (s.FromTurn, s.ToTurn) : (0, bared.Turns);
        var first = Math.Floor(from + (dice.NextDouble() * (to - from - 1)));
        return Shorted(sheet, bared, first, 1, LogUniform(dice, 0.003, 0.03), "a bared turn shorted");
    }

    private static UnlistedFault Shorted(TypeSheet sheet, Winding winding, double first, double turns, double ohms, string name)
    {
        var noSpread = new SpreadOverrides(ImmutableDictionary<string, double>.Empty.Add("ohms", 0));
        var bad = new Resistive(
            "bad-spot",
            ElementKind.Resistor,
            "bad-spot-1",
            "bad-spot-2",
            ohms,
            noSpread,
            ImmutableDictionary<string, double>.Empty
        );
        var tapped = winding with { Taps = winding.Taps.Add(new Tap(first, bad.From)).Add(new Tap(first + turns, bad.To)) };
        return new UnlistedFault(name, winding.Id, sheet with { Elements = sheet.Elements.Replace(winding, tapped).Add(bad) }, [])
        {
            IsShort = true,
        };
    }

    private static UnlistedFault? LoosePlates(UnitModel model, Random dice)
    {
        var core = model.Sheet.Cores[0];
        var loose = OtherTypes.WithExcitation(core with { LossOhms = core.LossOhms / LogUniform(dice, 1.8, 3) }, LogUniform(dice, 1.3, 2));
        return new UnlistedFault("loose plates", core.Id, model.Sheet with { Cores = model.Sheet.Cores.SetItem(0, loose) }, [])
        {
            IsLooseCore = true,
        };
    }

    private static UnlistedFault? AnotherLamp(UnitModel model, Random dice) =>
        model.Sheet.Elements.OfType<Lamp>().FirstOrDefault() is { } lamp
            ? Replaced(model.Sheet, lamp, lamp with { Amps = lamp.Amps * LogUniform(dice, 1.8, 3.5) }, "another lamp")
            : null;

    /// <summary>Silicon in the place of an old disc, or a disc in the place of silicon.</summary>
    private static UnlistedFault? AnotherRectifier(UnitModel model, Random dice)
    {
        Rectifier[] all = [.. model.Sheet.Elements.OfType<Rectifier>()];
        if (all.Length == 0)
            return null;
        var old = all[dice.Next(all.Length)];
        var other =
            old.SaturationAmps > 1e-5
                ? old with
                {
                    SaturationAmps = 1e-8,
                    SlopeVolts = 0.05,
                    SeriesOhms = 0.03,
                    LeakageOhms = 2e6,
                }
                : old with
                {
                    SaturationAmps = 0.0022,
                    SlopeVolts = 0.12,
                    SeriesOhms = 0.12,
                    LeakageOhms = 110,
                };
        return Replaced(model.Sheet, old, other, "another rectifier");
    }

    private static UnlistedFault Replaced(TypeSheet sheet, Element old, Element other, string name) =>
        new(name, old.Id, sheet with { Elements = sheet.Elements.Replace(old, other) }, []);

    /// <summary>Two wires behind the transformer change their far ends.</summary>
    private static UnlistedFault? SwappedWires(UnitModel model, Random dice)
    {
        var sheet = model.Sheet;
        var plug = sheet
            .Readings.Select(r => r.State.Source)
            .OfType<SourceSpec>()
            .Where(s => s.Volts > Bench.MainsVolts)
            .SelectMany(s => new[] { s.From, s.To })
            .ToHashSet(StringComparer.Ordinal);
        Element[] wires =
        [
            .. sheet
                .Elements.Where(e => e.Kind == ElementKind.Wire && !plug.Contains(e.From) && !plug.Contains(e.To))
                .OrderBy(_ => dice.Next()),
        ];
        if (wires.FirstOrDefault(w => w.To != wires[0].To) is not { } other)
            return null;
        var swapped = EndExchange.Apply(sheet, $"{wires[0].Id}.to~{other.Id}.to:swap", out _)!;
        return new UnlistedFault($"{wires[0].Id} and {other.Id} swapped", wires[0].Id, swapped, []);
    }

    /// <summary>A rectifier that drops too much and leaks, or a switch that is stuck and burnt.</summary>
    private static UnlistedFault? TwoInOnePart(UnitModel model, Random dice)
    {
        var catalogue = new FaultCatalogue(model);
        Element[] parts = [.. model.Sheet.Elements.Where(e => e is Rectifier or Switch)];
        if (parts.Length == 0)
            return null;
        var part = parts[dice.Next(parts.Length)];
        var (one, two) = part is Rectifier ? ("high-drop", "leaky") : ("resistive", "stuck-closed");
        Fault Of(string mode) =>
            catalogue.Find($"{part.Id}:{mode}") is { } m
                ? new Fault(m, m.Size == SizeKind.None ? 0 : m.SizeAt(dice.NextDouble()))
                : default;
        return new UnlistedFault($"{one} and {two} in {part.Id}", part.Id, model.Sheet, [Of(one), Of(two)]);
    }

    /// <summary>A listed fault, 1.5 to 4 times beyond one end of its range.</summary>
    private static UnlistedFault? OutOfRange(UnitModel model, Random dice)
    {
        FaultMode[] sized = [.. new FaultCatalogue(model).Modes.Where(m => m is { Size: SizeKind.Continuous, HasSize: true })];
        if (sized.Length == 0)
            return null;
        var mode = sized[dice.Next(sized.Length)];
        var by = LogUniform(dice, 1.5, 4);
        return new UnlistedFault(
            "a size out of range",
            mode.Element,
            model.Sheet,
            [new Fault(mode, dice.Next(2) == 0 ? mode.Max * by : mode.Min / by)]
        );
    }

    private static double LogUniform(Random dice, double from, double to) => from * Math.Pow(to / from, dice.NextDouble());
}
