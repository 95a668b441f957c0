using Ohmstead.Electrical.Outlines;

namespace Ohmstead.Electrical.Tests.Outlines;

/// <summary>What contradicts itself is refused, with the place, what is wrong there and what would be right.</summary>
public class OutlineRefusalTests
{
    private const string Main = OutlineText.Main,
        Roller = OutlineText.Roller;

    public static TheoryData<string, string> Contradictions() =>
        new()
        {
            { Main + """, { "block": "throttle", "id": "t", "on": "side", "kind": "roller", "volts": [5, 16] }""", "$.blocks[1].on" },
            { Main + """, { "block": "whistle", "throttle": "t" }""", "$.blocks[1].throttle" },
            { Main + """, { "block": "direction", "throttle": "t", "kind": "interrupts" }""", "$.blocks[1].throttle" },
            { Main + """, { "block": "range", "throttle": "t" }""", "$.blocks[1].throttle" },
            { Main + """, { "block": "winding", "id": "more", "from": "x", "posts": { "c": 5 } }""", "$.blocks[1].posts.c" },
            { """{ "block": "winding", "id": "main", "from": "a", "posts": { "a": 6 } }""", "$.blocks[0].posts.a" },
            { """{ "block": "winding", "id": "main", "from": "a", "posts": { "t": 6 } },""" + Roller, "$.blocks[1].id" },
            { Main + """, { "block": "throttle", "id": "t", "kind": "roller", "volts": [16, 5] }""", "$.blocks[1].volts[1]" },
            { Main + """, { "block": "throttle", "id": "t", "kind": "shoe", "volts": [5, 5] }""", "$.blocks[1].volts[1]" },
            { Main + """, { "block": "throttle", "id": "t", "kind": "steps", "volts": [5, 9, 8] }""", "$.blocks[1].volts[2]" },
            { """{ "block": "winding", "id": "main", "from": "a", "posts": { "b": 0.4 } }""", "$.blocks[0].posts.b" },
            { """{ "block": "winding", "id": "main", "volts": 61 }""", "$.blocks[0].volts" },
            { Main + "," + Roller + "," + Roller, "$.blocks[2].id" },
            { Main + """, { "block": "winding", "id": "main", "volts": 6 }""", "$.blocks[1].id" },
            { Main + """, { "block": "breaker", "in": "attic" }""", "$.blocks[1].in" },
            { Main + """, { "block": "breaker" }""", "$.blocks[1].in" },
            { Main + """, { "block": "breaker", "in": "common" }, { "block": "breaker", "in": "common" }""", "$.blocks[2].in" },
            { """{ "block": "winding", "id": "main", "volts": 6 }, { "block": "breaker", "in": "common" }""", "$.blocks[1].in" },
            { Main + """, { "block": "breaker", "in": "throttle" }""", "$.blocks[1].in" },
            { Main + "," + Roller + """, { "block": "direction", "throttle": "t", "kind": "reverses" }""", "$.blocks[2].kind" },
            { """{ "block": "winding", "id": "main", "from": "a" }""", "$.blocks[0].volts" },
            { Main + """, { "block": "pilot", "across": ["b", "z"] }""", "$.blocks[1].across" },
            { Main + """, { "block": "pilot", "across": "glow" }""", "$.blocks[1].across" },
            { Main + """, { "block": "pilot", "across": "breaker" }""", "$.blocks[1].across" },
            { Main + """, { "block": "bond", "post": "z" }""", "$.blocks[1].post" },
            { Main + """, { "block": "rectifier", "post": "d", "from": "z" }""", "$.blocks[1].from" },
            { Main + """, { "block": "rectifier", "kind": "bridge" }""", "$.blocks[1]" },
            { Main + """, { "block": "rectifier", "throttle": "t" }""", "$.blocks[1].throttle" },
            { Main + """, { "block": "horn" }""", "$.blocks[1].block" },
            { """{ "block": "winding", "id": "main", "from": "a", "posts": { "b": 6 }, "volts": 5 }""", "$.blocks[0].volts" },
            { """{ "block": "winding", "id": "main", "from": "a", "volts": 12 },""" + Roller, "$.blocks[0].volts" },
            { """{ "block": "winding", "id": "glow", "volts": 6.3 }""", "$.blocks" },
            { "", "$.blocks" },
            {
                Main + "," + Roller + """, { "block": "whistle", "throttle": "t" }, { "block": "whistle", "throttle": ["t"] }""",
                "$.blocks[3].throttle"
            },
            {
                Main
                    + """, { "block": "throttle", "id": "t", "kind": "steps", "volts": [5, 9] }, { "block": "whistle", "throttle": "t", "from": "winding" }""",
                "$.blocks[2].from"
            },
            { """{ "block": "winding", "id": "primary", "from": "a", "posts": { "b": 6 } }""", "$.blocks[0].id" },
            { """{ "block": "primary", "taps": [120, 110] },""" + Main, "$.blocks[0].taps" },
            { """{ "block": "winding", "id": "Main", "from": "a", "posts": { "b": 6 } }""", "$.blocks[0].id" },
            { """{ "block": "winding", "id": "main", "from": "unknown", "posts": { "b": 6 } }""", "$.blocks[0].from" },
            {
                """{ "block": "winding", "id": "main", "from": "a", "posts": { "b": { "between": [8, 6] } } }""",
                "$.blocks[0].posts.b.between"
            },
        };

    [Theory]
    [MemberData(nameof(Contradictions))]
    public void A_contradiction_is_refused_with_its_place(string blocks, string path)
    {
        var read = OutlineFile.Read(OutlineText.Of(blocks));
        Assert.False(read.IsSound);
        Assert.Null(read.Value);
        Assert.Contains(read.Problems, p => p.Path == path && p.Wrong.Length > 0 && p.Right.Length > 0);
    }

    [Theory]
    [InlineData("""{ "watts": 150 }""", "$.plate.volts")]
    [InlineData("""{ "volts": "unknown" }""", "$.plate.volts")]
    [InlineData("null", "$.plate")]
    public void A_plate_without_volts_is_refused(string plate, string path) =>
        Assert.Equal(path, Assert.Single(OutlineFile.Read(OutlineText.Of(OutlineText.Main, plate)).Problems).Path);

    [Fact]
    public void Every_problem_is_named_at_once() =>
        Assert.Equal(
            ["$.blocks[0].posts.b", "$.blocks[1].volts[1]", "$.blocks[2].block"],
            OutlineFile
                .Read(
                    OutlineText.Of(
                        """{ "block": "winding", "id": "main", "from": "a", "posts": { "b": 70 } }, { "block": "throttle", "id": "t", "kind": "roller", "volts": [9, 8] }, { "block": "bell" }"""
                    )
                )
                .Problems.Select(p => p.Path)
                .Order(StringComparer.Ordinal)
        );

    [Fact]
    public void Neighbours_of_a_contradiction_are_in_order()
    {
        foreach (
            var blocks in new[]
            {
                Main + """, { "block": "winding", "id": "more", "from": "x", "posts": { "y": 5 } }""",
                """{ "block": "winding", "id": "main", "from": "a", "posts": { "b": 0.5, "c": 60 } }""",
                Main
                    + """, { "block": "breaker", "in": "common" }, { "block": "breaker", "in": "c" }, { "block": "breaker", "in": "primary" }""",
                Main + "," + Roller + """, { "block": "breaker", "in": "throttle" }""",
            }
        )
            Assert.Empty(OutlineFile.Read(OutlineText.Of(blocks)).Problems);
    }
}
