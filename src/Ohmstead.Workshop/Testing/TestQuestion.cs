using System.Text.Json;
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
    /// <param name="supplyVolts">The mains of the type sheet; of touch current what was kept with it goes before.</param>
    public static TestQuestion Verdict(TestBound limit, TestTaken taken, double supplyVolts)
    {
        var fields = new List<(string, object)> { ("limit", Limit(limit)) };
        if (taken.Read?.Touch is { } touch)
            fields.Add(
                (
                    "touch",
                    new
                    {
                        volts = taken.Values,
                        network = touch.Network,
                        hertz = touch.Hertz,
                        supplyVolts = touch.SupplyVolts ?? supplyVolts,
                        earthProved = touch.EarthProved,
                    }
                )
            );
        else if (taken.OverRangeAbove is { } over)
            fields.AddRange([("values", new[] { "OL" }), ("overRangeAbove", over)]);
        else
            fields.Add(("values", taken.Values));
        return Of("verdict", [.. fields, ("meter", new { percent = taken.MeterPercent, floor = taken.MeterFloor })]);
    }

    /// <summary>A value that was worked out, with its standard uncertainty, against a limit.</summary>
    public static TestQuestion Verdict(TestBound limit, double value, double standardUncertainty) =>
        Of("verdict", [("limit", Limit(limit)), ("values", new[] { value }), ("standardUncertainty", standardUncertainty)]);

    /// <summary>A question with its fields, in their order.</summary>
    internal static TestQuestion Of(string word, IReadOnlyList<(string Name, object Value)> fields)
    {
        var all = new OrderedDictionary<string, object> { ["ohmstead"] = QuestionFile.Mark, ["question"] = word };
        foreach (var (name, value) in fields)
            all[name] = value;
        return new(word, JsonSerializer.Serialize(all, Indented));
    }

    /// <summary>Without the end that it has not: there null would be no number.</summary>
    private static OrderedDictionary<string, object> Limit(TestBound limit)
    {
        var all = new OrderedDictionary<string, object> { ["unit"] = limit.Unit, ["source"] = limit.Source };
        if (limit.Min is { } min)
            all["min"] = min;
        if (limit.Max is { } max)
            all["max"] = max;
        return all;
    }

    /// <summary>The field at the end of a path: "values" of "$.values".</summary>
    private static string Last(string path) => path[(path.LastIndexOf('.') + 1)..];
}
