using System.Globalization;
using System.Text;
using System.Text.Json;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Kinds;

/// <summary>Where in a text the values of a JSON document stand.</summary>
internal static class SheetPlaces
{
    /// <summary>Puts problems at their places, first line first; of a field that is missing, at what it is missing in.</summary>
    public static IReadOnlyList<PlacedProblem> Of(string text, IReadOnlyList<Problem> problems)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        var (places, end) = Walk(bytes);
        return [.. problems.Select(p => Place(p, bytes, Find(places, p.Path) ?? end)).OrderBy(p => p.Line).ThenBy(p => p.Column)];
    }

    /// <summary>Start and length, in bytes, of the value at a path; null when there is none.</summary>
    internal static (int Start, int Length)? Span(byte[] bytes, string path) =>
        Walk(bytes).Places.TryGetValue(path, out var place) ? place : null;

    private static int? Find(Dictionary<string, (int Start, int Length)> places, string path)
    {
        // A document that is no JSON has its one problem where the reading stopped.
        if (places.Count == 0 || (path == "$" && !places.ContainsKey("$")))
            return null;
        for (var at = path; at.Length > 0; at = Parent(at))
            if (places.TryGetValue(at, out var place))
                return place.Start;
        return 0;
    }

    /// <summary>One step up; names may hold dots, then a step leads nowhere and the next one is taken.</summary>
    private static string Parent(string path) => path[..Math.Max(0, Math.Max(path.LastIndexOf('.'), path.LastIndexOf('[')))];

    /// <summary>
    /// Every value's place by its path, until the end or the first fault of the JSON; where that is. "$" is there only when
    /// the whole document could be read.
    /// </summary>
    private static (Dictionary<string, (int Start, int Length)> Places, int End) Walk(byte[] bytes)
    {
        var places = new Dictionary<string, (int, int)>(StringComparer.Ordinal);
        var reader = new Utf8JsonReader(bytes, new JsonReaderOptions { MaxDepth = 64 });
        try
        {
            if (reader.Read())
                Value(ref reader, "$", places);
            reader.Read();
        }
        catch (JsonException e)
        {
            places.Remove("$");
            return (places, Offset(bytes, e.LineNumber ?? 0, e.BytePositionInLine ?? 0));
        }
        return (places, 0);
    }

    private static void Value(ref Utf8JsonReader reader, string path, Dictionary<string, (int, int)> places)
    {
        var start = (int)reader.TokenStartIndex;
        if (reader.TokenType == JsonTokenType.StartObject)
        {
            while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
            {
                var name = reader.GetString();
                reader.Read();
                Value(ref reader, $"{path}.{name}", places);
            }
        }
        else if (reader.TokenType == JsonTokenType.StartArray)
        {
            for (var n = 0; reader.Read() && reader.TokenType != JsonTokenType.EndArray; n++)
                Value(ref reader, $"{path}[{n.ToString(CultureInfo.InvariantCulture)}]", places);
        }
        places.TryAdd(path, (start, (int)reader.BytesConsumed - start));
    }

    private static int Offset(byte[] bytes, long line, long column)
    {
        var at = 0;
        for (; line > 0 && at < bytes.Length; at++)
            if (bytes[at] == (byte)'\n')
                line--;
        return (int)Math.Min(bytes.Length, at + column);
    }

    private static PlacedProblem Place(Problem problem, byte[] bytes, int offset)
    {
        offset = Math.Clamp(offset, 0, bytes.Length);
        var before = bytes.AsSpan(0, offset);
        var start = before.LastIndexOf((byte)'\n') + 1;
        var length = bytes.AsSpan(start).IndexOf((byte)'\n');
        var line = Encoding.UTF8.GetString(bytes, start, length < 0 ? bytes.Length - start : length);
        return new(problem, before.Count((byte)'\n') + 1, Encoding.UTF8.GetCharCount(bytes, start, offset - start) + 1, line.Trim());
    }
}

/// <summary>A problem of a sheet at its place in the text.</summary>
/// <param name="Line">From 1.</param>
/// <param name="Column">From 1.</param>
/// <param name="LineText">The line itself, without the blanks around it.</param>
public sealed record PlacedProblem(Problem Problem, int Line, int Column, string LineText);

/// <summary>A sheet as text, read: the sheet, or its problems, each at its line.</summary>
public sealed record SheetText(TypeSheet? Sheet, IReadOnlyList<PlacedProblem> Problems)
{
    /// <summary>What is odd in a sound sheet, at its places.</summary>
    public IReadOnlyList<PlacedProblem> Remarks { get; init; } = [];

    /// <summary>Reads a text.</summary>
    public static SheetText Read(string text)
    {
        var parsed = TypeSheetFile.Read(text);
        return parsed.Value is { } sheet
            ? new(sheet, []) { Remarks = SheetPlaces.Of(text, [.. SheetRemarks.Of(sheet)]) }
            : new(null, SheetPlaces.Of(text, parsed.Problems));
    }
}
