using System.Text.Json.Nodes;
using MathNet.Numerics.Distributions;

namespace Ohmstead.Electrical.Tests.Reckoning.Deciding;

/// <summary>The drawer: laws of demand against plain sums, orders, kits and donors.</summary>
public class StockTests
{
    private static JsonObject Ask(string items, string rest = "") => Asked.Answer($"\"question\": \"stock\", \"items\": [{items}]{rest}");

    private static JsonNode Item(string fields, string rest = "") => Ask($"{{ \"id\": \"x\", {fields} }}", rest).At("items[0]")!;

    /// <remarks>Poisson 4.2, 1.0 and 0.5 in the lead time at 95 %: 8, 3 and 2, as any table of the Poisson law has it.</remarks>
    [Theory]
    [InlineData(4.2, 8)]
    [InlineData(1.0, 3)]
    [InlineData(0.5, 2)]
    public void It_is_ordered_again_at_the_least_number_that_lasts(double mean, int reorderAt)
    {
        var answer = Item(FormattableString.Invariant($"\"perYear\": {mean * 10}, \"leadDays\": 36.525, \"onHand\": {reorderAt + 1}"));
        Assert.Equal(reorderAt, answer.Number("reorderAt"));
        Assert.Equal(mean, answer.Number("leadDemandMean"), 1e-9);
        Assert.Equal((false, 0), (answer.At("orderNow")!.GetValue<bool>(), answer.Number("orderQuantity")));
        Assert.Equal(100 * (1 - new Poisson(mean).CumulativeDistribution(reorderAt + 1)), answer.Number("runOutPercent"), 1e-9);
    }

    /// <remarks>By plain sums of the mixture: 12 used in 0.6 years, 21 days or one in ten 60; both with the review's 30 days for what is ordered.</remarks>
    [Fact]
    public void A_history_with_late_orders_is_the_mixture_of_two_negative_binomials()
    {
        var answer = Item(
            "\"history\": { \"used\": 11, \"years\": 0.5 }, \"prior\": { \"used\": 1, \"years\": 0.1 }, \"leadDays\": 21, \"late\": { \"days\": 60, \"percent\": 10 }, \"onHand\": 3, \"servicePercent\": 90"
        );
        double Above(int k, double more)
        {
            double One(double days) =>
                1 - Enumerable.Range(0, k + 1).Sum(n => new NegativeBinomial(12, 0.6 / (0.6 + (days / 365.25))).Probability(n));
            return (0.9 * One(21 + more)) + (0.1 * One(60 + more));
        }
        int Least(double more) => Enumerable.Range(0, 100).First(k => Above(k, more) <= 0.1);
        Assert.Equal(20, answer.Number("perYear"), 1e-9);
        Assert.Equal(20 * 24.9 / 365.25, answer.Number("leadDemandMean"), 1e-9);
        Assert.Equal(Least(0), answer.Number("reorderAt"));
        Assert.Equal(100 * Above(3, 0), answer.Number("runOutPercent"), 1e-9);
        Assert.True(answer.At("orderNow")!.GetValue<bool>());
        Assert.Equal(Least(30) - 3, answer.Number("orderQuantity"));
    }

    [Fact]
    public void A_history_without_a_prior_begins_with_half_a_use() =>
        Assert.Equal(4.5 / 2, Item("\"history\": { \"used\": 4, \"years\": 2 }, \"leadDays\": 10, \"onHand\": 9").Number("perYear"), 1e-12);

