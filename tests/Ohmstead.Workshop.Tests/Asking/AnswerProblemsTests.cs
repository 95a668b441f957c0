using Ohmstead.Workshop.Asking;

namespace Ohmstead.Workshop.Tests.Asking;

/// <summary>A refusal comes back at the question where it is put right, in words of the trade.</summary>
public sealed class AnswerProblemsTests
{
    private static readonly KindAnswers One = AskedUnits.Single;

    private static KindAnswers With(string post = "A", string from = "U", string low = "6", string full = "18") =>
        One with
        {
            Throttles =
            [
                new()
                {
                    Post = post,
                    Return = from,
                    Low = low,
                    Full = full,
                },
            ],
        };

    private static KindAnswers WithPost(string post, string from = "U", string volts = "14") =>
        One with
        {
            Posts =
            [
                new()
                {
                    Post = post,
                    Return = from,
                    Volts = volts,
                },
            ],
        };

    public static TheoryData<string, string, string> Refused()
    {
        var all = new (KindAnswers Answers, string Question, string Words)[]
        {
            (One with { Volts = "12O" }, "plate", "“12O” is not a number."),
            (One with { Volts = "12" }, "plate", "Mains volts must be 20 to 500."),
            (One with { Watts = "0" }, "plate", "Watts must be 1 to 5000."),
            (One with { Hertz = "5" }, "plate", "Hertz must be 10 to 500."),
            (With(low: "18", full: "6"), "posts-1", "The lowest volts must be below the full volts."),
            (With(full: "80"), "posts-1", "Volts must be 0.5 to 60."),
            (With(low: "0"), "posts-1", "Where it goes down to nothing, write 0.5."),
            (With(low: "x"), "posts-1", "“x” is not a number."),
            (With(post: "u"), "posts-1", "Post U cannot be its own return."),
            (With(post: "A*"), "posts-1", "Write a post as it is marked"),
            (With(from: "U*"), "posts-1", "Write a post as it is marked"),
            (WithPost("a"), "fixed", "Post A is named twice."),
            (WithPost("U", from: "X"), "", ""),
            (WithPost("B", from: "b"), "fixed", "Post B cannot be its own return."),
            (WithPost(""), "fixed", "Write the mark of each post."),
            (WithPost("B", volts: "99"), "fixed", "Volts must be 0.5 to 60."),
            (One with { Posts = [new() { Post = "D", FedFrom = "X" }] }, "fixed", "No post has this mark."),
            (One with { Direction = "reverses" }, "direction", "Say first that DC comes out."),
            (One with { Breaker = "Z" }, "breaker", "The breaker cannot be there"),
            (One with { BreakerAmps = "900" }, "breaker", "Amps must be 0.05 to 200."),
            (One with { Breaker = "none", Lamp = "breaker" }, "lamp", "There is no breaker"),
            (One with { Lamp = "post", LampPost = "Z" }, "lamp", "No post has this mark."),
            (
                One with
                {
                    Runs = "steps",
                    Throttles =
                    [
                        new()
                        {
                            Post = "A",
                            Return = "U",
                            Steps = "8 6",
                        },
                    ],
                },
                "posts-1",
                "Each step must give more"
            ),
            (
                One with
                {
                    Runs = "steps",
                    Throttles =
                    [
                        new()
                        {
                            Post = "A",
                            Return = "U",
                            Steps = "one",
                        },
                    ],
                },
                "posts-1",
                "Write the volts of each step"
            ),
            (
                One with
                {
                    Runs = "steps",
                    Whistle = "each",
                    WhistleFrom = "winding",
                    Throttles =
                    [
                        new()
                        {
                            Post = "A",
                            Return = "U",
                            Steps = "6 8",
                        },
                    ],
                },
                "whistle-volts",
                "Nothing runs along the winding here"
            ),
            (new KindAnswers { Count = "0", Fixed = "none" }, "fixed", "No post is named yet."),
            (
                One with
                {
                    Runs = "unknown",
                    Breaker = "unknown",
                    Direction = "some",
                    Whistle = "each",
                    WhistleFrom = "unknown",
                },
                "breaker",
                "Too many things are open."
            ),
            (
                AskedUnits.Twin with
                {
                    Throttles = [new() { Post = "A", Return = "U" }, new() { Post = "a", Return = "U" }],
                },
                "posts-2",
                "Post A is named twice."
            ),
        };
        var data = new TheoryData<string, string, string>();
        foreach (var (answers, question, words) in all)
            data.Add(OwnType.Write(new OwnType(answers, null, null, [])), question, words);
        return data;
    }

    [Theory]
    [MemberData(nameof(Refused))]
    public void What_the_reader_refuses_is_said_at_its_question(string answers, string question, string words)
    {
        var problems = TypeDraft.Read(OwnType.Read(answers)!.Answers, AskedUnits.Id).Problems;
        if (question.Length == 0)
        {
            Assert.Empty(problems);
            return;
        }
        Assert.Equal(question, problems[0].Question);
        Assert.Contains(words, problems[0].Words, StringComparison.Ordinal);
        Assert.All(problems, p => Assert.DoesNotContain("blocks", p.Words, StringComparison.Ordinal));
    }
}
