using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Drafts the readings of a unit by rule: cold, at low voltage, on mains, and with the case open.</summary>
internal sealed class ReadingDraft(Outline outline, Priors priors, DraftParts parts)
{
    /// <summary>Of the usable watts, what a throttle and a fixed post give at their loads.</summary>
    public const double ThrottleShare = 0.75;

    private const double PostShare = 0.4;

    /// <summary>Of the line, what a sound unit leaves of it behind the series lamp at the least.</summary>
    private const double LampShare = 0.7;

    private readonly List<JsonObject> all = [];

    public string Lamp { get; } = FormattableString.Invariant($"lamp-{NearestLamp(0.37 * outline.Watts.Value)}");

    public IReadOnlyList<JsonObject> All()
    {
        new ColdReadingDraft(this, outline, priors, parts).All();
        new LowReadingDraft(this, outline).All();
        Power();
        foreach (var (post, start, said, load, isDirect) in FixedPosts())
            MainsPost(post, start, said, load, isDirect);
        foreach (var t in Read)
            new ThrottleReadingDraft(this, outline, t).All();
        OpenReadings();
        return all;
    }

    /// <summary>Throttles that have a way back to read against.</summary>
    public IEnumerable<ThrottleBlock> Read =>
        outline.Throttles.Where(t => outline.WindingOf(t).From.Length > 0 || outline.RectifierOf(t) is not null);

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

    /// <summary>What a throttle is read between: the first is positive behind a rectifier.</summary>
    public (string First, string Second) ProbesOf(ThrottleBlock t) =>
        outline.RectifierOf(t) is null ? ($"post-{t.Id}", $"post-{outline.WindingOf(t).From}") : ($"post-{t.Id}-a", $"post-{t.Id}-b");

    /// <summary>What is read of a throttle: its post, or the throttle itself behind a rectifier.</summary>
    public string SaidOf(ThrottleBlock t) => outline.RectifierOf(t) is null ? DraftWords.Post(t, t.Id) : DraftWords.Throttle(t.Id);

    public static JsonObject At(ThrottleBlock t, double position) =>
        t.Kind == ThrottleKind.Steps
            ? new()
            {
                [$"throttle-{t.Id}"] = ((int)Math.Round(1 + (position * (t.Volts.Length - 1)))).ToString(CultureInfo.InvariantCulture),
            }
            : new() { [$"throttle-{t.Id}"] = position };

    /// <summary>Posts that need no throttle, each with what it is read against and its load.</summary>
    public IEnumerable<(string Post, string Start, string Said, double Load, bool IsDirect)> FixedPosts()
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
