using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Reads an outline in which every word is known, collecting problems.</summary>
internal static class OutlineReader
{
    /// <summary>What a post of a toy-train unit gives [V] (common practice, no source).</summary>
    private const double LeastVolts = 0.5,
        MostVolts = 60;

    private const double MostOhms = 1e4;

    private static readonly string[] BlockNames =
    [
        "primary",
        "winding",
        "throttle",
        "range",
        "whistle",
        "direction",
        "breaker",
        "pilot",
        "rectifier",
        "bond",
    ];

    /// <summary>Volts of a post of which nothing is known [V], with the doubt about them: common practice, no source.</summary>
    private static readonly Figure AnyVolts = new(14, 0.5, Origin.Assumed);

    private static readonly Figure AnyLowest = new(6, 0.4, Origin.Assumed),
        AnyHighest = new(18, 0.25, Origin.Assumed);

    private static readonly Figure AnyRheostat = new(25, 0.7, Origin.Assumed);

    /// <summary>Of a plate without watts: common practice, no source; the doubt is <see cref="Priors.DoubtOfUnknownWatts"/>.</summary>
    private static readonly Figure AnyWatts = new(100, 0, Origin.Assumed);

    /// <summary>A resistance wire that is there, of ohms that nobody knows.</summary>
    private static readonly Figure AnyWire = Priors.ResistanceWire with { Doubt = 0 };

    private static readonly Figure AnyRange = new(4, 0, Origin.Assumed),
        AnyBoost = new(5, 0, Origin.Assumed);

    /// <summary>Doubt of a boost that is there, of volts that nobody knows: common practice, no source.</summary>
    private const double DoubtOfUnknownBoost = 0.3;

    /// <summary>Fields that have a usual value where they are left out.</summary>
    private static readonly (string Block, string[] Fields)[] WithUsual =
    [
        ("winding", ["watts"]),
        ("throttle", ["on"]),
        ("range", ["boost"]),
        ("whistle", ["boost", "from", "steps", "cell"]),
        ("breaker", ["amps"]),
        ("pilot", ["volts", "amps"]),
        ("rectifier", ["cell"]),
    ];

    public static Outline Read(JsonCursor root)
    {
        var leftOut = ImmutableArray.CreateBuilder<string>();
        var (volts, hertz, watts) = Plate(root, leftOut);
        var places = root.RequiredList("blocks", 200)
            .Select((at, n) => (At: at, Place: n))
            .Where(b => b.At.IsObject())
            .Select(b => (b.At, b.Place, Block: b.At.Word("block")))
            .ToList();
        foreach (var (at, _, block) in places)
            if (block.Length > 0 && !BlockNames.Contains(block, StringComparer.Ordinal))
                at.Report("block", $"\"{block}\" is no block", "one of " + string.Join(", ", BlockNames));
        ImmutableArray<T> All<T>(string block, Func<JsonCursor, int, T> read) =>
            [.. places.Where(p => p.Block == block).Select(p => read(p.At, p.Place))];
        foreach (var (at, _, block) in places)
            leftOut.AddRange(
                WithUsual.Where(u => u.Block == block).SelectMany(u => u.Fields).Where(f => !at.Has(f)).Select(f => $"{at.Path[2..]}.{f}")
            );
        var outline = new Outline(
            Id(root, "id"),
            root.Word("title", ""),
            volts.Value,
            hertz,
            watts,
            LineTaps([.. places.Where(p => p.Block == "primary").Select(p => p.At)]),
            All("winding", Winding),
            All("throttle", (at, n) => Throttle(at, n, Name(at, "on", "main"))),
            All("range", (at, n) => new RangeBlock(n, Name(at, "throttle"), Boost(at, AnyRange, LeastVolts))),
            All("whistle", Whistle),
            All(
                "direction",
                (at, n) =>
                    new DirectionBlock(
                        n,
                        Name(at, "throttle"),
                        OneOf(
                            at,
                            Name(at, "kind"),
                            "kind",
                            ("interrupts", DirectionKind.Interrupts),
                            ("rotary", DirectionKind.Rotary),
                            ("reverses", DirectionKind.Reverses)
                        )
                    )
            ),
            All("breaker", (at, n) => new BreakerBlock(n, Name(at, "in"), FigureReader.Optional(at, "amps", 0.05, 200))),
            All(
                "pilot",
                (at, n) =>
                    new PilotBlock(
                        n,
                        Across(at),
                        FigureReader.Optional(at, "volts", LeastVolts, 250),
                        FigureReader.Optional(at, "amps", 0.005, 10)
                    )
            ),
            All("rectifier", Rectifier),
            All("bond", (at, n) => new BondBlock(n, Name(at, "post"))),
            leftOut.ToImmutable()
        );
        // Unknown volts of a whole winding say nothing where a post or a throttle says more.
        bool AreSaidElsewhere(WindingBlock w) => !w.Posts.IsEmpty || outline.Throttles.Any(t => t.On == w.Id && !t.Volts.IsEmpty);
        return outline with
        {
            VoltsDoubt = volts.Doubt,
            Windings =
            [
                .. outline.Windings.Select(w => w.Volts is { Origin: Origin.Assumed } && AreSaidElsewhere(w) ? w with { Volts = null } : w),
            ],
        };
    }

