using Bunit;
using Ohmstead.App.Screens.Types;
using Ohmstead.Workshop.Asking;

namespace Ohmstead.App.Tests.Screens;

/// <summary>What is typed at a question about one throttle is that throttle's.</summary>
public sealed class AnswerBoxesTests
{
    private static readonly KindAnswers Two = new()
    {
        Count = "2",
        Range = KindAnswers.Differ,
        Throttles = [new() { Range = "each", RangeVolts = "3" }, new() { Range = "each" }],
    };

    [Theory]
    [InlineData("range-1", "3", "4", "")]
    [InlineData("range-2", "", "3", "4")]
    public async Task The_volts_of_a_range_lever_are_its_own(string question, string shown, string first, string second)
    {
        await using var context = new BunitContext();
        var answers = Two;
        var boxes = context.Render<AnswerBoxes>(p =>
            p.Add(s => s.Question, question)
                .Add(s => s.Answers, Two)
                .Add(
                    s => s.Set,
                    now =>
                    {
                        answers = now;
                        return Task.CompletedTask;
                    }
                )
        );
        Assert.Equal(shown, boxes.Find("#a-range").GetAttribute("value") ?? "");
        boxes.Find("#a-range").Change("4");
        Assert.Equal((first, second, ""), (answers.Throttle(0).RangeVolts, answers.Throttle(1).RangeVolts, answers.RangeVolts));
    }
}
