using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Drafts the readings of a unit by rule: cold, at low voltage, on mains, and with the case open.</summary>
internal sealed class ReadingDraft(Outline outline, Priors priors, DraftParts parts)
{
    /// <summary>Insulation that passes, and ohms that a cheap meter cannot tell from OL: common practice, no source [Ω].</summary>
    private const double LeastInsulation = 2e6,
        LeastApart = 15e6;

    /// <summary>Of the usable watts, what a throttle and a fixed post give at their loads.</summary>
    public const double ThrottleShare = 0.75;

    private const double PostShare = 0.4;

    private const double LightLoadOhms = 100;

    /// <summary>Of the line, what a sound unit leaves of it behind the series lamp at the least.</summary>
    private const double LampShare = 0.7;

    private readonly List<JsonObject> all = [];

    private readonly string[] cold = ["blades", "blades-posts"];

    public string Lamp { get; } = FormattableString.Invariant($"lamp-{NearestLamp(0.37 * outline.Watts.Value)}");

    private double LowVolts => outline.Volts > 150 ? 24 : 12;

    private string LowSaid => $"{JsonCursor.Show(LowVolts)} V AC on the plug";

    public IReadOnlyList<JsonObject> All()
    {
        Gates();
        foreach (var w in outline.Windings)
        foreach (var p in w.Posts.Where(_ => w.From.Length > 0))
            Cold(p.Post, w.From, DraftWords.Post(p.Post), DraftWords.Post(w.From), []);
        foreach (var r in outline.PostRectifiers)
            Cold(r.Post, "", DraftWords.Post(r.Post), DraftWords.Post(r.From), [], r.From);
        foreach (var t in Read)
            ColdThrottle(t);
        Add("low-amps", $"{LowSaid}, amps", "ac-amps", null, Source(Low), 1, cold);
        foreach (var (post, start, said, load, isDirect) in FixedPosts())
            LowPost(post, start, said, isDirect);
        foreach (var t in Read)
            LowThrottle(t);
        Power();
        foreach (var (post, start, said, load, isDirect) in FixedPosts())
            MainsPost(post, start, said, load, isDirect);
        foreach (var t in Read)
            new ThrottleReadingDraft(this, outline, t).All();
        OpenReadings();
        return all;
    }

    /// <summary>Throttles that have a way back to read against.</summary>
    private IEnumerable<ThrottleBlock> Read =>
        outline.Throttles.Where(t => outline.WindingOf(t).From.Length > 0 || outline.RectifierOf(t) is not null);

    private JsonObject Low =>
        new()
        {
            ["from"] = "blade-1",
            ["to"] = "blade-2",
            ["volts"] = LowVolts,
        };

    public static JsonObject Mains =>
        new()
        {
            ["from"] = "blade-1",
            ["to"] = "blade-2",
            ["volts"] = "mains",
        };

    public static JsonObject Source(JsonObject source) => new() { ["source"] = source };

    private static int NearestLamp(double watts) => new[] { 25, 40, 60, 100, 150 }.MinBy(w => Math.Abs(w - watts));

    public JsonObject Add(
        string id,
        string title,
        string quantity,
        (string From, string To)? between,
        JsonObject state,
        double minutes,
        IEnumerable<string> needs,
        string access = "closed"
    )
    {
        var reading = new JsonObject
        {
            ["id"] = id,
            ["title"] = title,
            ["quantity"] = quantity,
        };
        if (between is var (from, to))
            reading["between"] = DraftParts.Words([from, to]);
        reading["state"] = state;
        reading["minutes"] = minutes;
        reading["access"] = access;
        if (needs.Any())
            reading["needs"] = DraftParts.Words(needs);
        all.Add(reading);
        return reading;
    }