    private static (Figure Volts, double Hertz, Figure Watts) Plate(JsonCursor root, ImmutableArray<string>.Builder leftOut)
    {
        if (!root.Has("plate") || root.At("plate") is var at && !at.IsObject())
        {
            if (!root.Has("plate"))
                root.Report("plate", "is missing", "{ \"volts\": 120, \"watts\": 150 } as the plate prints it; volts are required");
            return (new(120, 0, Origin.Stated), 60, AnyWatts);
        }
        var volts = FigureReader.Required(at, "volts", 20, 500, null);
        foreach (var field in new[] { "hertz", "watts" })
            if (!at.Has(field))
                leftOut.Add($"plate.{field}");
        var hertz = FigureReader.Optional(at, "hertz", 10, 500)?.Value ?? (volts.Value < 150 ? 60 : 50);
        return (volts, hertz, FigureReader.Optional(at, "watts", 1, 5000) ?? AnyWatts);
    }

    private static ImmutableArray<double> LineTaps(ImmutableArray<JsonCursor> primaries)
    {
        foreach (var second in primaries.Skip(1))
            second.Report("is a second primary", "a unit has one");
        if (primaries.IsEmpty || !primaries[0].Has("taps"))
            return [];
        var at = primaries[0].At("taps");
        ImmutableArray<double> taps = [.. at.AsList(20).Select(t => t.AsNumber(20, 500))];
        if (taps.Length < 2)
            at.Report("name fewer than two line volts", "leave them out where there is nothing to choose");
        for (var n = 1; n < taps.Length; n++)
            if (taps[n] <= taps[n - 1])
                at.Report("do not rise", "the line volts in rising order");
        return taps;
    }

    private static WindingBlock Winding(JsonCursor at, int place) =>
        new(
            place,
            Id(at, "id"),
            at.Has("from") ? PostName(at, "from") : "",
            [
                .. at.Fields("posts")
                    .Select(f => new PostVolts(Checked(f.At, f.Name), FigureReader.Read(f.At, LeastVolts, MostVolts, AnyVolts))),
            ],
            at.Has("volts") ? FigureReader.Read(at.At("volts"), LeastVolts, MostVolts, AnyVolts) : null,
            FigureReader.Optional(at, "watts", 0.1, 5000),
            at.Has("watts")
        );

    private static ThrottleBlock Throttle(JsonCursor at, int place, string on)
    {
        var id = Id(at, "id");
        var kind = OneOf(
            at,
            Name(at, "kind"),
            "kind",
            ("roller", ThrottleKind.Roller),
            ("shoe", ThrottleKind.Shoe),
            ("steps", ThrottleKind.Steps),
            ("rheostat", ThrottleKind.Rheostat)
        );
        if (kind == ThrottleKind.Rheostat)
            return new(place, id, on, kind, [], FigureReader.Required(at, "ohms", 0.1, MostOhms, AnyRheostat));
        if (!at.Has("volts"))
        {
            at.Report(
                "volts",
                "are missing",
                kind == ThrottleKind.Steps ? "the volts of every step, rising" : "[lowest, highest] with no load"
            );
            return new(place, id, on, kind, [AnyLowest, AnyHighest], null);
        }
        return new(place, id, on, kind, Volts(at.At("volts"), kind), null);
    }

