using System.Text.Json;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Reckoning;
using Ohmstead.Workshop.Journal;
using Answer = Ohmstead.Electrical.Reckoning.Answer;

namespace Ohmstead.Workshop.Testing;

/// <summary>
/// A question as the command line takes it, made from what was typed, and its answer: what a screen says and what
/// <c>ohmstead reckon</c> says of the downloaded file is the same.
/// </summary>
/// <param name="Word">Which question it is.</param>
/// <param name="Text">The question file.</param>
public sealed record TestQuestion(string Word, string Text)
{
    private static readonly JsonSerializerOptions Indented = new(FactText.Options) { WriteIndented = true };

    /// <summary>The answer, or why the question is refused, in words.</summary>
    public (Answer? Answer, string Refused) Ask()
    {
        var read = QuestionFile.Read(Text, null);
        return read.Question is { } question
            ? (question.Answer(), "")
            : (null, string.Join(" ", read.Problems.Select(p => $"{Words.Sentences.Large(Last(p.Path))} {p.Wrong}: {p.Right}.")));
    }

    /// <summary>The same, of a kind that is known.</summary>
    public (T? Answer, string Refused) Ask<T>()
        where T : Answer
    {
        var (answer, refused) = Ask();
        return ((T?)answer, refused);
    }

    /// <summary>A reading against a limit.</summary>
    public static TestQuestion Verdict(TestBound limit, TestTaken taken)
    {
        var asked = Begin("verdict");
        asked["limit"] = Limit(limit);
        if (taken.Read?.Touch is { } touch)
            asked["touch"] = new JsonObject
            {
                ["volts"] = Numbers(taken.Values),
                ["network"] = touch.Network,
                ["hertz"] = touch.Hertz,
                ["earthProved"] = touch.EarthProved,
            };
        else if (taken.OverRangeAbove is { } over)
            (asked["values"], asked["overRangeAbove"]) = (new JsonArray("OL"), over);
        else
            asked["values"] = Numbers(taken.Values);
        asked["meter"] = new JsonObject { ["percent"] = taken.MeterPercent, ["floor"] = taken.MeterFloor };
        return Of(asked);
    }

    /// <summary>A value that was worked out, with its standard uncertainty, against a limit.</summary>
    public static TestQuestion Verdict(TestBound limit, double value, double standardUncertainty)
    {
        var asked = Begin("verdict");
        asked["limit"] = Limit(limit);
        (asked["values"], asked["standardUncertainty"]) = (new JsonArray(value), standardUncertainty);
        return Of(asked);
    }

    internal static JsonObject Begin(string word) => new() { ["ohmstead"] = QuestionFile.Mark, ["question"] = word };

    internal static TestQuestion Of(JsonObject asked) => new((string)asked["question"]!, asked.ToJsonString(Indented));

    internal static JsonArray Numbers(IEnumerable<double> values) => [.. values.Select(v => (JsonNode)v)];

    private static JsonObject Limit(TestBound limit)
    {
        var all = new JsonObject { ["unit"] = limit.Unit, ["source"] = limit.Source };
        if (limit.Min is { } min)
            all["min"] = min;
        if (limit.Max is { } max)
            all["max"] = max;
        return all;
    }

    /// <summary>The field at the end of a path: "values" of "$.values".</summary>
    private static string Last(string path) => path[(path.LastIndexOf('.') + 1)..];
}
