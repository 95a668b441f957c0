using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Drafts what is read with the plug out: the gates, then the ohms of posts and throttles.</summary>
internal sealed class ColdReadingDraft(ReadingDraft all, Outline outline, Priors priors, DraftParts parts)
{
    /// <summary>Insulation that passes, and ohms that a cheap meter cannot tell from OL: common practice, no source [Ω].</summary>
    private const double LeastInsulation = 2e6,
        LeastApart = 15e6;

    public void All()
    {
        Gates();
        foreach (var w in outline.Windings)
        foreach (var p in w.Posts.Where(_ => w.From.Length > 0))
            Cold(p.Post, w.From, DraftWords.Post(p.Post), DraftWords.Post(w.From), []);
        foreach (var r in outline.PostRectifiers)
            Cold(r.Post, "", DraftWords.Post(r.Post), DraftWords.Post(r.From), [], r.From);
        foreach (var t in all.Read)
            ColdThrottle(t);
    }

    private void Gates()
    {
        const string hazard = "500 V at the clips: hands off, discharge afterward";
        var (blades, posts) = (new[] { "blade-1", "blade-2" }, outline.Posts.Select(p => $"post-{p}").ToArray());
        JsonObject Joined(params string[][] groups) =>
            new() { ["joined"] = new JsonArray([.. groups.Where(g => g.Length > 1).Select(g => DraftParts.Words(g))]) };
        Gate(
            all.Add("blades", "Between the plug blades", "ohms", ("blade-1", "blade-2"), [], 1, []),
            DraftParts.Round(priors.BladeOhms / 2),
            DraftParts.Round(priors.BladeOhms * 2)
        );
        if (posts.Length > 0)
            Gate(
                all.Add("blades-posts", "Both blades to all posts", "ohms", ("blade-1", posts[0]), Joined(blades, posts), 1, []),
                LeastApart,
                null
            );
        var core = all.Add(
            "insulation-core",
            "Both blades to the core, 500 V",
            "insulation-ohms",
            ("blade-1", "iron"),
            Joined(blades),
            3,
            []
        );
        Gate(core, LeastInsulation, null);
        core["hazard"] = hazard;
        if (posts.Length == 0)
            return;
        var apart = all.Add(
            "insulation-posts",
            "Both blades to all posts, 500 V",
            "insulation-ohms",
            ("blade-1", posts[0]),
            Joined(blades, posts),
            3,
            []
        );
        Gate(apart, LeastInsulation, null);
        apart["hazard"] = hazard;
    }

    private static void Gate(JsonObject reading, double min, double? max)
    {
        reading["limits"] = max is { } most ? new JsonObject { ["min"] = min, ["max"] = most } : new JsonObject { ["min"] = min };
        reading["gate"] = true;
    }

    private void Cold(string post, string start, string said, string startSaid, JsonObject state, string? from = null) =>
        all.Add(
            $"ohms-{post}",
            DraftWords.Heading($"{startSaid} to {said}"),
            "ohms",
            ($"post-{from ?? start}", $"post-{post}"),
            state,
            1,
            []
        );

    private void ColdThrottle(ThrottleBlock t)
    {
        var (first, second) = all.ProbesOf(t);
        var state = new JsonObject { ["controls"] = ReadingDraft.At(t, 1) };
        // Through a rectifier the ohmmeter drives forward.
        all.Add(
            $"ohms-{t.Id}",
            DraftWords.Heading($"{Said(second)} to {Said(first)}, {DraftWords.Full(t)}"),
            "ohms",
            (second, first),
            state,
            1,
            []
        );
    }

    private string Said(string terminal) => parts.Titles[terminal]!.GetValue<string>();
}
