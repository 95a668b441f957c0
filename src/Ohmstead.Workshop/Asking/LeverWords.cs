namespace Ohmstead.Workshop.Asking;

/// <summary>What the questions about levers and buttons say.</summary>
internal static class LeverWords
{
    public static KindQuestion Range(KindAnswers a) =>
        new(
            KindQuestions.Range,
            "Is there a range lever?",
            "It lifts the track’s volts by a few, low or high.",
            [
                QuestionWords.NoneOfIt,
                new("each", a.ThrottleCount > 1 ? "Yes, one on each throttle" : "Yes", "Low and high"),
                .. QuestionWords.TheyDiffer(a),
            ],
            QuestionWords.Usual + " That is none."
        );

    public static KindQuestion WhistleFrom(KindAnswers a) =>
        new(
            KindQuestions.WhistleFrom,
            "Where does the whistle get its volts?",
            "Calling the whistle lifts the volts a little. A winding of its own is usual.",
            [
                new("own", "A small winding of its own", "It sits on the same core"),
                new("winding", "Further along the same winding", "A second contact runs ahead of the throttle’s"),
                new(KindAnswers.None, "It adds no volts", "The disc sits in the line, nothing more"),
                .. a.Whistle == "shared" || a.WhistleThrottles.Count() < 2 ? [] : QuestionWords.TheyDiffer(a),
            ],
            a.Whistle == "shared" || a.WhistleThrottles.Count() == 1 ? QuestionWords.Settles : QuestionWords.Usual
        );

    public static KindQuestion Whistle(KindAnswers a) =>
        new(
            KindQuestions.Whistle,
            "Is there a whistle lever?",
            "A lever or button that sounds the whistle in the tender.",
            [
                QuestionWords.NoneOfIt,
                new("each", a.ThrottleCount > 1 ? "One for each throttle" : "Yes", ""),
                .. a.ThrottleCount > 1 ? new[] { new KindChoice("shared", "One for all", "The same lever, pushed either way") } : [],
                .. QuestionWords.TheyDiffer(a),
            ],
            QuestionWords.Usual + " That is none."
        );

    public static KindQuestion Direction(KindAnswers a) =>
        new(
            KindQuestions.Direction,
            "What changes the direction?",
            "Press it with the plug out, and listen.",
            [
                new(KindAnswers.None, "Nothing on the unit", "You take the throttle down for it"),
                new("interrupts", "A button", "It cuts the track’s power while pressed"),
                new("rotary", "A lever with two sides", "It cuts the power on its way over"),
                .. a.IsDirect ? new[] { new KindChoice("reverses", "A reversing switch", "Forward and back: it swaps + and −") } : [],
                new("some", "Something, I don’t know which", "All stay possible; a reading settles it"),
                .. QuestionWords.TheyDiffer(a),
            ],
            QuestionWords.Usual + " That is nothing."
        );
}