    private static ImmutableArray<Figure> Volts(JsonCursor at, ThrottleKind kind)
    {
        if (kind != ThrottleKind.Steps && at.Element.ValueKind == JsonValueKind.String)
            return [FigureReader.Read(at, LeastVolts, MostVolts, AnyLowest), FigureReader.Read(at, LeastVolts, MostVolts, AnyHighest)];
        var list = at.AsList(60);
        ImmutableArray<Figure> volts =
        [
            .. list.Select(
                (v, n) =>
                    FigureReader.Read(
                        v,
                        LeastVolts,
                        MostVolts,
                        kind == ThrottleKind.Steps ? null
                            : n == 0 ? AnyLowest
                            : AnyHighest
                    )
            ),
        ];
        if (kind != ThrottleKind.Steps && volts.Length != 2)
            at.Report("are not two", "[lowest, highest] with no load");
        if (kind == ThrottleKind.Steps && volts.Length < 2)
            at.Report("are fewer than two steps", "the volts of every step, rising");
        for (var n = 1; n < volts.Length; n++)
            if (volts[n].Value <= volts[n - 1].Value)
                list[n]
                    .Report(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"is {volts[n].Value:G6}, not above the {volts[n - 1].Value:G6} before it"
                        ),
                        kind == ThrottleKind.Steps ? "steps must rise" : "the lowest must be below the highest"
                    );
        return volts.Length >= 2 ? volts : [AnyLowest, AnyHighest];
    }

    private static Figure Boost(JsonCursor at, Figure usual, double least) =>
        at.Has("boost") ? FigureReader.Read(at.At("boost"), least, MostVolts, usual with { Doubt = DoubtOfUnknownBoost }) : usual;

    private static WhistleBlock Whistle(JsonCursor at, int place)
    {
        ImmutableArray<string> throttles =
            at.Has("throttle") && at.At("throttle").Element.ValueKind == JsonValueKind.Array
                ? at.Words("throttle")
                : [Name(at, "throttle")];
        if (throttles.IsEmpty)
            at.Report("throttle", "names none", "the id of a throttle, or a list of them for one lever");
        if (throttles.Distinct(StringComparer.Ordinal).Count() < throttles.Length)
            at.Report("throttle", "names one twice", "each once");
        var boost = Boost(at, AnyBoost, 0);
        if (boost.Value is > 0 and < LeastVolts)
            at.Report(
                "boost",
                $"is {JsonCursor.Show(boost.Value)}",
                $"0 for none, or from {JsonCursor.Show(LeastVolts)} to {JsonCursor.Show(MostVolts)}"
            );
        var steps = at.Number("steps", 2, 1, 2);
        if (steps is not (1 or 2))
            at.Report("steps", $"is {JsonCursor.Show(steps)}", "1 or 2 is expected");
        return new(
            place,
            throttles.IsEmpty ? [""] : throttles,
            boost,
            OneOf(at, Name(at, "from", "own"), "from", ("own", false), ("winding", true)),
            (int)steps,
            Cell(at)
        );
    }

    private static string Cell(JsonCursor at) =>
        OneOf(at, Name(at, "cell", OpenWords.Cells[0]), "cell", [.. OpenWords.Cells.Select(c => (c, c))]);

    private static RectifierBlock Rectifier(JsonCursor at, int place)
    {
        var cell = Cell(at);
        if (at.Has("post"))
        {
            var isBridge = OneOf(at, Name(at, "kind", "half"), "kind", ("half", false), ("bridge", true));
            if (isBridge)
                at.Report("kind", "is a bridge on one post", "a post of its own has one cell: half; a bridge stands behind a throttle");
            return new(
                place,
                "",
                false,
                cell,
                PostName(at, "post"),
                PostName(at, "from"),
                at.Has("ohms") ? FigureReader.Read(at.At("ohms"), 0.01, MostOhms, AnyWire) : null
            );
        }
        if (!at.Has("throttle"))
            at.Report("stands on no post and behind no throttle", "name a throttle, or a post and the post that feeds it");
        return new(
            place,
            Name(at, "throttle", " "),
            OneOf(at, Name(at, "kind", "bridge"), "kind", ("half", false), ("bridge", true)),
            cell,
            "",
            "",
            null
        );
    }

    private static ImmutableArray<string> Across(JsonCursor at)
    {
        if (!at.Has("across") || at.At("across").Element.ValueKind != JsonValueKind.Array)
            return [Name(at, "across")];
        var two = at.Words("across");
        if (two.Length == 2 && two[0] != two[1])
            return two;
        at.Report("across", "does not name two posts", "two different posts, a winding, or \"breaker\"");
        return ["breaker"];
    }

    private static T OneOf<T>(JsonCursor at, string word, string field, params ReadOnlySpan<(string Word, T Value)> known)
    {
        var right = new List<string>();
        foreach (var k in known)
        {
            if (k.Word == word)
                return k.Value;
            right.Add(k.Word);
        }
        if (word.Length > 0)
            at.Report(field, $"\"{word}\" is not known here", "one of " + string.Join(", ", right));
        return known[0].Value;
    }

    private static string Name(JsonCursor at, string field, string? usual = null)
    {
        var name = usual is null ? at.Word(field) : at.Word(field, usual);
        if (name != OpenWords.Unknown)
            return name;
        at.Report(field, "is unknown, and there is nothing to choose from", "say it, or give what it may be: { \"oneOf\": [ … ] }");
        return "";
    }

    private static string Id(JsonCursor at, string field)
    {
        var id = Name(at, field);
        if (
            id.Length > 0
            && (id.Length > 60 || id.Split('-').Any(w => w.Length == 0 || !w.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c))))
        )
            at.Report(field, $"\"{id}\" is no id", "lower-case words with hyphens between, 60 letters at most");
        return id;
    }

    private static string PostName(JsonCursor at, string field) => at.Has(field) ? Checked(at.At(field), Name(at, field)) : Name(at, field);

    private static string Checked(JsonCursor at, string post)
    {
        if (post.Length > 60 || post.Any(c => !char.IsLetterOrDigit(c) && c is not ('-' or '+' or '/')))
            at.Report($"\"{post}\" is no name of a post", "what is printed beside it, without spaces, 60 letters at most");
        return post;
    }
}
