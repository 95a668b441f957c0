using Ohmstead.Electrical.Diagnosis;

namespace Ohmstead.Electrical.Drafting;

/// <summary>Several diagnoses are one piece of work: each tells its part of the whole.</summary>
internal static class SharedProgress
{
    /// <summary>The options of one of several diagnoses in a row.</summary>
    /// <param name="n">Which, from 0.</param>
    /// <param name="count">How many there are.</param>
    public static DiagnosisOptions Part(this DiagnosisOptions options, int n, int count) =>
        options.Progress is { } tell ? options with { Progress = share => tell((n + share) / count) } : options;
}
