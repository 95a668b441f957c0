using System.Collections.Immutable;
using System.Text.Json;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Outlines.OutlineWords;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Reads an outline in which every word is known, collecting problems.</summary>
internal static class OutlineReader
{
    /// <summary>What a post of a toy-train unit gives [V] (common practice, no source).</summary>
    public const double LeastVolts = 0.5,
        MostVolts = 60;

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

    /// <summary>Of a plate without watts: common practice, no source; the doubt is <see cref="Priors.DoubtOfUnknownWatts"/>.</summary>
    private static readonly Figure AnyWatts = new(100, 0, Origin.Assumed);

    private static readonly Figure AnyRange = new(4, 0, Origin.Assumed);

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
            All("throttle", (at, n) => ThrottleReader.Throttle(at, n, Name(at, "on", "main"))),
            All("range", (at, n) => new RangeBlock(n, Name(at, "throttle"), ThrottleReader.Boost(at, AnyRange, LeastVolts))),
            All("whistle", ThrottleReader.Whistle),
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
            All("rectifier", ThrottleReader.Rectifier),
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
}
