using System.Collections.Immutable;
using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>A capacitor [F].</summary>
public sealed record Capacitor(
    string Id,
    string From,
    string To,
    double Farads,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
) : Element(Id, ElementKind.Capacitor, From, To, Spread, Percents)
{
    private const double LeastFarads = 1e-15,
        MostFarads = 100;

    internal static Capacitor Read(JsonCursor at, ElementHead e) =>
        new(e.Id, e.From, e.To, at.Number("farads", LeastFarads, MostFarads), e.Spread, e.Percents);

    internal override void Put(JsonObject json) => json["farads"] = Farads;
}
