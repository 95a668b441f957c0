using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>Take-apart steps as a sheet has them.</summary>
public static class TakeApartWriter
{
    private static readonly JsonSerializerOptions Indented = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        WriteIndented = true,
    };

    /// <summary>The steps as JSON. What a step of the same id says in a sheet's text that this program does not read stays in it.</summary>
    /// <param name="sheet">Text of a sheet that can be read.</param>
    public static string Write(ImmutableArray<TakeApartStep> steps, string sheet)
    {
        var known = (JsonNode.Parse(sheet)!["takeApart"] as JsonArray ?? [])
            .OfType<JsonObject>()
            .ToDictionary(s => (string)s["id"]!, StringComparer.Ordinal);
        return new JsonArray([
            .. steps.Select(s => Json(s, (JsonObject?)known.GetValueOrDefault(s.Id)?.DeepClone() ?? new JsonObject())),
        ]).ToJsonString(Indented);
    }

    private static JsonObject Json(TakeApartStep step, JsonObject into)
    {
        (into["id"], into["title"], into["after"]) = (step.Id, step.Title, Words(step.After));
        (into["minutesOut"], into["minutesIn"]) = (step.MinutesOut, step.MinutesIn);
        (into["breakPercent"], into["price"]) = (step.BreakPercent, step.Price);
        void Unless(string field, bool isUsual, JsonNode value)
        {
            if (isUsual)
                into.Remove(field);
            else
                into[field] = value;
        }
        Unless("afterAny", step.AfterAny.IsEmpty, new JsonArray([.. step.AfterAny.Select(Words)]));
        Unless("lifts", step.Lifts.IsEmpty, Words(step.Lifts));
        Unless("part", step.Part.Length == 0, step.Part);
        Unless("cup", step.Cup == 0, step.Cup);
        Unless("tool", step.Tool.Length == 0, step.Tool);
        Unless("trick", step.Trick.Length == 0, step.Trick);
        return into;
    }

    private static JsonArray Words(ImmutableArray<string> words) => [.. words.Select(w => (JsonNode)w)];
}
