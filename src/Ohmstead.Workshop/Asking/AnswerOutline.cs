using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Outlines;

namespace Ohmstead.Workshop.Asking;

/// <summary>From the answers so far to an outline, and which question each of its blocks comes from.</summary>
public static class AnswerOutline
{
    /// <summary>Mains volts of a plate that nobody read [V]: common practice, no source.</summary>
    private const double LeastPlate = 110,
        MostPlate = 125;

    /// <summary>The outline. What was not asked yet is not in it.</summary>
    /// <param name="id">Id of the type.</param>
    public static AskedOutline Of(KindAnswers answers, string id) => new AnswerBlocks(answers).Whole(id);

    /// <summary>The plate's block.</summary>
    internal static JsonObject Plate(KindAnswers a, Func<string, string, JsonNode?> figure)
    {
        var plate = new JsonObject
        {
            ["volts"] =
                a.Volts.Trim().Length == 0
                    ? new JsonObject { ["between"] = new JsonArray(LeastPlate, MostPlate) }
                    : figure(KindQuestions.Plate, a.Volts),
        };
        foreach (var (field, typed) in (((string, string)[])[("watts", a.Watts), ("hertz", a.Hertz)]))
            if (typed.Trim().Length > 0 && figure(KindQuestions.Plate, typed) is { } value)
                plate[field] = value;
        return plate;
    }

    /// <summary>Volts of steps: each where they were said, evenly spread guesses where only their number was.</summary>
    internal static JsonArray? Steps(string typed)
    {
        const int usualSteps = 6;
        const double lowest = 6,
            highest = 18,
            toEachSide = 1.35;
        if (TypedFigure.List(typed) is not { } said)
            return null;
        if (said.Length > 1)
            return new JsonArray([.. said.Select(v => (JsonNode)JsonValue.Create(v))]);
        var count = said.Length == 1 ? said[0] : usualSteps;
        if (count is < 2 or > 40 || count != Math.Floor(count))
            return null;
        return new JsonArray([
            .. Enumerable
                .Range(0, (int)count)
                .Select(n => lowest + ((highest - lowest) * n / (count - 1)))
                .Select(v => (JsonNode)new JsonObject { ["between"] = new JsonArray(Rounded(v / toEachSide), Rounded(v * toEachSide)) }),
        ]);
    }

    private static double Rounded(double v) => double.Parse(v.ToString("0.##", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}

/// <summary>An outline that was asked for.</summary>
/// <param name="Outline">As JSON, for <see cref="OutlineFile"/>.</param>
/// <param name="Questions">The question that each block comes from, in their order.</param>
/// <param name="Problems">What was typed and is no number, or is named twice.</param>
public sealed record AskedOutline(JsonObject Outline, ImmutableArray<string> Questions, ImmutableArray<AnswerProblem> Problems)
{
    /// <summary>Its text.</summary>
    public string Text => Outline.ToJsonString(Electrical.TypeSheets.TypeSheetFile.Indented);
}

/// <summary>Something wrong with an answer.</summary>
/// <param name="Question">The question that it is put right at.</param>
/// <param name="Words">What is wrong and what to do.</param>
public sealed record AnswerProblem(string Question, string Words);
