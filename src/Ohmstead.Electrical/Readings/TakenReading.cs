using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>A reading as it was taken, with the conditions that were really so.</summary>
/// <param name="Value">The number read, for <see cref="Outcome.Value"/>.</param>
/// <param name="JumpValues">The values between which it jumped; positive infinity for OL.</param>
/// <param name="WaivedBy">Who waived a reading that could not be taken; empty otherwise.</param>
/// <param name="State">The state of the unit as it really was.</param>
public sealed record TakenReading(
    ReadingSpec Spec,
    Outcome Outcome,
    double Value,
    ImmutableArray<double> JumpValues,
    string Why,
    string WaivedBy,
    ReadingState State
)
{
    /// <summary>What was done in place of a waived reading; may be empty.</summary>
    public string Instead { get; init; } = "";

    /// <summary>The error of the meter that it was taken with; null for the one that the readings have in common.</summary>
    public MeterError? OwnError { get; init; }

    /// <summary>True when it says something about the circuit.</summary>
    public bool IsTaken => Outcome != Outcome.NotTaken;
}

/// <summary>What became of a reading.</summary>
public enum Outcome
{
    /// <summary>A number was read.</summary>
    Value,

    /// <summary>The meter showed OL.</summary>
    OverRange,

    /// <summary>It changed when the unit was moved.</summary>
    Jumps,

    /// <summary>It could not be taken.</summary>
    NotTaken,
}

/// <summary>What eyes, hands or the owner answered to an observation: whether it is so.</summary>
public sealed record Symptom(Observation Observation, bool Yes);

/// <summary>Everything read on one unit.</summary>
/// <param name="SupplyVolts">What the mains really gave [V].</param>
/// <param name="Meter">The meter in hand: of readings not yet taken, and of those that name no meter of their own.</param>
/// <param name="ExpectedFaults">Mean number of faults assumed before any reading; null for the chances as they are.</param>
public sealed record UnitReadings(
    string Sheet,
    double SupplyVolts,
    double? ExpectedFaults,
    Meter Meter,
    ImmutableArray<TakenReading> Readings,
    ImmutableArray<Symptom> Symptoms
)
{
    /// <summary>What the last diagnosis of these readings doubts of the checks among them.</summary>
    public CheckDoubts Doubts { get; init; } = CheckDoubts.None;

    /// <summary>The error with which a reading was taken: that of its own meter, whatever meter came after.</summary>
    public MeterError ErrorOf(TakenReading taken) => taken.OwnError ?? Meter.For(taken.Spec.Quantity);

    /// <summary>The state in which a reading that is not yet taken would be taken: the sheet's, at the line's real volts.</summary>
    public ReadingState StateOf(TypeSheet sheet, ReadingSpec spec) => AtLine(sheet, spec.State, SupplyVolts);

    /// <summary>The line voltage noted with most of these readings that are on mains; that of readings to come where none was taken.</summary>
    public double NotedLine(TypeSheet sheet, IEnumerable<string> readings) =>
        readings
            .Select(id => Readings.LastOrDefault(r => r.IsTaken && r.Spec.Id == id))
            .OfType<TakenReading>()
            .Where(r => IsOnLine(sheet, r.Spec.State))
            .GroupBy(r => r.State.Source!.Volts)
            .OrderByDescending(g => g.Count())
            .FirstOrDefault()
            ?.Key
        ?? SupplyVolts;

    internal static bool IsOnLine(TypeSheet sheet, ReadingState state) =>
        state.Source is { IsDirect: false } s && Math.Abs(s.Volts - sheet.SupplyVolts) < 1e-9 * s.Volts;

    internal static ReadingState AtLine(TypeSheet sheet, ReadingState state, double supplyVolts) =>
        IsOnLine(sheet, state) ? state with { Source = state.Source! with { Volts = supplyVolts } } : state;

    /// <summary>The same readings, taken in the same states with the same meters: an answer to the one is an answer to the other.</summary>
    public bool Equals(UnitReadings? other) =>
        ReferenceEquals(this, other)
        || (
            other is not null
            && (Sheet, SupplyVolts, ExpectedFaults) == (other.Sheet, other.SupplyVolts, other.ExpectedFaults)
            && IsSame(Meter.Errors, other.Meter.Errors)
            && Readings.SequenceEqual(other.Readings, SameTaken)
            && Symptoms.SequenceEqual(other.Symptoms)
            && Doubts.LeadOhms.Equals(other.Doubts.LeadOhms)
            && Doubts.Readings.SetEquals(other.Doubts.Readings)
        );

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Sheet, SupplyVolts, Readings.Length, Symptoms.Length);

    private static readonly IEqualityComparer<TakenReading> SameTaken = EqualityComparer<TakenReading>.Create(
        (a, b) => a is null ? b is null : b is not null && IsSame(a, b)
    );

    private static bool IsSame(TakenReading a, TakenReading b) =>
        a.JumpValues.SequenceEqual(b.JumpValues)
        && IsSame(a.State, b.State)
        && a with { JumpValues = [], State = b.State } == b with { JumpValues = [] };

    private static bool IsSame(ReadingState a, ReadingState b) =>
        ReferenceEquals(a, b)
        || (
            a.Source == b.Source
            && a.Celsius.Equals(b.Celsius)
            && IsSame(a.Controls, b.Controls)
            && a.Loads.SequenceEqual(b.Loads)
            && a.Lifted.SequenceEqual(b.Lifted)
            && a.Joined.Length == b.Joined.Length
            && a.Joined.Zip(b.Joined).All(j => j.First.SequenceEqual(j.Second))
        );

    private static bool IsSame<TKey, TValue>(ImmutableDictionary<TKey, TValue> a, ImmutableDictionary<TKey, TValue> b)
        where TKey : notnull =>
        a.Count == b.Count
        && a.All(own => b.TryGetValue(own.Key, out var other) && EqualityComparer<TValue>.Default.Equals(own.Value, other));
}
