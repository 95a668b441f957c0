using System.Collections.Immutable;

namespace Ohmstead.Workshop.Cautions;

/// <summary>A row of the table of cautions: a hazard, and what to do about it.</summary>
/// <param name="Hazard">What it is about: "lead".</param>
/// <param name="Words">The hazard first, then the act.</param>
/// <param name="Parts">Kinds of part it is for, as <see cref="CautionTable.PartOf"/> names them; empty for every part.</param>
/// <param name="Acts">What the hand is about to do.</param>
public sealed record Caution(string Hazard, string Words, ImmutableArray<string> Parts, ImmutableArray<Act> Acts)
{
    /// <summary>True when it is for this act on this kind of part.</summary>
    /// <param name="part">Empty where no single part is meant.</param>
    public bool IsFor(Act act, string part) => Acts.Contains(act) && (Parts.IsEmpty || Parts.Contains(part, StringComparer.Ordinal));
}
