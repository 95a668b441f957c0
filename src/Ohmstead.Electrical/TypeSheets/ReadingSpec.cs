using System.Collections.Immutable;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>One reading that can be taken on a kind of unit.</summary>
/// <param name="From">First probe; empty for a quantity of the source.</param>
/// <param name="To">Second probe.</param>
/// <param name="Access">"closed", or the take-apart step that gives access.</param>
/// <param name="Needs">Readings that must stand first.</param>
/// <param name="IsGate">A cold check that every reading with a source above 30 V must need.</param>
public sealed record ReadingSpec(
    string Id,
    string Title,
    Quantity Quantity,
    string From,
    string To,
    ReadingState State,
    double Minutes,
    string Access,
    ImmutableArray<string> Needs,
    Limits? Limits,
    bool IsGate,
    string Hazard
)
{
    /// <summary>The word for a reading that needs no opening.</summary>
    public const string Closed = "closed";

    /// <summary>True when the case must be opened for it.</summary>
    public bool IsOpenCase => Access != Closed;
}

/// <summary>What an instrument shows.</summary>
public enum Quantity
{
    /// <summary>An ohmmeter: 1 mA direct current, at most 3 V [Ω].</summary>
    Ohms,

    /// <summary>An insulation tester at 500 V direct [Ω].</summary>
    InsulationOhms,

    /// <summary>RMS of the alternating part, the mean removed [V].</summary>
    AcVolts,

    /// <summary>Mean voltage [V].</summary>
    DcVolts,

    /// <summary>RMS current of the source, direct part included [A].</summary>
    AcAmps,

    /// <summary>Mean power of the source [W].</summary>
    Watts,
}

/// <summary>The limits between which a reading meets the need of others.</summary>
/// <param name="Min">Least, in the quantity's unit; negative infinity for none.</param>
/// <param name="Max">Most; positive infinity for none.</param>
public sealed record Limits(double Min, double Max)
{
    /// <summary>Who asks for the least.</summary>
    public LimitSource MinSource { get; init; }

    /// <summary>Who asks for the most.</summary>
    public LimitSource MaxSource { get; init; }

    /// <summary>What a good one usually has at least: less passes, and is remarked on.</summary>
    public double UsualMin { get; init; } = double.NegativeInfinity;

    /// <summary>These limits and others together: at each end the stricter, with its own source.</summary>
    public Limits With(Limits other) =>
        new(Math.Max(Min, other.Min), Math.Min(Max, other.Max))
        {
            MinSource = other.Min > Min ? other.MinSource : MinSource,
            MaxSource = other.Max < Max ? other.MaxSource : MaxSource,
            UsualMin = Math.Max(UsualMin, other.UsualMin),
        };
}

/// <summary>Who asks for a limit.</summary>
public enum LimitSource
{
    /// <summary>The type sheet.</summary>
    TypeSheet,

    /// <summary>The shop in which the unit is on the bench.</summary>
    Shop,
}

/// <summary>How the unit stands while a reading is taken.</summary>
/// <param name="Controls">Positions of controls that are not at rest: a number for a throttle, a name for a selector.</param>
/// <param name="Lifted">Elements taken out.</param>
/// <param name="Joined">Terminals strapped together.</param>
/// <param name="Celsius">Temperature of the windings [°C].</param>
public sealed record ReadingState(
    SourceSpec? Source,
    ImmutableDictionary<string, ControlPosition> Controls,
    ImmutableArray<LoadSpec> Loads,
    ImmutableArray<string> Lifted,
    ImmutableArray<ImmutableArray<string>> Joined,
    double Celsius
)
{
    /// <summary>True where every control, load and strap is the same, and what feeds it: one circuit, wherever the probes are.</summary>
    public bool IsSameAs(ReadingState other) =>
        Source == other.Source
        && Celsius == other.Celsius
        && Controls.Count == other.Controls.Count
        && Controls.All(c => other.Controls.TryGetValue(c.Key, out var there) && there == c.Value)
        && Loads.SequenceEqual(other.Loads)
        && Lifted.SequenceEqual(other.Lifted, StringComparer.Ordinal)
        && Joined.Length == other.Joined.Length
        && Joined.Zip(other.Joined).All(j => j.First.SequenceEqual(j.Second, StringComparer.Ordinal));
}

/// <summary>Where a control stands: a throttle from 0 to 1, or a selector's position.</summary>
public readonly record struct ControlPosition(double Throttle, string Selector);

/// <summary>
/// What feeds the unit: an alternating voltage (perhaps through a resistance or a tungsten lamp) or a direct current whose
/// voltage is limited to 30 V.
/// </summary>
/// <param name="Volts">Source voltage [V RMS]; 0 for a direct current.</param>
/// <param name="DirectAmps">Direct current [A]; 0 for an alternating voltage.</param>
public sealed record SourceSpec(
    string From,
    string To,
    double Volts,
    double DirectAmps,
    double SeriesOhms,
    double LampVolts,
    double LampAmps
)
{
    /// <summary>Above this a supply is mains and stands behind every check; a direct current is kept below it [V].</summary>
    public const double MostLowVolts = 30;

    /// <summary>True above <see cref="MostLowVolts"/>.</summary>
    public bool IsMains => Volts > MostLowVolts;

    /// <summary>A direct-current source.</summary>
    public bool IsDirect => DirectAmps != 0;

    /// <summary>A tungsten lamp stands between the source and the unit.</summary>
    public bool HasLamp => LampVolts > 0;
}

/// <summary>A resistance, perhaps with an inductance in series, between two terminals.</summary>
public sealed record LoadSpec(string From, string To, double Ohms, double Henries);
