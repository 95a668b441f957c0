using System.Collections.Immutable;
using System.Globalization;

namespace Ohmstead.Workshop.Shops;

/// <summary>What a shop starts with until it says otherwise. A figure is common practice, no source, unless one is named.</summary>
public static class UsualShop
{
    private const string NoSource = "common practice, no source";

    /// <summary>Parts that wear. The chances are guesses of the trade for three years, to be put right by each shop.</summary>
    public static ImmutableArray<ShopPart> Parts { get; } =
    [
        new("cord-18-2", "Supply cord", 7.5, 35),
        new("cord-2-core", "Supply cord, two-conductor", 9, 35),
        new("roller", "Roller and rivet", 5.1, 25) { Test = new(2, 70, 10, NeedsPart: true) },
        new("disc", "Rectifier disc", 6.5, 20),
        new("shoe", "Contact shoe", 6, 25),
        new("lamp-6v", "Pilot lamp 6 V", 1.6, 40),
        new("lamp-14v", "Pilot lamp 14 V", 1.6, 40),
        new("lamp-16v", "Pilot lamp 16 V", 1.6, 40),
        new("breaker-6a", "Thermal breaker 6 A", 14, 5) { Test = new(4, 90, 5, NeedsPart: false) },
    ];

    /// <summary>The shop of a folder in which nothing was set yet.</summary>
    public static Shop Make() => new("", "", "USD", 50, "letter", Meters(), Loads(), Limits(), LookOver());

    private static ImmutableArray<ShopMeter> Meters() =>
        [
            new("usual", "Hand meter, average-responding", false, Errors(0.8, 0.05, 0.2, 0.03)),
            new("true-rms", "Hand meter, true RMS", true, Errors(0.8, 0.05, 0.2, 0.03)),
        ];

    /// <summary>The errors of a usual meter; of the plug-in power meter and the insulation tester beside it too.</summary>
    private static ImmutableSortedDictionary<string, ShopMeterError> Errors(
        double percent,
        double floorOhms,
        double leadOhms,
        double floorVolts
    ) =>
        new Dictionary<string, ShopMeterError>
        {
            ["ohms"] = new(percent, floorOhms, 0.5, leadOhms),
            ["insulation-ohms"] = new(5, 20e3, 0, 0),
            ["ac-volts"] = new(percent, floorVolts, 0.5, 0),
            ["dc-volts"] = new(percent, floorVolts, 0.5, 0),
            ["ac-amps"] = new(percent, 0.01, 0, 0),
            ["watts"] = new(percent, 0.5, 0, 0),
        }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    private static ImmutableArray<ShopLoad> Loads() =>
        [
            new("r-2.5", "Resistor bank 2.5 Ω", 2.5, 0, 0),
            new("r-4", "Resistor bank 4 Ω", 4, 0, 0),
            new("r-5", "Resistor bank 5 Ω", 5, 0, 0),
            new("r-8", "Resistor bank 8 Ω", 8, 0, 0),
            new("r-47", "Resistor 47 Ω", 47, 0, 0),
        ];

    /// <summary>
    /// Series lamps that a shop may have for a line: it is asked which, for a shop starts with none. Household filament lamps
    /// for the nearer of 120 and 230 V.
    /// </summary>
    /// <param name="lineVolts">The line voltage of the bench [V].</param>
    public static ImmutableArray<ShopLoad> LampsFor(double lineVolts)
    {
        var volts = lineVolts * lineVolts < 120.0 * 230.0 ? 120.0 : 230.0;
        return [.. LampWatts.Select(watts => Lamp(watts, volts))];
    }

    private static readonly double[] LampWatts = [25, 40, 60, 75, 100, 150];

    private static ShopLoad Lamp(double watts, double volts) =>
        new(
            string.Create(CultureInfo.InvariantCulture, $"series-lamp-{watts}-{volts}"),
            string.Create(CultureInfo.InvariantCulture, $"Series lamp {watts} W, {volts} V"),
            volts * volts / watts,
            volts,
            watts / volts
        );

    private static ImmutableArray<ShopLimit> Limits() =>
        [
            new(
                "insulation",
                "Insulation, mains side to posts and core at 500 V: least",
                2e6,
                "Ω",
                "IEC 61558-1, clause 18.2, from memory",
                ""
            ),
            new("insulation-usual", "Insulation that a dry unit usually has: more than", 100e6, "Ω", NoSource, ""),
            new("touch-current", "Touch current to ground, either way of the plug: most", 0.25, "mA", "IEC 60950, class II, as listed", ""),
            new("rise", "Rise of the windings in a heat run: most", WindingClass.Usual.RiseKelvin, "K", WindingClass.Usual.Source, ""),
            new("roller", "Roller diameter, of a new one: least", 70, "%", NoSource, ""),
            new("usable", "Share of the printed watts that can be used for hours", 70, "%", NoSource, ""),
        ];

