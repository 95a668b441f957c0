using System.Text.Json.Nodes;
using CsCheck;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Circuits;

/// <summary>
/// A circuit written another way reads the same: on the sample sheet, the demo sheets and drawn circuits. 1e-9 where nothing
/// conducts in one direction; 1e-6 where a rectifier does, whose periodic state is found by repetition to about that.
/// </summary>
public class SameCircuitTests
{
    private const int Samples = 60;

    private static readonly string[] Sheets = ["tests/Reference/sample/twin-160.sheet.json", .. Reference.DemoSheets];

    private static readonly (JsonObject Json, double[] Readings)[] Known =
    [
        .. Sheets.Select(f => (Rewritten.Plain(Reference.Json(f)), Rewritten.Readings(Rewritten.Plain(Reference.Json(f))))),
    ];

    private static readonly Gen<(int Sheet, int Seed)> Cases = Gen.Select(Gen.Int[0, Sheets.Length - 1], Gen.Int[0, 1_000_000]);

    [Fact]
    public void Other_names_and_another_order_change_nothing() => AllSame(Rewritten.Renamed, 1e-9);

    /// <remarks>No resistance stands for 0.1 µΩ in the solver, so a reading in microvolts may move by a microvolt.</remarks>
    [Fact]
    public void A_wire_without_resistance_changes_nothing() => AllSame((sheet, random) => Rewritten.WithWire(sheet, random, 0), 1e-6);

    [Fact]
    public void An_unused_tap_changes_nothing() => AllSame(Rewritten.WithUnusedTap, 1e-9);

    [Fact]
    public void Two_parts_of_a_winding_in_series_are_the_winding() => AllSame(Rewritten.InTwoParts, 1e-9);

    [Fact]
    public void Drawn_circuits_do_not_change_either() =>
        RandomCircuit.Any.Samples(
            Samples,
            c =>
            {
                var sheet = c.Json();
                object state = new { source = c.Source };
                sheet["readings"] = new JsonArray([
                    .. new[] { c.One, c.Other, c.Losses[0] is var l ? (l.From, l.To) : default }.SelectMany(
                        (pair, n) => Listed(n, pair, state)
                    ),
                ]);
                var expected = Rewritten.Readings(sheet);
                var random = new Random(c.Seed);
                return IsSame(sheet, expected, Rewritten.Readings(Rewritten.Renamed(sheet, random)), 1e-9)
                    && IsSame(sheet, expected, Rewritten.Readings(Rewritten.WithWire(sheet, random, 0)), 1e-6)
                    && IsSame(sheet, expected, Rewritten.Readings(Rewritten.WithUnusedTap(sheet, random)), 1e-9)
                    && IsSame(sheet, expected, Rewritten.Readings(Rewritten.InTwoParts(sheet, random)), 1e-9);
            }
        );

    [Fact]
    public void A_winding_without_resistance_is_one_of_a_micro_ohm()
    {
        double Amps(double ohms) =>
            new SheetDraft()
                .Core("core", "primary", 1420, 1.4)
                .Winding("primary", "p1", "p2", 384, ohms)
                .Winding("main", "s1", "s2", 60, 0.13, 6e-5)
                .Unit()
                .ReadSource(
                    "ac-amps",
                    new
                    {
                        source = new
                        {
                            from = "p1",
                            to = "p2",
                            volts = 120,
                        },
                        loads = new[]
                        {
                            new
                            {
                                from = "s1",
                                to = "s2",
                                ohms = 4,
                            },
                        },
                    }
                );
        Assert.Equal(Amps(1e-6), Amps(0), 1e-6 * Amps(1e-6));
    }

    private static IEnumerable<JsonNode?> Listed(int n, (string A, string B) pair, object state)
    {
        foreach (var quantity in new[] { "ac-volts", "dc-volts", "ohms" })
            yield return System.Text.Json.JsonSerializer.SerializeToNode(
                new
                {
                    id = FormattableString.Invariant($"{quantity}-{n}"),
                    quantity,
                    between = new[] { pair.A, pair.B },
                    state = quantity == "ohms" ? new { } : state,
                }
            );
    }

    private static void AllSame(Func<JsonObject, Random, JsonObject> change, double relative) =>
        Cases.Samples(
            Samples,
            c =>
            {
                var (sheet, expected) = Known[c.Sheet];
                return IsSame(sheet, expected, Rewritten.Readings(change(sheet, new Random(c.Seed))), relative);
            }
        );

    private static bool IsSame(JsonObject sheet, double[] expected, double[] found, double relative)
    {
        var readings = TypeSheetFile.Read(sheet.ToJsonString()).Required.Readings;
        Assert.Equal(expected.Length, found.Length);
        for (var n = 0; n < expected.Length; n++)
        {
            var slack =
                readings[n].State.Source is { IsDirect: false } && sheet.ToJsonString().Contains("rectifier", StringComparison.Ordinal)
                    ? Math.Max(relative, 1e-6)
                    : relative;
            Assert.True(
                expected[n].Equals(found[n])
                    || Math.Abs(expected[n] - found[n]) <= (slack * Math.Abs(expected[n])) + (relative < 1e-6 ? 1e-9 : 1e-6),
                FormattableString.Invariant($"{readings[n].Id}: {expected[n]:R} became {found[n]:R}")
            );
        }
        return true;
    }
}
