using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>What a sheet gives a part: its kind, where it is connected, its values with their units.</summary>
internal sealed record PartFigures(
    string Kind,
    ImmutableArray<string> Terminals,
    ImmutableArray<(string Name, string Value)> Values
)
{
    public const string TerminalKind = "terminal";

    /// <summary>The figures of an element, slider or terminal; null when the sheet has none of this id.</summary>
    public static PartFigures? Of(TypeSheet sheet, string id)
    {
        if (sheet.Elements.FirstOrDefault(e => e.Id == id) is { } element)
            return new(
                element.Kind,
                [element.From, element.To, .. element.OtherTerminals],
                [("from", PartNames.Said(element.From)), ("to", PartNames.Said(element.To)), .. Of(element)]
            );
        if (sheet.Windings.SelectMany(w => w.Sliders).FirstOrDefault(s => s.Id == id) is { } slider)
            return new("slider", [slider.To], [.. Of(slider)]);
        var meeting = sheet.Elements.Where(e => e.From == id || e.To == id || e.OtherTerminals.Contains(id)).ToList();
        return meeting.Count == 0
            ? null
            : new(
                TerminalKind,
                [id],
                [("meets here", string.Join(", ", meeting.Select(e => PartNames.Of(sheet, e.Id))))]
            );
    }

    private static IEnumerable<(string Name, string Value)> Of(Element element) =>
        element switch
        {
            Winding w =>
            [
                ("turns", ValueText.Plain(w.Turns)),
                ("resistance at 20 °C", Ohms(w.Ohms)),
                ("core", PartNames.Said(w.Core)),
                .. w.Taps.Select(t => ("tap " + PartNames.Said(t.To), "turn " + ValueText.Plain(t.Turn))),
                .. w.Sliders.Select(s => ("slider", PartNames.Said(s.Id))),
            ],
            Lamp l =>
            [
                ("rated", ValueText.Of(l.Volts, Quantity.AcVolts)),
                ("draws", ValueText.Of(l.Amps, Quantity.AcAmps)),
            ],
            Rectifier r => [("in series", Ohms(r.SeriesOhms)), ("leakage path", Ohms(r.LeakageOhms))],
            Switch s =>
            [
                (
                    "closed when",
                    $"{PartNames.Said(s.Control)} is {string.Join(" or ", s.ClosedIn.Select(PartNames.Said))}"
                ),
                ("closed", Ohms(s.Ohms)),
                ("open", Ohms(s.OpenOhms)),
            ],
            Resistive r => [("resistance", Ohms(r.Ohms))],
            _ => [],
        };

    private static IEnumerable<(string Name, string Value)> Of(Slider s) =>
        [
            ("moved by", PartNames.Said(s.Control)),
            ("runs", $"from turn {ValueText.Plain(s.FromTurn)} to turn {ValueText.Plain(s.ToTurn)}"),
            ("leads to", PartNames.Said(s.To)),
            ("contact", Ohms(s.ContactOhms)),
        ];

    private static string Ohms(double ohms) => ValueText.Of(ohms, Quantity.Ohms);
}
