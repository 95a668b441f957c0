using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary>The answer to a question as a person reads it: what it comes to, then the figures, then cautions and limits.</summary>
internal static partial class AnswerTable
{
    private static readonly string[] Lists = ["question", "words", "cautions", "outside"];

    private static readonly Dictionary<string, string> Units = new(StringComparer.Ordinal)
    {
        ["volts"] = "V",
        ["amps"] = "A",
        ["milliamps"] = "mA",
        ["ohms"] = "Ω",
        ["watts"] = "W",
        ["percent"] = "%",
        ["kelvin"] = "K",
        ["celsius"] = "°C",
        ["seconds"] = "s",
        ["minutes"] = "min",
        ["millimetres"] = "mm",
        ["metres"] = "m",
        ["hertz"] = "Hz",
        ["db"] = "dB",
        ["feet"] = "ft",
        ["awg"] = "AWG",
    };

    /// <summary>Names of fields that would not read well word by word.</summary>
    private static readonly Dictionary<string, string> Labels = new(StringComparer.Ordinal)
    {
        ["tauSeconds"] = "Time constant, s",
        ["kelvinPerWatt"] = "Rise for each watt, K",
        ["sigma"] = "Standard deviations off",
        ["logSpread"] = "Spread, of the logarithm",
        ["wattsPerMetre"] = "Watts per m",
        ["ohmsPerMetre"] = "Ohms per m",
        ["wattsPerSquareCentimetre"] = "Watts per cm²",
        ["plateSquareCentimetres"] = "Plate, cm²",
        ["metres"] = "Length, m",
        ["centre"] = "Center",
        ["failPercentIfQuiet"] = "Fails all the same, %",
        ["alarmPercent"] = "Test says bad, %",
    };

    /// <summary>Letters that stand for words.</summary>
    private static readonly HashSet<string> Letters = new(["ac", "dc", "rms"], StringComparer.Ordinal);

    /// <summary>Words of the file for which the bench has others, by the field that they are in.</summary>
    private static readonly Dictionary<(string Field, string Word), string> BenchWords = new()
    {
        [("verdict", "renew")] = "replace",
        [("verdict", "leave, add outside")] = "leave, add a breaker outside",
        [("verdict", "close-pass")] = "close pass",
        [("verdict", "close-fail")] = "close fail",
        [("verdict", "too few of this kind")] = "too few of this type",
        [("verdict", "too few of this kind, outside the kind's band")] = "too few of this type, outside the type’s band",
        [("verdict", "usual, outside the kind's band")] = "usual, outside the type’s band",
        [("verdict", "unusual, outside the kind's band")] = "unusual, outside the type’s band",
        [("polarity", "exchange its ends")] = "reverse its ends",
        [("leadRule", "any")] = "any length",
        [("leadRule", "none")] = "no length",
        [("leadRule", "at-most")] = "at most the length given",
        [("leadRule", "at-least")] = "at least the length given",
    };

    /// <summary>Fields that are sums of money.</summary>
    private static readonly HashSet<string> Money = new(
        ["now", "onFailure", "later", "test", "expectedCost", "allLater", "fee"],
        StringComparer.Ordinal
    );

    /// <summary>What it means that a field is null, where that says something.</summary>
    private static readonly Dictionary<string, string> OfNull = new(StringComparer.Ordinal)
    {
        ["seconds"] = "never",
        ["lowSeconds"] = "never",
        ["highSeconds"] = "never",
        ["waitSeconds"] = "never trips",
        ["riseKelvin"] = "runs away",
    };

    [GeneratedRegex("(?<=[a-z0-9])(?=[A-Z])")]
    private static partial Regex Seam();

    /// <param name="sheet">The type sheet that the question was asked with; its steps are named by their titles.</param>
    public static IEnumerable<string> Of(JsonObject answer, TypeSheet? sheet)
    {
        if (sheet is not null && answer["together"] is JsonObject { } together && together["now"] is JsonArray now)
        {
            foreach (var part in answer["parts"]!.AsArray())
                part!["step"] = PartNames.Step(sheet, part["step"]!.GetValue<string>());
            together["now"] = new JsonArray([.. now.Select(s => JsonValue.Create(PartNames.Step(sheet, s!.GetValue<string>())))]);
        }
        yield return Style.Heading(Label(answer["question"]!.GetValue<string>().Replace('-', ' ')));
        foreach (var line in Said(answer, "words", "", Ended))
            yield return line;
        foreach (var line in Figures(answer.Where(f => !Lists.Contains(f.Key)), 0))
            yield return line;
        if (
            Said(answer, "cautions", "CAUTION: ", Sentences.Whole).Concat(Said(answer, "outside", "", Sentences.Whole)).ToList()
            is not { Count: > 0 } below
        )
            yield break;
        yield return "";
        foreach (var line in below)
            yield return line;
    }

    private static IEnumerable<string> Said(JsonObject answer, string list, string before, Func<string, string> whole) =>
        (answer[list] as JsonArray ?? []).Select(s => Shown.Wrapped(before + whole(s!.GetValue<string>()), 0));

