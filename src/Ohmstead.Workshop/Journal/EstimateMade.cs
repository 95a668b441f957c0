using System.Collections.Immutable;

namespace Ohmstead.Workshop.Journal;

/// <summary>An estimate for the owner, as it was when it was made: later findings do not change it. The last one counts.</summary>
/// <param name="Lines">What is included.</param>
/// <param name="Low">Half of such jobs come to less, whole money.</param>
/// <param name="High">Nine of ten come to less, whole money.</param>
/// <param name="LowMinutes">Half of such jobs take less [min].</param>
/// <param name="HighMinutes">Nine of ten take less [min].</param>
/// <param name="AskAbove">Above this the shop asks first.</param>
/// <param name="Stops">What ends the repair, and what that costs.</param>
/// <param name="HoldsUntil">The last day on which it holds.</param>
public sealed record EstimateMade(
    ImmutableArray<EstimateLine> Lines,
    decimal Low,
    decimal High,
    double LowMinutes,
    double HighMinutes,
    decimal AskAbove,
    ImmutableArray<EstimateStop> Stops,
    DateOnly HoldsUntil
) : Fact
{
    /// <inheritdoc/>
    public bool Equals(EstimateMade? other) =>
        other is not null
        && (Low, High, LowMinutes, HighMinutes, AskAbove, HoldsUntil)
            == (other.Low, other.High, other.LowMinutes, other.HighMinutes, other.AskAbove, other.HoldsUntil)
        && Lines.SequenceEqual(other.Lines)
        && Stops.SequenceEqual(other.Stops);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Low, High, AskAbove, HoldsUntil);
}

/// <summary>A line of an estimate.</summary>
/// <param name="Words">What is done.</param>
/// <param name="Minutes">Half of such lines take less [min].</param>
/// <param name="Parts">Price of its parts.</param>
/// <param name="Percent">How often it is needed [%].</param>
/// <param name="IsLooks">True for looks alone.</param>
public sealed record EstimateLine(string Words, double Minutes, decimal Parts, double Percent, bool IsLooks);

/// <summary>What ends a repair.</summary>
/// <param name="Words">When, in words.</param>
/// <param name="Fee">What is charged then.</param>
public sealed record EstimateStop(string Words, decimal Fee);
