using System.Text.Json.Nodes;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Words;

/// <summary>Parts, terminals and faults as they are said at the bench.</summary>
public static class PartNames
{
    /// <summary>An element or slider: the title that its sheet gives it, or its id in words.</summary>
    public static string Of(TypeSheet sheet, string id) =>
        TitleIn(sheet.Document["elements"] as JsonArray, id) ?? Said(id);

    /// <summary>A terminal, control position or other id in words: <c>post-left</c> is "post left".</summary>
    public static string Said(string id) => id.Replace('-', ' ');

    /// <summary>What a mode is called: "high drop", "worn".</summary>
    public static string Mode(string mode) => mode.Replace('-', ' ');

    /// <summary>A fault as it is said: "roller left worn".</summary>
    public static string Fault(TypeSheet sheet, FaultMode mode) => $"{Of(sheet, mode.Element)} {Mode(mode.Mode)}";

    private static string? TitleIn(JsonArray? elements, string id)
    {
        foreach (var element in elements ?? [])
        {
            if (element is not JsonObject e)
                continue;
            if (Word(e, "id") == id)
                return Word(e, "title");
            if (e["sliders"] is not JsonArray sliders)
                continue;
            foreach (var slider in sliders)
                if (slider is JsonObject s && Word(s, "id") == id)
                    return Word(s, "title");
        }
        return null;
    }

    private static string? Word(JsonObject o, string name) =>
        o[name] is JsonValue v && v.TryGetValue<string>(out var word) && word.Length > 0 ? word : null;
}
