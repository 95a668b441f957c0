using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;

namespace Ohmstead.App.Background;

/// <summary>A reading proposed next, and why.</summary>
public sealed record NextAdvice(NextReading Reading, ImmutableArray<string> Reasons)
{
    /// <summary>What begins its title where it is a doubted check: "Read again"; empty for what was not taken yet.</summary>
    public string Again { get; init; } = "";

    /// <summary>True for a doubted check that is to be read again.</summary>
    public bool IsAgain => Again.Length > 0;
}
