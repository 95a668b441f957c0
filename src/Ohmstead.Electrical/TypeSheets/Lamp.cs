using System.Collections.Immutable;
using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>A tungsten lamp of rated voltage [V] and current [A].</summary>
public sealed record Lamp(
    string Id,
    string From,
    string To,
    double Volts,
    double Amps,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
) : Element(Id, ElementKind.Lamp, From, To, Spread, Percents)
{
    internal static Lamp Read(JsonCursor at, ElementHead e) =>
        new(e.Id, e.From, e.To, at.Number("volts", 0.1, 1e4), at.Number("amps", 1e-4, 1e3), e.Spread, e.Percents);

    internal override void Put(JsonObject json) => (json["volts"], json["amps"]) = (Volts, Amps);
}
