using System.Collections.Immutable;
using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>
/// What a search that goes on makes of the readings so far, on the bench as noted: to be looked at while it searches. It is no answer: it is
/// not kept, nothing is opened or planned by it, and it may change.
/// </summary>
/// <param name="SetsExpanded">After how much work: an answer comes at the same sets whatever the machine.</param>
/// <param name="Findings">Faults that do the same to what was read stand together; in the order of the likeliest fault of each, as in an answer.</param>
public sealed record EarlyAnswer(int SetsExpanded, ImmutableArray<EarlyFinding> Findings);

/// <summary>Faults that the readings taken do not tell apart, the likeliest first, and the probability that one of them is there.</summary>
public sealed record EarlyFinding(ImmutableArray<FaultMode> Modes, double Probability);
