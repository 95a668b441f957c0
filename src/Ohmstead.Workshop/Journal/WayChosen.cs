using System.Collections.Immutable;

namespace Ohmstead.Workshop.Journal;

/// <summary>What is to be reached by taking apart was chosen; the last choice counts, an empty one calls it off.</summary>
/// <param name="Reach">Ids of take-apart steps.</param>
public sealed record WayChosen(ImmutableArray<string> Reach) : Fact;
