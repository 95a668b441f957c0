using System.Text.Encodings.Web;
using System.Text.Json;

namespace Ohmstead.Mutants;

/// <summary>What became of a mistake.</summary>
/// <param name="Id">Of its place.</param>
/// <param name="Folder">Of the core.</param>
/// <param name="IsNoticed">A test failed, or did not come to an end.</param>
/// <param name="By">The classes of tests that ran last; empty when none comes by the place.</param>
internal sealed record Outcome(string Id, string Folder, bool IsNoticed, string By)
{
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>What was found so far: a line each, so that a run that was stopped can be taken up again.</summary>
    public static IReadOnlyList<Outcome> ReadAll(string file) =>
        File.Exists(file) ? [.. File.ReadLines(file).Select(l => JsonSerializer.Deserialize<Outcome>(l, Plain)!)] : [];

    public static void WriteAll(string file, IEnumerable<Outcome> outcomes) => File.WriteAllLines(file, outcomes.Select(Line));

    public void AppendTo(string file) => File.AppendAllText(file, Line(this) + "\n");

    private static string Line(Outcome outcome) => JsonSerializer.Serialize(outcome, Plain);
}
