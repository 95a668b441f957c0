using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Drafts the readings of the open unit: drops at 1 A, cells and resistance wires by themselves.</summary>
/// <param name="add">Adds one: id, title, quantity, between, state, minutes.</param>
internal sealed class OpenReadingDraft(
    Outline outline,
    DraftParts parts,
    Action<string, string, string, (string, string)?, JsonObject, double> add
)
{
    public void All()
    {
        foreach (var b in parts.Elements.Where(e => Word(e, "kind") == ElementKind.Breaker.Word()))
            Breaker(b);
        foreach (var t in outline.Throttles)
            Arm(t);
        foreach (var cell in parts.Elements.Where(e => Word(e, "kind") == ElementKind.Rectifier.Word()))
        {
            var (id, from, to) = (Word(cell, "id"), Word(cell, "from"), Word(cell, "to"));
            add($"{id}-1a", $"{Large(id)}, drop at 1 A forward", "dc-volts", (from, to), Driven(from, to), 4);
        }
        foreach (var wire in parts.Elements.Where(e => Word(e, "kind") == ElementKind.Resistor.Word()))
            Wire(wire);
        foreach (var t in outline.Throttles.Where(t => t.Kind == ThrottleKind.Rheostat))
            add(
                $"rheostat-{t.Id}",
                $"Resistance wire of {DraftWords.Throttle(t.Id)}, end to end",
                "ohms",
                ($"wire-{t.Id}-free", $"wire-{t.Id}-feed"),
                [],
                2
            );
    }

    private static string Word(JsonObject part, string field) => part[field]!.GetValue<string>();

    private string Large(string id) => DraftWords.Large(parts.Titles[id]!.GetValue<string>());

    private static JsonObject Driven(string from, string to) =>
        new()
        {
            ["source"] = new JsonObject
            {
                ["from"] = from,
                ["to"] = to,
                ["directAmps"] = 1.0,
            },
        };

    private static JsonObject Full(JsonObject state, ThrottleBlock t)
    {
        state["controls"] = new JsonObject
        {
            [$"throttle-{t.Id}"] =
                t.Kind == ThrottleKind.Steps ? t.Volts.Length.ToString(System.Globalization.CultureInfo.InvariantCulture) : 1.0,
        };
        return state;
    }

    private void Breaker(JsonObject breaker)
    {
        // Driven at its own two ends, past whatever else lies in the way.
        var (id, from, to) = (Word(breaker, "id"), Word(breaker, "from"), Word(breaker, "to"));
        add($"drop-{id}", $"Drop at 1 A across the {parts.Titles[id]!.GetValue<string>()}", "dc-volts", (from, to), Driven(from, to), 3);
    }

    /// <summary>From the post back to the arm and the hub; behind a rectifier, and with no way back, from the hub to the winding.</summary>
    private void Arm(ThrottleBlock t)
    {
        var (w, said) = (outline.WindingOf(t), DraftWords.Throttle(t.Id));
        if (outline.RectifierOf(t) is not null || w.From.Length == 0)
        {
            var end = $"{w.Id}-start";
            add(
                $"drop-arm-{t.Id}",
                $"Drop at 1 A from the arm of {said} to the winding, {DraftWords.Full(t)}",
                "dc-volts",
                ($"arm-{t.Id}", end),
                Full(Driven($"hub-{t.Id}", end), t),
                3
            );
            return;
        }
        var (post, back) = ($"post-{t.Id}", $"post-{w.From}");
        foreach (var place in new[] { "arm", "hub" })
            add(
                $"drop-{place}-{t.Id}",
                $"Drop at 1 A through {DraftWords.Post(t.Id)}, {place} to post",
                "dc-volts",
                (post, $"{place}-{t.Id}"),
                Full(Driven(post, back), t),
                3
            );
        if (t.Slides)
            add(
                $"drop-{DraftWords.Contact(t.Kind)}-{t.Id}",
                $"Drop at 1 A through {DraftWords.Post(t.Id)}, arm to winding",
                "dc-volts",
                ($"arm-{t.Id}", $"{w.Id}-start"),
                Full(Driven(post, back), t),
                3
            );
    }

    private void Wire(JsonObject wire)
    {
        var (id, from, to) = (Word(wire, "id"), Word(wire, "from"), Word(wire, "to"));
        add(id, $"{Large(id)}, end to end", "ohms", (from, to), [], 2);
    }
}
