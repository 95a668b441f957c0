using System.Collections.Immutable;
using CsCheck;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Tests.Drawing;

/// <summary>Circuits that nobody would build, but that a sheet may hold: each must be drawn, and drawn as it is.</summary>
public sealed class OddCircuitTests
{
    private static readonly ImmutableDictionary<string, double> Usual = ImmutableDictionary<string, double>.Empty;

    [Fact]
    public void An_element_with_both_ends_at_one_terminal_goes_out_and_comes_back() =>
        Holds(Part("loop", "wire", "a", "a"), Part("lead", "wire", "a", "sec-start"));

    [Fact]
    public void Elements_side_by_side_each_have_their_line() =>
        Holds(
            Part("one", "resistor", "sec-start", "sec-end"),
            Part("two", "lamp", "sec-start", "sec-end"),
            Part("three", "wire", "sec-end", "sec-start")
        );

    [Fact]
    public void A_ring_that_hangs_on_nothing_is_drawn() =>
        Holds(Part("one", "wire", "a", "b"), Part("two", "wire", "b", "c"), Part("three", "wire", "c", "a"));

    [Fact]
    public void A_secondary_joined_to_the_mains_goes_to_their_side() =>
        Holds(Part("mistake", "wire", "sec-end", "pri-end"), Part("lead", "wire", "sec-start", "post"));

    [Fact]
    public void Leakage_paths_start_anywhere() =>
        Holds(
            Part("lead", "wire", "sec-start", "post"),
            Part("ins-1", "insulation", "post", "iron"),
            Part("ins-2", "insulation", "pri-end", "iron"),
            Part("ins-3", "insulation", "post", "pri-start"),
            Part("ins-4", "insulation", "tap", "pri-start"),
            Part("ins-5", "insulation", "post", "iron")
        );

    [Fact]
    public void Two_windings_may_share_a_terminal() =>
        Holds(
            Wound("more", "sec-end", "more-end", []),
            Part("lead", "wire", "more-end", "post"),
            Part("cross", "wire", "more-end", "sec-start")
        );

    [Fact]
    public void Any_net_list_is_drawn_as_it_is()
    {
        string[] kinds = ["wire", "joint", "resistor", "breaker", "insulation"];
        string[] terminals = ["pri-start", "pri-end", "sec-start", "sec-end", "tap", "arm", "a", "b", "c", "d", "e", "f", "iron"];
        var part = Gen.Select(OneOf(kinds), OneOf(terminals), OneOf(terminals));
        part.Array[0, 14]
            .Sample(
                parts =>
                    Assert.Empty(
                        Wrong([
                            .. parts.Select(
                                (p, n) =>
                                    Part("p" + n.ToString(System.Globalization.CultureInfo.InvariantCulture), p.Item1, p.Item2, p.Item3)
                            ),
                        ])
                    ),
                iter: 150,
                threads: 1,
                seed: "0000000000001"
            );
    }

    [Fact]
    public void Three_hundred_elements_are_drawn() =>
        Holds([
            .. Enumerable
                .Range(0, 300)
                .Select(n => Part(Name("w", n), n % 7 == 0 ? "lamp" : "wire", n == 0 ? "sec-start" : Name("t", n / 2), Name("t", n + 1))),
        ]);

    private static Gen<string> OneOf(string[] words) => Gen.Int[0, words.Length - 1].Select(n => words[n]);

    private static string Name(string letter, int n) => letter + n.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private static void Holds(params Element[] parts) => Assert.Empty(Wrong(parts));

    /// <summary>What is wrong in the drawing of two windings on a core with these parts.</summary>
    private static List<string> Wrong(Element[] parts)
    {
        var slider = new Slider("roller", "throttle", 5, 25, "arm", 0.1, 0, SpreadOverrides.None, Usual);
        var sheet = new TypeSheet(
            "odd",
            "Odd",
            120,
            60,
            [new("core", "pri", 1000, [], 1, SpreadOverrides.None)],
            [new("throttle", true, [], "")],
            [
                Wound("pri", "pri-start", "pri-end", []),
                Wound("sec", "sec-start", "sec-end", [slider]) with
                {
                    Taps = [new(10, "tap")],
                },
                .. parts,
            ],
            [],
            [],
            [],
            []
        );
        var drawing = DrawnSheets.Draw(sheet);
        var upright = Trace.Segments(drawing).Where(s => s.A.X != s.B.X && s.A.Y != s.B.Y).Select(s => "slanting wire of " + s.Net);
        return [.. Trace.Differences(drawing, sheet), .. upright];
    }

    private static Winding Wound(string id, string from, string to, ImmutableArray<Slider> sliders) =>
        new(id, from, to, "core", 30, 1, 0, [], sliders, SpreadOverrides.None, Usual);

    private static Resistive Part(string id, string kind, string from, string to) =>
        new(id, ElementKinds.Find(kind)!.Value, from, to, 1, SpreadOverrides.None, Usual);
}
