using System.Globalization;
using System.Text.Json;

namespace Ohmstead.Electrical.TypeSheets;

// From a text to its first place.
public readonly partial struct JsonCursor
{
    /// <summary>Parses a whole text; on bad JSON reports one problem and returns false.</summary>
    public static bool TryOpen(string text, List<Problem> problems, out JsonCursor root, HashSet<string>? asked = null)
    {
        try
        {
            var document = JsonDocument.Parse(text, new JsonDocumentOptions { MaxDepth = 64, AllowDuplicateProperties = false });
            root = new JsonCursor(document.RootElement, "$", problems, asked);
            if (!HasWholeLetters(document.RootElement))
            {
                root.Report("holds half a letter (a lone \\ud800 to \\udfff)", "write the letter itself, or both halves");
                return false;
            }
            if (root.Element.ValueKind == JsonValueKind.Object)
                return true;
            root.Report($"is {Name(root.Element)}", "a JSON object { … } is expected");
            return false;
        }
        catch (JsonException e)
        {
            root = default;
            if (NotFinite.In(text) is { IsEmpty: false } places)
            {
                problems.AddRange(places);
                return false;
            }
            var where = e.LineNumber is { } line ? $" at line {(line + 1).ToString(CultureInfo.InvariantCulture)}" : "";
            problems.Add(
                new Problem(
                    "$",
                    string.IsNullOrWhiteSpace(text) ? "the file is empty" : $"is not JSON{where}",
                    "give one complete JSON object, nested at most 64 deep, no field twice"
                )
            );
            return false;
        }
    }

    /// <summary>False when a name or text holds a lone surrogate, which cannot be made a string.</summary>
    private static bool HasWholeLetters(JsonElement e)
    {
        try
        {
            return e.ValueKind switch
            {
                JsonValueKind.String => e.GetString() is not null,
                JsonValueKind.Array => e.EnumerateArray().All(HasWholeLetters),
                JsonValueKind.Object => e.EnumerateObject().All(p => p.Name is not null && HasWholeLetters(p.Value)),
                _ => true,
            };
        }
        catch (InvalidOperationException)
        {
            return false;
        }
    }
}
