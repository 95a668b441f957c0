using System.Text.Json;

namespace Ohmstead.Mutants;

/// <summary>A mistake that no test can notice, because the program does the same with it.</summary>
/// <param name="Id">Of its place.</param>
/// <param name="Why">What makes it the same.</param>
internal sealed record Equivalent(string Id, string Why)
{
    /// <summary>The list that is kept by hand, a line each.</summary>
    public static IReadOnlyDictionary<string, string> ReadAll(string file) =>
        File.ReadLines(file)
            .Select(l => JsonSerializer.Deserialize<Equivalent>(l)!)
            .ToDictionary(e => e.Id, e => e.Why, StringComparer.Ordinal);
}
