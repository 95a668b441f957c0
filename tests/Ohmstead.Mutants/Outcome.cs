using System.Text.Encodings.Web;
using System.Text.Json;

namespace Ohmstead.Mutants;

/// <summary>What became of a mistake.</summary>
/// <param name="Id">Of its place.</param>
/// <param name="Folder">Of the core.</param>
/// <param name="IsNoticed">A test failed, or did not come to an end.</param>
/// <param name="WasNoticedAtFirst">So it was when the mistake was first tried, before anybody had looked at it.</param>
/// <param name="By">The classes of tests that ran last; empty when none comes by the place.</param>
internal sealed record Outcome(string Id, string Folder, bool IsNoticed, bool WasNoticedAtFirst, string By)
{
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>What was found so far: a line each, so that a run that was stopped can be taken up again. Of two lines the later holds.</summary>
    public static Dictionary<string, Outcome> ReadAll(string file)
    {
        var all = new Dictionary<string, Outcome>(StringComparer.Ordinal);
        foreach (var line in File.Exists(file) ? File.ReadLines(file) : [])
            if (JsonSerializer.Deserialize<Outcome>(line, Plain) is { } outcome)
                all[outcome.Id] = outcome;
        return all;
    }

    public static void WriteAll(string file, IEnumerable<Outcome> outcomes) =>
        File.WriteAllLines(file, outcomes.OrderBy(o => o.Id, StringComparer.Ordinal).Select(Line));

    public void AppendTo(string file) => File.AppendAllText(file, Line(this) + "\n");

    private static string Line(Outcome outcome) => JsonSerializer.Serialize(outcome, Plain);
}
