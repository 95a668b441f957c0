using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Drawing;

/// <summary>A path through the unit set upright, one part a row: no two rows can lie over each other.</summary>
/// <param name="Rungs">The first terminal, the parts in order, the second terminal.</param>
/// <param name="Also">Names of parts through which some current goes too.</param>
public sealed record Ladder(ImmutableArray<Rung> Rungs, ImmutableArray<string> Also)
{
    /// <summary>Sets a path upright.</summary>
    /// <param name="sheet">The unit's own sheet.</param>
    /// <param name="controls">Where the controls stand.</param>
    /// <param name="suspicion">Chance [0..1] that a part is at fault, by id.</param>
    /// <param name="worst">What is most probably wrong with a part, in words, by id.</param>
    /// <param name="tags">The letter of the finding that sits on a part, by id.</param>
    public static Ladder Of(
        TypeSheet sheet,
        MeasuredPath path,
        ImmutableDictionary<string, ControlPosition> controls,
        ImmutableDictionary<string, double> suspicion,
        IReadOnlyDictionary<string, string> worst,
        IReadOnlyDictionary<string, string>? tags = null
    )
    {
        var parts = path.Parts.Select(p =>
        {
            var chance = suspicion.GetValueOrDefault(p.Id);
            var says = chance >= Suspect.Least && worst.TryGetValue(p.Id, out var wrong) ? wrong : SaysOf(sheet, p, controls);
            return new Rung(p.Id, p.Kind ?? ElementKind.Wire, NameOf(sheet, p), says, p.IsOpen, chance >= Suspect.Least ? chance : 0)
            {
                Tag = chance >= Suspect.Least && tags is not null && tags.TryGetValue(p.Id, out var tag) ? tag : "",
            };
        });
        var also = path
            .Also.Where(id => sheet.Elements.FirstOrDefault(e => e.Id == id)?.Kind is not (ElementKind.Wire or ElementKind.Joint))
            .Select(id => PartNames.Of(sheet, id));
        return new([End(sheet, path.First), .. parts, End(sheet, path.Second)], [.. also]);
    }

    private static Rung End(TypeSheet sheet, string terminal) =>
        new(terminal, null, Capital(PartNames.Terminal(sheet, terminal)), "", false, 0);

    private static string NameOf(TypeSheet sheet, PathPart part) => part.Kind is null ? "Clip lead" : Capital(PartNames.Of(sheet, part.Id));

    private static string SaysOf(TypeSheet sheet, PathPart part, ImmutableDictionary<string, ControlPosition> controls)
    {
        if (part.Kind is null)
            return "joins two terminals";
        if (sheet.Sliders.FirstOrDefault(s => s.Id == part.Id) is { } slider)
            return part.IsOpen
                ? "off"
                : $"at {ValueText.Percent(controls.TryGetValue(slider.Control, out var at) ? at.Throttle : 0)} of its travel";
        return sheet.Elements.FirstOrDefault(e => e.Id == part.Id) switch
        {
            Switch => part.IsOpen ? "open" : "closed",
            // The turns of a unit whose type is not known are made up.
            Winding { IsOnCore: false } w => ValueText.Of(w.Ohms, Quantity.Ohms),
            Winding w => UntypedIds.IsOne(sheet) ? "" : $"{Figure.Of(w.Turns)} turns in all",
            Resistive { Kind: ElementKind.Resistor } r => ValueText.Of(r.Ohms, Quantity.Ohms),
            Lamp l => $"{Figure.Of(l.Volts)} V lamp",
            { } other => PartKind.Of(other.Kind).Says,
            null => "",
        };
    }

    private static string Capital(string name) => Sentences.Large(Sentences.Bare(name));
}

/// <summary>A row of a ladder.</summary>
/// <param name="Id">Element, slider or terminal; empty for a clip lead.</param>
/// <param name="Kind">Null for a terminal; a clip is a wire.</param>
/// <param name="Name">As it is said.</param>
/// <param name="Says">How it is set, what it is, or what is probably wrong with it; may be empty.</param>
/// <param name="IsOpen">Nothing should come through.</param>
/// <param name="Chance">Chance [0..1] that it is at fault; 0 where that is not worth a word.</param>
public sealed record Rung(string Id, ElementKind? Kind, string Name, string Says, bool IsOpen, double Chance)
{
    /// <summary>The letter of the finding that sits on it; empty for none.</summary>
    public string Tag { get; init; } = "";
}
