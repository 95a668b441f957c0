using Ohmstead.Workshop.Findings;

namespace Ohmstead.App.Background;

/// <summary>How the background stands with a unit.</summary>
/// <param name="Latest">The last answer; null for none yet.</param>
/// <param name="Progress">Share done of the next one [0..1]; null when nothing is being worked out.</param>
/// <param name="Trouble">Why there is no answer, in words; empty when there is, or will be.</param>
public sealed record DiagnosisState(Diagnosed? Latest, double? Progress, string Trouble)
{
    /// <summary>What the search that goes on would say now; null when none goes on, or before it has anything to say.</summary>
    public SoFar? SoFar { get; init; }

    /// <summary>Before the first entry.</summary>
    public static DiagnosisState Nothing { get; } = new(null, null, "");
}
