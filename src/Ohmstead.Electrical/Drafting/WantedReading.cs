using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Drafting;

/// <summary>A reading that would make a drafted sheet surer.</summary>
/// <param name="Minutes">What it takes.</param>
/// <param name="Fixes">The values of which it takes at least half of the variance.</param>
/// <param name="RelativeErrorAfter">The relative error left of the first of these.</param>
public sealed record WantedReading(ReadingSpec Spec, double Minutes, ImmutableArray<string> Fixes, double RelativeErrorAfter);