    [Fact]
    public void Planned_jobs_reserve_their_parts_and_donors_lend_what_is_missing()
    {
        var answer = Ask(
            """
            { "id": "roller", "perYear": 1, "leadDays": 1, "onHand": 3, "onOrder": 4 }, { "id": "rivet", "perYear": 0, "leadDays": 20, "onHand": 2 }, { "id": "knob", "perYear": 0, "leadDays": 20, "onHand": 7 }
            """,
            """
            , "kits": [ { "id": "rollers", "needs": { "roller": 2, "rivet": 1 } }, { "id": "arms", "needs": { "rivet": 3 } } ],
            "planned": [ { "kit": "rollers", "count": 2 }, { "kit": "arms", "count": 1 } ], "donors": [ { "tag": "D-1", "offers": { "rivet": 2 } }, { "tag": "D-2", "offers": { "rivet": 1, "roller": 5 } } ]
            """
        );
        // Rollers: 4 reserved, 3 there, 4 ordered. Rivets: 5 reserved, 2 there.
        Assert.Equal(
            (3, 1, 1),
            (answer.Number("items[0].position"), answer.Number("items[0].missing"), answer.Number("items[0].fromDonors"))
        );
        Assert.Equal(
            (-3, 3, 3),
            (answer.Number("items[1].position"), answer.Number("items[1].missing"), answer.Number("items[1].fromDonors"))
        );
        Assert.Equal(
            (7, 0, 0),
            (answer.Number("items[2].position"), answer.Number("items[2].missing"), answer.Number("items[2].fromDonors"))
        );
        Assert.Equal((100, 3), (answer.Number("items[1].runOutPercent"), answer.Number("items[1].orderQuantity")));
        Assert.Equal(["arms", "rollers"], answer.At("items[1].usedIn")!.AsArray().Select(k => k!.GetValue<string>()));
        Assert.Empty(answer.At("items[2].usedIn")!.AsArray());
        Assert.Equal((1, 0), (answer.Number("kits[0].jobsPossible"), answer.Number("kits[1].jobsPossible")));
        Assert.Equal((false, 0), (answer.At("items[2].orderNow")!.GetValue<bool>(), answer.Number("items[2].runOutPercent")));
    }

    /// <remarks>Nobody uses any: 0 lasts for certain, and at a position of 0 one is ordered all the same.</remarks>
    [Fact]
    public void At_the_reorder_point_one_is_ordered_at_least()
    {
        var answer = Item("\"perYear\": 0, \"leadDays\": 20, \"onHand\": 0");
        Assert.Equal(
            (0, true, 1, 0),
            (
                answer.Number("reorderAt"),
                answer.At("orderNow")!.GetValue<bool>(),
                answer.Number("orderQuantity"),
                answer.Number("runOutPercent")
            )
        );
    }

    /// <remarks>The normal law with a continuity correction, from memory: 10,000 ± 100, 95 % at 1.645.</remarks>
    [Fact]
    public void Large_numbers_are_summed_as_well()
    {
        var answer = Item("\"perYear\": 10000, \"leadDays\": 365.25, \"onHand\": 20000");
        Assert.Equal(10_164.5, answer.Number("reorderAt"), 1.5);
    }

    [Theory]
    [InlineData("\"leadDays\": 1, \"onHand\": 1", "$.items[0].perYear")]
    [InlineData("\"history\": { \"used\": 3, \"years\": 0 }, \"leadDays\": 1, \"onHand\": 1", "$.items[0].history.years")]
    [InlineData("\"perYear\": 3, \"servicePercent\": 100, \"leadDays\": 1, \"onHand\": 1", "$.items[0].servicePercent")]
    [InlineData("\"perYear\": 3, \"leadDays\": 1", "$.items[0].onHand")]
    [InlineData("\"perYear\": 3, \"leadDays\": 1, \"onHand\": 1, \"late\": { \"days\": 5 }", "$.items[0].late.percent")]
    public void An_item_that_cannot_be_is_refused(string fields, string path) =>
        Assert.Equal([path], Asked.Refused($"\"question\": \"stock\", \"items\": [ {{ \"id\": \"x\", {fields} }} ]"));

    [Fact]
    public void Unknown_items_and_kits_are_refused_with_their_paths() =>
        Assert.Equal(
            ["$.kits[0].needs.rivet", "$.planned[0].kit", "$.donors[0].offers.bolt"],
            Asked.Refused(
                """
                "question": "stock", "items": [ { "id": "x", "perYear": 3, "leadDays": 1, "onHand": 1 } ], "kits": [ { "id": "k", "needs": { "x": 1, "rivet": 2 } } ],
                "planned": [ { "kit": "j", "count": 1 } ], "donors": [ { "tag": "D", "offers": { "bolt": 1 } } ]
                """
            )
        );
}
