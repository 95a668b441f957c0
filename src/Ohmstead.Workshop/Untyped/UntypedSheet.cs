using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;
using static Ohmstead.Workshop.Words.UntypedIds;

namespace Ohmstead.Workshop.Untyped;

/// <summary>
/// The type sheet of a unit whose type is not known: what its plate, its posts and what came off it say. It has the readings that
/// need no type: ohms between the blades, blades to every post and to the case, insulation at 500 V. No mains reading is in it.
/// </summary>
public static class UntypedSheet
{
    /// <summary>Least insulation between mains and anything that a hand touches [Ω]. Common practice, no source.</summary>
    private const double LeastOhms = 2e6;

    /// <summary>What a dry unit has across one path of its insulation [Ω]. Common practice, no source.</summary>
    private const double UsualInsulationOhms = 400e6;

    /// <summary>Deviations of a normal law between the middle and an end of its central 95 %.</summary>
    private const double Deviations95 = 1.96;

    /// <summary>The terminals named on the way, in the order of their first naming, each with its last name.</summary>
    public static ImmutableArray<TerminalNamed> Terminals(BenchUnit unit) =>
        [
            .. unit.All<TerminalNamed>()
                .GroupBy(t => t.Fact.Id, StringComparer.Ordinal)
                .Select(g => g.Last().Fact)
                .Where(t => t.Name.Length > 0),
        ];

    /// <summary>The posts among them.</summary>
    public static ImmutableArray<TerminalNamed> Posts(BenchUnit unit) => [.. Terminals(unit).Where(t => t.IsPost)];

    /// <summary>The sheet.</summary>
    public static TypeSheet Of(BenchUnit unit) => Read(TextOf(unit));

    /// <summary>The sheet from its text.</summary>
    public static TypeSheet Read(string text) => TypeSheetFile.Read(text).Required;

    /// <summary>The text of the sheet, as a file would have it: the same text, the same sheet.</summary>
    public static string TextOf(BenchUnit unit)
    {
        var (plate, posts) = (PlateRule.PlateOf(unit), Posts(unit));
        var watts = plate.Watts is { } w ? $"{ValueText.Plain(w)} W unit, type" : "Type";
        return new JsonObject
        {
            ["ohmstead"] = TypeSheetFile.Mark,
            ["id"] = Id,
            ["title"] = $"{watts} not known yet",
            ["supply"] = new JsonObject { ["volts"] = plate.Volts ?? PlateRule.UsualVolts, ["hertz"] = 60 },
            ["titles"] = Titles(unit),
            ["cores"] = new JsonArray(
                new JsonObject
                {
                    ["id"] = Prefix + "core",
                    ["referenceWinding"] = Prefix + "primary",
                    ["lossOhms"] = 2000,
                    ["magnetisingHenries"] = 2,
                }
            ),
            ["elements"] = Elements(plate, posts, SeenWire.All(unit)),
            // A lug with one wire, and a wire with one end seen, are no slip of the pen here.
            ["near"] = new JsonArray([.. SeenWire.All(unit).Select(w => (JsonNode)new JsonArray(FromOf(w), ToOf(w)))]),
            ["readings"] = Readings(posts),
            ["takeApart"] = Steps(unit),
        }.ToJsonString();
    }

    private static JsonObject Titles(BenchUnit unit)
    {
        var titles = new JsonObject
        {
            ["blade-1"] = "one plug blade",
            ["blade-2"] = "the other plug blade",
            ["case"] = "the case",
            ["lug-in-1"] = "the lug of one cord wire",
            ["lug-in-2"] = "the lug of the other cord wire",
            [Prefix + "cord-1"] = "one wire of the cord",
            [Prefix + "cord-2"] = "the other wire of the cord",
            [Prefix + "primary"] = "primary",
            [Prefix + "core"] = "core",
        };
        foreach (var t in Terminals(unit))
            titles[t.Id] = t.IsPost ? $"post {t.Name}" : t.Name;
        foreach (var wire in SeenWire.All(unit))
            (titles[wire.Id], titles[Loose(wire)]) = (wire.Name, "a place not seen yet");
        return titles;
    }

