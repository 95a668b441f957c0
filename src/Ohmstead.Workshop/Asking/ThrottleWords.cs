using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Asking;

/// <summary>What the questions about throttles say.</summary>
internal static class ThrottleWords
{
    public static KindQuestion Runs(KindAnswers a) =>
        new(
            KindQuestions.Runs,
            a.ThrottleCount > 1 ? "What do the throttles run on?" : "What does the throttle run on?",
            "Move it and listen. Look through the vents; do not open it for this.",
            [
                new("roller", "A roller", "It rolls over bare turns"),
                new("shoe", "A shoe", "It slides over bare turns"),
                new("steps", "Steps", "It clicks from stop to stop"),
                new("rheostat", "A resistance wire", "A brush slides along a wire that gets hot"),
                .. QuestionWords.TheyDiffer(a),
            ],
            "I don’t know. Roller and shoe stay possible."
        );

    public static KindQuestion Output(KindAnswers a) =>
        new(
            KindQuestions.Output,
            "What comes out to the track?",
            "The plate or the posts say AC, DC, + or −.",
            [
                new("ac", "AC", "Most units for engines with a whistle"),
                new("bridge", "DC, from a bridge", "Four plates or diodes inside"),
                new("half", "DC, half wave", "One plate or diode inside"),
                new("dc", "DC, inside not seen", "Bridge and half wave both stay possible"),
                .. QuestionWords.TheyDiffer(a),
            ],
            QuestionWords.Usual + " That is AC."
        );

    public static KindQuestion Cell(KindAnswers a) =>
        new(
            KindQuestions.Cell,
            "What is the rectifier made of?",
            "Look through the vents. Old units have a stack of plates.",
            [
                new("selenium", "Plates", "A stack of square plates with air between"),
                new("silicon", "Diodes", "Small, black or glass, with a ring"),
                new("disc", "Copper discs", "Small round discs on one screw"),
                .. a.DirectThrottles.Count() < 2 ? [] : QuestionWords.TheyDiffer(a),
            ],
            a.DirectThrottles.Count() == 1 ? QuestionWords.Settles : QuestionWords.Usual
        );

    /// <summary>A question of all throttles, asked of one.</summary>
    public static KindQuestion One(KindAnswers a, string key, int n)
    {
        var asked = QuestionWords.Of(a.Alone(n), key);
        var title = key switch
        {
            KindQuestions.Runs => "what does it run on?",
            KindQuestions.Output => "what comes out to the track?",
            KindQuestions.Cell => "what is its rectifier made of?",
            KindQuestions.Range => "is there a range lever?",
            KindQuestions.Whistle => "is there a whistle lever?",
            KindQuestions.WhistleFrom => "where does its whistle get the volts?",
            _ => "what changes the direction?",
        };
        return asked with { Key = KindQuestions.Each(key, n), Title = $"Throttle {ValueText.Plain(n + 1)}: {title}" };
    }

    public static KindQuestion Posts(KindAnswers a, int n)
    {
        var which = a.ThrottleCount > 1 ? $"throttle {ValueText.Plain(n + 1)}" : "the throttle";
        return a.IsDirectAt(n)
            ? new(
                KindQuestions.Posts(n),
                $"What does {which} give?",
                "AC volts before the rectifier, if the plate says them. Leave empty what you don’t know.",
                [],
                "I don’t know the volts"
            )
            : new(
                KindQuestions.Posts(n),
                $"Which posts does {which} feed?",
                "As marked on the case. Volts with no load; leave empty what you don’t know.",
                [],
                "I don’t know the volts"
            );
    }
}
