using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>
/// Numbers that are none, as some programs write them into JSON: <c>NaN</c>, <c>Infinity</c>. JSON does not know them; what stands there is
/// found all the same, so that each is named by its place.
/// </summary>
internal static partial class NotFinite
{
    /// <summary>What stands in for one: JSON, and beyond every number.</summary>
    public const string Number = "9e99999";

    /// <summary>What one is called.</summary>
    public const string Said = "not a finite number";

    /// <summary>The text with each of them replaced, so that it can be read.</summary>
    public static string Replaced(string text) => Word().Replace(text, m => m.ValueSpan[0] == '"' ? m.Value : Number);

    /// <summary>A problem for each of them in a text that is no JSON; none where that has other reasons.</summary>
    public static ImmutableArray<Problem> In(string text)
    {
        try
        {
            using var document = JsonDocument.Parse(Replaced(text), new JsonDocumentOptions { MaxDepth = 64 });
            return [.. Places(document.RootElement, "$")];
        }
        // Half a letter in a name cannot be made a path.
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return [];
        }
    }

    /// <summary>A problem for each of them in a document that they were replaced in.</summary>
    public static IEnumerable<Problem> Places(JsonElement at, string path) =>
        at.ValueKind switch
        {
            JsonValueKind.Array => at.EnumerateArray()
                .SelectMany((e, n) => Places(e, $"{path}[{n.ToString(CultureInfo.InvariantCulture)}]")),
            JsonValueKind.Object => at.EnumerateObject().SelectMany(p => Places(p.Value, $"{path}.{p.Name}")),
            JsonValueKind.Number when at.GetRawText() == Number => [new Problem(path, $"is {Said}", "a number such as 18.6 is expected")],
            _ => [],
        };

    /// <summary>A text in quotes as a whole, so that nothing in it is replaced; or one of the words.</summary>
    [GeneratedRegex("\"(?:[^\"\\\\]|\\\\.)*\"|-?\\b(?:NaN|Infinity)\\b", RegexOptions.CultureInvariant)]
    private static partial Regex Word();
}
