using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Drafting;

/// <summary>What comes of an outline and of the readings of some units.</summary>
/// <param name="Kind">The most probable of the kinds that the outline may stand for.</param>
/// <param name="Sheet">Its sheet, with the numbers that the readings gave.</param>
/// <param name="Values">Where each number comes from.</param>
/// <param name="Units">What is probably wrong with each unit, and what of its readings nothing explains.</param>
/// <param name="Candidates">The kinds and their probabilities, most probable first.</param>
/// <param name="Discriminating">What tells the kinds apart, best first.</param>
/// <param name="Wants">Readings that would narrow the sheet's bands most.</param>
public sealed record Draft(
    OutlineKind Kind,
    TypeSheet Sheet,
    ImmutableArray<DraftedValue> Values,
    ImmutableArray<DraftedUnit> Units,
    ImmutableArray<(OutlineKind Kind, double Probability)> Candidates,
    ImmutableArray<DiscriminatingReading> Discriminating,
    ImmutableArray<WantedReading> Wants
);

/// <summary>A unit that a sheet was drafted from.</summary>
/// <param name="Sets">Whole sets of its faults with their sizes, most probable first.</param>
/// <param name="SetAside">Readings that nothing explains.</param>
public sealed record DraftedUnit(
    ImmutableArray<(ImmutableArray<Fault> Faults, double Probability)> Sets,
    ImmutableArray<ExplainedReading> SetAside
);

/// <summary>One of the kinds that an outline may stand for, with the readings that were taken.</summary>
/// <param name="Sheet">Its sheet, with the readings that were given whole.</param>
public sealed record KindReadings(OutlineKind Kind, TypeSheet Sheet, ImmutableArray<UnitReadings> Units);

/// <summary>A reading, or a look, that tells kinds apart.</summary>
/// <param name="Id">The reading's id, or <c>look:</c> and the place of the word in the outline.</param>
/// <param name="Bits">Expected information about the kind [bit].</param>
/// <param name="Between">The kinds that it tells apart, by id.</param>
public sealed record DiscriminatingReading(string Id, double Bits, double Minutes, ImmutableArray<string> Between);
