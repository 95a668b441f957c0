using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>Minutes of opening where a step is freed by one of several groups of others.</summary>
public class OpeningTests
{
    /// <summary>X is freed by A and B together (a minute each) or by C (five); Z by X or by D (four).</summary>
    private static readonly TypeSheet Sheet = Reference.Twin160 with
    {
        TakeApart = [Step("a", 1), Step("b", 1), Step("c", 5), Step("d", 4), Step("x", 1, ["a", "b"], ["c"]), Step("z", 1, ["x"], ["d"])],
    };

    private static TakeApartStep Step(string id, double minutes, params string[][] ways) =>
        Reference.Twin160.TakeApart[0] with
        {
            Id = id,
            After = [],
            AfterAny = [.. ways.Select(w => w.ToImmutableArray())],
            MinutesOut = minutes,
        };

    [Theory]
    [InlineData("x", "", 3)]
    // Half of a group frees nothing.
    [InlineData("x", "a", 2)]
    [InlineData("x", "a b", 1)]
    [InlineData("x", "c", 1)]
    // Over X it is four, over D five.
    [InlineData("z", "", 4)]
    [InlineData("z", "d", 1)]
    [InlineData("z x", "", 4)]
    [InlineData("d", "x", 4)]
    public void The_cheapest_group_that_is_whole_frees_a_step(string wanted, string opened, double minutes) =>
        Assert.Equal(
            minutes,
            Gates.OpeningMinutes(Sheet, wanted.Split(' '), opened.Split(' ', StringSplitOptions.RemoveEmptyEntries)),
            1e-12
        );
}
