using System.Collections.Immutable;
using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>
/// A winding on a core, its dotted end at <see cref="Element.From"/>. Resistance [Ω at 20 °C] and leakage inductance [H]
/// are spread evenly over the turns. Or the wire of a resistor with taps or sliders: on no core, of kind resistor, its turns the
/// parts of its length in which taps and sliders count.
/// </summary>
public sealed record Winding(
    string Id,
    string From,
    string To,
    string Core,
    double Turns,
    double Ohms,
    double LeakageHenries,
    ImmutableArray<Tap> Taps,
    ImmutableArray<Slider> Sliders,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
) : Element(Id, ElementKind.Winding, From, To, Spread, Percents)
{
    /// <inheritdoc/>
    public override IEnumerable<string> OtherTerminals => Taps.Select(t => t.To).Concat(Sliders.Select(s => s.To));

    /// <summary>What it carries for hours [A]; 0 where the sheet does not say.</summary>
    public double MostAmps { get; init; }

    /// <summary>False for the wire of a resistor, in which nothing is induced.</summary>
    public bool IsOnCore => Kind == ElementKind.Winding;

    internal override void Put(JsonObject json)
    {
        if (IsOnCore)
            json["core"] = Core;
        (json["turns"], json["ohms"]) = (Turns, Ohms);
        if (IsOnCore)
            json["leakageHenries"] = LeakageHenries;
        ElementWriter.Given(json, "mostAmps", MostAmps);
        ElementWriter.Given(json, "taps", Taps.Select(t => new JsonObject { ["turn"] = t.Turn, ["to"] = t.To }));
        ElementWriter.Given(json, "sliders", Sliders.Select(s => s.Json()));
    }
}

/// <summary>A terminal at a turn, counted from the winding's dotted end.</summary>
public sealed record Tap(double Turn, string To);

/// <summary>
/// A contact that runs on bared turns: at fromTurn + x·(toTurn − fromTurn) for the control's position x, through
/// <paramref name="ContactOhms"/>; with <paramref name="BridgesTurns"/> 1 it lies on two turns, half a turn to each side,
/// through twice that resistance each.
/// </summary>
public sealed record Slider(
    string Id,
    string Control,
    double FromTurn,
    double ToTurn,
    string To,
    double ContactOhms,
    int BridgesTurns,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
)
{
    /// <summary>How much of its spread is doubt about the kind, on a drafted sheet.</summary>
    public SpreadOverrides KindError { get; init; } = SpreadOverrides.None;

    /// <summary>What it carries for hours [A]; 0 where the sheet does not say.</summary>
    public double MostAmps { get; init; }

    /// <summary>Below this position of the control it touches nothing.</summary>
    public double OffBelow { get; init; }

    /// <summary>Above this position of the control it touches nothing.</summary>
    public double OffAbove { get; init; } = 1;

    /// <summary>True where it touches nothing.</summary>
    /// <param name="position">Of the control, 0 to 1.</param>
    public bool IsOff(double position) => position < OffBelow || position > OffAbove;

    /// <summary>All that it says.</summary>
    internal JsonObject Json()
    {
        var json = new JsonObject
        {
            ["id"] = Id,
            ["control"] = Control,
            ["fromTurn"] = FromTurn,
            ["toTurn"] = ToTurn,
            ["to"] = To,
            ["contactOhms"] = ContactOhms,
            ["bridgesTurns"] = BridgesTurns,
        };
        ElementWriter.Given(json, "mostAmps", MostAmps);
        ElementWriter.Given(json, "offBelow", OffBelow);
        if (OffAbove < 1)
            json["offAbove"] = OffAbove;
        ElementWriter.Doubts(json, Spread, KindError, Percents);
        return json;
    }
}
