using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>
/// A place in a JSON document that reads typed values and collects what is wrong, so that one pass finds every problem.
/// A value that could not be read is replaced by a harmless one; the caller refuses the file when problems were found.
/// </summary>
/// <param name="asked">Notes the path of each field that was asked for; null for nobody who wants to know.</param>
public readonly partial struct JsonCursor(JsonElement element, string path, List<Problem> problems, HashSet<string>? asked = null)
{
    /// <summary>Letters of a word, at most.</summary>
    internal const int MostLetters = 400;

    /// <summary>What would be right where a word is none.</summary>
    internal const string WordExpected = "a name in quotes, 1 to 400 characters, is expected";

    /// <summary>The JSON path of this place.</summary>
    public string Path { get; } = path;

    /// <summary>The element at this place.</summary>
    public JsonElement Element { get; } = element;

    /// <summary>Reports a problem at this place.</summary>
    public void Report(string wrong, string right) => problems.Add(new Problem(Path, wrong, right));

    /// <summary>Reports a problem at a field below this place.</summary>
    public void Report(string field, string wrong, string right) => problems.Add(new Problem($"{Path}.{field}", wrong, right));

    /// <summary>False where a problem was found at a field or deeper in it: what it means together with others is not asked then.</summary>
    public bool IsSoundAt(string field)
    {
        var below = $"{Path}.{field}";
        return !problems.Exists(p => p.Path.StartsWith(below, StringComparison.Ordinal));
    }

    /// <summary>True when the field is there and not null.</summary>
    public bool Has(string name)
    {
        asked?.Add($"{Path}.{name}");
        return Element.ValueKind == JsonValueKind.Object && Element.TryGetProperty(name, out var v) && v.ValueKind != JsonValueKind.Null;
    }

    /// <summary>The field as a cursor; only where <see cref="Has"/>.</summary>
    public JsonCursor At(string name) => new(Element.GetProperty(name), $"{Path}.{name}", problems, asked);

    /// <summary>A required, non-empty word.</summary>
    public string Word(string name)
    {
        if (Has(name))
            return At(name).AsWord();
        Report(name, "is missing", "a name in quotes is required");
        return "";
    }

    /// <summary>An optional word.</summary>
    public string Word(string name, string otherwise) => Has(name) ? At(name).AsWord() : otherwise;

    /// <summary>Words for people; empty where there are none. Nothing is worked out from them, so nothing can be wrong with them.</summary>
    internal string Remark(string name) => Has(name) && At(name).Element is { ValueKind: JsonValueKind.String } s ? s.GetString()! : "";

    /// <summary>This place as a non-empty word.</summary>
    public string AsWord()
    {
        if (Element.ValueKind == JsonValueKind.String && Element.GetString() is { Length: > 0 and <= MostLetters } s)
            return s;
        Report($"is {Name(Element)}", WordExpected);
        return "";
    }

    /// <summary>A required number between bounds.</summary>
    public double Number(string name, double min, double max)
    {
        if (Has(name))
            return At(name).AsNumber(min, max);
        Report(name, "is missing", $"a number from {Show(min)} to {Show(max)} is required");
        return Math.Max(min, Math.Min(1, max));
    }

    /// <summary>An optional number between bounds.</summary>
    public double Number(string name, double otherwise, double min, double max) => Has(name) ? At(name).AsNumber(min, max) : otherwise;

    /// <summary>An optional number between bounds.</summary>
    internal double Number(string name, double otherwise, Bound bound) => Number(name, otherwise, bound.Least, bound.Most);

    /// <summary>A required number between bounds.</summary>
    internal double Number(string name, Bound bound) => Number(name, bound.Least, bound.Most);

    /// <summary>This place as a number between bounds.</summary>
    public double AsNumber(double min, double max)
    {
        if (Element.ValueKind == JsonValueKind.Number && Element.TryGetDouble(out var v) && double.IsFinite(v))
        {
            if (v >= min && v <= max)
                return v;
            Report(Is(v), new Bound(min, max).Expected);
        }
        else
            Report($"is {Name(Element)}", new Bound(min, max).Expected);
        return Math.Max(min, Math.Min(1, max));
    }

    /// <summary>An optional yes or no.</summary>
    public bool Flag(string name)
    {
        if (!Has(name))
            return false;
        var e = At(name);
        if (e.Element.ValueKind is JsonValueKind.True or JsonValueKind.False)
            return e.Element.GetBoolean();
        e.Report($"is {Name(e.Element)}", "true or false is expected");
        return false;
    }

    /// <summary>The items of an optional list.</summary>
    public ImmutableArray<JsonCursor> List(string name, int most = 5000)
    {
        if (!Has(name))
            return [];
        var at = At(name);
        return at.AsList(most);
    }

    /// <summary>The items of a required list.</summary>
    public ImmutableArray<JsonCursor> RequiredList(string name, int most = 5000)
    {
        if (Has(name))
            return List(name, most);
        Report(name, "is missing", "a list [ … ] is required");
        return [];
    }

    /// <summary>This place as a list.</summary>
    public ImmutableArray<JsonCursor> AsList(int most = 5000)
    {
        if (Element.ValueKind != JsonValueKind.Array)
        {
            Report($"is {Name(Element)}", "a list [ … ] is expected");
            return [];
        }
        if (Element.GetArrayLength() > most)
        {
            problems.Add(TooMany(Path, Element.GetArrayLength(), most));
            return [];
        }
        var path = Path;
        var (all, noted) = (problems, asked);
        return
        [
            .. Element
                .EnumerateArray()
                .Select((e, n) => new JsonCursor(e, $"{path}[{n.ToString(CultureInfo.InvariantCulture)}]", all, noted)),
        ];
    }

    /// <summary>The items of an optional list of words.</summary>
    public ImmutableArray<string> Words(string name) => [.. List(name).Select(c => c.AsWord())];

    /// <summary>The fields of an optional object.</summary>
    public ImmutableArray<(string Name, JsonCursor At)> Fields(string name)
    {
        if (!Has(name))
            return [];
        var at = At(name);
        if (!at.IsObject())
            return [];
        var (all, noted) = (problems, asked);
        foreach (var p in at.Element.EnumerateObject())
            noted?.Add($"{at.Path}.{p.Name}");
        return [.. at.Element.EnumerateObject().Select(p => (p.Name, new JsonCursor(p.Value, $"{at.Path}.{p.Name}", all, noted)))];
    }

    /// <summary>True when this place is an object; reports otherwise.</summary>
    public bool IsObject()
    {
        if (Element.ValueKind == JsonValueKind.Object)
            return true;
        Report($"is {Name(Element)}", "an object { … } is expected");
        return false;
    }

    /// <summary>What stands here, for a message: <c>the text "18,6"</c>.</summary>
    public string Said => Name(Element);

    /// <summary>A number for a message, culture-free.</summary>
    public static string Show(double v) => v.ToString("G6", CultureInfo.InvariantCulture);

    /// <summary>What is wrong with words that are too long.</summary>
    internal static string IsText(string words) => $"is the text \"{Short(words)}\"";

    /// <summary>A list with more items than it may have.</summary>
    internal static Problem TooMany(string path, int count, int most) =>
        new(
            path,
            $"has {count.ToString(CultureInfo.InvariantCulture)} items",
            $"at most {most.ToString(CultureInfo.InvariantCulture)} are allowed"
        );

    /// <summary>What is wrong with a number that lies outside of its bounds.</summary>
    internal static string Is(double v) => $"is {Show(v)}";

    private static string Name(JsonElement e) =>
        e.ValueKind switch
        {
            JsonValueKind.Object => "an object",
            JsonValueKind.Array => "a list",
            JsonValueKind.String => $"the text \"{Short(e.GetString()!)}\"",
            JsonValueKind.Number when e.GetRawText() == NotFinite.Number => NotFinite.Said,
            JsonValueKind.Number => $"the number {Short(e.GetRawText())}",
            JsonValueKind.True or JsonValueKind.False => e.GetRawText(),
            _ => "null",
        };

    private static string Short(string s) => s.Length <= 40 ? s : s[..40] + "…";
}
