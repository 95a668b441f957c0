using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Findings;

/// <summary>A doubted check comes first, worth what waits for it; the ranking of the rest is kept.</summary>
public class NextInOrderTests
{
    private static ReadingSpec Spec(string id) => OnTheBench.Sheet.FindReading(id)!;

    private static string[] Of(params string[] doubted)
    {
        var readings = new OnTheBench().ColdGates().Read("lamp-60", 105).Readings;
        var result = new DiagnosisResult(0, [], [], [], [], [], true, [new(Spec("ohms-left"), 0.2, 1, []), new(Spec("left-full"), 0.9, 2, ["blades"])], new SearchEffort(1, 1, 1, SearchStop.Complete));
        readings = readings with { Doubts = new([.. doubted], 0) };
        return [.. NextInOrder.Of(OnTheBench.Sheet, readings, result).Select(n => FormattableString.Invariant($"{n.Spec.Id} {n.Bits} {string.Join(',', n.BlockedBy)}"))];
    }

    [Fact]
    public void Nothing_doubted_leaves_the_ranking() => Assert.Equal(["ohms-left 0.2 ", "left-full 0.9 blades"], Of());

    [Fact]
    public void A_doubted_check_is_first_and_worth_what_it_unlocks() =>
        Assert.Equal(["blades 0.9 ", "ohms-left 0.2 ", "left-full 0.9 blades"], Of("blades"));

    /// <summary>The lamp is on mains: where its cold check is doubted too, that comes first and the lamp last.</summary>
    [Fact]
    public void A_doubted_check_on_mains_waits_for_the_doubted_cold_one() =>
        Assert.Equal(["blades 0.9 ", "ohms-left 0.2 ", "left-full 0.9 blades", "lamp-60 0 blades"], Of("blades", "lamp-60"));

    [Fact]
    public void A_doubted_reading_that_is_no_check_locks_nothing() => Assert.Equal(["ohms-left 0.2 ", "left-full 0.9 blades"], Of("left-load"));
}
