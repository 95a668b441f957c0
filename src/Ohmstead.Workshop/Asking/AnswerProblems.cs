using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Asking;

/// <summary>What the reader of outlines refuses, at the question where it is put right, in the words of the trade.</summary>
public static class AnswerProblems
{
    private const string Block = "$.blocks[";

    /// <summary>What was typed and is no number first; of what the reader refuses, each once.</summary>
    public static ImmutableArray<AnswerProblem> Of(KindAnswers answers, AskedOutline asked, IEnumerable<Problem> refused) =>
        [
            .. asked
                .Problems.Concat(
                    asked.Problems.IsEmpty
                        ? refused.Select(p => Place(answers, asked, p) is var at ? new AnswerProblem(at, Words(at, p)) : null!)
                        : []
                )
                .Distinct(),
        ];

    private static string Place(KindAnswers answers, AskedOutline asked, Problem problem)
    {
        var path = problem.Path;
        if (path.StartsWith("$.plate", StringComparison.Ordinal))
            return KindQuestions.Plate;
        if (path.StartsWith(Block, StringComparison.Ordinal) && Number(path) is { } n && n < asked.Questions.Length)
            return path.Contains(".posts", StringComparison.Ordinal) ? KindQuestions.Fixed : asked.Questions[n];
        if (path is "$.id" or "$.title")
            return KindQuestions.Name;
        var all = KindQuestions.Of(answers);
        // Too many unknown words: the last of them is the nearest to look at.
        if (problem.Wrong.Contains("kinds of unit", StringComparison.Ordinal))
            return all.LastOrDefault(q => KindQuestions.Chosen(answers, q) is KindAnswers.Unknown or "some" or "dc") ?? KindQuestions.Name;
        return all.FirstOrDefault(q => KindQuestions.ThrottleOf(q) >= 0) ?? KindQuestions.Fixed;
    }

    private static int? Number(string path)
    {
        var end = path.IndexOf(']', StringComparison.Ordinal);
        return
            end > 0
            && int.TryParse(path.AsSpan(Block.Length, end - Block.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var n)
            ? n
            : null;
    }

    private static string Words(string question, Problem problem)
    {
        var (field, wrong) = (problem.Path[(problem.Path.LastIndexOf('.') + 1)..], problem.Wrong);
        bool Has(string words) => wrong.Contains(words, StringComparison.Ordinal);
        if (Has("kinds of unit"))
            return "Too many things are open. Look at this one and say what it is.";
        if (Has("have no post"))
            return "No post is named yet. Name the posts that come out.";
        if (Has("not above"))
            return problem.Right.Contains("steps", StringComparison.Ordinal)
                ? "Each step must give more volts than the one before it."
                : "The lowest volts must be below the full volts.";
        if (Has("a second throttle of that name"))
            return "Two throttles cannot feed the same post. Write the mark of each.";
        if (Has("a second time") || Has("make a sheet that is refused"))
            return "A post is named twice. Name each post once.";
        if (Has("own start"))
            return "A post cannot be its own return. Write the mark of the other post.";
        if (Has("is no id") || Has("is no name of a post"))
            return "Write a post as it is marked: letters and digits, no spaces.";
        if (Has("reverses, and no rectifier"))
            return "A reversing switch needs DC. Say first that DC comes out.";
        if (Has("nothing slides"))
            return "Nothing runs along the winding here, so the whistle has a winding of its own. Choose that.";
        if (Has("is no post of a winding") || Has("\" is no post"))
            return "No post has this mark. Name the post first, or write another.";
        if (Has("is the breaker, and there is none"))
            return "There is no breaker for the lamp to be across. Choose another place.";
        if (Has("is no place for a breaker") || Has("no winding starts at one") || Has("behind the throttle, and there is none"))
            return "The breaker cannot be there on this unit. Choose another place.";
        if (Has("a part of it gives"))
            return "A post cannot give more volts than the whole winding. Look at the volts again.";
        return question == KindQuestions.Plate ? PlateWords(field) : Usual(field, problem);
    }

    private static string PlateWords(string field) =>
        field switch
        {
            "watts" => "Watts must be 1 to 5000. Leave them empty if the plate does not say.",
            "hertz" => "Hertz must be 10 to 500. Leave them empty if the plate does not say.",
            _ => "Mains volts must be 20 to 500. Leave them empty if the plate does not say.",
        };

    private static string Usual(string field, Problem problem) =>
        field == "ohms" ? "Ohms must be 0.1 to 10000. Leave them empty if you don’t know."
        : field == "amps" ? "Amps must be 0.05 to 200. Leave them empty if you don’t know."
        : field == "boost" ? "Added volts must be 0.5 to 60. Leave them empty if you don’t know."
        : field.StartsWith("volts", StringComparison.Ordinal) || problem.Path.Contains(".posts.", StringComparison.Ordinal)
            ? "Volts must be 0.5 to 60. Where it goes down to nothing, write 0.5."
        : $"{Sentences.Whole(problem.Wrong)} {Sentences.Whole(problem.Right)}";
}
