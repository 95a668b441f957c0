using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>Between what the figures of readings must lie, whether they come from a file or from the bench (docs/formats.md).</summary>
internal static class ReadingBounds
{
    /// <summary>What the mains gives [V].</summary>
    public static readonly Bound SupplyVolts = new(1, 1000);

    /// <summary>What the source of one reading gives [V].</summary>
    public static readonly Bound SourceVolts = new(1e-3, 1000);

    /// <summary>Temperature of the windings [°C].</summary>
    public static readonly Bound Celsius = new(-60, 250);

    /// <summary>What a meter shows, in the quantity's unit.</summary>
    public static readonly Bound Value = new(-1e15, 1e15);

    /// <summary>Share of the value in a meter's error [%].</summary>
    public static readonly Bound Percent = new(0, 50);

    /// <summary>Fixed part of a meter's error, in the quantity's unit.</summary>
    public static readonly Bound Floor = new(0, 1e9);

    /// <summary>Share of a meter's error that its readings have in common.</summary>
    public static readonly Bound Shared = new(0, 1);

    /// <summary>What joined probes read [Ω].</summary>
    public static readonly Bound LeadOhms = new(0, 100);

    /// <summary>Values between which one reading jumps, at most.</summary>
    public const int MostJumps = 20;
}
