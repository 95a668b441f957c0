using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Drafts the windings with their posts.</summary>
internal sealed class WindingDraft(Outline outline, Priors priors, DraftParts parts)
{
    /// <summary>Doubt of the turns of a winding, and of a tap or the end of a slider's run on it.</summary>
    private const double WindingDoubt = 0.03,
        TapDoubt = 0.03;

    /// <summary>Of a whole winding whose volts are told by no post.</summary>
    private const double InnerDoubt = 0.06;

    /// <summary>The watts of a winding on which no throttle is, as a share of the plate's.</summary>
    private const double ShareOfFixed = 0.25;

    /// <summary>Ohms of a sound path to the core and between windings: common practice, no source.</summary>
    public const double OhmsToCore = 4e8,
        OhmsBetween = 6e8;

    /// <summary>Whole turns and ohms of each winding.</summary>
    private readonly Dictionary<string, (double Turns, double Ohms)> made = new(StringComparer.Ordinal);

    /// <summary>The first start post where the breaker is in it; its wire then comes from the breaker.</summary>
    private string? BrokenStart => outline.BreakerIn("common") is null ? null : outline.StartPosts.First();

    public void Winding(WindingBlock w)
    {
        var on = outline.Throttles.Where(t => t.On == w.Id).ToList();
        var top = Highest(w, on);
        var isInner = w.Volts is not null && top == w.Volts && !w.Posts.Any(p => p.Volts.Value == top.Value);
        var start = $"{w.Id}-start";
        if (w.From.Length > 0)
            Start(w, start);
        else if (on.Any(t => outline.RectifierOf(t) is not null))
        {
            // What comes back through the rectifier needs an end to come back to.
            parts.Joint($"joint-{w.Id}", start, $"lead-{w.Id}", $"joint at the inner end of the {DraftWords.Winding(w.Id)}");
            parts.Name($"lead-{w.Id}", $"the lead of the {DraftWords.Winding(w.Id)}");
        }
        var element = parts.Add(w.Id, ElementKind.Winding, start, $"{w.Id}-end", DraftWords.Winding(w.Id));
        element["core"] = "core";
        Ends(w.Id, $"the {DraftWords.Winding(w.Id)}");
        var doubts = new List<double>();
        Taps(w, on, top, element, doubts);
        Sliders(on, element, doubts);
        var own = priors.Turns(top, isInner ? InnerDoubt : WindingDoubt);
        parts.Set(
            element,
            $"elements.{w.Id}",
            ElementKind.Winding,
            "turns",
            own with
            {
                Doubt = Math.Sqrt((own.Doubt * own.Doubt) + doubts.Select(d => d * d).DefaultIfEmpty().Average()),
            }
        );
        var share = (w.Watts?.Value ?? (on.Count > 0 ? 1 : ShareOfFixed) * outline.Watts.Value) / outline.Watts.Value;
        var ohms = priors.WindingOhms(own.Value, share, share == 1 && (w.Watts is not null || !w.HasWatts));
        if (w.Watts is { Doubt: > 0 } watts)
            ohms = ohms with { Doubt = double.Hypot(ohms.Doubt, watts.Doubt) };
        parts.Set(element, $"elements.{w.Id}", ElementKind.Winding, "ohms", ohms);
        parts.Set(element, $"elements.{w.Id}", ElementKind.Winding, "leakageHenries", priors.WindingHenries(ohms.Value));
        made[w.Id] = (own.Value, ohms.Value);
    }

    /// <summary>A winding of some volts in a throttle's way, wound like the winding that the throttle is on.</summary>
    public void Boost(string id, Figure volts, string on, string title)
    {
        const double boostDoubt = 0.10;
        var element = parts.Add(id, ElementKind.Winding, $"{id}-start", $"{id}-end", title);
        element["core"] = "core";
        Ends(id, $"the {title}");
        var turns = priors.Turns(volts, boostDoubt);
        var ohms = priors.BoostOhms(turns.Value, made[on].Ohms, made[on].Turns);
        parts.Set(element, $"elements.{id}", ElementKind.Winding, "turns", turns);
        parts.Set(element, $"elements.{id}", ElementKind.Winding, "ohms", ohms);
        parts.Set(element, $"elements.{id}", ElementKind.Winding, "leakageHenries", priors.BoostHenries(ohms.Value));
    }