    /// <summary>With a full stop. A sentence may begin with a name as it was typed, so no letter is made large.</summary>
    private static string Ended(string text) => text.Length == 0 || text[^1] is '.' or '!' or '?' ? text : text + ".";

    private static IEnumerable<string> Figures(IEnumerable<KeyValuePair<string, JsonNode?>> fields, int indent)
    {
        // What is not known, or was not typed, has no line.
        var (all, space) = (fields.Where(f => !IsNothing(f.Key, f.Value)).ToList(), new string(' ', indent));
        var wide = all.Where(f => !IsTable(f.Value) && f.Value is not JsonObject).Select(f => Label(f.Key).Length).DefaultIfEmpty(0).Max();
        foreach (var (n, (name, value)) in all.Index())
        {
            if (value is JsonObject part)
            {
                yield return $"{space}  {Label(name)}";
                foreach (var line in Figures(part, indent + 2))
                    yield return line;
            }
            else if (IsTable(value))
            {
                yield return "";
                yield return Style.Heading($"{space}  {Label(name)}");
                foreach (var line in Table([.. value!.AsArray().Select(r => r!.AsObject())], indent))
                    yield return line;
                if (n + 1 < all.Count && !IsTable(all[n + 1].Value))
                    yield return "";
            }
            else
                yield return Shown.Row($"{space}  {Label(name).PadRight(wide)}  ", Text(name, value));
        }
    }

    private static bool IsNothing(string name, JsonNode? value) =>
        value is null ? !OfNull.ContainsKey(name) : (value.GetValueKind() == JsonValueKind.String && value.GetValue<string>().Length == 0);

    private static bool IsTable(JsonNode? value) => value is JsonArray { Count: > 0 } rows && rows.All(r => r is JsonObject);

    /// <summary>Rows as columns; what has rows of its own comes below its row.</summary>
    private static IEnumerable<string> Table(List<JsonObject> rows, int indent)
    {
        var space = new string(' ', indent + 2);
        var names = rows.SelectMany(r =>
                r.Where(f => f.Value is not JsonObject && !IsTable(f.Value) && !IsNothing(f.Key, f.Value)).Select(f => f.Key)
            )
            .Distinct(StringComparer.Ordinal)
            .ToList();
        var widths = names.Select(n => rows.Select(r => Text(n, r[n]).Length).Append(Label(n).Length).Max()).ToList();
        var cells = names.Select((n, at) => Label(n).PadRight(widths[at]));
        var isNarrow = widths.Sum() + (2 * widths.Count) + indent < Shown.Width;
        if (isNarrow)
            yield return $"{space}{string.Join("  ", cells)}".TrimEnd();
        foreach (var row in rows)
        {
            if (isNarrow)
                yield return $"{space}{string.Join("  ", names.Select((n, at) => Text(n, row[n]).PadRight(widths[at])))}".TrimEnd();
            else
                foreach (var name in names.Where(n => !IsNothing(n, row[n])))
                    yield return Shown.Row($"{space}{(name == names[0] ? "" : "  ")}{Label(name)}: ", Text(name, row[name]));
            foreach (var line in Figures(row.Where(f => f.Value is JsonObject || IsTable(f.Value)), indent + 4))
                yield return line;
        }
    }

    private static string Text(string name, JsonNode? value) =>
        value switch
        {
            null => OfNull.GetValueOrDefault(name, "–"),
            JsonArray { Count: 0 } => "none",
            JsonArray list => string.Join(", ", list.Select(v => Text(name, v))),
            _ => value.GetValueKind() switch
            {
                JsonValueKind.True => "yes",
                JsonValueKind.False => "no",
                JsonValueKind.Number when Money.Contains(name) => double.Parse(value.ToJsonString(), CultureInfo.InvariantCulture)
                    .ToString("0.00", CultureInfo.InvariantCulture),
                JsonValueKind.Number => Number(value),
                _ => BenchWords.GetValueOrDefault((name, value.ToString()), value.ToString()),
            },
        };

    private static string Number(JsonNode value)
    {
        var number = double.Parse(value.ToJsonString(), CultureInfo.InvariantCulture);
        return number == Math.Round(number) && Math.Abs(number) < 1e6
            ? number.ToString("0", CultureInfo.InvariantCulture)
            : ValueText.Number(number);
    }

    /// <summary><c>sourceOhms</c> as <c>Source, Ω</c>.</summary>
    private static string Label(string name)
    {
        if (Labels.TryGetValue(name, out var label))
            return label;
        string[] words =
        [
            .. Seam().Replace(name, " ").ToLowerInvariant().Split(' ').Select(w => Letters.Contains(w) ? w.ToUpperInvariant() : w),
        ];
        var unit = words.Length > 0 && Units.TryGetValue(words[^1], out var short_) ? short_ : "";
        var said = string.Join(' ', unit.Length > 0 && words.Length > 1 ? words[..^1] : words);
        var whole = char.ToUpperInvariant(said[0]) + said[1..];
        return unit.Length > 0 && words.Length > 1 ? $"{whole}, {unit}" : whole;
    }
}
