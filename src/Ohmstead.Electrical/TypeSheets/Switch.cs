using System.Collections.Immutable;
using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>A contact that is closed [<paramref name="Ohms"/>] in some positions of a selector and open [<paramref name="OpenOhms"/>] in the others.</summary>
public sealed record Switch(
    string Id,
    string From,
    string To,
    string Control,
    ImmutableArray<string> ClosedIn,
    double Ohms,
    double OpenOhms,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
) : Element(Id, ElementKind.Switch, From, To, Spread, Percents)
{
    /// <summary>What it carries for hours [A]; 0 where the sheet does not say.</summary>
    public double MostAmps { get; init; }

    internal static Switch Read(JsonCursor at, ElementHead e) =>
        new(
            e.Id,
            e.From,
            e.To,
            at.Word("control"),
            Positions(at),
            at.Number("ohms", 0.01, 0, ElementReader.MostOhms),
            at.Number("openOhms", 1e8, 1e-3, ElementReader.MostOhms),
            e.Spread,
            e.Percents
        )
        {
            MostAmps = ElementReader.Amps(at, "mostAmps"),
        };

    internal override void Put(JsonObject json)
    {
        (json["control"], json["ohms"], json["openOhms"]) = (Control, Ohms, OpenOhms);
        json["closedIn"] = new JsonArray([.. ClosedIn.Select(p => JsonValue.Create(p))]);
        ElementWriter.Given(json, "mostAmps", MostAmps);
    }

    private static ImmutableArray<string> Positions(JsonCursor at)
    {
        if (!at.Has("closedIn"))
            at.Report("closedIn", "is missing", "a list of the control's positions is required");
        return at.Words("closedIn");
    }
}
