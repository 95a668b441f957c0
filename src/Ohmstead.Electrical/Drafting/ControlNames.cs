using System.Text.Json;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Drafting;

/// <summary>
/// What a sheet calls a control is its own affair: the one throttle of a unit is the same throttle by any name. Only what the unit has,
/// posts, levers and their positions, says anything about its kind.
/// </summary>
internal static class ControlNames
{
    private const string Sort = "throttle";

    /// <summary>Names the controls of a reading as a sheet does, where it is plain which are meant; the rest stays.</summary>
    /// <param name="at">What has the field <c>controls</c>.</param>
    public static void Translate(JsonObject at, TypeSheet sheet)
    {
        if (at["controls"] is not JsonObject controls)
            return;
        foreach (var (id, position) in controls.ToList())
        {
            var known = sheet.Controls.FirstOrDefault(c => c.Id == id);
            if (known is not null && Has(known, position))
                continue;
            if ((known ?? Counterpart(sheet, id, position, controls)) is not { } meant || Place(meant, position) is not { } place)
                continue;
            controls.Remove(id);
            controls[meant.Id] = place;
        }
    }

    /// <summary>True where a control can stand so.</summary>
    public static bool Has(Control control, JsonNode? position) =>
        control.IsThrottle
            ? position?.GetValueKind() == JsonValueKind.Number
            : Word(position) is { } at && control.Positions.Contains(at, StringComparer.Ordinal);

    /// <summary>The one control of the sheet that can be meant: with the same words in its name, or the only one with such a place and one of them.</summary>
    private static Control? Counterpart(TypeSheet sheet, string id, JsonNode? position, JsonObject taken)
    {
        var words = Words(id);
        var possible = sheet
            .Controls.Where(c => !taken.ContainsKey(c.Id) && Place(c, position) is not null)
            .Select(c => (Control: c, Words: Words(c.Id)))
            .ToList();
        var same = possible.Where(p => p.Words.SetEquals(words)).ToList();
        if (same.Count == 0)
            same =
            [
                .. possible.Where(p =>
                    p.Words.Overlaps(words) || (MovesThrottle(p.Control) && position?.GetValueKind() == JsonValueKind.Number)
                ),
            ];
        return same.Count == 1 ? same[0].Control : null;
    }

    /// <summary>The words of a name; those of a throttle without that word, unless it is all that there is.</summary>
    private static HashSet<string> Words(string id)
    {
        var words = id.Split('-', StringSplitOptions.RemoveEmptyEntries).ToHashSet(StringComparer.Ordinal);
        if (words.Count > 1)
            words.Remove(Sort);
        return words;
    }

    /// <summary>The same place on a control: by its name, and the lowest and the highest of a throttle on steps are 0 and 1. Null where there is none.</summary>
    private static JsonNode? Place(Control control, JsonNode? position)
    {
        if (Has(control, position))
            return position!.DeepClone();
        if (MovesThrottle(control) && control.Positions.Length > 1 && position?.GetValueKind() == JsonValueKind.Number)
            return position.GetValue<double>() switch
            {
                0 => control.Positions[0],
                1 => control.Positions[^1],
                _ => null,
            };
        return null;
    }

    private static bool MovesThrottle(Control control) => control.IsThrottle || control.Id.Contains(Sort, StringComparison.Ordinal);

    private static string? Word(JsonNode? at) => at is JsonValue v && v.TryGetValue<string>(out var s) ? s : null;
}
