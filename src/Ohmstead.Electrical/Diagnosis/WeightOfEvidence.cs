using System.Collections.Immutable;
using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>What the readings say of one fault mode, those that say most first.</summary>
public sealed record WeightOfEvidence(FaultMode Mode, ImmutableArray<ReadingWeight> Readings);

/// <summary>What one reading says of a fault: the log of its likelihood with the fault over that without it.</summary>
/// <param name="Place">Place among the readings that were taken, as in <see cref="DiagnosisResult.Readings"/>.</param>
/// <param name="Nats">Above 0 it speaks for the fault, below 0 against it [nat].</param>
public readonly record struct ReadingWeight(int Place, double Nats);
