using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>
/// What a broken direct current lets go, against closed forms: L = L₀·(n/n₀)², E = ½·L·I², and volts by the turns. 3 H on 300
/// turns throughout.
/// </summary>
public class InductiveKickTests
{
    private const double CoreHenries = 3;
    private const double CoreTurns = 300;

    private static readonly object Mains = new
    {
        source = new
        {
            from = "blade-1",
            to = "blade-2",
            volts = 120,
        },
    };

    private static object Fed(string from, string to, double amps, object? controls = null) =>
        controls is null
            ? new
            {
                source = new
                {
                    from,
                    to,
                    directAmps = amps,
                },
            }
            : new
            {
                source = new
                {
                    from,
                    to,
                    directAmps = amps,
                },
                controls,
            };

    /// <summary>A primary behind a cord, a main winding of 30 turns with a roller from turn 10 on, and 10 turns beside it.</summary>
    private static SheetDraft Draft() =>
        new SheetDraft()
            .Core("core", "primary", 1300, CoreHenries)
            .Throttle("throttle")
            .Selector("lever", "off", "on")
            .Wire("cord-1", "blade-1", "lug-1", 0.1)
            .Wire("cord-2", "blade-2", "lug-2", 0.1)
            .Winding("primary", "lug-1", "lug-2", CoreTurns, 3)
            .Element(
                "winding",
                "main",
                "common",
                "end",
                new
                {
                    core = "core",
                    turns = 30,
                    ohms = 0.1,
                    sliders = new[]
                    {
                        new
                        {
                            id = "roller",
                            control = "throttle",
                            fromTurn = 10,
                            toTurn = 30,
                            to = "arm",
                            contactOhms = 0.1,
                        },
                    },
                }
            )
            .Winding("boost", "arm", "hub", 10, 0.05)
            .Element("switch", "contact", "hub", "post", new { control = "lever", closedIn = new[] { "on" } })
            .Reading("mains", "ac-volts", ["common", "end"], Mains);

    private static InductiveKick? Kick(SheetDraft draft)
    {
        var sheet = draft.Sheet();
        return InductiveKick.Of(new UnitModel(sheet), sheet.Readings[^1], sheet.Readings[^1].State);
    }

    private static void Is(double turns, double amps, InductiveKick? kick)
    {
        var henries = CoreHenries * Math.Pow(turns / CoreTurns, 2);
        Assert.NotNull(kick);
        Assert.Equal(henries, kick.Henries, henries * 1e-3);
        Assert.Equal(henries * amps * amps / 2, kick.Joules, henries * amps * amps * 1e-3);
        Assert.Equal(CoreTurns / turns, kick.BladeVoltsPerVolt!.Value, CoreTurns / turns * 1e-3);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void A_winding_stores_by_its_turns_squared_and_throws_by_its_turns(double amps) =>
        Is(30, amps, Kick(Draft().Reading("drop", "dc-volts", ["common", "end"], Fed("common", "end", amps))));

    [Fact]
    public void The_roller_counts_where_it_stands() =>
        Is(20, 1, Kick(Draft().Reading("drop", "dc-volts", ["common", "arm"], Fed("common", "arm", 1, new { throttle = 0.5 }))));

    [Fact]
    public void Windings_in_a_row_add_and_against_each_other_take_away()
    {
        Is(
            40,
            1,
            Kick(Draft().Reading("drop", "dc-volts", ["common", "arm"], Fed("common", "post", 1, new { throttle = 1.0, lever = "on" })))
        );
        var against = Draft().Json();
        against["elements"]![4]!["from"] = "hub";
        against["elements"]![4]!["to"] = "arm";
        var sheet = TypeSheetFile.Read(against.ToJsonString()).Required;
        var spec = sheet.Readings[0] with
        {
            State = Draft()
                .Reading("drop", "dc-volts", ["common", "arm"], Fed("common", "post", 1, new { throttle = 1.0, lever = "on" }))
                .Sheet()
                .Readings[^1]
                .State,
        };
        Is(20, 1, InductiveKick.Of(new UnitModel(sheet), spec, spec.State));
    }

    [Fact]
    public void Fed_at_the_plug_the_blades_see_the_break_itself()
    {
        Is(CoreTurns, 0.5, Kick(Draft().Reading("drop", "dc-volts", ["lug-1", "blade-1"], Fed("blade-1", "blade-2", 0.5))));
        // A strap across the plug may come off: it does not count.
        var strapped = new
        {
            source = new
            {
                from = "common",
                to = "end",
                directAmps = 1.0,
            },
            joined = new[] { new[] { "blade-1", "blade-2" } },
        };
        Is(30, 1, Kick(Draft().Reading("drop", "dc-volts", ["common", "end"], strapped)));
    }

    /// <remarks>0.09 A at 60 V and 60 Hz: X = 666.7 Ω, L = 666.7/(2π·60) = 1.7684 H at small flux.</remarks>
    [Fact]
    public void A_table_of_excitation_counts_by_its_first_slope()
    {
        var draft = new SheetDraft()
            .Core(
                "core",
                "primary",
                1300,
                [
                    [0, 0],
                    [60, 0.09],
                    [120, 0.24],
                ]
            )
            .Winding("primary", "blade-1", "blade-2", CoreTurns, 3)
            .Winding("main", "common", "end", 30, 0.1)
            .Reading("mains", "ac-volts", ["common", "end"], Mains)
            .Reading("drop", "dc-volts", ["common", "end"], Fed("common", "end", 1));
        Assert.Equal(1.7684 / 100, Kick(draft)!.Henries, 1e-5);
    }

    [Fact]
    public void No_winding_or_no_direct_current_no_kick()
    {
        // The lever is at rest, off: the current cannot flow through the post.
        Assert.Null(Kick(Draft().Reading("drop", "dc-volts", ["common", "arm"], Fed("common", "post", 1))));
        Assert.Null(Kick(Draft().Reading("cord", "dc-volts", ["blade-1", "lug-1"], Fed("blade-1", "lug-1", 1))));
        Assert.Null(Kick(Draft()));
        Assert.Null(Kick(Draft().Reading("ohms", "ohms", ["common", "end"])));
    }

    [Fact]
    public void Where_no_reading_is_on_the_mains_the_blades_are_not_known()
    {
        var draft = new SheetDraft()
            .Core("core", "primary", 1300, CoreHenries)
            .Winding("primary", "blade-1", "blade-2", CoreTurns, 3)
            .Winding("main", "common", "end", 30, 0.1)
            .Reading("drop", "dc-volts", ["common", "end"], Fed("common", "end", 1));
        Assert.Null(Kick(draft)!.BladeVoltsPerVolt);
        Assert.Equal(0.015, Kick(draft)!.Joules, 1e-5);
    }
}
