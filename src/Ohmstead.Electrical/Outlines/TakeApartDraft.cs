using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.Outlines;

/// <summary>
/// Drafts a skeleton of the take-apart: knobs, screws, cover, what is unsoldered, and a step for each part that has a price. Minutes,
/// chances and prices are common practice, no source; the first unit on the bench mends them.
/// </summary>
internal static class TakeApartDraft
{
    /// <summary>The step after which the parts lie open.</summary>
    public const string Open = "cover";

    public static IEnumerable<JsonObject> Of(Outline outline, DraftParts parts)
    {
        var knobs = new List<string>();
        foreach (var t in outline.Throttles)
        {
            knobs.Add($"knob-{t.Id}");
            yield return Step(knobs[^1], $"Knob of {DraftWords.Throttle(t.Id)}", [], 1.5, 1, 6, 8, "knob");
        }
        foreach (var w in outline.Whistles)
        {
            knobs.Add($"whistle-handle{w.Suffix}");
            yield return Step(
                knobs[^1],
                w.IsShared ? "Whistle handle" : $"Whistle handle of {DraftWords.Throttle(w.Throttles[0])}",
                [],
                1,
                1,
                5,
                6.5,
                "whistle handle"
            );
        }
        yield return Step("screws", "Case screws", [], 3, 3, 2, 0.4, "");
        yield return Step(Open, "Cover", [.. knobs, "screws"], 2, 3, 3, 30, "cover");
        yield return Step("cord-joints", "Cord joints", [Open], 4, 5, 4, 0, "", "cord-1", "cord-2");
        yield return Step("cord", "Cord", ["cord-joints"], 2, 3, 0, 6, "cord");
        var wires = outline.Posts.Select(p => $"w-{p}").ToArray();
        if (wires.Length > 0)
            yield return Step("post-leads", "Post leads", [Open], 1 + wires.Length, 1.4 * (1 + wires.Length), 1, 0, "", wires);
        foreach (var t in outline.Throttles.Where(t => t.Kind != ThrottleKind.Steps))
        {
            var contact = DraftWords.Contact(t.Kind);
            yield return Step(
                $"{contact}-{t.Id}-out",
                $"{DraftWords.Large(contact)} of {DraftWords.Throttle(t.Id)}",
                [Open],
                5,
                5,
                6,
                0.8,
                contact,
                $"w-arm-{t.Id}"
            );
        }
        foreach (var part in parts.Elements)
            if (Renewed(part) is var (minutes, breakPercent, price, name))
            {
                var id = part["id"]!.GetValue<string>();
                yield return Step(
                    $"{id}-out",
                    DraftWords.Large(parts.Titles[id]!.GetValue<string>()),
                    [Open],
                    minutes,
                    minutes + 1,
                    breakPercent,
                    price,
                    name
                );
            }
        yield return Step("core-out", "Core and windings", wires.Length > 0 ? ["cord", "post-leads"] : ["cord"], 8, 12, 4, 95, "core");
    }

    private static (double Minutes, double BreakPercent, double Price, string Name)? Renewed(JsonObject part) =>
        part["kind"]!.GetValue<string>() switch
        {
            "breaker" => (4, 5, 14, "breaker"),
            "rectifier" => (5, 8, 2, "rectifier"),
            "resistor" => (4, 3, 3, "resistance wire"),
            "lamp" => (1, 3, 1.6, "pilot lamp"),
            _ => null,
        };

    private static JsonObject Step(
        string id,
        string title,
        string[] after,
        double minutesOut,
        double minutesIn,
        double breakPercent,
        double price,
        string part,
        params string[] lifts
    )
    {
        var step = new JsonObject
        {
            ["id"] = id,
            ["title"] = title,
            ["after"] = DraftParts.Words(after),
            ["minutesOut"] = minutesOut,
            ["minutesIn"] = minutesIn,
            ["breakPercent"] = breakPercent,
            ["price"] = price,
        };
        if (lifts.Length > 0)
            step["lifts"] = DraftParts.Words(lifts);
        if (part.Length > 0)
            step["part"] = part;
        return step;
    }
}
