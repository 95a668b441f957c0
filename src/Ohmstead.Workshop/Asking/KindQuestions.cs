using System.Collections.Immutable;
using System.Globalization;

namespace Ohmstead.Workshop.Asking;

/// <summary>The questions about a new type, in the order in which a person looks at a unit.</summary>
public static class KindQuestions
{
    /// <summary>Key of the question about the plate.</summary>
    public const string Plate = "plate";

    /// <summary>How many throttles.</summary>
    public const string Count = "throttles";

    /// <summary>What they run on.</summary>
    public const string Runs = "runs";

    /// <summary>AC or DC.</summary>
    public const string Output = "output";

    /// <summary>What the rectifier is made of.</summary>
    public const string Cell = "rectifier";

    /// <summary>Posts with fixed volts.</summary>
    public const string Fixed = "fixed";

    /// <summary>A range lever.</summary>
    public const string Range = "range";

    /// <summary>Whistle levers.</summary>
    public const string Whistle = "whistle";

    /// <summary>Where a whistle's volts come from.</summary>
    public const string WhistleFrom = "whistle-volts";

    /// <summary>Direction controls.</summary>
    public const string Direction = "direction";

    /// <summary>The breaker.</summary>
    public const string Breaker = "breaker";

    /// <summary>The pilot lamp.</summary>
    public const string Lamp = "lamp";

    /// <summary>The last one: its name, and all answers to look over.</summary>
    public const string Name = "name";

    private const string PostsStart = "posts-";

    /// <summary>Key of the question about a throttle's posts and volts.</summary>
    /// <param name="n">Counted from 0.</param>
    public static string Posts(int n) => PostsStart + (n + 1).ToString(CultureInfo.InvariantCulture);

