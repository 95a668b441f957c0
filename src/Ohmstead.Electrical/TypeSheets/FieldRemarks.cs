using System.Globalization;
using System.Text.Json;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>Fields that the sheet language does not know: kept, but nothing comes of them.</summary>
internal static class FieldRemarks
{
    private const int MostShown = 20;

    /// <summary>No slip of spelling wherever they are: for people alone, or read in one place and harmless in others.</summary>
    private static readonly string[] Harmless =
    [
        "$schema",
        "notes",
        "colour",
        "gauge",
        "tripCurve",
        "rating",
        "inputWatts",
        "usableWatts",
        "draftedFrom",
    ];

    /// <summary>Each with its JSON path.</summary>
    public static IEnumerable<Problem> Of(TypeSheet sheet)
    {
        var unknown = TypeSheetFile
            .NotRead(sheet)
            .Where(f => !Harmless.Contains(f[(f.LastIndexOf('.') + 1)..], StringComparer.Ordinal))
            .ToList();
        foreach (var field in unknown.Take(MostShown))
            yield return new Problem(
                field,
                "is a field that the sheet language does not know here",
                "nothing comes of it: a slip of spelling? What is yours alone goes into \"notes\""
            );
        if (unknown.Count > MostShown)
            yield return new Problem(
                "$",
                $"has {(unknown.Count - MostShown).ToString(CultureInfo.InvariantCulture)} more fields that the sheet language does not know",
                "nothing comes of them"
            );
    }

    /// <summary>The path of every field below a place; nothing below one that is for people alone.</summary>
    internal static IEnumerable<string> Fields(JsonElement at, string path)
    {
        if (at.ValueKind == JsonValueKind.Array)
            return at.EnumerateArray().SelectMany((e, n) => Fields(e, $"{path}[{n.ToString(CultureInfo.InvariantCulture)}]"));
        return at.ValueKind != JsonValueKind.Object
            ? []
            : at.EnumerateObject()
                .SelectMany(p => (p.Name == "notes" ? [] : Fields(p.Value, $"{path}.{p.Name}")).Prepend($"{path}.{p.Name}"));
    }
}
