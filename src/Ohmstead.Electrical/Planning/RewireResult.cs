using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>A rewire, checked.</summary>
/// <param name="Mistakes">Every single mistake that was weighed.</param>
/// <param name="Probable">Sets of mistakes, likeliest first; empty before any reading.</param>
/// <param name="ToRead">The short list of readings that discriminates the right wiring from every mistake for which that can be done.</param>
/// <param name="Undiscriminated">Mistakes that no cold or low-voltage reading shows with this meter.</param>
/// <param name="Alike">Groups in which no reading differs by more than the meter's limit.</param>
/// <param name="Dangerous">Those of <paramref name="Undiscriminated"/> that could join mains to a post or the core, or bypass a breaker.</param>
public sealed record RewireResult(
    ImmutableArray<Mistake> Mistakes,
    RewireVerdict Verdict,
    ImmutableArray<RewireHypothesis> Probable,
    ImmutableArray<RewireReading> ToRead,
    ImmutableArray<Mistake> Undiscriminated,
    ImmutableArray<ImmutableArray<Mistake>> Alike,
    ImmutableArray<Mistake> Dangerous
)
{
    /// <summary>True when every mistake that can be told is ruled out and only <see cref="Dangerous"/> keeps it unproved.</summary>
    public bool WaitsForTheEye { get; init; }

    /// <summary>Readings that the right wiring does not show, where no listed mistake explains them better: nothing is proved with them.</summary>
    public ImmutableArray<ReadingSpec> Unexplained { get; init; } = [];
}

/// <summary>What a check of a rewire says.</summary>
public enum RewireVerdict
{
    /// <summary>A mistake is more likely than none.</summary>
    Mistake,

    /// <summary>Not enough was read, or what was read does not rule every mistake out.</summary>
    NotProved,

    /// <summary>Every reading asked for was taken, and no mistake that they can tell is left.</summary>
    NoneLeft,
}

/// <summary>A set of mistakes and its probability; an empty set: wired as planned.</summary>
public sealed record RewireHypothesis(ImmutableArray<Mistake> Mistakes, double Probability);

/// <summary>A reading that is to be taken.</summary>
/// <param name="Minutes">Its minutes, with those of opening where it is the first behind a step.</param>
/// <param name="Discriminates">The mistakes that it shows by itself, or that the rest of the list does not show without it: never none.</param>
public sealed record RewireReading(ReadingSpec Spec, double Minutes, ImmutableArray<Mistake> Discriminates);