    private static JsonArray Elements(PlateRead plate, ImmutableArray<TerminalNamed> posts, ImmutableArray<SeenWire> wires)
    {
        var (low, high) = PlateRule.BladeOhms(plate);
        var elements = new JsonArray(
            Cord("1"),
            Cord("2"),
            new JsonObject
            {
                ["id"] = Prefix + "primary",
                ["kind"] = "winding",
                ["title"] = "primary",
                ["from"] = "lug-in-1",
                ["to"] = "lug-in-2",
                ["core"] = Prefix + "core",
                ["turns"] = 350,
                ["ohms"] = Math.Sqrt(low * high),
                ["spread"] = new JsonObject { ["ohms"] = Math.Log(high / low) / 2 / Deviations95 },
                ["faults"] = new JsonObject { ["reversed"] = 0 },
            },
            Path("case", "case")
        );
        foreach (var post in posts)
            elements.Add(Path(post.Id, $"post {post.Name}"));
        foreach (var wire in wires)
            elements.Add(
                new JsonObject
                {
                    ["id"] = wire.Id,
                    ["kind"] = "wire",
                    ["from"] = FromOf(wire),
                    ["to"] = ToOf(wire),
                    // What it does is not known: nothing is concluded of it.
                    ["faults"] = new JsonObject { ["open"] = 0, ["resistive"] = 0 },
                }
            );
        return elements;
    }

    private static string FromOf(SeenWire wire) => wire.From.Length > 0 ? wire.From : Loose(wire);

    private static string ToOf(SeenWire wire) => wire.To.Length > 0 && wire.To != wire.From ? wire.To : Loose(wire);

    private static string Loose(SeenWire wire) => $"{wire.Id}-end";

    private static JsonObject Cord(string n) =>
        new()
        {
            ["id"] = $"{Prefix}cord-{n}",
            ["kind"] = "wire",
            ["title"] = n == "1" ? "one wire of the cord" : "the other wire of the cord",
            ["from"] = $"blade-{n}",
            ["to"] = $"lug-in-{n}",
            ["ohms"] = 0.05,
            ["faults"] = new JsonObject { ["open"] = 3, ["resistive"] = 3 },
        };

    private static JsonObject Path(string to, string name) =>
        new()
        {
            ["id"] = $"{Prefix}path-{to}",
            ["kind"] = "insulation",
            ["title"] = $"insulation between mains and {name}",
            ["from"] = "lug-in-2",
            ["to"] = to,
            ["ohms"] = UsualInsulationOhms,
        };

    private static JsonArray Readings(ImmutableArray<TerminalNamed> posts)
    {
        var readings = new JsonArray(Ohms("blades", "Between the plug blades", "blade-2", isGate: false));
        foreach (var post in posts)
            readings.Add(Ohms($"blades-{post.Id}", $"Plug blade to post {post.Name}", post.Id, isGate: true));
        readings.Add(Ohms("blades-case", "Plug blade to the case", "case", isGate: true));
        readings.Add(At500("case", "Both blades to the case, 500 V", "case", []));
        if (posts.Length > 0)
            readings.Add(At500("posts", "Both blades to all posts, 500 V", posts[0].Id, posts));
        return readings;
    }

    private static JsonObject Ohms(string id, string title, string to, bool isGate)
    {
        var reading = new JsonObject
        {
            ["id"] = Prefix + id,
            ["title"] = title,
            ["quantity"] = "ohms",
            ["between"] = new JsonArray("blade-1", to),
            ["state"] = new JsonObject(),
            ["minutes"] = 1,
            ["access"] = "closed",
        };
        if (isGate)
            (reading["limits"], reading["gate"]) = (new JsonObject { ["min"] = LeastOhms }, true);
        return reading;
    }

    private static JsonObject At500(string id, string title, string to, ImmutableArray<TerminalNamed> joined)
    {
        var groups = new JsonArray(new JsonArray("blade-1", "blade-2"));
        if (joined.Length > 1)
            groups.Add(new JsonArray([.. joined.Select(p => (JsonNode)p.Id)]));
        return new()
        {
            ["id"] = Insulation + id,
            ["title"] = title,
            ["quantity"] = "insulation-ohms",
            ["between"] = new JsonArray("blade-1", to),
            ["state"] = new JsonObject { ["joined"] = groups },
            ["minutes"] = 3,
            ["access"] = "closed",
            ["limits"] = new JsonObject { ["min"] = LeastOhms },
            ["gate"] = true,
        };
    }

    /// <summary>What came off, each after what came off before it: it goes back the other way round.</summary>
    private static JsonArray Steps(BenchUnit unit)
    {
        var (steps, before) = (new JsonArray(), new JsonArray());
        foreach (var off in unit.All<TakenOff>().Select(o => o.Fact).DistinctBy(o => o.Step, StringComparer.Ordinal))
        {
            steps.Add(
                new JsonObject
                {
                    ["id"] = off.Step,
                    ["title"] = off.Title ?? "a step without a name",
                    ["after"] = before,
                    ["minutesOut"] = 2,
                    ["minutesIn"] = 2,
                    ["breakPercent"] = 0,
                    ["price"] = 0,
                }
            );
            before = new JsonArray(off.Step);
        }
        return steps;
    }
}
