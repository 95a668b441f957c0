using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Reckoning;

/// <summary>
/// Every question of <c>tests/Reference/questions</c> has the answer that stands beside it: worked out elsewhere, not by this
/// program. Numbers within 0.3 %, or what <see cref="Wider"/> says; words, counts and lists exactly.
/// </summary>
public class WorkedAnswersTests
{
    private static readonly string Folder = Path.Combine(Reference.Root, "tests/Reference/questions");

    /// <summary>Where 0.3 % is not asked, by the word of the question.</summary>
    private static readonly Dictionary<string, double> Wider = new()
    {
        ["breaker"] = 0.01,
        ["rectifier"] = 0.01,
        ["quote"] = 0.02,
    };

    public static TheoryData<string> Questions =>
        [
            .. Directory
                .GetFiles(Folder, "*.answer.json")
                .Select(f => Path.GetFileName(f)[..^".answer.json".Length])
                .Order(StringComparer.Ordinal),
        ];

    [Theory]
    [MemberData(nameof(Questions))]
    public void A_question_has_the_answer_that_was_worked_out_elsewhere(string name)
    {
        string Text(string kind) => File.ReadAllText(Path.Combine(Folder, $"{name}.{kind}.json"));
        var expected = JsonNode.Parse(Text("answer"))!.AsObject();
        var ours = Asked.AnswerOf(
            Text("question"),
            TypeSheetFile.Read(File.ReadAllText(Path.Combine(Reference.Root, "tests/Reference/sample/twin-160.sheet.json"))).Required
        );
        var differences = new List<string>();
        Compare(expected, ours, "$", Wider.GetValueOrDefault(expected["question"]!.GetValue<string>(), 0.003), differences);
        Assert.True(differences.Count == 0, string.Join('\n', differences));
    }

    private static void Compare(JsonNode? expected, JsonNode? ours, string path, double within, List<string> differences)
    {
        switch (expected)
        {
            case JsonObject fields when ours is JsonObject own:
                foreach (var (name, value) in fields)
                    if (own.TryGetPropertyValue(name, out var given))
                        Compare(value, given, $"{path}.{name}", within, differences);
                    else
                        differences.Add($"{path}.{name} is missing");
                break;
            case JsonArray items when ours is JsonArray own && own.Count == items.Count:
                for (var n = 0; n < items.Count; n++)
                    Compare(items[n], own[n], $"{path}[{n.ToString(CultureInfo.InvariantCulture)}]", within, differences);
                break;
            case JsonValue number when number.GetValueKind() == JsonValueKind.Number && ours?.GetValueKind() == JsonValueKind.Number:
                if (Math.Abs(number.GetValue<double>() - ours.GetValue<double>()) > (within * Math.Abs(number.GetValue<double>())) + 1e-9)
                    differences.Add($"{path}: {ours.ToJsonString()}, expected {number.ToJsonString()}");
                break;
            default:
                if (!JsonNode.DeepEquals(expected, ours))
                    differences.Add($"{path}: {ours?.ToJsonString() ?? "null"}, expected {expected?.ToJsonString() ?? "null"}");
                break;
        }
    }
}
