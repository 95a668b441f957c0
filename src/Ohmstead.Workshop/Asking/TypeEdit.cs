using System.Text.Json.Nodes;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Asking;

/// <summary>A number or a name of a drafted sheet, put right by hand.</summary>
public static class TypeEdit
{
    /// <summary>Doubt about a number that a person puts in: a good meter on one unit. Common practice, no source.</summary>
    private const double SaidDoubt = 0.03;

    /// <summary>The sheet's text and what it rests on with another number: what the spread has of units stays, the doubt about the type goes.</summary>
    /// <returns>Null where the sheet has no such number, or would no longer be sound with it.</returns>
    public static (string Text, MadeType Made)? Put(string text, MadeType made, string path, double value)
    {
        var parts = path.Split('.');
        if (
            parts.Length != 3
            || JsonNode.Parse(text) is not JsonObject sheet
            || Part(sheet, parts[1]) is not { } part
            || part[parts[2]] is null
        )
            return null;
        var field = parts[2];
        part[field] = value;
        if (
            part["kindError"] is JsonObject doubts
            && doubts[field] is { } doubt
            && part["spread"] is JsonObject spreads
            && spreads[field] is { } spread
        )
        {
            var units = Math.Sqrt(Math.Max(0, Square(spread.GetValue<double>()) - Square(doubt.GetValue<double>())));
            (doubts[field], spreads[field]) = (SaidDoubt, Math.Sqrt(Square(units) + Square(SaidDoubt)));
        }
        return Sound(
            sheet,
            made with
            {
                Values =
                [
                    .. made.Values.Select(v =>
                        v.Path == path ? v with { Value = value, RelativeError = SaidDoubt, Origin = Origin.Stated, From = [] } : v
                    ),
                ],
            }
        );
    }

    /// <summary>The sheet's text with another name of a part.</summary>
    public static string? Name(string text, string part, string name)
    {
        if (name.Trim().Length == 0 || JsonNode.Parse(text) is not JsonObject sheet || Part(sheet, part) is not { } found)
            return null;
        if (found.ContainsKey("title"))
            found["title"] = name.Trim();
        if (sheet["titles"] is JsonObject titles && titles.ContainsKey(part))
            titles[part] = name.Trim();
        return TypeSheetFile.Read(sheet.ToJsonString()).IsSound ? sheet.ToJsonString(TypeSheetFile.Indented) : null;
    }

    private static (string, MadeType)? Sound(JsonObject sheet, MadeType made) =>
        TypeSheetFile.Read(sheet.ToJsonString()).IsSound ? (sheet.ToJsonString(TypeSheetFile.Indented), made) : null;

    private static double Square(double value) => value * value;

    /// <summary>A part, a slider or a core by its id.</summary>
    private static JsonObject? Part(JsonObject sheet, string id)
    {
        var elements = (sheet["elements"] as JsonArray ?? []).OfType<JsonObject>().ToList();
        return elements
            .Concat(elements.SelectMany(e => (e["sliders"] as JsonArray ?? []).OfType<JsonObject>()))
            .Concat((sheet["cores"] as JsonArray ?? []).OfType<JsonObject>())
            .FirstOrDefault(e => e["id"]?.GetValue<string>() == id);
    }
}
