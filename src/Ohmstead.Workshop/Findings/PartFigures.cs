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
                    .. UntypedIds.IsOne(sheet) ? [] : PartKind.Figures(sheet, element),
                ]
            );
        if (sheet.Sliders.FirstOrDefault(s => s.Id == id) is { } slider)
            return new(ElementKind.Slider, [slider.To], [.. Of(sheet, slider)]);
        var meeting = sheet.Elements.Where(e => e.From == id || e.To == id || e.OtherTerminals.Contains(id)).ToList();
        return meeting.Count == 0
            ? null
            : new(null, [id], [("meets here", string.Join(", ", meeting.Select(e => PartNames.Of(sheet, e.Id))))]);
    }

    private static IEnumerable<(string Name, string Value)> Of(TypeSheet sheet, Slider s) =>
        [
            ("moved by", PartNames.Control(sheet, s.Control)),
            (
                "runs",
                sheet.Elements.OfType<Winding>().First(w => w.Sliders.Contains(s)) is { IsOnCore: false } wire
                    ? $"from {PartKind.Along(wire, s.FromTurn)} to {PartKind.Along(wire, s.ToTurn)}"
                    : $"from turn {ValueText.Plain(s.FromTurn)} to turn {ValueText.Plain(s.ToTurn)}"
            ),
            .. s.OffBelow > 0 ? [("off below", $"{ValueText.Percent(s.OffBelow)} of its travel")] : NoFigures,
            .. s.OffAbove < 1 ? [("off above", $"{ValueText.Percent(s.OffAbove)} of its travel")] : NoFigures,
            ("leads to", PartNames.Terminal(sheet, s.To)),
            ("contact", Ohms(s.ContactOhms)),
        ];

    private static readonly (string Name, string Value)[] NoFigures = [];

    /// <summary>A place on the wire of a resistor.</summary>
    private static string Ohms(double ohms) => ValueText.Of(ohms, Quantity.Ohms);
}
