using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Drafts the readings of one throttle on mains.</summary>
internal sealed class ThrottleReadingDraft(ReadingDraft draft, Outline outline, ThrottleBlock t)
{
    /// <summary>The throttle stands here while its whistle is read.</summary>
    private const double WhistleAt = 0.45;

    private readonly (string First, string Second) probes = draft.ProbesOf(t);
    private readonly string said = draft.SaidOf(t);
    private readonly bool isDirect = outline.RectifierOf(t) is not null;

    private double Load => draft.Load(Highest, ReadingDraft.ThrottleShare * Math.Min(1, draft.ShareOf(outline.WindingOf(t))));

    /// <summary>With half of its wire in the way a rheostat is read at a light load, so that most of the volts are left.</summary>
    private double LightLoad => t.Ohms is { } wire ? Math.Max(Load, Math.Round(wire.Value)) : Load;

    private double Highest =>
        t.Volts.IsEmpty
            ? outline.WindingOf(t) is var w
                ? w.Posts.Select(p => p.Volts.Value).Append(w.Volts?.Value ?? 0).Max()
                : 0
            : t.Volts[^1].Value;

    private void Add(string id, string what, string quantity, JsonObject controls, double? ohms, double minutes)
    {
        var state = ReadingDraft.Source(ReadingDraft.Mains);
        state["controls"] = controls;
        if (ohms is { } r)
            state["loads"] = ReadingDraft.Loads(probes.First, probes.Second, r);
        draft.Add(
            $"{t.Id}-{id}",
            DraftWords.Heading(
                $"{said}, {what}{(ohms is { } o ? $", {JsonCursor.Show(o)} Ω load" : ", no load")}{(quantity == "dc-volts" ? ", DC" : "")}"
            ),
            quantity,
            probes,
            state,
            minutes,
            [draft.Lamp]
        );
    }

    private static JsonObject With(JsonObject controls, string id, string position)
    {
        controls[id] = position;
        return controls;
    }

    public void All()
    {
        var (full, low) = (DraftWords.Full(t), DraftWords.Low(t));
        var quantity = isDirect ? "dc-volts" : "ac-volts";
        if (!isDirect)
        {
            Add("full", full, quantity, ReadingDraft.At(t, 1), null, 1);
            Add("low", low, quantity, ReadingDraft.At(t, 0), null, 1);
        }
        Add("load", full, quantity, ReadingDraft.At(t, 1), Load, 2);
        if (isDirect || t.Kind == ThrottleKind.Rheostat)
            Add("half", t.Kind == ThrottleKind.Steps ? "middle step" : "half throttle", quantity, ReadingDraft.At(t, 0.5), LightLoad, 2);
        if (outline.RangeOf(t) is not null)
        {
            if (!isDirect)
                Add("high", $"{full}, range high", quantity, With(ReadingDraft.At(t, 1), $"range-{t.Id}", "high"), null, 1);
            Add("high-load", $"{full}, range high", quantity, With(ReadingDraft.At(t, 1), $"range-{t.Id}", "high"), Load, 2);
        }
        Direction(full, quantity);
        if (outline.WhistleOf(t) is not { } w || isDirect)
            return;
        var more = draft.Load(Highest, ReadingDraft.ThrottleShare * 0.7);
        Add("first-dc", "whistle first step", "dc-volts", ReadingDraft.Whistle(t, w, "first", WhistleAt), more, 2);
        if (w.Steps < 2)
            return;
        Add("second-dc", "whistle second step", "dc-volts", ReadingDraft.Whistle(t, w, "second", WhistleAt), more, 2);
        Add("second-ac", "whistle second step, AC part", "ac-volts", ReadingDraft.Whistle(t, w, "second", WhistleAt), more, 2);
    }

    private void Direction(string full, string quantity)
    {
        if (outline.DirectionOf(t) is not { } d)
            return;
        var control = $"direction-{t.Id}";
        switch (d.Kind)
        {
            case DirectionKind.Interrupts:
                Add("pressed", $"{full}, direction button pressed", quantity, With(ReadingDraft.At(t, 1), control, "pressed"), Load, 1);
                break;
            case DirectionKind.Rotary:
                Add("stop", $"{full}, direction lever in the middle", quantity, With(ReadingDraft.At(t, 1), control, "stop"), Load, 1);
                Add("b", $"{full}, direction lever on side B", quantity, With(ReadingDraft.At(t, 1), control, "b"), Load, 1);
                break;
            default:
                Add("back", $"{full}, direction switch back", quantity, With(ReadingDraft.At(t, 1), control, "back"), Load, 1);
                break;
        }
    }
}