    /// <summary>A breaker.</summary>
    public void Breaker(BreakerBlock b, string id, string from, string to, string title)
    {
        var part = parts.Add(id, ElementKind.Breaker, from, to, title);
        parts.Set(part, $"elements.{id}", ElementKind.Breaker, "ohms", priors.BreakerOhms(b));
        part["ratedAmps"] = DraftParts.Round(priors.BreakerAmps(b));
        parts.Name(from, $"the near side of the {title}");
        parts.Name(to, $"the far side of the {title}");
        parts.Near.Add([from, to]);
    }

    /// <summary>What the turns of a winding end at: the highest volts asked of it.</summary>
    private Figure Highest(WindingBlock w, List<ThrottleBlock> on)
    {
        var asked = w.Posts.Select(p => p.Volts).Concat(on.SelectMany(t => t.Volts));
        foreach (var t in on)
            if (outline.WhistleOf(t) is { FromWinding: true } whistle)
                asked = asked.Append(t.Volts[^1] with { Value = t.Volts[^1].Value + whistle.Boost.Value });
        if (w.Volts is not null)
            asked = asked.Append(w.Volts);
        return asked.MaxBy(v => v.Value)!;
    }

    private void Start(WindingBlock w, string start)
    {
        var isFirst = !parts.Leads.ContainsKey(w.From);
        var isBroken = w.From == BrokenStart;
        parts.Joint(
            $"joint-{w.Id}",
            start,
            isBroken ? "breaker-in" : $"lead-{w.From}",
            $"joint at the inner end of the {DraftWords.Winding(w.Id)}"
        );
        if (!isFirst)
            return;
        if (isBroken)
            Breaker(
                outline.BreakerIn("common")!,
                "breaker",
                "breaker-in",
                "breaker-out",
                outline.Breakers.Length > 1 ? $"breaker of {DraftWords.Post(w.From)}" : "breaker"
            );
        parts.Leads[w.From] = isBroken ? $"post-{w.From}" : $"lead-{w.From}";
        // A post of another winding has its wire there.
        if (!outline.Windings.Any(o => o.Posts.Any(p => p.Post == w.From)))
            PostWire(w.From, isBroken ? "breaker-out" : $"lead-{w.From}");
    }

    /// <summary>The wire from inside to a post, with the breaker of that post before it.</summary>
    public void PostWire(string post, string from)
    {
        var said = DraftWords.Post(post);
        if (from.StartsWith("lead-", StringComparison.Ordinal))
            parts.Name(from, $"the lead of {said}");
        // A post may be lettered with a word that is a place.
        if (post is not ("common" or "throttle" or "primary") && outline.BreakerIn(post) is { } breaker)
        {
            Breaker(breaker, $"breaker-{post}", from, $"out-{post}", $"breaker of {said}");
            from = $"out-{post}";
        }
        parts.Wire($"w-{post}", from, $"post-{post}", $"wire of {said}");
        parts.Name($"post-{post}", said);
    }

