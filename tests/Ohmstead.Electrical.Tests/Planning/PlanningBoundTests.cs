using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>The last sheet that is taken on and the first that is not, of parts in a row: counts in closed form (docs/methods/planning.md).</summary>
public class PlanningBoundTests
{
    private static TypeSheet Row(int count, string kind)
    {
        var draft = new SheetDraft();
        for (var n = 0; n < count; n++)
            draft.Element(kind, Name("e", n), Name("t", n), Name("t", n + 1), new { ohms = 5 });
        return draft.Reading("r", "ohms", [Name("t", 0), Name("t", count)]).Sheet();
    }

    private static string Name(string of, int number) => FormattableString.Invariant($"{of}{number}");

    /// <summary>n + 1 nets, each against every other both ways, in n parts: (n + 1)·n·n.</summary>
    [Theory]
    [InlineData(125, 126 * 125 * 125, false)]
    [InlineData(126, 127 * 126 * 126, true)]
    public void Continuity_checks_are_planned_up_to_two_million(int resistors, long work, bool isRefused)
    {
        var sheet = Row(resistors, "resistor");
        Assert.Equal(work, PlanningBound.OfContinuity(sheet));
        Assert.Equal(isRefused, PlanningBound.RefuseContinuity(sheet).Length > 0);
    }

    /// <summary>
    /// n wires: 2·n·(n − 1) swaps, 2n ends with n other places each, n·(n + 1)/2 bridges, n wires off and 2n besides; in n parts, each ten and a
    /// reading.
    /// </summary>
    [Theory]
    [InlineData(79, false)]
    [InlineData(80, true)]
    public void A_rewire_is_checked_up_to_twenty_five_million(int wires, bool isRefused)
    {
        var sheet = Row(wires, "wire");
        long n = wires;
        Assert.Equal(((2 * n * (n - 1)) + (2 * n * n) + (n * (n + 1) / 2) + (3 * n)) * n * 11, PlanningBound.OfRewire(sheet));
        Assert.Equal(isRefused, PlanningBound.RefuseRewire(sheet).Length > 0);
    }
}