    private void Gates()
    {
        const string hazard = "500 V at the clips: hands off, discharge afterward";
        var (blades, posts) = (new[] { "blade-1", "blade-2" }, outline.Posts.Select(p => $"post-{p}").ToArray());
        JsonObject Joined(params string[][] groups) =>
            new() { ["joined"] = new JsonArray([.. groups.Where(g => g.Length > 1).Select(g => DraftParts.Words(g))]) };
        Gate(
            Add("blades", "Between the plug blades", "ohms", ("blade-1", "blade-2"), [], 1, []),
            DraftParts.Round(priors.BladeOhms / 2),
            DraftParts.Round(priors.BladeOhms * 2)
        );
        if (posts.Length > 0)
            Gate(
                Add("blades-posts", "Both blades to all posts", "ohms", ("blade-1", posts[0]), Joined(blades, posts), 1, []),
                LeastApart,
                null
            );
        var core = Add("insulation-core", "Both blades to the core, 500 V", "insulation-ohms", ("blade-1", "iron"), Joined(blades), 3, []);
        Gate(core, LeastInsulation, null);
        core["hazard"] = hazard;
        if (posts.Length == 0)
            return;
        var apart = Add(
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
        Add($"ohms-{post}", DraftWords.Heading($"{startSaid} to {said}"), "ohms", ($"post-{from ?? start}", $"post-{post}"), state, 1, []);

    private void ColdThrottle(ThrottleBlock t)
    {
        var (first, second) = ProbesOf(t);
        var state = new JsonObject { ["controls"] = At(t, 1) };
        // Through a rectifier the ohmmeter drives forward.
        Add(
            $"ohms-{t.Id}",
            DraftWords.Heading($"{Said(second)} to {Said(first)}, {DraftWords.Full(t)}"),
            "ohms",
            (second, first),
            state,
            1,
            []
        );
    }

    /// <summary>What a throttle is read between: the first is positive behind a rectifier.</summary>
    public (string First, string Second) ProbesOf(ThrottleBlock t) =>
        outline.RectifierOf(t) is null ? ($"post-{t.Id}", $"post-{outline.WindingOf(t).From}") : ($"post-{t.Id}-a", $"post-{t.Id}-b");

    /// <summary>What is read of a throttle: its post, or the throttle itself behind a rectifier.</summary>
    public string SaidOf(ThrottleBlock t) => outline.RectifierOf(t) is null ? DraftWords.Post(t, t.Id) : DraftWords.Throttle(t.Id);

    private string Said(string terminal) => parts.Titles[terminal]!.GetValue<string>();

    public static JsonObject At(ThrottleBlock t, double position) =>
        t.Kind == ThrottleKind.Steps
            ? new()
            {
                [$"throttle-{t.Id}"] = ((int)Math.Round(1 + (position * (t.Volts.Length - 1)))).ToString(CultureInfo.InvariantCulture),
            }
            : new() { [$"throttle-{t.Id}"] = position };

    /// <summary>Posts that need no throttle, each with what it is read against and its load.</summary>
    private IEnumerable<(string Post, string Start, string Said, double Load, bool IsDirect)> FixedPosts()
    {
        foreach (var w in outline.Windings.Where(w => w.From.Length > 0))
        foreach (var p in w.Posts)
            yield return (p.Post, w.From, DraftWords.Post(p.Post), Load(p.Volts.Value, PostShare * Math.Min(1, ShareOf(w))), false);
        foreach (var r in outline.PostRectifiers)
        {
            var w =
                outline.Windings.FirstOrDefault(w => w.Posts.Any(p => p.Post == r.From)) ?? outline.Windings.First(w => w.From == r.From);
            var volts = w.Posts.FirstOrDefault(p => p.Post == r.From)?.Volts.Value ?? 0;
            // Half of the cycle: a lighter load, and against the winding's start.
            if (w.From.Length > 0 && volts > 0)
                yield return (r.Post, w.From, DraftWords.Post(r.Post), Load(volts, PostShare / 2), true);
        }
    }

    public double ShareOf(WindingBlock w) =>
        (w.Watts?.Value ?? (outline.Throttles.Any(t => t.On == w.Id) ? 1 : 0.25) * outline.Watts.Value) / outline.Watts.Value;

    /// <summary>A load that draws a share of the usable watts, rounded to what lies on a bench [Ω].</summary>
    public double Load(double volts, double share)
    {
        var ohms = volts * volts / (share * outline.UsableWatts);
        var step =
            ohms < 10 ? 0.1
            : ohms < 100 ? 1
            : 10;
        return Math.Max(0.1, Math.Round(Math.Round(ohms / step) * step, 1));
    }

    public static JsonArray Loads(string from, string to, double ohms) =>
        new(
            new JsonObject
            {
                ["from"] = from,
                ["to"] = to,
                ["ohms"] = ohms,
            }
        );

    private void LowPost(string post, string start, string said, bool isDirect)
    {
        var state = Source(Low);
        if (isDirect)
            state["loads"] = Loads($"post-{post}", $"post-{start}", LightLoadOhms);
        var (quantity, with) = isDirect ? ("dc-volts", $", {LightLoad}, DC") : ("ac-volts", "");
        Add($"low-{post}", $"{LowSaid}, {said}{with}", quantity, ($"post-{post}", $"post-{start}"), state, 1, cold);
    }

    private static string LightLoad => $"{JsonCursor.Show(LightLoadOhms)} Ω load";

    private void LowThrottle(ThrottleBlock t)
    {
        var (first, second) = ProbesOf(t);
        var said = SaidOf(t);
        JsonObject State(JsonObject controls, bool isLoaded)
        {
            var state = Source(Low);
            state["controls"] = controls;
            if (isLoaded)
                state["loads"] = Loads(first, second, LightLoadOhms);
            return state;
        }
        var isDirect = outline.RectifierOf(t) is not null;
        Add(
            $"low-{t.Id}",
            $"{LowSaid}, {said}, {DraftWords.Full(t)}{(isDirect ? $", {LightLoad}, DC" : "")}",
            isDirect ? "dc-volts" : "ac-volts",
            (first, second),
            State(At(t, 1), isDirect),
            1,
            cold
        );
        if (outline.WhistleOf(t) is not { } w || isDirect)
            return;
        Add(
            $"low-{t.Id}-first-dc",
            $"{LowSaid}, {said}, whistle first step, {LightLoad}, DC",
            "dc-volts",
            (first, second),
            State(Whistle(t, w, "first", 1), true),
            1,
            cold
        );
        if (w.Steps == 2)
            Add(
                $"low-{t.Id}-second",
                $"{LowSaid}, {said}, whistle second step, {LightLoad}, AC",
                "ac-volts",
                (first, second),
                State(Whistle(t, w, "second", 1), true),
                1,
                cold
            );
    }

    public static JsonObject Whistle(ThrottleBlock t, WhistleBlock w, string step, double position)
    {
        var controls = At(t, position);
        controls[$"whistle{w.Suffix}"] = w.IsShared ? $"{t.Id}-{step}" : step;
        return controls;
    }

    private void Power()
    {
        var lamp = Mains;
        var watts = double.Parse(Lamp[5..], CultureInfo.InvariantCulture);
        lamp["seriesLamp"] = new JsonObject { ["volts"] = outline.Volts, ["amps"] = DraftParts.Round(watts / outline.Volts) };
        var gates = all.Where(r => r["gate"] is not null).Select(r => r["id"]!.GetValue<string>()).ToList();
        var first = Add(
            Lamp,
            $"Series lamp, {JsonCursor.Show(watts)} W: volts on the unit",
            "ac-volts",
            ("blade-1", "blade-2"),
            Source(lamp),
            2,
            gates
        );
        first["limits"] = new JsonObject { ["min"] = DraftParts.Round(Math.Round(LampShare * outline.Volts)) };
        first["hazard"] = "read at the fixed terminals of the series lamp box, never on a live plug";
        Add("amps-idle", "No-load amps", "ac-amps", null, Source(Mains), 1, [Lamp]);
        Add("watts-idle", "No-load watts", "watts", null, Source(Mains), 1, [Lamp]);
    }

    private void MainsPost(string post, string start, string said, double load, bool isDirect)
    {
        var probes = ($"post-{post}", $"post-{start}");
        if (!isDirect)
            Add($"volts-{post}", DraftWords.Heading($"{said}, no load"), "ac-volts", probes, Source(Mains), 1, [Lamp]);
        var state = Source(Mains);
        state["loads"] = Loads(probes.Item1, probes.Item2, load);
        Add(
            $"load-{post}",
            DraftWords.Heading($"{said}, {JsonCursor.Show(load)} Ω load{(isDirect ? ", DC" : "")}"),
            isDirect ? "dc-volts" : "ac-volts",
            probes,
            state,
            2,
            [Lamp]
        );
    }

    private void OpenReadings() =>
        new OpenReadingDraft(
            outline,
            parts,
            (id, title, quantity, between, state, minutes) => Add(id, title, quantity, between, state, minutes, [], TakeApartDraft.Open)
        ).All();
}
