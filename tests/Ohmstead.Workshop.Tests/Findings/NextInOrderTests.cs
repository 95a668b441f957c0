using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Findings;

/// <summary>A doubted check comes first, worth what waits for it; the ranking of the rest is kept.</summary>
public class NextInOrderTests
{
    private static ReadingSpec Spec(string id) => OnTheBench.Sheet.FindReading(id)!;

    private static string[] Of(OnTheBench bench, string[] doubted, params NextReading[] next)
    {
        var result = new DiagnosisResult(
            0,
            [],
            [],
            [],
            [],
            [],
            true,
            [.. next, new(Spec("ohms-left"), 0.2, 1, []), new(Spec("left-full"), 0.9, 2, [])],
            new SearchEffort(1, 1, 1, SearchStop.Complete)
        );
        var readings = bench.Readings with { Doubts = new([.. doubted], 0) };
        return
        [
            .. NextInOrder
                .Of(OnTheBench.Sheet, readings, result)
                .Select(n => FormattableString.Invariant($"{n.Spec.Id} {n.Bits} {string.Join(',', n.BlockedBy)}")),
        ];
    }

    private static OnTheBench Passed() => new OnTheBench().ColdGates().Read("lamp-60", 105);

    [Fact]
    public void Nothing_doubted_leaves_the_ranking() => Assert.Equal(["ohms-left 0.2 ", "left-full 0.9 "], Of(Passed(), []));

    [Fact]
    public void A_doubted_check_is_first_and_worth_what_it_unlocks() =>
        Assert.Equal(["blades 0.9 ", "ohms-left 0.2 ", "left-full 0.9 blades"], Of(Passed(), ["blades"]));

    /// <summary>The lamp is on mains: where its cold check is doubted too, it waits for that.</summary>
    [Fact]
    public void A_doubted_check_on_mains_waits_for_the_doubted_cold_one() =>
        Assert.Equal(
            ["blades 0.9 ", "ohms-left 0.2 ", "lamp-60 0.9 blades", "left-full 0.9 blades,lamp-60"],
            Of(Passed(), ["blades", "lamp-60"])
        );

    [Fact]
    public void A_slip_that_is_no_check_is_read_again_in_its_place_and_locks_nothing() =>
        Assert.Equal(
            ["left-load 0.5 ", "ohms-left 0.2 ", "left-full 0.9 "],
            Of(Passed().Read("left-load", 160), ["left-load"], new NextReading(Spec("left-load"), 0.5, 1, []))
        );

    /// <summary>A diagnosis still lists the first of two values of the lamp; the second fits, and nothing doubts it.</summary>
    [Fact]
    public void A_check_that_was_read_again_and_fits_is_not_asked_for_and_locks_nothing() =>
        Assert.Equal(
            ["ohms-left 0.2 ", "left-full 0.9 "],
            Of(Passed().Read("lamp-60", 106), [], new NextReading(Spec("lamp-60"), 0.5, 1, []))
        );

    /// <summary>The blades are read, a mains reading waits for its lamp; of the two that are open one is advised.</summary>
    [Fact]
    public void A_list_of_readings_begins_with_the_advice_and_ends_with_what_was_taken()
    {
        var bench = new OnTheBench().ColdGates();
        var offers = new[] { "blades", "left-full", "ohms-17", "ohms-right" }.Select(bench.Offer);
        NextAdvice[] advice = [new(new(Spec("ohms-right"), 0.5, 1, []), [])];
        Assert.Equal(["ohms-right", "ohms-17", "left-full", "blades"], NextAdvice.InOrder(advice, offers).Select(o => o.Spec.Id));
    }
}