    private void Taps(WindingBlock w, List<ThrottleBlock> on, Figure top, JsonObject element, List<double> doubts)
    {
        var taps = new JsonArray();
        void Tap(Figure volts, string to, string title, string ofWinding)
        {
            var turn = priors.Turns(volts, TapDoubt);
            doubts.Add(turn.Doubt);
            taps.Add(new JsonObject { ["turn"] = DraftParts.Round(turn.Value), ["to"] = to });
            parts.Note($"elements.{w.Id}.{to}.turn", turn with { Value = DraftParts.Round(turn.Value) });
            parts.Name(to, title);
            parts.Titles[string.Create(CultureInfo.InvariantCulture, $"{w.Id}.tap-{taps.Count}")] = ofWinding;
        }
        // The end is the post's own where nothing slides on the winding and no rheostat hangs on it.
        var endPost = on.Any(t => t.Slides || t.Kind == ThrottleKind.Rheostat)
            ? null
            : w.Posts.FirstOrDefault(p => p.Volts.Value == top.Value)?.Post;
        foreach (var (post, volts) in w.Posts)
        {
            var said = DraftWords.Post(post);
            if (post == endPost)
                parts.Joint(
                    $"joint-{w.Id}-end",
                    $"{w.Id}-end",
                    $"lead-{post}",
                    $"joint at the outer end of the {DraftWords.Winding(w.Id)}"
                );
            else
            {
                Tap(volts, $"tap-{post}", $"the tap of {said}", $"its tap of {said}");
                parts.Joint($"joint-tap-{post}", $"tap-{post}", $"lead-{post}", $"joint at the tap of {said}");
            }
            parts.Leads[post] = $"lead-{post}";
            PostWire(post, $"lead-{post}");
        }
        foreach (var t in on.Where(t => t.Kind == ThrottleKind.Steps))
            for (var n = 0; n < t.Volts.Length; n++)
            {
                var step = (n + 1).ToString(CultureInfo.InvariantCulture);
                var isEnd = n == t.Volts.Length - 1 && t.Volts[n].Value == top.Value;
                if (!isEnd)
                    Tap(
                        t.Volts[n],
                        $"tap-{t.Id}-{step}",
                        $"the tap of step {step} of {DraftWords.Throttle(t.Id)}",
                        $"its tap of step {step} of {DraftWords.Throttle(t.Id)}"
                    );
            }
        if (taps.Count > 0)
            element["taps"] = taps;
    }

    private void Sliders(List<ThrottleBlock> on, JsonObject element, List<double> doubts)
    {
        var sliders = new JsonArray();
        void Slider(string id, ThrottleBlock t, Figure low, Figure high, string to, string title)
        {
            var (start, end) = (priors.Turns(low, TapDoubt), priors.Turns(high, TapDoubt));
            doubts.AddRange([start.Doubt, end.Doubt]);
            var slider = new JsonObject
            {
                ["id"] = id,
                ["control"] = $"throttle-{t.Id}",
                ["fromTurn"] = DraftParts.Round(start.Value),
                ["toTurn"] = DraftParts.Round(end.Value),
                ["to"] = to,
            };
            parts.Note($"elements.{id}.fromTurn", start with { Value = DraftParts.Round(start.Value) });
            parts.Note($"elements.{id}.toTurn", end with { Value = DraftParts.Round(end.Value) });
            parts.Set(slider, $"elements.{id}", ElementKind.Slider, "contactOhms", Priors.Contact(t.Kind));
            slider["bridgesTurns"] = t.Kind == ThrottleKind.Roller ? 1 : 0;
            sliders.Add(slider);
            parts.Titles[id] = title;
        }
        foreach (var t in on.Where(t => t.Slides))
        {
            var contact = DraftWords.Contact(t.Kind);
            Slider($"{contact}-{t.Id}", t, t.Volts[0], t.Volts[1], $"arm-{t.Id}", $"{contact} of {DraftWords.Throttle(t.Id)}");
            if (outline.WhistleOf(t) is { FromWinding: true } w)
                Slider(
                    $"ahead-{t.Id}",
                    t,
                    Further(t.Volts[0], w.Boost),
                    Further(t.Volts[1], w.Boost),
                    $"ahead-arm-{t.Id}",
                    $"whistle {contact} of {DraftWords.Throttle(t.Id)}"
                );
        }
        if (sliders.Count > 0)
            element["sliders"] = sliders;
    }

    private static Figure Further(Figure volts, Figure boost) => volts with { Value = volts.Value + boost.Value };

    /// <summary>What the ends of a winding are called.</summary>
    public void Ends(string winding, string said)
    {
        parts.Titles[$"{winding}.from"] = "its inner end";
        parts.Titles[$"{winding}.to"] = "its outer end";
        parts.Name($"{winding}-start", $"the inner end of {said}");
        parts.Name($"{winding}-end", $"the outer end of {said}");
    }
}
