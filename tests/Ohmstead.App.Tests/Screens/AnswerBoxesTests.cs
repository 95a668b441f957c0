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
        boxes.Do(() => boxes.Find("#a-range").Change("4"));
        Assert.Equal((first, second, ""), (answers.Throttle(0).RangeVolts, answers.Throttle(1).RangeVolts, answers.RangeVolts));
    }

    [Fact]
    public async Task The_volts_of_a_whistle_are_those_of_its_own_lever()
    {
        await using var context = new BunitContext();
        var answers = Two with
        {
            Whistle = "each",
            WhistleFrom = KindAnswers.Differ,
            Throttles = [new() { WhistleFrom = "own", WhistleVolts = "3" }, new() { WhistleFrom = KindAnswers.None }],
        };
        var boxes = context.Render<AnswerBoxes>(p =>
            p.Add(s => s.Question, "whistle-volts-1")
                .Add(s => s.Answers, answers)
                .Add(
                    s => s.Set,
                    now =>
                    {
                        answers = now;
                        return Task.CompletedTask;
                    }
                )
        );
        Assert.Equal("3", boxes.Find("#a-boost").GetAttribute("value"));
        boxes.Do(() => boxes.Find("#a-boost").Change("4"));
        Assert.Equal(("4", ""), (answers.Throttle(0).WhistleVolts, answers.WhistleVolts));
        // A whistle that adds no volts is asked for none; nor are all at once where each is asked.
        foreach (var question in (string[])["whistle-volts-2", "whistle-volts"])
        {
            boxes.Render(p => p.Add(s => s.Question, question));
            Assert.Empty(boxes.FindAll("input"));
        }
    }
}
