using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Wiring;

namespace Ohmstead.Workshop.Repair;

/// <summary>The readings of a sheet that show whether the repair of a fault worked.</summary>
internal static class RepairProof
{
    /// <summary>A reading that the fault moves by less than this shows nothing [limits of the meter's error].</summary>
    private const double LeastLimits = 1;

    private const double AboutAsMuch = 0.8;

    /// <summary>
    /// Of each sort that the table asks for, the reading that the fault moves most; where the sheet has none of these, the one it
    /// moves most of all.
    /// </summary>
    /// <param name="model">The unit's own sheet.</param>
    public static ImmutableArray<ReadingSpec> For(UnitModel model, FaultMode mode, Meter meter)
    {
        var fault = new Fault(mode, mode.MiddleSize);
        var moved = model
            .Sheet.Readings.AsParallel()
            .AsOrdered()
            .Select(r => (Spec: r, Limits: FaultEffect.Limits(model, r, fault, meter)))
            .Where(r => r.Limits >= LeastLimits)
            .ToList();
        var ends = Ends(model.Sheet, mode);
        var plug = LiveSide.Plug(model.Sheet);
        var chosen = WhatToDo
            .For(model.Sheet, mode)
            .Again.Select(kind => MovedMost([.. moved.Where(r => Is(kind, r.Spec, ends, plug))]))
            .OfType<ReadingSpec>()
            .Distinct()
            .ToImmutableArray();
        return chosen.Length > 0 || moved.Count == 0 ? chosen : [moved.MaxBy(r => r.Limits).Spec];
    }

    /// <summary>Of those that are moved about as much, the first of the sheet.</summary>
    private static ReadingSpec? MovedMost(List<(ReadingSpec Spec, double Limits)> readings) =>
        readings.Count == 0 ? null : readings.First(r => r.Limits >= AboutAsMuch * readings.Max(o => o.Limits)).Spec;

    private static bool Is(ProofReading kind, ReadingSpec r, (string, string) ends, ImmutableArray<string> plug)
    {
        var source = r.State.Source;
        var isCold = source is null && r.Quantity == Quantity.Ohms;
        var isLow = source is { IsDirect: false, HasLamp: false, IsMains: false };
        var isMains = source is { IsDirect: false, HasLamp: false, IsMains: true };
        return kind switch
        {
            ProofReading.OwnOhms => isCold && ((r.From, r.To) == ends || (r.To, r.From) == ends),
            ProofReading.Ohms => isCold && r.Limits is not { Max: double.PositiveInfinity },
            ProofReading.Blades => isCold && plug.Contains(r.From) && plug.Contains(r.To),
            ProofReading.Apart => isCold && r.Limits is { Max: double.PositiveInfinity },
            ProofReading.Insulation => r.Quantity == Quantity.InsulationOhms,
            ProofReading.Drop => source is { IsDirect: true },
            ProofReading.LowVolts => isLow && r.Quantity == Quantity.AcVolts,
            ProofReading.LowDc => isLow && r.Quantity == Quantity.DcVolts,
            ProofReading.LowAmps => isLow && r.Quantity == Quantity.AcAmps,
            ProofReading.Lamp => source is { HasLamp: true },
            ProofReading.NoLoadWatts => isMains && r.Quantity == Quantity.Watts && r.State.Loads.IsEmpty,
            ProofReading.NoLoadVolts => isMains && r.Quantity == Quantity.AcVolts && r.State.Loads.IsEmpty,
            ProofReading.LoadedVolts => isMains && r.Quantity == Quantity.AcVolts && !r.State.Loads.IsEmpty,
            _ => isMains && r.Quantity == Quantity.DcVolts,
        };
    }

    private static (string, string) Ends(TypeSheet sheet, FaultMode mode) =>
        sheet.Elements.FirstOrDefault(e => e.Id == mode.Parts[0]) is { } e ? (e.From, e.To) : ("", "");
}
