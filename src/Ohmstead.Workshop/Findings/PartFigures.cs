using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>What a sheet gives a part: its kind (null for a terminal), where it is connected, its values with their units.</summary>
internal sealed record PartFigures(ElementKind? Kind, ImmutableArray<string> Terminals, ImmutableArray<(string Name, string Value)> Values)
{
    /// <summary>The figures of an element, slider or terminal, none that is made up for a type not known; null when the sheet has none of this id.</summary>
    public static PartFigures? Of(TypeSheet sheet, string id)
    {
        if (sheet.Elements.FirstOrDefault(e => e.Id == id) is { } element)
            return new(
                element.Kind,
                [element.From, element.To, .. element.OtherTerminals],
                [
                    ("from", PartNames.Terminal(sheet, element.From)),
                    ("to", PartNames.Terminal(sheet, element.To)),
                    .. UntypedIds.IsOne(sheet) ? [] : Of(sheet, element),
                ]
            );
        if (sheet.Windings.SelectMany(w => w.Sliders).FirstOrDefault(s => s.Id == id) is { } slider)
            return new(ElementKind.Slider, [slider.To], [.. Of(sheet, slider)]);
        var meeting = sheet.Elements.Where(e => e.From == id || e.To == id || e.OtherTerminals.Contains(id)).ToList();
        return meeting.Count == 0
            ? null
            : new(null, [id], [("meets here", string.Join(", ", meeting.Select(e => PartNames.Of(sheet, e.Id))))]);
    }

    private static IEnumerable<(string Name, string Value)> Of(TypeSheet sheet, Element element) =>
        element.Match<IEnumerable<(string, string)>>(
            winding: w =>
                [
                    ("turns", ValueText.Plain(w.Turns)),
                    ("resistance at 20 °C", Ohms(w.Ohms)),
                    ("core", PartNames.Core(sheet, w.Core)),
                    .. w.Taps.Select(t => (PartNames.Terminal(sheet, t.To), "turn " + ValueText.Plain(t.Turn))),
                    .. w.Sliders.Select(s => ("roller or shoe", PartNames.Of(sheet, s.Id))),
                ],
            lamp: l => [("rated", ValueText.Of(l.Volts, Quantity.AcVolts)), ("draws", ValueText.Of(l.Amps, Quantity.AcAmps))],
            rectifier: r => [("in series", Ohms(r.SeriesOhms)), ("leakage path", Ohms(r.LeakageOhms))],
            contact: s =>
                [
                    (
                        "closed when",
                        $"{PartNames.Control(sheet, s.Control)}: {string.Join(" or ", s.ClosedIn.Select(p => PartNames.Position(sheet, s.Control, p)))}"
                    ),
                    ("closed", Ohms(s.Ohms)),
                    ("open", Ohms(s.OpenOhms)),
                ],
            resistive: r => [("resistance", Ohms(r.Ohms))]
        );

    private static IEnumerable<(string Name, string Value)> Of(TypeSheet sheet, Slider s) =>
        [
            ("moved by", PartNames.Control(sheet, s.Control)),
            ("runs", $"from turn {ValueText.Plain(s.FromTurn)} to turn {ValueText.Plain(s.ToTurn)}"),
            ("leads to", PartNames.Terminal(sheet, s.To)),
            ("contact", Ohms(s.ContactOhms)),
        ];

    private static string Ohms(double ohms) => ValueText.Of(ohms, Quantity.Ohms);
}
