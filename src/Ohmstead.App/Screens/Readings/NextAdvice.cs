using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;

namespace Ohmstead.App.Screens.Readings;

/// <summary>A reading proposed next, and why.</summary>
public sealed record NextAdvice(NextReading Reading, ImmutableArray<string> Reasons)
{
    /// <summary>True for a doubted check that is to be read again.</summary>
    public bool IsAgain { get; init; }
}
