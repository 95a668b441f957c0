using System.Collections.Immutable;
using System.Text.Json;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>Reads what parts are called in a sentence: the map <c>titles</c>, and the <c>title</c> of a single part.</summary>
internal static class TitleReader
{
    private const int MostTitles = 20_000;

    /// <summary>All titles of a sheet. Where the map and a part's own field differ, the map counts.</summary>
    public static ImmutableDictionary<string, string> OfSheet(JsonCursor root, ImmutableArray<JsonCursor> elements)
    {
        var titles = TypeSheet.NoTitles;
        foreach (var element in elements)
            titles = With(titles, element);
        var map = root.Fields("titles");
        if (map.Length > MostTitles)
            root.Report("titles", $"has {JsonCursor.Show(map.Length)} titles", $"at most {JsonCursor.Show(MostTitles)} are allowed");
        foreach (var (name, at) in map)
            titles = titles.SetItem(name, at.AsWord());
        return titles;
    }

    /// <summary>These titles with those that an element and its sliders carry themselves.</summary>
    public static ImmutableDictionary<string, string> With(ImmutableDictionary<string, string> titles, JsonCursor element)
    {
        titles = Own(titles, element);
        if (!element.Has("sliders") || element.At("sliders").Element.ValueKind != JsonValueKind.Array)
            return titles;
        foreach (var slider in element.List("sliders"))
            titles = Own(titles, slider);
        return titles;
    }

    private static ImmutableDictionary<string, string> Own(ImmutableDictionary<string, string> titles, JsonCursor part) =>
        part.Has("title") && part.Has("id") && part.At("id").Element.ValueKind == JsonValueKind.String
            ? titles.SetItem(part.At("id").Element.GetString()!, part.Word("title"))
            : titles;
}
