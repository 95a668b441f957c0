using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Drafts the cord, and the primary with its line switch and its core.</summary>
internal sealed class PrimaryDraft(Outline outline, Priors priors, WindingDraft windings, DraftParts parts)
{
    public void Primary()
    {
        parts.Wire("cord-1", "blade-1", "lug-1", "cord wire of blade 1", Priors.Cord);
        parts.Wire("cord-2", "blade-2", "lug-2", "cord wire of blade 2", Priors.Cord);
        foreach (var n in new[] { "1", "2" })
        {
            parts.Name($"blade-{n}", $"blade {n}");
            parts.Name($"lug-{n}", $"cord lug {n}");
        }
        var breaker = outline.BreakerIn("primary");
        var (id, far) = outline.BreakerIn("common") is null ? ("breaker", "breaker-out") : ("breaker-primary", "breaker-primary-out");
        if (breaker is not null)
            windings.Breaker(breaker, id, "lug-1", far, outline.Breakers.Length > 1 ? "breaker of the primary" : "breaker");
        parts.Joint("joint-lug-1", breaker is null ? "lug-1" : far, "primary-start", "joint at cord lug 1");
        parts.Joint("joint-lug-2", "lug-2", outline.LineTaps.IsEmpty ? "primary-end" : "line-lug", "joint at cord lug 2");
        var primary = parts.Add("primary", ElementKind.Winding, "primary-start", "primary-end", "primary");
        primary["core"] = "core";
        parts.Set(primary, "elements.primary", ElementKind.Winding, "turns", priors.PrimaryTurns);
        parts.Set(primary, "elements.primary", ElementKind.Winding, "ohms", priors.PrimaryOhms);
        parts.Set(primary, "elements.primary", ElementKind.Winding, "leakageHenries", priors.PrimaryHenries);
        windings.Ends("primary", "the primary");
        if (!outline.LineTaps.IsEmpty)
            LineTaps(primary);
        parts.Near.Add([.. new[] { "lug-1", "lug-2", "line-lug" }.Where(t => t != "line-lug" || !outline.LineTaps.IsEmpty)]);
        parts.Name("iron", "the core");
        parts.Titles["core"] = "core";
    }

    private void LineTaps(JsonObject primary)
    {
        parts.Name("line-lug", "the lug of the line switch");
        var highest = outline.LineTaps[^1];
        // At rest on the plate's volts, or what is nearest to them.
        parts.Selector(
            "line",
            "line switch",
            JsonCursor.Show(outline.LineTaps.MinBy(v => Math.Abs(v - outline.Volts))),
            [.. outline.LineTaps.Select(v => (JsonCursor.Show(v), $"{JsonCursor.Show(v)} V"))]
        );
        var taps = new JsonArray();
        foreach (var v in outline.LineTaps)
        {
            var said = JsonCursor.Show(v);
            var to = v == highest ? "primary-end" : $"primary-{said}";
            if (v != highest)
            {
                taps.Add(new JsonObject { ["turn"] = DraftParts.Round(priors.PrimaryTurns.Value * v / highest), ["to"] = to });
                parts.Name(to, $"the {said} V tap of the primary");
                parts.Titles[string.Create(CultureInfo.InvariantCulture, $"primary.tap-{taps.Count}")] = $"its {said} V tap";
            }
            parts.Contact($"line-{said}", "line-lug", to, "line", [said], $"{said} V contact of the line switch");
        }
        primary["taps"] = taps;
    }

    /// <summary>The core of the primary.</summary>
    public JsonObject Core()
    {
        var core = new JsonObject { ["id"] = "core", ["referenceWinding"] = "primary" };
        parts.Set(core, "cores.core", null, "lossOhms", priors.LossOhms);
        core["excitation"] = new JsonArray([
            .. priors.ExcitationCurve.Select(p => new JsonArray(DraftParts.Round(p.Volts), DraftParts.Round(p.Amps))),
        ]);
        parts.Set(core, "cores.core", null, "excitation", priors.Excitation);
        return core;
    }
}
