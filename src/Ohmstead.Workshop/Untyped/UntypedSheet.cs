using System.Collections.Immutable;
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

    /// <summary>A wire whose length is not known [Ω]: as on a sheet that does not say.</summary>
    private const double WireOhms = 0.004;

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

    /// <summary>The sheet: records as they come of a file, without one.</summary>
    public static TypeSheet Of(BenchUnit unit) => Of(UntypedBasis.Of(unit));

    /// <summary>The sheet of all units with this basis.</summary>
    public static TypeSheet Of(UntypedBasis basis)
    {
        var (plate, posts) = (basis.Plate, basis.Posts);
        var watts = plate.Watts is { } w ? $"{ValueText.Plain(w)} W unit, type" : "Type";
        return new(
            Id,
            $"{watts} not known yet",
            plate.Volts ?? PlateRule.UsualVolts,
            SupplyHertz: 60,
            [new(Prefix + "core", Prefix + "primary", LossOhms: 2000, [], MagnetisingHenries: 2, SpreadOverrides.None)],
            Controls: [],
            Elements(plate, posts, basis.Wires),
            // A lug with one wire, and a wire with one end seen, are no slip of the pen here.
            Near: [.. basis.Wires.Select(w => ImmutableArray.Create(FromOf(w), ToOf(w)))],
            Readings(posts),
            Observations: [],
            Steps(basis.Off)
        )
        {
            Titles = Titles(basis),
        };
    }

    private static ImmutableDictionary<string, string> Titles(UntypedBasis basis)
    {
        var titles = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        titles["blade-1"] = "one plug blade";
        titles["blade-2"] = "the other plug blade";
        titles["case"] = "the case";
        titles["lug-in-1"] = "the lug of one cord wire";
        titles["lug-in-2"] = "the lug of the other cord wire";
        titles[Prefix + "cord-1"] = "one wire of the cord";
        titles[Prefix + "cord-2"] = "the other wire of the cord";
        titles[Prefix + "primary"] = "primary";
        titles[Prefix + "core"] = "core";
        titles[Prefix + "path-case"] = PathName("case");
        foreach (var post in basis.Posts)
            titles[$"{Prefix}path-{post.Id}"] = PathName($"post {post.Name}");
        foreach (var t in basis.Terminals)
            titles[t.Id] = t.IsPost ? $"post {t.Name}" : t.Name;
        foreach (var wire in basis.Wires)
            (titles[wire.Id], titles[Loose(wire)]) = (wire.Name, "a place not seen yet");
        return titles.ToImmutable();
    }

    private static ImmutableArray<Element> Elements(PlateRead plate, ImmutableArray<TerminalNamed> posts, ImmutableArray<SeenWire> wires)
    {
        var (low, high) = PlateRule.BladeOhms(plate);
        return
        [
            Cord("1"),
            Cord("2"),
            new Winding(
                Prefix + "primary",
                "lug-in-1",
                "lug-in-2",
                Prefix + "core",
                Turns: 350,
                Math.Sqrt(low * high),
                LeakageHenries: 0,
                Taps: [],
                Sliders: [],
                new(ImmutableDictionary<string, double>.Empty.Add("ohms", Math.Log(high / low) / 2 / Deviations95)),
                ImmutableDictionary<string, double>.Empty.Add("reversed", 0)
            ),
            Path("case"),
            .. posts.Select(p => Path(p.Id)),
            // What a wire does is not known: nothing is concluded of it.
            .. wires.Select(w => Wire(w.Id, FromOf(w), ToOf(w), WireOhms, faultPercent: 0)),
        ];
    }

    private static string FromOf(SeenWire wire) => wire.From.Length > 0 ? wire.From : Loose(wire);

    private static string ToOf(SeenWire wire) => wire.To.Length > 0 && wire.To != wire.From ? wire.To : Loose(wire);

    private static string Loose(SeenWire wire) => $"{wire.Id}-end";

    private static Resistive Cord(string n) => Wire($"{Prefix}cord-{n}", $"blade-{n}", $"lug-in-{n}", ohms: 0.05, faultPercent: 3);

    private static Resistive Wire(string id, string from, string to, double ohms, double faultPercent) =>
        new(
            id,
            ElementKind.Wire,
            from,
            to,
            ohms,
            SpreadOverrides.None,
            ImmutableDictionary<string, double>.Empty.Add("open", faultPercent).Add("resistive", faultPercent)
        );

    private static string PathName(string to) => $"insulation between mains and {to}";

    private static Resistive Path(string to) =>
        new(
            $"{Prefix}path-{to}",
            ElementKind.Insulation,
            "lug-in-2",
            to,
            UsualInsulationOhms,
            SpreadOverrides.None,
            ImmutableDictionary<string, double>.Empty
        );

    private static ImmutableArray<ReadingSpec> Readings(ImmutableArray<TerminalNamed> posts) =>
        [
            Ohms("blades", "Between the plug blades", "blade-2", isGate: false),
            .. posts.Select(p => Ohms($"blades-{p.Id}", $"Plug blade to post {p.Name}", p.Id, isGate: true)),
            Ohms("blades-case", "Plug blade to the case", "case", isGate: true),
            At500("case", "Both blades to the case, 500 V", "case", []),
            .. posts.IsEmpty ? [] : new[] { At500("posts", "Both blades to all posts, 500 V", posts[0].Id, posts) },
        ];

    private static ReadingSpec Ohms(string id, string title, string to, bool isGate) =>
        new(
            Prefix + id,
            title,
            Quantity.Ohms,
            "blade-1",
            to,
            Cold([]),
            Minutes: 1,
            ReadingSpec.Closed,
            Needs: [],
            isGate ? Least : null,
            isGate,
            Hazard: ""
        );

    private static ReadingSpec At500(string id, string title, string to, ImmutableArray<TerminalNamed> joined) =>
        new(
            Insulation + id,
            title,
            Quantity.InsulationOhms,
            "blade-1",
            to,
            Cold(
                joined.Length > 1
                    ?
                    [
                        ["blade-1", "blade-2"],
                        [.. joined.Select(p => p.Id)],
                    ]
                    :
                    [
                        ["blade-1", "blade-2"],
                    ]
            ),
            Minutes: 3,
            ReadingSpec.Closed,
            Needs: [],
            Least,
            IsGate: true,
            Hazard: ""
        );

    private static Limits Least { get; } = new(LeastOhms, double.PositiveInfinity);

    /// <summary>Plugged into nothing, at room temperature.</summary>
    private static ReadingState Cold(ImmutableArray<ImmutableArray<string>> joined) =>
        new(Source: null, ImmutableDictionary<string, ControlPosition>.Empty, Loads: [], Lifted: [], joined, Celsius: 20);

    /// <summary>What came off, each after what came off before it: it goes back the other way round.</summary>
    private static ImmutableArray<TakeApartStep> Steps(ImmutableArray<(string Step, string Title)> off) =>
        [
            .. off.Select(
                (o, n) =>
                    new TakeApartStep(
                        o.Step,
                        o.Title,
                        After: n == 0 ? [] : [off[n - 1].Step],
                        AfterAny: [],
                        MinutesOut: 2,
                        MinutesIn: 2,
                        BreakPercent: 0,
                        Price: 0,
                        Lifts: [],
                        Part: "",
                        Cup: 0
                    )
            ),
        ];
}
