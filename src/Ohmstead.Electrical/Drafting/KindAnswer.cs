using System.Collections.Immutable;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Drafting;

/// <summary>Which kind a unit is.</summary>
/// <param name="Kinds">In the order given.</param>
/// <param name="None">Probability that it is none of these.</param>
/// <param name="Next">Readings not taken by information about the kind per minute, blocked ones last.</param>
/// <param name="Alike">Groups of kinds that the readings taken do not tell apart, by place.</param>
public sealed record KindAnswer(
    ImmutableArray<KindProbability> Kinds,
    double None,
    ImmutableArray<NextAboutKind> Next,
    ImmutableArray<ImmutableArray<int>> Alike
)
{
    /// <summary>True when it is likelier to be none of these than any one of them.</summary>
    public bool IsProbablyNone => Kinds.All(k => k.Probability < None);
}

/// <summary>A kind that a unit may be, with the readings of the unit as this kind has them.</summary>
/// <param name="Name">What it is called in the answer.</param>
/// <param name="Chance">Its chance before any reading, beside those of the others.</param>
/// <param name="Readings">Null where the kind cannot have one of the readings.</param>
/// <param name="Excluded">Why not; empty otherwise.</param>
public sealed record PossibleKind(string Name, double Chance, TypeSheet Sheet, UnitReadings? Readings, string Excluded);

/// <summary>What the readings say of one kind.</summary>
/// <param name="LogEvidence">ln of how likely the readings are, faults summed over [nats]; negative infinity for an excluded kind.</param>
/// <param name="Faults">The best set of faults under this kind.</param>
public sealed record KindProbability(PossibleKind Kind, double Probability, double LogEvidence, ImmutableArray<FaultMode> Faults);

/// <summary>A reading that says something about the kind.</summary>
/// <param name="BlockedBy">Readings that must pass first.</param>
public sealed record NextAboutKind(ReadingSpec Spec, double Bits, double Minutes, ImmutableArray<string> BlockedBy);
