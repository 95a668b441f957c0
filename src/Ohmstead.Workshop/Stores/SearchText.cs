using System.Globalization;
using System.Text;
using System.Text.Json;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Stores;

/// <summary>Text made fit for searching, the same for what is kept and for what is asked: small letters, no accents, single spaces.</summary>
public static class SearchText
{
    // Letters without their accents, one under the other. The runtime leaves accents alone under an invariant culture.
    private const string Accented = "àáâãäåāăąçćĉċčďđèéêëēĕėęěĝğġģĥħìíîïĩīĭįıĵķĺļľŀłñńņňòóôõöøōŏőŕŗřśŝşšţťŧùúûüũūŭůűųŵýÿŷźżž";
    private const string Plain = "aaaaaaaaacccccddeeeeeeeeegggghhiiiiiiiiijklllllnnnnooooooooorrrsssstttuuuuuuuuuuwyyyzzz";

    /// <summary>The text as it is searched.</summary>
    public static string Of(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var letter in text)
        {
            var c = char.ToLowerInvariant(letter);
            if (CharUnicodeInfo.GetUnicodeCategory(c) == UnicodeCategory.NonSpacingMark)
                continue;
            if (char.IsWhiteSpace(c) || char.IsControl(c))
            {
                if (plain.Length > 0 && plain[^1] != ' ')
                    plain.Append(' ');
            }
            else
                plain.Append(Accented.IndexOf(c, StringComparison.Ordinal) is var at and >= 0 ? Plain[at] : c);
        }
        return plain.ToString().TrimEnd();
    }

    /// <summary>The words asked for, each once.</summary>
    public static IReadOnlyList<string> Words(string asked) => [.. Of(asked).Split(' ', StringSplitOptions.RemoveEmptyEntries).Distinct()];

    /// <summary>Every word of several texts once, so that a unit is searched in one place however long its journal is.</summary>
    public static string Merge(IEnumerable<string> texts) =>
        string.Join(' ', texts.SelectMany(t => t.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Distinct());

    /// <summary>What people would look for in a fact: its words and numbers as searched; not ids made by the program, nor hashes.</summary>
    public static string Of(Fact fact)
    {
        var words = new StringBuilder();
        try
        {
            using var json = JsonDocument.Parse(FactText.Write(fact));
            Collect(json.RootElement, words);
        }
        catch (JsonException)
        {
            // What was kept word for word need not be JSON.
            words.Append(FactText.Write(fact));
        }
        return Of(words.ToString());
    }

    private static void Collect(JsonElement at, StringBuilder words)
    {
        switch (at.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (var field in at.EnumerateObject())
                    if (field.Name is not ("kind" or "bench" or "entryId"))
                        Collect(field.Value, words);
                break;
            case JsonValueKind.Array:
                foreach (var item in at.EnumerateArray())
                    Collect(item, words);
                break;
            case JsonValueKind.String when at.GetString() is { Length: > 0 } text && !PhotoHash.IsOne(text):
                words.Append(text).Append(' ');
                break;
            case JsonValueKind.Number:
                words.Append(at.GetRawText()).Append(' ');
                break;
        }
    }
}
