using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Drafts what eyes, hands and the owner can tell. The chances are common practice, no source.</summary>
internal static class ObservationDraft
{
    public static IEnumerable<JsonObject> Of(Outline outline, DraftParts parts)
    {
        yield return Seen(
            "jumps-when-flexed",
            "The ohms between the blades jump when the cord is flexed",
            0.03,
            ("cord-1:open", 0.7),
            ("cord-2:open", 0.7),
            ("cord-1:resistive", 0.5),
            ("cord-2:resistive", 0.5),
            ("joint-lug-1:open", 0.3),
            ("joint-lug-2:open", 0.3)
        );
        var known = parts
            .Elements.SelectMany(e =>
                (e["sliders"] as JsonArray ?? []).Select(s => s!["id"]!.GetValue<string>()).Append(e["id"]!.GetValue<string>())
            )
            .ToHashSet(StringComparer.Ordinal);
        foreach (var t in outline.Throttles)
        {
            (string Fault, double Chance)[] slow =
            [
                ($"roller-{t.Id}:worn", 0.7),
                ($"shoe-{t.Id}:worn", 0.7),
                ($"brush-{t.Id}:worn", 0.7),
                ($"button-{t.Id}:resistive", 0.6),
                ($"rotary-{t.Id}-a:resistive", 0.6),
                ($"ahead-{t.Id}-1:resistive", 0.6),
                ($"run-{t.Id}:resistive", 0.6),
                ($"range-low-{t.Id}:resistive", 0.5),
                ("breaker:resistive", 0.5),
                ($"breaker-{t.Id}:resistive", 0.5),
            ];
            yield return Seen(
                $"{t.Id}-slow",
                $"The train on {DraftWords.Throttle(t.Id)} slows under load",
                0.15,
                [.. slow.Where(f => known.Contains(f.Fault.Split(':')[0]))]
            );
        }
        foreach (var w in outline.Whistles)
        foreach (var t in w.Throttles)
        {
            var disc = $"disc{w.Suffix}";
            (string Fault, double Chance)[] dead =
            [
                ($"{disc}:high-drop", 0.5),
                ($"{disc}:open", 0.9),
                ($"{disc}:shorted", 0.95),
                ($"{disc}:leaky", 0.5),
                ($"kick-{t}:stuck-open", 0.9),
                ($"kick-{t}:resistive", 0.4),
                ($"out-{t}:stuck-open", 0.9),
                ($"out-{t}:resistive", 0.4),
            ];
            yield return Seen(
                $"{t}-whistle-dead",
                $"The whistle on {DraftWords.Throttle(t)} does not sound",
                0.15,
                [.. dead.Where(f => known.Contains(f.Fault.Split(':')[0]))]
            );
        }
        yield return Seen(
            "hot-at-rest",
            "It smells or is hot with no load",
            0.02,
            [("primary:shorted-turns", 0.8), .. outline.Windings.Select(w => ($"{w.Id}:shorted-turns", 0.7))]
        );
    }

    private static JsonObject Seen(string id, string title, double otherwise, params (string Fault, double Chance)[] given) =>
        new()
        {
            ["id"] = id,
            ["title"] = title,
            ["given"] = new JsonObject(given.Select(g => KeyValuePair.Create(g.Fault, (JsonNode?)JsonValue.Create(g.Chance)))),
            ["otherwise"] = otherwise,
        };
}