    /// <summary>Which throttle a question is about, counted from 0; −1 where it is about none.</summary>
    public static int ThrottleOf(string key) =>
        key.StartsWith(PostsStart, StringComparison.Ordinal)
        && int.TryParse(key.AsSpan(PostsStart.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var n)
        && n > 0
            ? n - 1
            : -1;

    /// <summary>Questions that are asked of all throttles at once, and of each where they differ.</summary>
    private static readonly string[] OfAll = [Runs, Output, Cell, Range, WhistleFrom, Whistle, Direction];

    /// <summary>Key of a question of all throttles, asked of one.</summary>
    /// <param name="n">Counted from 0.</param>
    public static string Each(string key, int n) => $"{key}-{(n + 1).ToString(CultureInfo.InvariantCulture)}";

    /// <summary>The question of all throttles that one asks of a single throttle, and which, counted from 0; null for any other.</summary>
    public static (string Key, int Throttle)? One(string key) =>
        OfAll.FirstOrDefault(q => key.StartsWith(q + "-", StringComparison.Ordinal)) is { } all
        && int.TryParse(key.AsSpan(all.Length + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var n)
        && n is > 0 and <= KindAnswers.MostThrottles
            ? (all, n - 1)
            : null;

    /// <summary>Where what a throttle has is put right: at the question of all, or at its own.</summary>
    public static string For(KindAnswers a, string key, int n) => Chosen(a, key) == KindAnswers.Differ ? Each(key, n) : key;

    /// <summary>The keys of the questions that these answers lead to.</summary>
    public static ImmutableArray<string> Of(KindAnswers a)
    {
        var throttles = Enumerable.Range(0, a.ThrottleCount).ToList();
        var whistles = a.WhistleThrottles.ToList();
        var alternating = throttles.Where(n => !a.IsDirectAt(n)).ToList();
        IEnumerable<string> Asked(string key, List<int> of) =>
            of.Count == 0 ? []
            : Chosen(a, key) == KindAnswers.Differ ? of.Select(n => Each(key, n)).Prepend(key)
            : [key];
        return
        [
            Plate,
            Count,
            .. Asked(Runs, throttles),
            .. Asked(Output, throttles),
            .. Asked(Cell, [.. a.DirectThrottles]),
            .. throttles.Select(Posts),
            Fixed,
            .. Asked(Range, throttles),
            .. Asked(Whistle, alternating),
            // One lever for all is one whistle.
            .. a.Whistle == "shared" && whistles.Count > 0 ? [WhistleFrom] : Asked(WhistleFrom, whistles),
            .. Asked(Direction, throttles),
            Breaker,
            Lamp,
            Name,
        ];
    }

    /// <summary>What a question asks, and of what a person may choose.</summary>
    public static KindQuestion Ask(KindAnswers a, string key) => QuestionWords.Of(a, key);

    /// <summary>What was answered, in a few words.</summary>
    public static string Said(KindAnswers a, string key) => SaidAnswer.Of(a, key);

    /// <summary>What was chosen at a question; empty for nothing.</summary>
    public static string Chosen(KindAnswers a, string key) =>
        key switch
        {
            Count => a.Count,
            Runs => a.Runs,
            Output => a.Output,
            Cell => a.Cell,
            Fixed => a.Fixed,
            Range => a.Range,
            Whistle => a.Whistle,
            WhistleFrom => a.WhistleFrom,
            Direction => a.Direction,
            Breaker => a.Breaker,
            Lamp => a.Lamp,
            _ when One(key) is var (all, n) => Chosen(KindAnswersOf(a.Throttle(n)), all),
            _ => "",
        };

    /// <summary>The choices of one throttle as if they were those of all.</summary>
    private static KindAnswers KindAnswersOf(ThrottleAnswer one) =>
        new()
        {
            Runs = one.Runs,
            Output = one.Output,
            Cell = one.Cell,
            Range = one.Range,
            Whistle = one.Whistle,
            WhistleFrom = one.WhistleFrom,
            Direction = one.Direction,
        };

    /// <summary>The answers with another choice.</summary>
    public static KindAnswers Choose(KindAnswers a, string key, string word) =>
        key switch
        {
            Count => a with { Count = word },
            Runs => a with { Runs = word },
            Output => a with { Output = word },
            Cell => a with { Cell = word },
            Fixed => a with { Fixed = word },
            Range => a with { Range = word },
            Whistle => a with { Whistle = word },
            WhistleFrom => a with { WhistleFrom = word },
            Direction => a with { Direction = word },
            Breaker => a with { Breaker = word },
            Lamp => a with { Lamp = word },
            _ when One(key) is var (all, n) => a.With(n, Choose(a.Throttle(n), all, word)),
            _ => a,
        };

    private static ThrottleAnswer Choose(ThrottleAnswer one, string key, string word) =>
        key switch
        {
            Runs => one with { Runs = word },
            Output => one with { Output = word },
            Cell => one with { Cell = word },
            Range => one with { Range = word },
            Whistle => one with { Whistle = word },
            WhistleFrom => one with { WhistleFrom = word },
            _ => one with { Direction = word },
        };

    /// <summary>"I don't know": the choice is open, what was typed for it is left out.</summary>
    public static KindAnswers Unknown(KindAnswers a, string key) =>
        key switch
        {
            Plate => a with { Volts = "", Watts = "", Hertz = "" },
            Fixed => a with { Fixed = KindAnswers.None },
            _ when ThrottleOf(key) is >= 0 and var n => a.With(n, a.Throttle(n) with { Low = "", Full = "", Steps = "", Ohms = "" }),
            _ => Choose(a, key, KindAnswers.Unknown),
        };

    /// <summary>As if a question had not been asked: what it added is what is new against this.</summary>
    public static KindAnswers Without(KindAnswers a, string key) =>
        key switch
        {
            Fixed => a with { Fixed = KindAnswers.None },
            _ when ThrottleOf(key) is >= 0 and var n => a.With(
                n,
                a.Throttle(n) with
                {
                    Post = "",
                    Low = "",
                    Full = "",
                    Steps = "",
                    Ohms = "",
                }
            ),
            _ => Choose(a, key, ""),
        };
}

/// <summary>A question about a new type.</summary>
/// <param name="Title">What is asked.</param>
/// <param name="Hint">Where to look.</param>
/// <param name="Choices">Of what a person may choose; none where something is typed.</param>
/// <param name="DontKnow">What "I don't know" leads to.</param>
public sealed record KindQuestion(string Key, string Title, string Hint, ImmutableArray<KindChoice> Choices, string DontKnow);

/// <summary>One answer that may be chosen.</summary>
/// <param name="Word">What is kept.</param>
/// <param name="Title">What stands on it.</param>
/// <param name="Says">How to know it.</param>
public sealed record KindChoice(string Word, string Title, string Says);
