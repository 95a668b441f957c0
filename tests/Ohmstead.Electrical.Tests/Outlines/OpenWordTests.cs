using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Outlines;

/// <summary>Words that nobody knows keep every kind of unit that they may mean.</summary>
public class OpenWordTests
{
    private static string Throttle(string kind) =>
        OutlineText.Main + $$""", { "block": "throttle", "id": "t", "kind": {{kind}}, "volts": [5, 16] }""";

    private static OutlineKinds Read(string blocks) => OutlineFile.Read(OutlineText.Of(blocks)).Required;

    [Fact]
    public void An_unknown_breaker_place_is_each_place_that_there_is()
    {
        var kinds = Read(Throttle("\"roller\"") + """, { "block": "breaker", "in": "unknown" }""").Kinds;
        Assert.Equal(["common", "throttle", "primary", "b", "c"], kinds.Select(k => k.Choices["blocks[2].in"]));
        Assert.All(kinds, k => Assert.Equal(0.2, k.Chance, 12));
        Assert.Equal(5, kinds.Select(k => k.Id).Distinct().Count());
        Assert.Contains(kinds[1].Sheet.Elements, e => e.Id == "breaker-t");
        Assert.Contains(kinds[2].Sheet.Elements, e => e is { Id: "breaker", From: "lug-1" });
        Assert.Contains(kinds[3].Sheet.Elements, e => e.Id == "breaker-b");
    }

    [Fact]
    public void One_of_two_and_unknown_words_multiply()
    {
        var kinds = Read(
            Throttle("\"unknown\"") + """, { "block": "whistle", "throttle": "t", "steps": { "oneOf": [2, 1] }, "cell": "unknown" }"""
        ).Kinds;
        Assert.Equal(2 * 2 * 3, kinds.Length);
        Assert.Equal(
            "roller 2 disc",
            $"{kinds[0].Choices["blocks[1].kind"]} {kinds[0].Choices["blocks[2].steps"]} {kinds[0].Choices["blocks[2].cell"]}"
        );
        Assert.Equal(
            "shoe 1 silicon",
            $"{kinds[^1].Choices["blocks[1].kind"]} {kinds[^1].Choices["blocks[2].steps"]} {kinds[^1].Choices["blocks[2].cell"]}"
        );
        Assert.DoesNotContain(kinds[^1].Sheet.Elements, e => e.Id == "hold-t");
    }

    [Fact]
    public void More_than_24_kinds_are_refused_with_the_words_that_multiply()
    {
        var problem = Assert.Single(
            OutlineFile
                .Read(
                    OutlineText.Of(
                        Throttle("\"unknown\"")
                            + """, { "block": "breaker", "in": "unknown" }, { "block": "whistle", "throttle": "t", "cell": "unknown" }"""
                    )
                )
                .Problems
        );
        Assert.Equal("$", problem.Path);
        Assert.Contains("30 kinds", problem.Wrong, StringComparison.Ordinal);
        foreach (var word in new[] { "2 for blocks[1].kind", "5 for blocks[2].in", "3 for blocks[3].cell" })
            Assert.Contains(word, problem.Wrong, StringComparison.Ordinal);
        Assert.Equal(
            24,
            Read(
                Throttle("\"roller\"")
                    + """, { "block": "whistle", "throttle": "t", "cell": "unknown", "steps": "unknown", "from": "unknown", "boost": { "oneOf": [4, 5] } }"""
            ).Kinds.Length
        );
    }

    [Fact]
    public void A_choice_that_contradicts_the_rest_is_no_kind()
    {
        var kinds = Read(
            Throttle("\"roller\"")
                + """, { "block": "breaker", "in": "primary" }, { "block": "breaker", "in": { "oneOf": ["primary", "throttle"] } }"""
        ).Kinds;
        Assert.Equal("throttle", Assert.Single(kinds).Choices["blocks[3].in"]);
        Assert.Equal(1, kinds[0].Chance);
        Assert.Equal(
            "$.blocks[3].in",
            Assert
                .Single(
                    OutlineFile
                        .Read(
                            OutlineText.Of(
                                Throttle("\"roller\"")
                                    + """, { "block": "breaker", "in": "primary" }, { "block": "breaker", "in": { "oneOf": ["primary"] } }"""
                            )
                        )
                        .Problems
                )
                .Path
        );
    }

    [Fact]
    public void An_unknown_number_is_the_usual_one_with_more_doubt()
    {
        var main = Read("""{ "block": "winding", "id": "main", "from": "a", "posts": { "b": "unknown" } }""").Kinds[0];
        Assert.Equal(Origin.Assumed, main.Values.Single(v => v.Path == "elements.main.turns").Origin);
        Assert.InRange(main.Sheet.Windings.Single(w => w.Id == "main").KindError.Of("turns", 0), 0.5, 0.51);
    }

    [Fact]
    public void A_wire_of_unknown_ohms_is_there_all_the_same()
    {
        var kind = Read(OutlineText.Main + """, { "block": "rectifier", "post": "d", "from": "c", "ohms": "unknown" }""").Kinds[0];
        var wire = kind.Values.Single(v => v.Path == "elements.dropper-d.ohms");
        Assert.Equal((1.5, 0.3, Origin.Assumed), (wire.Value, wire.RelativeError, wire.Origin));
    }

    [Fact]
    public void A_boost_of_unknown_volts_is_less_sure_than_one_that_was_left_out()
    {
        double Doubt(string boost) =>
            Read(Throttle("\"roller\"") + $$""", { "block": "whistle", "throttle": "t" {{boost}} }""")
                .Kinds[0]
                .Sheet.Windings.Single(w => w.Id == "boost-t")
                .KindError.Of("turns", 0);
        Assert.Equal(0.10, Doubt(""), 4);
        Assert.Equal(double.Hypot(0.10, 0.3), Doubt(""", "boost": "unknown" """), 4);
    }

    [Fact]
    public void Unknown_volts_of_a_whole_winding_say_nothing_beside_its_posts_and_unknown_watts_widen_its_ohms()
    {
        Winding Main(string more) =>
            Read(
                $$"""{ "block": "winding", "id": "main", "from": "a", "posts": { "b": 6 } {{more}} }, { "block": "throttle", "id": "t", "kind": "roller", "volts": [4, 8] }"""
            )
                .Kinds[0]
                .Sheet.Windings.Single(w => w.Id == "main");
        Assert.Equal(
            (Main("").Turns, Main("").KindError.Of("turns", 0)),
            (Main(""", "volts": "unknown" """).Turns, Main(""", "volts": "unknown" """).KindError.Of("turns", 0))
        );
        Assert.Equal((0.3, 0.45), (Main("").KindError.Of("ohms", 0), Main(""", "watts": "unknown" """).KindError.Of("ohms", 0)));
    }

    [Fact]
    public void What_was_left_out_and_has_a_usual_value_is_listed()
    {
        var outline = Read(Throttle("\"roller\"") + """, { "block": "whistle", "throttle": "t", "boost": 4 }""").Kinds[0].Outline;
        Assert.Equal(
            ["plate.hertz", "blocks[0].watts", "blocks[1].on", "blocks[2].from", "blocks[2].steps", "blocks[2].cell"],
            outline.LeftOut
        );
    }

    [Fact]
    public void A_list_of_choices_must_be_one() =>
        Assert.Equal(
            "$.blocks[1].kind.oneOf",
            Assert.Single(OutlineFile.Read(OutlineText.Of(Throttle("""{ "oneOf": [] }"""))).Problems).Path
        );
}
