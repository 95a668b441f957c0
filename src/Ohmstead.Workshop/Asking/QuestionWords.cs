using System.Collections.Immutable;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Asking;

/// <summary>What each question says.</summary>
internal static class QuestionWords
{
    private const string Usual = "I don’t know. The usual is taken.";
    private const string Settles = "I don’t know. All stay possible; a reading settles it.";

    private static readonly KindChoice NoneOfIt = new(KindAnswers.None, "There is none", "");

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
            KindQuestions.Runs => new(
                key,
                a.ThrottleCount > 1 ? "What do the throttles run on?" : "What does the throttle run on?",
                "Move it and listen. Look through the vents; do not open it for this.",
                [
                    new("roller", "A roller", "It rolls over bare turns of the coil"),
                    new("shoe", "A shoe", "It slides over bare turns of the coil"),
                    new("steps", "Steps", "It clicks from stop to stop"),
                    new("rheostat", "A resistance wire", "A brush slides along a wire that gets hot"),
                ],
                "I don’t know. Roller and shoe stay possible."
            ),
            KindQuestions.Output => new(
                key,
                "What comes out to the track?",
                "The plate or the posts say AC, DC, + or −.",
                [
                    new("ac", "AC", "Most units for engines with a whistle"),
                    new("bridge", "DC, from a bridge", "Four plates or diodes inside"),
                    new("half", "DC, half wave", "One plate or diode inside"),
                    new("dc", "DC, inside not seen", "Bridge and half wave both stay possible"),
                ],
                Usual + " That is AC."
            ),
            KindQuestions.Cell => new(
                key,
                "What is the rectifier made of?",
                "Look through the vents. Old units have a stack of plates.",
                [
                    new("selenium", "Plates", "A stack of square plates with air between"),
                    new("silicon", "Diodes", "Small, black or glass, with a ring"),
                    new("disc", "Copper discs", "Small round discs on one screw"),
                ],
                a.ThrottleCount == 1 ? Settles : Usual
            ),
            KindQuestions.Fixed => new(
                key,
                "Which other posts are there?",
                "Posts with fixed volts, for lamps and switches. Volts with no load.",
                [],
                "There are none"
            ),
            KindQuestions.Range => new(
                key,
                "Is there a range lever?",
                "It lifts the track’s volts by a few, low or high.",
                [NoneOfIt, new("each", a.ThrottleCount > 1 ? "Yes, one on each throttle" : "Yes", "Low and high")],
                Usual + " That is none."
            ),
            KindQuestions.Whistle => Whistle(a),
            KindQuestions.WhistleFrom => new(
                key,
                "Where does the whistle get its volts?",
                "Calling the whistle lifts the volts a little. A coil of its own is usual.",
                [
                    new("own", "A small coil of its own", "It sits on the same core"),
                    new("winding", "Further along the same coil", "A second contact runs ahead of the throttle’s"),
                    new(KindAnswers.None, "It adds no volts", "The disc sits in the line, nothing more"),
                ],
                a.ThrottleCount == 1 || a.Whistle == "shared" ? Settles : Usual
            ),
            KindQuestions.Direction => Direction(a),
            KindQuestions.Breaker => Breaker(a),
            KindQuestions.Lamp => Lamp(a),
            KindQuestions.Name => new(key, "Look it over", "Change what is wrong. Then the type sheet is made.", [], ""),
            _ => Posts(a, KindQuestions.ThrottleOf(key)),
        };

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

    private static KindQuestion Posts(KindAnswers a, int n)
    {
        var which = a.ThrottleCount > 1 ? $"throttle {ValueText.Plain(n + 1)}" : "the throttle";
        return a.IsDirect
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

    private static KindQuestion Whistle(KindAnswers a) =>
        new(
            KindQuestions.Whistle,
            "Is there a whistle lever?",
            "A lever or button that sounds the whistle in the tender.",
            [
                NoneOfIt,
                new("each", a.ThrottleCount > 1 ? "One for each throttle" : "Yes", ""),
                .. a.ThrottleCount > 1 ? new[] { new KindChoice("shared", "One for all", "The same lever, pushed either way") } : [],
            ],
            Usual + " That is none."
        );

    private static KindQuestion Direction(KindAnswers a) =>
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
            ],
            Usual + " That is nothing."
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
                new("primary", "On the mains side", "Between cord and coil"),
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
                new("own", "On a coil of its own", "Its two wires go to no post"),
                new("post", "Between the common and a post", ""),
                .. a.ThrottleCount > 0 ? new[] { new KindChoice("main", "Across the whole main coil", "") } : [],
                new("breaker", "Across the breaker", "It lights on a short"),
            ],
            "There is one. I don’t know where."
        );

    /// <summary>The post that the first winding starts at, in words; empty where it starts at none.</summary>
    private static string Common(KindAnswers a)
    {
        var from = !a.IsDirect && a.ThrottleCount > 0 ? a.Throttle(0).Return : a.Posts.FirstOrDefault(p => !p.IsEmpty)?.Return;
        return from is null ? ""
            : from.Trim().Length == 0 ? "the common post"
            : $"post {PostMark.Of(from)}";
    }

    private static IEnumerable<string> FixedPosts(KindAnswers a) =>
        a.Fixed == KindAnswers.None
            ? []
            : a.Posts.Where(p => p.Post.Trim().Length > 0).Select(p => PostMark.Of(p.Post)).Distinct(StringComparer.Ordinal);

    /// <summary>What was answered, in a few words.</summary>
    public static string Said(KindAnswers a, string key)
    {
        var chosen = KindQuestions.Chosen(a, key);
        if (key == KindQuestions.Plate)
            return Joined((a.Volts, "V"), (a.Watts, "W"), (a.Hertz, "Hz"));
        if (key == KindQuestions.Fixed)
            return a.Fixed == KindAnswers.None || !a.Posts.Any(p => !p.IsEmpty)
                ? "none"
                : string.Join(
                    ", ",
                    a.Posts.Where(p => !p.IsEmpty)
                        .Select(p => $"{PostMark.Of(p.Post)}{(p.Volts.Trim().Length > 0 ? $" {p.Volts.Trim()} V" : "")}")
                );
        if (KindQuestions.ThrottleOf(key) is >= 0 and var n)
        {
            var t = a.Throttle(n);
            var posts = string.Join(" and ", new[] { t.Post, t.Return }.Where(p => p.Trim().Length > 0).Select(PostMark.Of));
            var volts = Joined((t.Low, "V low"), (t.Full, "V full"), (t.Steps, ""), (t.Ohms, "Ω"));
            return posts.Length > 0 && !a.IsDirect ? $"{posts}, {volts}" : volts;
        }
        return Of(a, key).Choices.FirstOrDefault(c => c.Word == chosen) is { } choice ? choice.Title : "not known";
    }

    private static string Joined(params ReadOnlySpan<(string Typed, string Unit)> all)
    {
        var said = new List<string>();
        foreach (var (typed, unit) in all)
            if (typed.Trim().Length > 0)
                said.Add(unit.Length > 0 ? $"{typed.Trim()} {unit}" : typed.Trim());
        return said.Count == 0 ? "not known" : string.Join(", ", said);
    }
}
