using System.Collections.Immutable;
using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>A wire, joint, resistor, breaker or insulation path: a resistance [Ω].</summary>
public sealed record Resistive(
    string Id,
    ElementKind Kind,
    string From,
    string To,
    double Ohms,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
) : Element(Id, Kind, From, To, Spread, Percents)
{
    /// <summary>What a breaker is rated to carry for hours [A]; 0 where the sheet does not say, and of any other part.</summary>
    public double RatedAmps { get; init; }

    /// <param name="usualOhms">Where the sheet does not say; null where it must.</param>
    internal static Resistive Read(JsonCursor at, ElementHead e, double? usualOhms = null) =>
        new(
            e.Id,
            e.Kind,
            e.From,
            e.To,
            usualOhms is { } usual ? at.Number("ohms", usual, 0, ElementReader.MostOhms) : at.Number("ohms", 0, ElementReader.MostOhms),
            e.Spread,
            e.Percents
        );

    internal static Resistive ReadBreaker(JsonCursor at, ElementHead e) =>
        Read(at, e) with
        {
            RatedAmps = ElementReader.Amps(at, "ratedAmps"),
        };

    internal override void Put(JsonObject json)
    {
        json["ohms"] = Ohms;
        ElementWriter.Given(json, "ratedAmps", RatedAmps);
    }
}
