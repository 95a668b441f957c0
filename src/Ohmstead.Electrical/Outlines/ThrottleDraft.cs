using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>
/// Drafts what lies between a throttle's contact and its post, one part after another: breaker, range lever, whistle, rectifier,
/// direction control. What is left out leaves the terminal before it.
/// </summary>
internal sealed class ThrottleDraft(Outline outline, WindingDraft windings, DraftParts parts)
{
    /// <summary>A rheostat's wire is a winding on a core of its own that no flux goes through.</summary>
    private const double WireTurns = 200,
        FormerLossOhms = 0.001,
        FormerHenries = 1;

    private readonly List<JsonObject> formers = [];

    /// <summary>The cores of the rheostats' wires.</summary>
    public IEnumerable<JsonObject> Formers => formers;

    public void Throttle(ThrottleBlock t)
    {
        var said = DraftWords.Throttle(t.Id);
        if (t.Kind == ThrottleKind.Steps)
            Steps(t, said);
        else
            parts.Throttle($"throttle-{t.Id}", DraftWords.BareThrottle(t.Id));
        if (t.Kind == ThrottleKind.Rheostat)
            Rheostat(t, said);
        parts.Name($"arm-{t.Id}", $"the arm of {said}");
        parts.Wire($"w-arm-{t.Id}", $"arm-{t.Id}", $"hub-{t.Id}", $"arm lead of {said}");
        parts.Name($"hub-{t.Id}", $"the hub of {said}");
        var at = $"hub-{t.Id}";
        if (outline.BreakerIn("throttle") is { } breaker)
        {
            windings.Breaker(
                breaker,
                $"breaker-{t.Id}",
                at,
                $"pivot-{t.Id}",
                outline.Throttles.Length + outline.Breakers.Length > 2 ? $"breaker of {said}" : "breaker"
            );
            at = $"pivot-{t.Id}";
        }
        if (outline.RangeOf(t) is { } range)
            at = Range(t, range, at, said);
        if (outline.WhistleOf(t) is { } whistle)
            at = new WhistleDraft(windings, parts).Draft(t, whistle, at, said);
        if (outline.RectifierOf(t) is { } rectifier)
            Rectified(t, rectifier, at, said);
        else
            Post(t, t.Id, outline.DirectionOf(t) is { } direction ? Direction(t, direction, at, said) : at);
    }

    private void Steps(ThrottleBlock t, string said)
    {
        var numbers = Enumerable.Range(1, t.Volts.Length).Select(n => n.ToString(CultureInfo.InvariantCulture)).ToList();
        parts.Selector($"throttle-{t.Id}", DraftWords.BareThrottle(t.Id), "1", [.. numbers.Select(n => (n, $"step {n}"))]);
        foreach (var n in numbers)
        {
            var tap = $"tap-{t.Id}-{n}";
            parts.Contact(
                $"step-{t.Id}-{n}",
                parts.Titles.ContainsKey(tap) ? tap : $"{t.On}-end",
                $"arm-{t.Id}",
                $"throttle-{t.Id}",
                [n],
                $"contact {n} of {said}"
            );
        }
    }

    private void Rheostat(ThrottleBlock t, string said)
    {
        // A second wire on the same winding hangs on a joint of its own.
        var isFirst = outline.Throttles.First(o => o.On == t.On && o.Kind == ThrottleKind.Rheostat) == t;
        parts.Joint(
            isFirst ? $"joint-{t.On}-end" : $"joint-{t.On}-end-{t.Id}",
            $"{t.On}-end",
            $"wire-{t.Id}-feed",
            isFirst ? $"joint at the outer end of the {DraftWords.Winding(t.On)}" : $"joint at the wire of {said}"
        );
        parts.Name($"wire-{t.Id}-feed", $"the fed end of the wire of {said}");
        parts.Name($"wire-{t.Id}-free", $"the free end of the wire of {said}");
        var id = $"rheostat-{t.Id}";
        var wire = parts.Add(id, ElementKind.Winding, $"wire-{t.Id}-free", $"wire-{t.Id}-feed", $"resistance wire of {said}");
        parts.Titles[$"{id}.from"] = "its free end";
        parts.Titles[$"{id}.to"] = "its fed end";
        wire["core"] = $"former-{t.Id}";
        wire["turns"] = WireTurns;
        parts.Set(wire, $"elements.{id}", ElementKind.Winding, "ohms", Priors.KnownWire(t.Ohms!));
        wire["spread"]!["turns"] = 0;
        wire["faults"] = new JsonObject
        {
            ["open"] = 6,
            ["shorted-turns"] = 1,
            ["reversed"] = 0.01,
        };
        var brush = new JsonObject
        {
            ["id"] = $"brush-{t.Id}",
            ["control"] = $"throttle-{t.Id}",
            ["fromTurn"] = 0,
            ["toTurn"] = WireTurns,
            ["to"] = $"arm-{t.Id}",
        };
        parts.Set(brush, $"elements.brush-{t.Id}", ElementKind.Slider, "contactOhms", Priors.Contact(t.Kind));
        wire["sliders"] = new JsonArray(brush);
        parts.Titles[$"brush-{t.Id}"] = $"brush of {said}";
        formers.Add(
            new JsonObject
            {
                ["id"] = $"former-{t.Id}",
                ["referenceWinding"] = id,
                ["lossOhms"] = FormerLossOhms,
                ["magnetisingHenries"] = FormerHenries,
                ["spread"] = new JsonObject { ["lossOhms"] = 0, ["magnetisingHenries"] = 0 },
            }
        );
        parts.Titles[$"former-{t.Id}"] = "former of the resistance wire";
    }