    /// <summary>Limits of tests; whoever has a rule of their own puts it in their place.</summary>
    public static ImmutableArray<ShopLimit> TestLimits { get; } =
    [
        new("insulation-secondary", "Insulation, each secondary to core: least", 1e6, "Ω", "IEC 60364-6, from memory", ""),
        new("ground", "Ground wire, plug to core, beside the test leads: most", 100, "mΩ", "from memory; local rules come first", ""),
        new("regulation", "Drop of a post’s volts to 5 A: most", 10, "%", NoSource, ""),
        new("whistle-1", "Whistle, first step, with a load of 5 Ω: least", 4, "V", NoSource, ""),
        new("whistle-2", "Whistle, second step, with a load of 5 Ω: least", 1, "V", NoSource, ""),
        new(
            "breaker",
            "Breaker at 20 to 22 A: most",
            60,
            "s",
            "common practice; UL 1077 and UL 489, from memory, give 2 minutes at twice the rating",
            ""
        ),
        new("breaker-short", "Breaker on a dead short: most", 15, "s", NoSource, ""),
    ];

    /// <summary>An answer that is none: the part could not be looked at yet.</summary>
    public const string NotOpened = "not opened yet";

    /// <summary>
    /// What endangers whoever plugs the unit in, by part: bare wire, live screws, something live in reach, and a cord whose insulation
    /// fails, for bare wire is next. The wordings of earlier lists stay in it, for the journals that hold them.
    /// </summary>
    internal static ImmutableArray<string> Endangering(string part) =>
        part switch
        {
            "cord" => ["sticky or gummy", "cracked", "crumbling, bare wire showing", "crumbles, wire to be seen"],
            "plug" => ["screws exposed", "screws open to the touch"],
            "sleeves" => ["bare wire showing", "bare wire to be seen"],
            "case" => ["a crack, something live in reach", "a piece missing, something live in reach", "piece missing"],
            _ => [],
        };

    private static ImmutableArray<LookOverItem> LookOver() =>
        [
            new(
                "cord",
                "Cord",
                "Unplug it. Bend the cord along its whole length. How does it look and feel?",
                ["good", "stiff", "sticky or gummy", "cracked", "crumbling, bare wire showing", "already replaced"]
            ),
            new(
                "plug",
                "Plug",
                "Look at the plug. Are the blades firm and the body whole?",
                ["good", "blades loose", "body cracked", "screws exposed", "already replaced"]
            ),
            new(
                "strain-relief",
                "Strain relief",
                "Pull and twist the cord where it enters the case. Does it stay put?",
                ["good", "moves a little", "slides in and out", "no knot or clamp"]
            ),
            new(
                "sleeves",
                "Sleeving",
                "With the cover off, look at the sleeving of the wires inside. Do not move brittle sleeving: it may hold asbestos.",
                ["good", "hard but whole", "brittle", "bare wire showing", NotOpened]
            ),
            new(
                "groove",
                "Bare turns",
                "Look along the bare turns that the rollers run on. Do you see a groove or burnt turns?",
                ["good", "dirty, even", "a light groove", "a deep groove", "burnt or blued turns", NotOpened]
            ),
            new(
                "flats",
                "Rollers",
                "Turn each roller. Is it round, free, and full size?",
                ["good", "small flats", "large flats", "stuck", "worn small", "broken or missing", NotOpened]
            ),
            new(
                "posts",
                "Posts and nuts",
                "Hold each post and try to turn it. Are posts and nuts firm and bright?",
                ["good", "tarnished", "nuts missing", "a post turns", "insulator cracked"]
            ),
            new(
                "case",
                "Case",
                "Look all around the case. Could a finger reach something live through a crack or a gap?",
                [
                    "good",
                    "scratched",
                    "a crack, nothing live in reach",
                    "a crack, something live in reach",
                    "a piece missing, nothing live in reach",
                    "a piece missing, something live in reach",
                ]
            ),
            new(
                "handles",
                "Handles",
                "Move each handle from end to end. Does it move smoothly and turn its shaft?",
                ["good", "stiff", "slips on its shaft", "cracked", "missing"]
            ),
        ];
}
