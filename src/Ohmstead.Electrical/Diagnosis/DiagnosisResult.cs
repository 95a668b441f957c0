using System.Collections.Immutable;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>What the readings say about a unit, under the assumed chances.</summary>
/// <param name="SoundProbability">Chance that nothing in the catalogue is wrong.</param>
/// <param name="Faults">Every mode with its marginal probability over all sets of faults, most probable first.</param>
/// <param name="Hypotheses">Whole sets, most probable first.</param>
/// <param name="Alike">Groups of modes that no reading taken tells apart.</param>
/// <param name="Readings">Each reading taken, with what the best set expects.</param>
/// <param name="Unexplained">Readings that the best set leaves out as wrong altogether.</param>
/// <param name="IsExplained">False when nothing in the catalogue explains the readings.</param>
/// <param name="Next">Untaken readings by information per minute, blocked ones last.</param>
/// <param name="Effort">How far the search got.</param>
public sealed record DiagnosisResult(
    double SoundProbability,
    ImmutableArray<FaultProbability> Faults,
    ImmutableArray<FaultSetProbability> Hypotheses,
    ImmutableArray<ImmutableArray<FaultMode>> Alike,
    ImmutableArray<ExplainedReading> Readings,
    ImmutableArray<string> Unexplained,
    bool IsExplained,
    ImmutableArray<NextReading> Next,
    SearchEffort Effort
)
{
    /// <summary>
    /// ln of how likely the readings are on a unit of this sheet, its faults summed over [nats]: to hold one sheet against another with the
    /// same readings and meter. It stands on the meter's scale, so its zero means nothing.
    /// </summary>
    public double LogEvidence { get; init; }

    /// <summary>What the readings say of the faults that are not negligible.</summary>
    public ImmutableArray<WeightOfEvidence> Weights { get; init; } = [];

    /// <summary>Readings that were probably noted or taken wrongly, most probable first.</summary>
    public ImmutableArray<ProbableSlip> Slips { get; init; } = [];

    /// <summary>What is probably wrong with the bench or the sheet, most probable first.</summary>
    public ImmutableArray<Doubt> Doubts { get; init; } = [];
}

/// <summary>A mode's marginal probability and, where it has a size, its estimate with a 95 % range.</summary>
public sealed record FaultProbability(FaultMode Mode, double Probability, double? Size, double? Low, double? High);

/// <summary>A whole set of faults and its probability.</summary>
public sealed record FaultSetProbability(ImmutableArray<FaultMode> Faults, double Probability);

/// <summary>A reading beside what the best set expects of it.</summary>
/// <param name="Measured">The value read; null for OL or a jump.</param>
/// <param name="Expected">In the quantity's unit; positive infinity for OL; null where it could not be solved.</param>
/// <param name="Deviation">From the sound unit, in its standard deviations; null for a reading that is never judged.</param>
public sealed record ExplainedReading(ReadingSpec Spec, double? Measured, bool IsOverRange, double? Expected, double? Deviation)
{
    /// <summary>True where this very value is a slip or was left out: of a reading taken twice it may be one of the two.</summary>
    public bool IsDoubted { get; init; }
}

/// <summary>A reading that could be taken next.</summary>
/// <param name="Bits">Expected information about which set of faults is there [bit].</param>
/// <param name="Minutes">Minutes it takes, opening included.</param>
/// <param name="BlockedBy">Readings that must stand first; empty when it can be taken now.</param>
public sealed record NextReading(ReadingSpec Spec, double Bits, double Minutes, ImmutableArray<string> BlockedBy);

/// <summary>How far the search got, and why it stopped.</summary>
public sealed record SearchEffort(int SetsTried, int SetsExpanded, long ReadingsSolved, SearchStop Stop)
{
    /// <summary>False where a clock or a hand ended it: such an answer may change, and is no finding.</summary>
    public bool IsFinished => Stop is SearchStop.Complete or SearchStop.Budget;
}
