using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>The sheet as it grows: elements and controls, what they are called, and where each number comes from.</summary>
internal sealed class DraftParts
{
    /// <summary>Digits of a drafted number: far finer than it is known.</summary>
    private const int Digits = 6;

    private readonly ImmutableArray<DraftedValue>.Builder values = ImmutableArray.CreateBuilder<DraftedValue>();

    public List<JsonObject> Elements { get; } = [];

    public List<JsonObject> Controls { get; } = [];

    public JsonObject Titles { get; } = [];

    /// <summary>Groups of terminals that lie side by side.</summary>
    public List<string[]> Near { get; } = [];

    /// <summary>Where the wire of each post starts inside.</summary>
    public Dictionary<string, string> Leads { get; } = new(StringComparer.Ordinal);

    public ImmutableArray<DraftedValue> Values => values.ToImmutable();

    /// <summary>Adds a part.</summary>
    /// <param name="title">As it is said in a sentence, without an article.</param>
    public JsonObject Add(string id, ElementKind kind, string from, string to, string title)
    {
        var part = new JsonObject
        {
            ["id"] = id,
            ["kind"] = kind.Word(),
            ["from"] = from,
            ["to"] = to,
        };
        Elements.Add(part);
        Titles[id] = title;
        return part;
    }

    public void Wire(string id, string from, string to, string title, Figure? ohms = null)
    {
        var part = Add(id, ElementKind.Wire, from, to, title);
        Set(part, $"elements.{id}", ElementKind.Wire, "ohms", ohms ?? Priors.Wire);
        if (id.StartsWith("cord-", StringComparison.Ordinal))
            part["faults"] = new JsonObject { ["open"] = 2, ["resistive"] = 3 };
    }

    public void Joint(string id, string from, string to, string title) =>
        Set(Add(id, ElementKind.Joint, from, to, title), $"elements.{id}", ElementKind.Joint, "ohms", Priors.Joint);

    public void Contact(string id, string from, string to, string control, string[] closedIn, string title)
    {
        var part = Add(id, ElementKind.Switch, from, to, title);
        part["control"] = control;
        part["closedIn"] = Words(closedIn);
    }

    public void Cell(string id, string from, string to, string cell, string title)
    {
        var part = Add(id, ElementKind.Rectifier, from, to, title);
        var (saturation, slope, series, leakage) = Priors.Cell(cell);
        Set(part, $"elements.{id}", ElementKind.Rectifier, "saturationAmps", saturation);
        Set(part, $"elements.{id}", ElementKind.Rectifier, "slopeVolts", slope);
        Set(part, $"elements.{id}", ElementKind.Rectifier, "seriesOhms", series);
        Set(part, $"elements.{id}", ElementKind.Rectifier, "leakageOhms", leakage);
        Titles[$"{id}.from"] = "its plate side";
        Titles[$"{id}.to"] = "its stud side";
    }

    public void ResistanceWire(string id, string from, string to, Figure? ohms, string title) =>
        Set(
            Add(id, ElementKind.Resistor, from, to, title),
            $"elements.{id}",
            ElementKind.Resistor,
            "ohms",
            ohms is null ? Priors.ResistanceWire : Priors.KnownWire(ohms)
        );

    public void Insulation(string id, string from, string to, double ohms, string title) =>
        Set(
            Add(id, ElementKind.Insulation, from, to, title),
            $"elements.{id}",
            ElementKind.Insulation,
            "ohms",
            new Figure(ohms, 0, Origin.Assumed)
        );

    public void Throttle(string id, string title)
    {
        Controls.Add(new JsonObject { ["id"] = id, ["kind"] = "throttle" });
        Titles[id] = title;
    }

    public void Selector(string id, string title, string rest, params (string Position, string Title)[] positions)
    {
        Controls.Add(
            new JsonObject
            {
                ["id"] = id,
                ["kind"] = "selector",
                ["positions"] = Words(positions.Select(p => p.Position)),
                ["rest"] = rest,
            }
        );
        Titles[id] = title;
        foreach (var (position, said) in positions)
            Titles[$"{id}={position}"] = said;
    }

    /// <summary>Names a terminal, unless it was named before.</summary>
    public void Name(string terminal, string title) => Titles.TryAdd(terminal, title);

    /// <summary>Sets a number, its spread (that of sound units and the doubt about the kind together), and where it comes from.</summary>
    /// <param name="kind">The kind of element; null for a core.</param>
    public void Set(JsonObject part, string owner, ElementKind? kind, string field, Figure figure)
    {
        var value = Round(figure.Value);
        if (kind is not null || field != "excitation")
            part[field] = value;
        Spread(part, field, kind?.UsualSpread(field) ?? Core.UsualSpread(field), figure.Doubt);
        Note($"{owner}.{field}", figure with { Value = value });
    }

    /// <summary>Notes where a number comes from that has no spread of its own.</summary>
    public void Note(string path, Figure figure) => values.Add(new DraftedValue(path, figure.Value, figure.Doubt, figure.Origin, []));

    /// <summary>Writes a spread of sound units and a doubt about the kind.</summary>
    public static void Spread(JsonObject part, string field, double unit, double kindError)
    {
        if (kindError == 0)
            return;
        if (part["spread"] is not JsonObject)
            part["spread"] = new JsonObject();
        if (part["kindError"] is not JsonObject)
            part["kindError"] = new JsonObject();
        part["spread"]![field] = Round(double.Hypot(unit, kindError));
        part["kindError"]![field] = Round(kindError);
    }

    /// <summary>A number as it stands in a drafted sheet.</summary>
    public static double Round(double value) =>
        double.Parse(
            value.ToString("G" + Digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture),
            CultureInfo.InvariantCulture
        );

    public static JsonArray Words(IEnumerable<string> words) => new([.. words.Select(w => JsonValue.Create(w))]);
}
