using System.Globalization;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Words;

/// <summary>Names for what a sheet gives no title: from the kind of part and what it lies between, or a number in the sheet's order.</summary>
internal static class MadeNames
{
    private static readonly string[] Sides = ["left", "right", "upper", "lower", "front", "rear", "inner", "outer"];

    public static string Part(TypeSheet sheet, string id)
    {
        if (sheet.Elements.FirstOrDefault(e => e.Id == id) is { } element)
            return IsOfTheTrade(element.Kind, id) ? Spoken(element.Kind, id) : ByItsEnds(sheet, element);
        foreach (var slider in sheet.Sliders.Where(s => s.Id == id))
            return IsOfTheTrade(ElementKind.Slider, id)
                ? SideFirst(PlainName.Said(id))
                : $"{(slider.BridgesTurns > 0 ? "roller" : sheet.Windings.Any(w => w.Sliders.Contains(slider)) ? "shoe" : "brush")} of {PartNames.WithArticle(PartNames.Control(sheet, slider.Control))}";
        return sheet.FindShared(id) is { } fault
            ? $"{Sentences.List(fault.Elements.Select(e => PartNames.Of(sheet, e)))}, {FaultNames.Alone(sheet.KindOf(fault.Elements[0]), fault.Mode)} together"
            : Unknown(id, "a part that this type sheet does not have");
    }

    public static string Terminal(TypeSheet sheet, string id) =>
        PlainName.IsWords(id) ? PlainName.Said(id)
        : PlainName.IsMark(id) ? $"terminal {PlainName.Said(id)}"
        : $"terminal {Number(TerminalsOf(sheet).ToList().IndexOf(id))}";

    public static string Control(TypeSheet sheet, string id)
    {
        if (PlainName.IsWords(id))
            return SideFirst(PlainName.Said(id));
        var control = sheet.Controls.FirstOrDefault(c => c.Id == id);
        var (noun, like) = (
            control is { IsThrottle: true } ? "throttle" : "switch",
            sheet.Controls.Where(c => c.IsThrottle == control?.IsThrottle).ToList()
        );
        return like.Count < 2 ? noun : $"{noun} {Number(like.FindIndex(c => c.Id == id))}";
    }

    public static string Position(TypeSheet sheet, string control, string position) =>
        PlainName.IsWords(position) || PlainName.IsMark(position)
            ? PlainName.Said(position)
            : $"position {Number(sheet.Controls.FirstOrDefault(c => c.Id == control)?.Positions.IndexOf(position) ?? -1)}";

    public static string Core(TypeSheet sheet, string id) =>
        PlainName.IsWords(id) ? PlainName.Said(id)
        : sheet.Cores.Length < 2 ? "core"
        : $"core {Number(sheet.Cores.Select(c => c.Id).ToList().IndexOf(id))}";

    public static string Reading(TypeSheet sheet, ReadingSpec spec)
    {
        var what = ValueText.SettingOf(spec.Quantity);
        return spec.From.Length == 0
            ? $"{what} at the plug"
            : $"{what}, {PartNames.Terminal(sheet, spec.From)} to {PartNames.Terminal(sheet, spec.To)}";
    }

    public static string Step(TypeSheet? sheet, string id) =>
        PlainName.IsWords(id) ? PlainName.Said(id)
        : sheet?.TakeApart.Select(s => s.Id).ToList().IndexOf(id) is >= 0 and var n ? $"step {Number(n)}"
        : "a step that this type sheet does not have";

    /// <summary>Of what no sheet knows: its id in words where it is words.</summary>
    public static string Unknown(string id, string otherwise) => PlainName.IsWords(id) ? PlainName.Said(id) : otherwise;

    /// <summary>The part of an end: <c>main</c> of <c>main.tap-1</c>.</summary>
    public static string PartOfEnd(string end) => end.LastIndexOf('.') is >= 0 and var dot ? end[..dot] : end;

    public static string End(TypeSheet sheet, string end)
    {
        var which = end[(PartOfEnd(end).Length + 1)..];
        var terminal = sheet.Elements.FirstOrDefault(e => e.Id == PartOfEnd(end)) switch
        {
            null => "",
            var e when which == "from" => e.From,
            var e when which == "to" => e.To,
            Winding w
                when int.TryParse(which.AsSpan(which.LastIndexOf('-') + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var n)
                    && n >= 1
                    && n <= w.Taps.Length => w.Taps[n - 1].To,
            _ => "",
        };
        var noun = which is "from" or "to" ? "end" : "tap";
        return terminal.Length == 0 ? $"its {noun}" : $"its {noun} at {PartNames.Terminal(sheet, terminal)}";
    }

    private static string ByItsEnds(TypeSheet sheet, Element e)
    {
        var between = $"from {PartNames.Terminal(sheet, e.From)} to {PartNames.Terminal(sheet, e.To)}";
        return e.Kind switch
        {
            ElementKind.Insulation => $"insulation, {Lies(sheet, e.From)} to {Lies(sheet, e.To)}",
            ElementKind.Joint when sheet.Elements.Count(o => o.Kind == ElementKind.Joint && o.From == e.From) == 1 =>
                $"joint at {PartNames.Terminal(sheet, e.From)}",
            ElementKind.Wire => $"{(e.Colour.Length > 0 ? e.Colour + " " : "")}wire {between}",
            ElementKind.Switch when e is Switch s => $"{PartNames.Control(sheet, s.Control)} contact {between}",
            _ => $"{e.Kind.Word()} {between}",
        };
    }

    private static string Lies(TypeSheet sheet, string terminal) =>
        sheet.Elements.OfType<Winding>().FirstOrDefault(w => w.From == terminal || w.To == terminal) is { } winding
            ? PartNames.Of(sheet, winding.Id)
            : Sentences.Bare(PartNames.Terminal(sheet, terminal));

    private static bool IsOfTheTrade(ElementKind kind, string id) =>
        PlainName.IsWords(id) && id.Split('-').Any(t => PartKind.Of(kind).TradeWords.Contains(t, StringComparer.Ordinal));

    private static string Spoken(ElementKind kind, string id)
    {
        var said = SideFirst(PlainName.Said(id));
        return kind switch
        {
            ElementKind.Winding
                when !said.Contains("winding", StringComparison.Ordinal)
                    && !said.Contains("primary", StringComparison.Ordinal)
                    && !said.Contains("coil", StringComparison.Ordinal) => $"{said} winding",
            ElementKind.Lamp when said == "pilot" => "pilot lamp",
            _ => said,
        };
    }

    private static string SideFirst(string said) =>
        said.Split(' ') is [var noun, var side] && Sides.Contains(side) ? $"{side} {noun}" : said;

    private static IEnumerable<string> TerminalsOf(TypeSheet sheet) =>
        sheet.Elements.SelectMany(e => new[] { e.From, e.To }.Concat(e.OtherTerminals)).Distinct(StringComparer.Ordinal);

    private static string Number(int index) => (index + 1).ToString(CultureInfo.InvariantCulture);
}
