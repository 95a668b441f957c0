using System.Collections.Immutable;
using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>
/// A rectifier that conducts from <see cref="Element.From"/> to <see cref="Element.To"/>: a junction in series with
/// <paramref name="SeriesOhms"/>, and <paramref name="LeakageOhms"/> across both.
/// </summary>
public sealed record Rectifier(
    string Id,
    string From,
    string To,
    double SaturationAmps,
    double SlopeVolts,
    double SeriesOhms,
    double LeakageOhms,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
) : Element(Id, ElementKind.Rectifier, From, To, Spread, Percents)
{
    internal static Rectifier Read(JsonCursor at, ElementHead e) =>
        new(
            e.Id,
            e.From,
            e.To,
            at.Number("saturationAmps", 1e-16, 10),
            at.Number("slopeVolts", 0.005, 10),
            at.Number("seriesOhms", 0, ElementReader.MostOhms),
            at.Number("leakageOhms", 1e-3, ElementReader.MostOhms),
            e.Spread,
            e.Percents
        );

    internal override void Put(JsonObject json)
    {
        (json["saturationAmps"], json["slopeVolts"]) = (SaturationAmps, SlopeVolts);
        (json["seriesOhms"], json["leakageOhms"]) = (SeriesOhms, LeakageOhms);
    }
}
