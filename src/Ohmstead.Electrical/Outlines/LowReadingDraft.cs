using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Drafts what is read with low alternating volts on the plug.</summary>
internal sealed class LowReadingDraft(ReadingDraft all, Outline outline)
{
    private const double LightLoadOhms = 100;

    private readonly string[] cold = ["blades", "blades-posts"];

    private double LowVolts => outline.Volts > 150 ? 24 : 12;

    private string LowSaid => $"{JsonCursor.Show(LowVolts)} V AC on the plug";

    public void All()
    {
        all.Add("low-amps", $"{LowSaid}, amps", "ac-amps", null, ReadingDraft.Source(Low), 1, cold);
        foreach (var (post, start, said, _, isDirect) in all.FixedPosts())
            LowPost(post, start, said, isDirect);
        foreach (var t in all.Read)
            LowThrottle(t);
    }

    private JsonObject Low =>
        new()
        {
            ["from"] = "blade-1",
            ["to"] = "blade-2",
            ["volts"] = LowVolts,
        };

    private void LowPost(string post, string start, string said, bool isDirect)
    {
        var state = ReadingDraft.Source(Low);
        if (isDirect)
            state["loads"] = ReadingDraft.Loads($"post-{post}", $"post-{start}", LightLoadOhms);
        var (quantity, with) = isDirect ? ("dc-volts", $", {LightLoad}, DC") : ("ac-volts", "");
        all.Add($"low-{post}", $"{LowSaid}, {said}{with}", quantity, ($"post-{post}", $"post-{start}"), state, 1, cold);
    }

    private static string LightLoad => $"{JsonCursor.Show(LightLoadOhms)} Ω load";

    private void LowThrottle(ThrottleBlock t)
    {
        var (first, second) = all.ProbesOf(t);
        var said = all.SaidOf(t);
        JsonObject State(JsonObject controls, bool isLoaded)
        {
            var state = ReadingDraft.Source(Low);
            state["controls"] = controls;
            if (isLoaded)
                state["loads"] = ReadingDraft.Loads(first, second, LightLoadOhms);
            return state;
        }
        var isDirect = outline.RectifierOf(t) is not null;
        all.Add(
            $"low-{t.Id}",
            $"{LowSaid}, {said}, {DraftWords.Full(t)}{(isDirect ? $", {LightLoad}, DC" : "")}",
            isDirect ? "dc-volts" : "ac-volts",
            (first, second),
            State(ReadingDraft.At(t, 1), isDirect),
            1,
            cold
        );
        if (outline.WhistleOf(t) is not { } w || isDirect)
            return;
        all.Add(
            $"low-{t.Id}-first-dc",
            $"{LowSaid}, {said}, whistle first step, {LightLoad}, DC",
            "dc-volts",
            (first, second),
            State(ReadingDraft.Whistle(t, w, "first", 1), true),
            1,
            cold
        );
        if (w.Steps == 2)
            all.Add(
                $"low-{t.Id}-second",
                $"{LowSaid}, {said}, whistle second step, {LightLoad}, AC",
                "ac-volts",
                (first, second),
                State(ReadingDraft.Whistle(t, w, "second", 1), true),
                1,
                cold
            );
    }
}
