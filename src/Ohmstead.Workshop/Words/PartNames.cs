using System.Text.Json.Nodes;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Words;

/// <summary>Parts, terminals and faults as they are said at the bench.</summary>
public static class PartNames
{
    /// <summary>
    /// An element or slider: the title that its sheet gives it; an insulation path, and a wire whose id only numbers it
    /// (<c>w-6</c>), by what they lie between; any other by its id in words.
    /// </summary>
    public static string Of(TypeSheet sheet, string id) =>
        Text(EntryOf(sheet, id), "title") ?? ByItsEnds(sheet, id) ?? Said(id);

    /// <summary>
    /// A terminal, control position or other id in words: <c>post-left</c> is "post left", <c>post-a</c> is "post A", the
    /// letter being what stands on the unit.
    /// </summary>
    public static string Said(string id)
    {
        var words = id.Replace('-', ' ');
        return words.Length > 2 && words[^2] == ' ' ? words[..^1] + char.ToUpperInvariant(words[^1]) : words;
    }

    /// <summary>What a mode is called: "high drop", "worn".</summary>
    public static string Mode(string mode) => mode.Replace('-', ' ');

    /// <summary>A fault as it is said: "roller left worn", "insulation main to iron: low".</summary>
    public static string Fault(TypeSheet sheet, FaultMode mode)
    {
        var part = Of(sheet, mode.Element);
        return $"{part}{(part.Contains(" to ", StringComparison.Ordinal) ? ":" : "")} {Mode(mode.Mode)}";
    }

    private static string? ByItsEnds(TypeSheet sheet, string id)
    {
        var element = sheet.Elements.FirstOrDefault(e => e.Id == id);
        return element?.Kind switch
        {
            "insulation" => $"insulation {Lies(sheet, element.From)} to {Lies(sheet, element.To)}",
            "wire" when IsNumbered(id) =>
                $"{(Text(EntryOf(sheet, id), "colour") is { } colour ? colour + " " : "")}wire {Said(element.From)} to {Said(element.To)}",
            _ => null,
        };
    }

    /// <summary>Whether an id begins with a letter or two that name nothing, as <c>w-6</c> and <c>w12</c> do.</summary>
    private static bool IsNumbered(string id) => id.TakeWhile(char.IsAsciiLetter).Count() < 3;

    private static string Lies(TypeSheet sheet, string terminal) =>
        sheet.Elements.OfType<Winding>().FirstOrDefault(w => w.From == terminal || w.To == terminal) is { } winding
            ? Of(sheet, winding.Id)
            : Said(terminal);

    private static JsonObject? EntryOf(TypeSheet sheet, string id)
    {
        var elements = (sheet.Document["elements"] as JsonArray ?? []).OfType<JsonObject>().ToList();
        return elements
            .Concat(elements.SelectMany(e => (e["sliders"] as JsonArray ?? []).OfType<JsonObject>()))
            .FirstOrDefault(e => Text(e, "id") == id);
    }

    private static string? Text(JsonObject? entry, string name) =>
        entry?[name] is JsonValue v && v.TryGetValue<string>(out var text) && text.Length > 0 ? text : null;
}
