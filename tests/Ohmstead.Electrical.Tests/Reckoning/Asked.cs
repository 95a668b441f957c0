using System.Text.Json.Nodes;
using Ohmstead.Electrical.Reckoning;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Reckoning;

/// <summary>Questions put to the core as a file puts them.</summary>
internal static class Asked
{
    /// <summary>The answer's JSON object; the question must be sound.</summary>
    /// <param name="fields">The fields after the mark: <c>"question": "rise", "hotOhms": 3</c>.</param>
    public static JsonObject Answer(string fields, TypeSheet? sheet = null) =>
        AnswerOf($"{{ \"ohmstead\": \"question/1\", {fields} }}", sheet);

    /// <summary>The answer to a whole file.</summary>
    public static JsonObject AnswerOf(string text, TypeSheet? sheet = null)
    {
        var read = QuestionFile.Read(text, sheet);
        Assert.True(read.Question is not null, string.Join('\n', read.Problems));
        return read.Question.Answer().ToJson(read.Word);
    }

    /// <summary>The paths at which a question is refused, in order.</summary>
    public static string[] Refused(string fields, TypeSheet? sheet = null)
    {
        var read = QuestionFile.Read($"{{ \"ohmstead\": \"question/1\", {fields} }}", sheet);
        Assert.Null(read.Question);
        Assert.All(read.Problems, p => Assert.True(p.Wrong.Length > 0 && p.Right.Length > 0));
        return [.. read.Problems.Select(p => p.Path)];
    }

    /// <summary>A field of an answer as a number, by a path of names and places: <c>at[1].volts</c>.</summary>
    public static double Number(this JsonNode answer, string path) => answer.At(path)!.GetValue<double>();

    /// <summary>A field of an answer as a word.</summary>
    public static string Text(this JsonNode answer, string path) => answer.At(path)!.GetValue<string>();

    /// <summary>A field of an answer; null where it is null.</summary>
    public static JsonNode? At(this JsonNode answer, string path)
    {
        JsonNode? at = answer;
        foreach (var part in path.Replace("[", ".", StringComparison.Ordinal).Replace("]", "", StringComparison.Ordinal).Split('.'))
            at =
                at is JsonArray list ? list[int.Parse(part, System.Globalization.CultureInfo.InvariantCulture)]
                : at!.AsObject().TryGetPropertyValue(part, out var value) ? value
                : throw new ArgumentException($"there is no {path}", nameof(path));
        return at;
    }
}
