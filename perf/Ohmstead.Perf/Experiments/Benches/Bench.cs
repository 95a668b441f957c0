using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Experiments.Benches;

/// <summary>How a bench and the unit on it differ from what the sheet and the notes say. As it comes from here, nothing differs.</summary>
internal sealed record Bench
{
    /// <summary>The bench that is as it is noted.</summary>
    public static Bench AsNoted { get; } = new();

    /// <summary>The line above which a source is the mains [V RMS].</summary>
    public const double MainsVolts = 30;

    /// <summary>What type the unit really is, made from the sheet that it is diagnosed with.</summary>
    public Func<TypeSheet, Random, TypeSheet> TrueType { get; init; } = (sheet, _) => sheet;

    /// <summary>Deviations of the unit's parameters relative to the sheet's.</summary>
    public double SpreadTimes { get; init; } = 1;

    /// <summary>Error of the meter relative to its stated limit.</summary>
    public double MeterTimes { get; init; } = 1;

    /// <summary>Resistance of the test leads that is in every ohmmeter reading and not noted [Ω].</summary>
    public double LeadOhms { get; init; }

    /// <summary>How far from its true volts the line is noted, to either side [V at 120 V; twice that above 150 V].</summary>
    public double LineOffVolts { get; init; }

    /// <summary>Share of the readings that are noted or taken wrongly [0..1].</summary>
    public double SlipShare { get; init; }

    /// <summary>The unit has a fault besides that no catalogue lists.</summary>
    public bool HasUnlisted { get; init; }

    /// <summary>Only what needs no mains is taken.</summary>
    public bool IsCold { get; init; }

    /// <summary>How far off the line is noted for a supply [V].</summary>
    public double LineOffAt(double supplyVolts) => supplyVolts > 150 ? 2 * LineOffVolts : LineOffVolts;

    /// <summary>True for a reading with the mains on the unit.</summary>
    public static bool IsMains(ReadingState state) => state.Source is { IsDirect: false, Volts: > MainsVolts };
}
