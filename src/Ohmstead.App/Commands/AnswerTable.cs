using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary>The answer to a question as a person reads it: what it comes to, then the figures, then cautions and limits.</summary>
internal static partial class AnswerTable
{
    private static readonly string[] Lists = ["question", "words", "cautions", "outside"];

    private static readonly Dictionary<string, string> Units = new(StringComparer.Ordinal)
    {
        ["volts"] = "V", ["amps"] = "A", ["milliamps"] = "mA", ["ohms"] = "Ω", ["watts"] = "W", ["percent"] = "%", ["kelvin"] = "K", ["celsius"] = "°C",
        ["seconds"] = "s", ["minutes"] = "min", ["millimetres"] = "mm", ["metres"] = "m", ["hertz"] = "Hz", ["db"] = "dB", ["feet"] = "ft", ["awg"] = "AWG",
    };

    [GeneratedRegex("(?<=[a-z0-9])(?=[A-Z])")]
    private static partial Regex Seam();

    public static IEnumerable<string> Of(JsonObject answer)
    {
        yield return Style.Heading(Label(answer["question"]!.GetValue<string>().Replace('-', ' ')));
        foreach (var line in Said(answer, "words", "")) yield return line;
        foreach (var line in Figures(answer.Where(f => !Lists.Contains(f.Key)), 0)) yield return line;
        if (Said(answer, "cautions", "CAUTION: ").Concat(Said(answer, "outside", "")).ToList() is not { Count: > 0 } below) yield break;
        yield return "";
        foreach (var line in below) yield return line;
    }

    private static IEnumerable<string> Said(JsonObject answer, string list, string before) =>
        (answer[list] as JsonArray ?? []).Select(s => Shown.Wrapped(before + Sentences.Whole(s!.GetValue<string>()), 0));

    private static IEnumerable<string> Figures(IEnumerable<KeyValuePair<string, JsonNode?>> fields, int indent)
    {
        var (all, space) = (fields.ToList(), new string(' ', indent));
        var wide = all.Where(f => !IsTable(f.Value) && f.Value is not JsonObject).Select(f => Label(f.Key).Length).DefaultIfEmpty(0).Max();
        foreach (var (n, (name, value)) in all.Index())
        {
            if (value is JsonObject part)
            {
                yield return $"{space}  {Label(name)}";
                foreach (var line in Figures(part, indent + 2)) yield return line;
            }
            else if (IsTable(value))
            {
                yield return "";
                yield return Style.Heading($"{space}  {Label(name)}");
                foreach (var line in Table([.. value!.AsArray().Select(r => r!.AsObject())], indent)) yield return line;
                if (n + 1 < all.Count && !IsTable(all[n + 1].Value)) yield return "";
            }
            else yield return Shown.Row($"{space}  {Label(name).PadRight(wide)}  ", Text(value));
        }
    }

    private static bool IsTable(JsonNode? value) => value is JsonArray { Count: > 0 } rows && rows.All(r => r is JsonObject);

    /// <summary>Rows as columns; what has rows of its own comes below its row.</summary>
    private static IEnumerable<string> Table(List<JsonObject> rows, int indent)
    {
        var space = new string(' ', indent + 2);
        var names = rows.SelectMany(r => r.Where(f => f.Value is not JsonObject && !IsTable(f.Value)).Select(f => f.Key)).Distinct(StringComparer.Ordinal).ToList();
        var widths = names.Select(n => rows.Select(r => Text(r[n]).Length).Append(Label(n).Length).Max()).ToList();
        var cells = names.Select((n, at) => Label(n).PadRight(widths[at]));
        var isNarrow = widths.Sum() + (2 * widths.Count) + indent < Shown.Width;
        if (isNarrow) yield return $"{space}{string.Join("  ", cells)}".TrimEnd();
        foreach (var row in rows)
        {
            if (isNarrow) yield return $"{space}{string.Join("  ", names.Select((n, at) => (row.ContainsKey(n) ? Text(row[n]) : "").PadRight(widths[at])))}".TrimEnd();
            else
                foreach (var name in names.Where(row.ContainsKey)) yield return Shown.Row($"{space}{(name == names[0] ? "" : "  ")}{Label(name)}: ", Text(row[name]));
            foreach (var line in Figures(row.Where(f => f.Value is JsonObject || IsTable(f.Value)), indent + 4)) yield return line;
        }
    }

    private static string Text(JsonNode? value) => value switch
    {
        null => "none",
        JsonArray { Count: 0 } => "none",
        JsonArray list => string.Join(", ", list.Select(Text)),
        _ => value.GetValueKind() switch
        {
            JsonValueKind.True => "yes",
            JsonValueKind.False => "no",
            JsonValueKind.Number => Number(value),
            _ => value.ToString(),
        },
    };

    private static string Number(JsonNode value)
    {
        var number = double.Parse(value.ToJsonString(), CultureInfo.InvariantCulture);
        return number == Math.Round(number) && Math.Abs(number) < 1e6 ? number.ToString("0", CultureInfo.InvariantCulture) : ValueText.Number(number);
    }

    /// <summary><c>sourceOhms</c> as <c>Source, Ω</c>.</summary>
    private static string Label(string name)
    {
        var words = Seam().Replace(name, " ").ToLowerInvariant().Split(' ');
        var unit = words.Length > 0 && Units.TryGetValue(words[^1], out var short_) ? short_ : "";
        var said = string.Join(' ', unit.Length > 0 && words.Length > 1 ? words[..^1] : words);
        var whole = char.ToUpperInvariant(said[0]) + said[1..];
        return unit.Length > 0 && words.Length > 1 ? $"{whole}, {unit}" : whole;
    }
}
