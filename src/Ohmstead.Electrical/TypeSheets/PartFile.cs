using System.Collections.Immutable;
using System.Text.Json;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>One part as JSON, as a sheet has it among its elements. What this program does not know of a part stays in it.</summary>
public static class PartFile
{
    /// <summary>Reads a part; null when it cannot be read, for reasons that are told at its place.</summary>
    public static NewPart? Read(JsonCursor at) =>
        ElementReader.Read(at) is { } part ? new(part, TitleReader.With(TypeSheet.NoTitles, at)) : null;

    /// <summary>The part with some of its figures at other values.</summary>
    public static JsonElement Write(Element part, IEnumerable<(string Name, double Value)> figures)
    {
        var json = ElementWriter.Of(part);
        foreach (var (name, value) in figures)
            json[name] = value;
        return JsonSerializer.SerializeToElement(json);
    }

    /// <summary>The figures that are given for a part, by the names that a sheet has for them, each as it is written.</summary>
    public static ImmutableArray<(string Name, string Text)> Figures(Element part) =>
        [
            .. ElementWriter
                .Of(part)
                .Where(f => f.Value?.GetValueKind() == JsonValueKind.Number)
                .Select(f => (f.Key, f.Value!.ToJsonString())),
        ];
}
