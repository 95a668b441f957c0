using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Workshop.Journal;

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
    internal static OutlineFields Plate(KindAnswers a, Func<string, string, object> figure)
    {
        var plate = new OutlineFields
        {
            ["volts"] =
                a.Volts.Trim().Length == 0
                    ? new OutlineFields { ["between"] = new[] { LeastPlate, MostPlate } }
                    : figure(KindQuestions.Plate, a.Volts),
        };
        foreach (var (field, typed) in (((string, string)[])[("watts", a.Watts), ("hertz", a.Hertz)]))
            if (typed.Trim().Length > 0)
                plate[field] = figure(KindQuestions.Plate, typed);
        return plate;
    }

    /// <summary>Volts of steps: each where they were said, evenly spread guesses where only their number was.</summary>
    internal static object[]? Steps(string typed)
    {
        const int usualSteps = 6;
        const double lowest = 6,
            highest = 18,
            toEachSide = 1.35;
        if (TypedFigure.List(typed) is not { } said)
            return null;
        if (said.Length > 1)
            return [.. said];
        var count = said.Length == 1 ? said[0] : usualSteps;
        if (count is < 2 or > 40 || count != Math.Floor(count))
            return null;
        return
        [
            .. Enumerable
                .Range(0, (int)count)
                .Select(n => lowest + ((highest - lowest) * n / (count - 1)))
                .Select(v => new OutlineFields { ["between"] = new[] { Rounded(v / toEachSide), Rounded(v * toEachSide) } }),
        ];
    }

    private static double Rounded(double v) => double.Parse(v.ToString("0.##", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}

/// <summary>An outline that was asked for.</summary>
/// <param name="Text">Its text, for <see cref="OutlineFile"/>.</param>
/// <param name="Questions">The question that each block comes from, in their order.</param>
/// <param name="Problems">What was typed and is no number, or is named twice.</param>
public sealed record AskedOutline(string Text, ImmutableArray<string> Questions, ImmutableArray<AnswerProblem> Problems)
{
    /// <summary>The question that says of which sort each block is.</summary>
    public required ImmutableArray<string> OfKind { get; init; }
}

/// <summary>Fields of an outline in the order in which they are written.</summary>
internal sealed class OutlineFields : Dictionary<string, object>
{
    private static readonly JsonSerializerOptions Indented = new(FactText.Options) { WriteIndented = true };

    /// <summary>As text.</summary>
    public string Text => JsonSerializer.Serialize(this, Indented);
}

/// <summary>Something wrong with an answer.</summary>
/// <param name="Question">The question that it is put right at.</param>
/// <param name="Words">What is wrong and what to do.</param>
public sealed record AnswerProblem(string Question, string Words);
