using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Kinds;

/// <summary>Changes of a type sheet's text that leave the rest of it as it was typed.</summary>
public static class KindText
{
    /// <summary>Kind of the document that holds what was typed and is not yet a sound sheet; empty text for nothing.</summary>
    public const string DraftKind = "draft";

    private const int MostIdLetters = 60;

    private static readonly JsonSerializerOptions Letters = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The id that a text gives its sheet; empty when it cannot be read.</summary>
    public static string IdOf(string text)
    {
        try
        {
            using var document = JsonDocument.Parse(text);
            var root = document.RootElement;
            return root.ValueKind == JsonValueKind.Object && root.TryGetProperty("id", out var id) && id.ValueKind == JsonValueKind.String
                ? id.GetString()!
                : "";
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return "";
        }
    }

    /// <summary>What is wrong with an id for a kind; empty when nothing is.</summary>
    public static string IdProblem(string id)
    {
        if (id.Length is 0 or > MostIdLetters)
            return "A type needs a short id of 1 to 60 letters.";
        if (id == UntypedIds.Id)
            return "This id is kept for units whose type is not known.";
        return id.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' or '.') && id[0] != '.'
            ? ""
            : "An id is made of letters a to z, digits, - and _.";
    }

    /// <summary>The text with another value at a path that it has; as it is when it has none.</summary>
    /// <param name="path">JSON path, such as <c>$.elements[3].ohms</c>.</param>
    public static string Put(string text, string path, string json)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        if (SheetPlaces.Span(bytes, path) is not { } span)
            return text;
        return Encoding.UTF8.GetString(bytes, 0, span.Start)
            + json
            + Encoding.UTF8.GetString(bytes, span.Start + span.Length, bytes.Length - span.Start - span.Length);
    }

    /// <summary>A copy under another id and title.</summary>
    public static string Copy(string text, string id, string title) =>
        Put(Put(text, "$.id", JsonSerializer.Serialize(id, Letters)), "$.title", JsonSerializer.Serialize(title, Letters));

    /// <summary>An id that is not taken yet: the old one with a number.</summary>
    public static string FreeId(string id, IEnumerable<string> taken)
    {
        var ids = taken.ToHashSet(StringComparer.OrdinalIgnoreCase);
        for (var n = 2; ; n++)
        {
            var free = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{id}-{n}");
            if (!ids.Contains(free))
                return free;
        }
    }
}
