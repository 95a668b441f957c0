using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Outlines;

/// <summary>Outlines for tests, and what is made of them.</summary>
internal static class OutlineText
{
    /// <summary>A unit with two rollers, two whistles, two buttons and the breaker in the common post: that of the worked example.</summary>
    public static string Twin { get; } = Reference.Text("tests/Reference/outlines/twin-160.outline.json");

    /// <summary>A direct-current unit: rheostat, bridge, reversing switch, breaker in the primary, a bond and line taps.</summary>
    public static string Direct { get; } = Reference.Text("tests/Reference/outlines/direct-60.outline.json");

    /// <summary>One shared whistle lever on a shoe and on steps, a rotary, a breaker before a post and a cell with a post of its own.</summary>
    public static string Mixed { get; } = Reference.Text("tests/Reference/outlines/mixed-200.outline.json");

    public static string Of(string blocks, string plate = """{ "volts": 120, "watts": 150 }""") =>
        $$"""{ "ohmstead": "outline/1", "id": "x", "plate": {{plate}}, "blocks": [ {{blocks}} ] }""";

    public const string Main = """{ "block": "winding", "id": "main", "from": "a", "posts": { "b": 6, "c": 14 } }""";

    public const string Roller = """{ "block": "throttle", "id": "t", "kind": "roller", "volts": [5, 16] }""";

    public static OutlineKind Kind(string text) => OutlineFile.Read(text).Required.Kinds[0];

    public static TypeSheet Sheet(string text) => Kind(text).Sheet;

    /// <summary>An element as "id kind from→to"; sliders as "id slider winding→to".</summary>
    public static IEnumerable<string> Parts(TypeSheet sheet) =>
        sheet.Elements.SelectMany(e =>
            (e is Winding w ? w.Sliders.Select(s => $"{s.Id} slider {w.Id}→{s.To}") : []).Prepend($"{e.Id} {e.Kind.Word()} {e.From}→{e.To}")
        );
}
