using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>What a part is there for, told from where it lies and from what its sheet calls it: the third key of <see cref="WhatToDo"/>.</summary>
internal static class PartRole
{
    /// <summary>A rectifier with less saturation current than this is silicon [A]; discs and plates have milliamps.</summary>
    private const double SiliconAmps = 1e-6;

    /// <summary>The role of the part that has this fault; empty where its kind has but one.</summary>
    public static string Of(TypeSheet sheet, FaultMode fault)
    {
        if (fault.IsSlider)
            return IsOnResistor(sheet, fault.Parts[0]) ? "brush"
                : Says(sheet, fault.Parts[0], "shoe") ? "shoe"
                : "roller";
        return sheet.Elements.First(e => e.Id == fault.Parts[0]) switch
        {
            { Kind: ElementKind.Wire } e when Plug(sheet).Overlaps([e.From, e.To]) => "cord",
            Winding { IsOnCore: false } => "rheostat",
            Winding w when LiveSide.Of(sheet).Contains(w.From) => "primary",
            Winding w when fault.Mode == "reversed" && w.Taps.Length + w.Sliders.Length > 0 => "main",
            Rectifier r => OfRectifier(sheet, r),
            Switch s => OfSwitch(sheet, s),
            { Kind: ElementKind.Resistor } e when IsAtWhistle(sheet, e) => "whistle",
            { Kind: ElementKind.Insulation } e => OfInsulation(sheet, e),
            _ => "",
        };
    }

    /// <summary>How many parts of the sheet could have this fault in this role.</summary>
    public static int Peers(TypeSheet sheet, FaultMode fault)
    {
        if (fault.IsSlider)
            return sheet.Sliders.Count();
        var role = Of(sheet, fault);
        return sheet.Elements.Count(e => e.Kind == fault.Kind && Of(sheet, fault with { Element = e.Id, SharedBy = [] }) == role);
    }

    private static bool IsOnResistor(TypeSheet sheet, string slider) =>
        sheet.Elements.OfType<Winding>().Any(w => !w.IsOnCore && w.Sliders.Any(s => s.Id == slider));

    private static string OfRectifier(TypeSheet sheet, Rectifier r)
    {
        if (r.SaturationAmps < SiliconAmps)
            return "diode";
        var beside = sheet.Elements.OfType<Rectifier>().Count(o => o != r && Touch(o, r));
        return beside >= 2 ? "plate" : "disc";
    }

    private static string OfSwitch(TypeSheet sheet, Switch s)
    {
        bool Names(params ReadOnlySpan<string> words)
        {
            foreach (var word in words)
                if (Says(sheet, s.Id, word) || s.Control.Contains(word, StringComparison.OrdinalIgnoreCase))
                    return true;
            return false;
        }
        if (LiveSide.Of(sheet).Contains(s.From))
            return "line selector";
        if (Names("whistle", "horn", "bell"))
            return "whistle";
        if (Names("direction", "reverse", "button"))
            return sheet.Controls.First(c => c.Id == s.Control).Positions.Length == 2 ? "direction button" : "direction switch";
        if (Names("range"))
            return "range";
        return Names("speed", "step") ? "speed" : "";
    }

    private static string OfInsulation(TypeSheet sheet, Element e)
    {
        if (LiveSide.Of(sheet).Overlaps([e.From, e.To]))
            return "mains";
        bool IsOfTheCircuit(string terminal) =>
            sheet.Elements.Any(o => o.Kind != ElementKind.Insulation && (o.From == terminal || o.To == terminal));
        return IsOfTheCircuit(e.From) && IsOfTheCircuit(e.To) ? "" : "core";
    }

    private static bool IsAtWhistle(TypeSheet sheet, Element e) =>
        sheet.Elements.OfType<Switch>().Any(s => Touch(s, e) && OfSwitch(sheet, s) == "whistle");

    private static bool Touch(Element a, Element b) => a.From == b.From || a.From == b.To || a.To == b.From || a.To == b.To;

    private static HashSet<string> Plug(TypeSheet sheet) => [.. LiveSide.Plug(sheet)];

    private static bool Says(TypeSheet sheet, string id, string word) =>
        id.Contains(word, StringComparison.OrdinalIgnoreCase) || PartNames.Of(sheet, id).Contains(word, StringComparison.OrdinalIgnoreCase);
}
