using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>
/// The words of an outline that nobody knows: each text that they may stand for, one after another. A word is open where it says
/// "unknown" and the language has a list of what it can be, or where the outline itself gives one: <c>{ "oneOf": […] }</c>.
/// </summary>
internal static class OpenWords
{
    /// <summary>More kinds of unit than this are not told apart at a bench.</summary>
    public const int MostCandidates = 24;

    /// <summary>The word for what nobody knows.</summary>
    public const string Unknown = "unknown";

    /// <summary>Every text that the outline may stand for, with the choices made; none, with a problem, where they are too many.</summary>
    public static IReadOnlyList<(JsonObject Text, ImmutableSortedDictionary<string, string> Choices)> Candidates(
        JsonObject outline,
        List<Problem> problems
    )
    {
        var open = Of(outline, problems).ToList();
        if (problems.Count > 0)
            return [];
        var count = open.Aggregate(1L, (n, o) => Math.Min(n * o.Choices.Count, 1_000_000));
        if (count > MostCandidates)
        {
            problems.Add(
                new Problem(
                    "$",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"stands for {count} kinds of unit: {string.Join(" × ", open.Select(o => $"{o.Choices.Count} for {o.Path}"))}"
                    ),
                    string.Create(CultureInfo.InvariantCulture, $"at most {MostCandidates}: look at one of them and say what it is")
                )
            );
            return [];
        }
        return [.. Enumerable.Range(0, (int)count).Select(n => Choose(outline, open, n))];
    }

    private static (JsonObject, ImmutableSortedDictionary<string, string>) Choose(JsonObject outline, List<OpenWord> open, int number)
    {
        var text = (JsonObject)outline.DeepClone();
        var choices = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        // The last word turns fastest.
        foreach (var word in Enumerable.Reverse(open))
        {
            var chosen = word.Choices[number % word.Choices.Count];
            number /= word.Choices.Count;
            Put(text, word.Steps, chosen);
            choices[word.Path] = chosen is JsonValue v && v.TryGetValue<string>(out var s) ? s : chosen?.ToJsonString() ?? "null";
        }
        return (text, choices.ToImmutable());
    }

    private static void Put(JsonNode at, ImmutableArray<object> steps, JsonNode? chosen)
    {
        foreach (var step in steps[..^1])
            at = step is int n ? at[n]! : at[(string)step]!;
        if (steps[^1] is int last)
            at[last] = chosen?.DeepClone();
        else
            at[(string)steps[^1]] = chosen?.DeepClone();
    }

    private sealed record OpenWord(string Path, ImmutableArray<object> Steps, IReadOnlyList<JsonNode?> Choices);

    private static IEnumerable<OpenWord> Of(JsonObject outline, List<Problem> problems)
    {
        foreach (var top in new[] { "plate", "blocks" })
        foreach (var word in Below(outline[top], top, [top], outline, null, problems))
            yield return word;
    }

    private static IEnumerable<OpenWord> Below(
        JsonNode? at,
        string path,
        ImmutableArray<object> steps,
        JsonObject outline,
        JsonObject? block,
        List<Problem> problems
    )
    {
        switch (at)
        {
            case JsonObject o when o.ContainsKey("oneOf"):
                if (o["oneOf"] is JsonArray { Count: > 0 } list && list.All(c => c is not JsonObject))
                    yield return new OpenWord(path, steps, [.. list]);
                else
                    problems.Add(
                        new Problem(
                            $"$.{path}.oneOf",
                            "is no list of what it may be",
                            "{ \"oneOf\": [ … ] } with one choice or more is expected"
                        )
                    );
                break;
            case JsonObject o:
                var within = o.ContainsKey("block") ? o : block;
                foreach (var (name, value) in o.ToList())
                foreach (var word in Below(value, $"{path}.{name}", steps.Add(name), outline, within, problems))
                    yield return word;
                break;
            case JsonArray a:
                for (var n = 0; n < a.Count; n++)
                    foreach (
                        var word in Below(
                            a[n],
                            string.Create(CultureInfo.InvariantCulture, $"{path}[{n}]"),
                            steps.Add(n),
                            outline,
                            block,
                            problems
                        )
                    )
                        yield return word;
                break;
            case JsonValue v when block is not null && v.TryGetValue<string>(out var s) && s == Unknown && steps[^1] is string field:
                if (Vocabulary(block, field, outline) is { Count: > 0 } choices)
                    yield return new OpenWord(path, steps, choices);
                break;
            default:
                break;
        }
    }

    private static IReadOnlyList<JsonNode?> Vocabulary(JsonObject block, string field, JsonObject outline)
    {
        string[] words = (Word(block, "block"), field) switch
        {
            ("throttle", "kind") => block["ohms"] is not null ? ["rheostat"]
            : block["volts"] is JsonArray { Count: > 2 } ? ["steps"]
            : ["roller", "shoe"],
            ("throttle", "on") => [.. Named(outline, "winding", "id")],
            ("range" or "whistle" or "direction" or "rectifier", "throttle") => [.. Named(outline, "throttle", "id")],
            ("whistle", "from") => ["own", "winding"],
            ("whistle" or "rectifier", "cell") => Cells,
            ("direction", "kind") => Named(outline, "rectifier", "throttle").Contains(Word(block, "throttle"), StringComparer.Ordinal)
                ? ["interrupts", "rotary", "reverses"]
                : ["interrupts", "rotary"],
            ("rectifier", "kind") => ["bridge", "half"],
            ("rectifier", "from") or ("bond", "post") => [.. FixedPosts(outline)],
            ("breaker", "in") => BreakerPlaces(outline),
            ("pilot", "across") => [.. Named(outline, "winding", "id")],
            _ => [],
        };
        return (Word(block, "block"), field) is ("whistle", "steps")
            ? [JsonValue.Create(1), JsonValue.Create(2)]
            : [.. words.Select(w => JsonValue.Create(w))];
    }

    /// <summary>What a cell may be made of.</summary>
    public static string[] Cells { get; } = ["disc", "selenium", "silicon"];

    private static string[] BreakerPlaces(JsonObject outline) =>
        [
            .. Named(outline, "winding", "from").Any() ? new[] { "common" } : [],
            .. Named(outline, "throttle", "id").Any() ? new[] { "throttle" } : [],
            "primary",
            .. FixedPosts(outline).Except(Named(outline, "winding", "from"), StringComparer.Ordinal),
        ];

    private static IEnumerable<string> FixedPosts(JsonObject outline) =>
        Named(outline, "winding", "from")
            .Concat(Blocks(outline, "winding").SelectMany(b => b["posts"] is JsonObject posts ? posts.Select(p => p.Key) : []))
            .Concat(Named(outline, "rectifier", "post"))
            .Distinct(StringComparer.Ordinal);

    private static IEnumerable<string> Named(JsonObject outline, string block, string field) =>
        Blocks(outline, block).Select(b => Word(b, field)).Where(w => w.Length > 0 && w != Unknown).Distinct(StringComparer.Ordinal);

    private static IEnumerable<JsonObject> Blocks(JsonObject outline, string block) =>
        outline["blocks"] is JsonArray all ? all.OfType<JsonObject>().Where(b => Word(b, "block") == block) : [];

    private static string Word(JsonObject at, string field) => at[field] is JsonValue v && v.TryGetValue<string>(out var s) ? s : "";
}
