using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Ohmstead.App.Commands;

/// <summary>Writes JSON to standard output. Numbers have as many digits as bring the same number back.</summary>
internal static class Output
{
    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static void Print(JsonObject answer)
    {
        using var to = Console.OpenStandardOutput();
        to.Write(Encoding.UTF8.GetBytes(answer.ToJsonString(Options) + "\n"));
    }

    /// <summary>A reading's value: a number, or OL.</summary>
    public static JsonNode Value(double value) => double.IsPositiveInfinity(value) ? JsonValue.Create("OL") : JsonValue.Create(value);

    /// <summary>A number, or null where there is none.</summary>
    public static JsonNode? Optional(double? value) => value is { } v && double.IsFinite(v) ? JsonValue.Create(v) : null;

    public static JsonArray Words(IEnumerable<string> words) => new([.. words.Select(w => JsonValue.Create(w))]);
}
