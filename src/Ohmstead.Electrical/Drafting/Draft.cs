using System.Collections.Immutable;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Drafting;

/// <summary>What comes of an outline and of the readings of some units.</summary>
/// <param name="Kind">The most probable of the kinds that the outline may stand for.</param>
/// <param name="Sheet">Its sheet, with the numbers that the readings gave.</param>
/// <param name="Values">Where each number comes from.</param>
/// <param name="Candidates">The kinds and their probabilities, most probable first.</param>
/// <param name="Wants">Readings that would narrow the sheet's bands most.</param>
public sealed record Draft(
    OutlineKind Kind,
    TypeSheet Sheet,
    ImmutableArray<DraftedValue> Values,
    ImmutableArray<(OutlineKind Kind, double Probability)> Candidates,
    ImmutableArray<WantedReading> Wants
);
