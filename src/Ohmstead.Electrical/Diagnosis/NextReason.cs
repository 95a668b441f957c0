using System.Collections.Immutable;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>Why a reading is proposed.</summary>
/// <param name="Groups">The probable sets of faults by what they would show, from the highest value down; never empty.</param>
/// <param name="Suspects">
/// With one group only: faults, likeliest first, that nothing taken has shown and that would move the reading out of its band.
/// </param>
/// <param name="Waiting">Readings that wait for this one to stand.</param>
public sealed record NextReason(ImmutableArray<ExpectedGroup> Groups, ImmutableArray<FaultMode> Suspects, int Waiting)
{
    /// <summary>True when the probable sets would show different values: the reading decides between them.</summary>
    public bool Decides => Groups.Length > 1;
}

/// <summary>What a reading would show under some of the probable sets of faults: those whose bands on it overlap.</summary>
/// <param name="Expected">The band under the most probable of these sets, as this meter shows it.</param>
/// <param name="Beyond">
/// What each of the sets holds beyond the faults that all probable sets share; only the smallest, so that a set which holds
/// another of the group is not named. An empty one: nothing more is wrong.
/// </param>
public sealed record ExpectedGroup(Expectation Expected, ImmutableArray<ImmutableArray<FaultMode>> Beyond);
