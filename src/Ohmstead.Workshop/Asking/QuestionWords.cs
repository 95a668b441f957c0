namespace Ohmstead.Workshop.Asking;

/// <summary>What each question says.</summary>
internal static class QuestionWords
{
    internal const string Usual = "I don’t know. The usual is taken.";
    internal const string Settles = "I don’t know. All stay possible; a reading settles it.";

    internal static KindChoice NoneOfIt { get; } = new(KindAnswers.None, "There is none", "");

    public static KindQuestion Of(KindAnswers a, string key) =>
        key switch
        {
            KindQuestions.Plate => new(
                key,
                "What does the plate say?",
                "It is on the bottom or the back. Leave empty what you cannot read.",
                [],
                "I can’t read it"
            ),
            KindQuestions.Count => Count(),
            KindQuestions.Runs => ThrottleWords.Runs(a),
            KindQuestions.Output => ThrottleWords.Output(a),
            KindQuestions.Cell => ThrottleWords.Cell(a),
            KindQuestions.Fixed => Fixed(),
            KindQuestions.Range => LeverWords.Range(a),
            KindQuestions.WhistleFrom => LeverWords.WhistleFrom(a),
            KindQuestions.Whistle => LeverWords.Whistle(a),
            KindQuestions.Direction => LeverWords.Direction(a),
            KindQuestions.Breaker => Breaker(a),
            KindQuestions.Lamp => Lamp(a),
            KindQuestions.Name => new(key, "Look it over", "Change what is wrong. Then the type sheet is made.", [], ""),
            _ when KindQuestions.One(key) is var (all, n) => ThrottleWords.One(a, all, n),
            _ => ThrottleWords.Posts(a, KindQuestions.ThrottleOf(key)),
        };

    /// <summary>Where there are several throttles: that they are not all the same.</summary>
    internal static KindChoice[] TheyDiffer(KindAnswers a) =>
        a.ThrottleCount > 1 ? [new(KindAnswers.Differ, "Not the same on each", "Then answer for each throttle")] : [];

    private static KindQuestion Count() =>
        new(
            KindQuestions.Count,
            "How many throttles?",
            "What your hand moves to change the speed.",
            [
                new("1", "One", "Knob, lever or wheel"),
                new("2", "Two", "One for each track"),
                new("3", "Three", ""),
                new("4", "Four", ""),
                new("0", "None", "Posts with fixed volts only"),
            ],
            "I don’t know. One is taken."
        );

    private static KindQuestion Fixed() =>
        new(
            KindQuestions.Fixed,
            "Which other posts are there?",
            "Posts with fixed volts, for lamps and switches. Volts with no load.",
            [],
            "There are none"
        );

    private static KindQuestion Breaker(KindAnswers a)
    {
        var common = Common(a);
        return new(
            KindQuestions.Breaker,
            "Where is the breaker?",
            "The switch that opens on a short. Look; do not pull.",
            [
                .. common.Length > 0 ? new[] { new KindChoice("common", "In the common", $"One for everything, behind {common}") } : [],
                .. a.ThrottleCount > 0
                    ? new[] { new KindChoice("throttle", a.ThrottleCount > 1 ? "One in each throttle" : "In the throttle", "Near the arm") }
                    : [],
                new("primary", "On the mains side", "Between cord and primary"),
                .. FixedPosts(a).Select(p => new KindChoice(p, $"At post {p}", "For that post alone")),
                new(KindAnswers.None, "There is none", "Then each track lead needs its own, outside"),
            ],
            Settles
        );
    }

    private static KindQuestion Lamp(KindAnswers a) =>
        new(
            KindQuestions.Lamp,
            "Is there a pilot lamp?",
            "The little light that shows the unit is on.",
            [
                NoneOfIt,
                new("own", "On a winding of its own", "Its two wires go to no post"),
                new("post", "Between the common and a post", ""),
                .. a.ThrottleCount > 0 ? new[] { new KindChoice("main", "Across the whole main winding", "") } : [],
                new("breaker", "Across the breaker", "It lights on a short"),
            ],
            "There is one. I don’t know where."
        );

    /// <summary>The post that the first winding starts at, in words; empty where it starts at none.</summary>
    private static string Common(KindAnswers a)
    {
        var from = a.FirstReturn ?? a.Posts.FirstOrDefault(p => !p.IsEmpty)?.Return;
        return from is null ? ""
            : from.Trim().Length == 0 ? "the common post"
            : $"post {PostMark.Of(from)}";
    }

    private static IEnumerable<string> FixedPosts(KindAnswers a) =>
        a.Fixed == KindAnswers.None
            ? []
            : a.Posts.Where(p => p.Post.Trim().Length > 0).Select(p => PostMark.Of(p.Post)).Distinct(StringComparer.Ordinal);
}