    private string Range(ThrottleBlock t, RangeBlock range, string at, string said)
    {
        var (id, to) = ($"range-{t.Id}", $"range-out-{t.Id}");
        parts.Selector(id, $"range lever of {said}", "low", ("low", "low"), ("high", "high"));
        parts.Contact($"range-low-{t.Id}", at, to, id, ["low"], $"low contact of the range lever of {said}");
        parts.Contact($"range-high-{t.Id}", at, $"extra-{t.Id}-start", id, ["high"], $"high contact of the range lever of {said}");
        windings.Boost($"extra-{t.Id}", range.Boost, t.On, outline.Ranges.Length > 1 ? $"range winding of {said}" : "range winding");
        parts.Joint($"joint-extra-{t.Id}", $"extra-{t.Id}-end", to, $"joint at the outer end of the range winding of {said}");
        parts.Name(to, $"the far side of the range lever of {said}");
        parts.Near.Add([at, to, $"extra-{t.Id}-start"]);
        return to;
    }

    private void Rectified(ThrottleBlock t, RectifierBlock r, string hub, string said)
    {
        var (plus, minus) = ($"plus-{t.Id}", $"minus-{t.Id}");
        var w = outline.WindingOf(t);
        var back = w.From.Length > 0 ? parts.Leads[w.From] : $"lead-{w.Id}";
        var word = CellWord(r.Cell);
        parts.Name(plus, $"the plus side of the {word} of {said}");
        if (r.IsBridge)
        {
            parts.Cell($"cell-{t.Id}-1", hub, plus, r.Cell, $"{word} 1 of {said}");
            parts.Cell($"cell-{t.Id}-2", back, plus, r.Cell, $"{word} 2 of {said}");
            parts.Cell($"cell-{t.Id}-3", minus, hub, r.Cell, $"{word} 3 of {said}");
            parts.Cell($"cell-{t.Id}-4", minus, back, r.Cell, $"{word} 4 of {said}");
            parts.Name(minus, $"the minus side of the {word} of {said}");
        }
        else
        {
            parts.Cell($"cell-{t.Id}", hub, plus, r.Cell, $"{word} of {said}");
            minus = back;
        }
        var (a, b) = ($"{t.Id}-a", $"{t.Id}-b");
        if (outline.DirectionOf(t) is { Kind: DirectionKind.Reverses })
            Reverses(t, plus, minus, said);
        else
        {
            Post(t, a, outline.DirectionOf(t) is { } direction ? Direction(t, direction, plus, said) : plus);
            Post(t, b, minus);
        }
    }

    private void Reverses(ThrottleBlock t, string plus, string minus, string said)
    {
        var (control, a, b) = ($"direction-{t.Id}", $"lead-{t.Id}-a", $"lead-{t.Id}-b");
        parts.Selector(control, $"direction switch of {said}", "ahead", ("ahead", "ahead"), ("back", "back"));
        foreach (
            var (id, from, to, position) in new[]
            {
                ("ahead", plus, a, 1),
                ("ahead", minus, b, 2),
                ("back", plus, b, 1),
                ("back", minus, a, 2),
            }
        )
        {
            var n = position.ToString(CultureInfo.InvariantCulture);
            parts.Contact($"{id}-{t.Id}-{n}", from, to, control, [id], $"{id} contact {n} of the direction switch of {said}");
        }
        parts.Name(a, $"the lead of {DraftWords.Post(t, $"{t.Id}-a")}");
        parts.Name(b, $"the lead of {DraftWords.Post(t, $"{t.Id}-b")}");
        parts.Near.Add([a, b]);
        Post(t, $"{t.Id}-a", a);
        Post(t, $"{t.Id}-b", b);
    }

    private string Direction(ThrottleBlock t, DirectionBlock d, string at, string said)
    {
        var (control, lead) = ($"direction-{t.Id}", $"lead-{t.Id}");
        if (d.Kind == DirectionKind.Interrupts)
        {
            parts.Selector(control, $"direction button of {said}", "rest", ("rest", "not pressed"), ("pressed", "pressed"));
            parts.Contact($"button-{t.Id}", at, lead, control, ["rest"], $"direction button of {said}");
        }
        else
        {
            parts.Selector(control, $"direction lever of {said}", "a", ("a", "side A"), ("stop", "in the middle"), ("b", "side B"));
            parts.Contact($"rotary-{t.Id}-a", at, lead, control, ["a"], $"contact A of the direction lever of {said}");
            parts.Contact($"rotary-{t.Id}-b", at, lead, control, ["b"], $"contact B of the direction lever of {said}");
        }
        parts.Name(lead, $"the lead of {DraftWords.Post(t, t.Id)}");
        parts.Near.Add([at, lead]);
        return lead;
    }

    private void Post(ThrottleBlock t, string post, string from)
    {
        parts.Leads[post] = from;
        parts.Wire($"w-{post}", from, $"post-{post}", $"wire of {DraftWords.Post(t, post)}");
        parts.Name($"post-{post}", DraftWords.Post(t, post));
    }

    /// <summary>What a cell is called.</summary>
    public static string CellWord(string cell) =>
        cell switch
        {
            "selenium" => "plate",
            "silicon" => "diode",
            _ => "disc",
        };
}
