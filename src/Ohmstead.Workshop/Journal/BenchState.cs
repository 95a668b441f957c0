using System.Collections.Immutable;

namespace Ohmstead.Workshop.Journal;

/// <summary>What is really so at the bench while a reading is taken. What is null is as the sheet says.</summary>
/// <param name="SupplyVolts">What the mains gives now [V RMS].</param>
/// <param name="MeterId">The meter in hand; empty for the shop's first.</param>
/// <param name="LoadId">The load from the shop's shelf that hangs on where the sheet asks for one; empty for the sheet's own.</param>
/// <param name="Throttles">Where throttles really stand [0..1], by control, when not where the sheet says.</param>
/// <param name="Celsius">Temperature of the windings [°C].</param>
public sealed record BenchState(
    double? SupplyVolts,
    string MeterId,
    string LoadId,
    ImmutableSortedDictionary<string, double> Throttles,
    double? Celsius
)
{
    /// <summary>What the low-voltage supply on the plug really gives [V RMS]; null for what the sheet says.</summary>
    public double? LowVolts { get; init; }

    /// <inheritdoc/>
    public bool Equals(BenchState? other) =>
        other is not null
        && (SupplyVolts, MeterId, LoadId, Celsius, LowVolts)
            == (other.SupplyVolts, other.MeterId, other.LoadId, other.Celsius, other.LowVolts)
        && Throttles.SequenceEqual(other.Throttles);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(SupplyVolts, MeterId, LoadId, Celsius, LowVolts, Throttles.Count);

    /// <summary>Everything as the sheet says.</summary>
    public static BenchState AsSheet { get; } = new(null, "", "", ImmutableSortedDictionary<string, double>.Empty, null);
}

/// <summary>What a meter showed, or why it showed nothing.</summary>
/// <param name="Value">The number in the quantity's unit, for <see cref="ShownKind.Value"/>.</param>
/// <param name="Between">The values between which it jumped; OL is null.</param>
/// <param name="Why">Why it could not be taken.</param>
public sealed record Shown(ShownKind Kind, double Value, ImmutableArray<double?> Between, string Why)
{
    /// <summary>A number.</summary>
    public static Shown Number(double value) => new(ShownKind.Value, value, [], "");

    /// <summary>The meter showed OL.</summary>
    public static Shown OverRange { get; } = new(ShownKind.OverRange, 0, [], "");

    /// <summary>It changed when the unit was moved.</summary>
    public static Shown Jumps(params ReadOnlySpan<double?> between) => new(ShownKind.Jumps, 0, [.. between], "");

    /// <summary>It could not be taken.</summary>
    public static Shown NotTaken(string why) => new(ShownKind.NotTaken, 0, [], why);
}

/// <summary>What became of a reading.</summary>
public enum ShownKind
{
    /// <summary>A number.</summary>
    Value,

    /// <summary>OL.</summary>
    OverRange,

    /// <summary>It jumped.</summary>
    Jumps,

    /// <summary>It could not be taken.</summary>
    NotTaken,
}
