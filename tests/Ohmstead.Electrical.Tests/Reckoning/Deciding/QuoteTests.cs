using System.Text.Json.Nodes;
using MathNet.Numerics.Distributions;
using Ohmstead.Electrical.Reckoning.Deciding;

namespace Ohmstead.Electrical.Tests.Reckoning.Deciding;

/// <summary>Minutes of a job: closed forms of the log-normal, sums of correlated steps, stops, and the seed.</summary>
public class QuoteTests
{
    private static JsonObject Ask(string steps, string rest = "") =>
        Asked.Answer($"\"question\": \"quote\", \"ratePerHour\": 60, \"steps\": [{steps}]{rest}");

    private static string Step(string id, double minutes, string rest = "") =>
        FormattableString.Invariant($"{{ \"id\": \"{id}\", \"prior\": {{ \"minutes\": {minutes} }}{rest} }}");

    /// <remarks>No records: m = ln 20, κ = 2, s² = 0.25, so that the logarithm's spread is √(0.25·1.5).</remarks>
    [Fact]
    public void One_step_alone_has_the_quantiles_of_its_own_log_normal()
    {
        var answer = Ask(Step("a", 20), ", \"draws\": 200000");
        var law = new LogNormal(Math.Log(20), Math.Sqrt(0.375));
        Assert.Equal(20, answer.Number("steps[0].medianMinutes"), 1e-9);
        Assert.Equal(law.InverseCumulativeDistribution(0.9), answer.Number("steps[0].p90Minutes"), 1e-4 * 44);
        Assert.Equal(law.Mean, answer.Number("finished.minutes.mean"), 1e-9);
        Assert.Equal(law.Median, answer.Number("finished.minutes.p50"), 0.01 * law.Median);
        Assert.Equal(law.InverseCumulativeDistribution(0.9), answer.Number("finished.minutes.p90"), 0.015 * 44);
        // A dollar a minute.
        Assert.Equal(answer.Number("finished.minutes.p90"), answer.Number("finished.bill.p90"), 1e-9);
        Assert.Equal(answer.Number("all.minutes.p50"), answer.Number("finished.minutes.p50"));
    }

    /// <remarks>
    /// Records 10 and 40 (mean logarithm ln 20) on a prior of 20 worth 1 with no spread: κ = 3, ν = 4, Σ(x − x̄)² = 2·(ln 2)², nothing between x̄ and m0.
    /// </remarks>
    [Fact]
    public void Records_move_centre_and_spread_by_their_worth()
    {
        var law = new QuotedStep("a", 20, 0, 1, [10, 40], 100).Minutes();
        Assert.Equal(Math.Log(20), law.LogCentre, 1e-12);
        Assert.Equal(Math.Sqrt(2 * Math.Log(2) * Math.Log(2) / 4 * (4.0 / 3)), law.LogSpread, 1e-12);
        // One record at 80 against a prior of 20 worth 1: the middle is 40, and what lies between them is spread: ½·(ln 4)²/3.
        var moved = new QuotedStep("a", 20, 0, 1, [80], 100).Minutes();
        Assert.Equal(40, moved.MedianMinutes, 1e-9);
        Assert.Equal(Math.Sqrt(0.5 * Math.Log(4) * Math.Log(4) / 3 * 1.5), moved.LogSpread, 1e-12);
    }

    [Fact]
    public void Many_records_outweigh_the_prior()
    {
        var dice = new Random(5);
        var law = new LogNormal(Math.Log(33), 0.3, dice);
        var learned = new QuotedStep("a", 5, 0.5, 2, [.. Enumerable.Range(0, 4000).Select(_ => law.Sample())], 100).Minutes();
        Assert.Equal(33, learned.MedianMinutes, 0.5);
        Assert.Equal(0.3, learned.LogSpread, 0.01);
    }

    /// <remarks>Var = ΣΣ E_i·E_j·(e^(ρ_ij·s_i·s_j) − 1) of the drawn minutes, and the exact mean.</remarks>
    [Fact]
    public void The_sum_of_correlated_steps_has_the_mean_and_variance_of_its_closed_form()
    {
        var quote = new Quote(
            [.. new[] { 10, 25, 40 }.Select((m, n) => new QuotedStep(FormattableString.Invariant($"s{n}"), m, 0.4, 3, [], 100))],
            0.6,
            [],
            60,
            [],
            null,
            null,
            200_000,
            3
        );
        var laws = quote.Steps.Select(s => s.Minutes()).ToArray();
        var drawn = JobDraws.Of(quote, [.. laws]).WholeMinutes;
        var mean = laws.Sum(l => l.MeanMinutes);
        var variance = 0.0;
        for (var i = 0; i < 3; i++)
        for (var j = 0; j < 3; j++)
            variance +=
                laws[i].MeanMinutes * laws[j].MeanMinutes * (Math.Exp((i == j ? 1 : 0.6) * laws[i].LogSpread * laws[j].LogSpread) - 1);
        Assert.Equal(mean, drawn.Average(), 0.005 * mean);
        Assert.Equal(variance, drawn.Average(m => (m - mean) * (m - mean)), 0.03 * variance);
        Assert.Equal(mean, quote.Answer().Finished.Minutes.Mean!.Value, 1e-9);
    }

    /// <remarks>
    /// Fixed minutes (spread 0) of 30 and 60, a dollar a minute. One in four stops after the first, fee 15; of the rest one in three after the second,
    /// fee 25: half of all are finished. A part of 8 in half of the jobs.
    /// </remarks>
    [Fact]
    public void Stops_end_jobs_at_their_fee_and_count_the_minutes_so_far()
    {
        static string Fixed(string id, double m) =>
            FormattableString.Invariant($"{{ \"id\": \"{id}\", \"prior\": {{ \"minutes\": {m}, \"spread\": 0 }} }}");
        var answer = Ask(
            Fixed("a", 30) + "," + Fixed("b", 60),
            """
            , "parts": [ { "id": "p", "price": 8, "percent": 50 }, { "id": "q", "price": 2.5 } ], "draws": 40000, "seed": 9, "approveAbove": 20, "worthUpTo": 95,
            "stops": [ { "after": "b", "percent": 33.333333333333333, "fee": 25 }, { "after": "a", "percent": 25, "fee": 15 } ]
            """
        );
        Assert.Equal(25, answer.Number("stops[0].percent"), 1e-9);
        Assert.Equal(25, answer.Number("stops[1].percent"), 1e-9);
        Assert.Equal(50, answer.Number("finishedPercent"), 1e-9);
        Assert.Equal(90, answer.Number("finished.minutes.mean"), 1e-9);
        Assert.Equal(90, answer.Number("finished.minutes.p50"), 1e-9);
        Assert.Equal(90 + 2.5 + 4, answer.Number("finished.bill.mean"), 1e-9);
        Assert.Equal((0.25 * 30) + (0.75 * 90), answer.Number("all.minutes.mean"), 1e-9);
        Assert.Equal((0.25 * 15) + (0.25 * 25) + (0.5 * 96.5), answer.Number("all.bill.mean"), 1e-9);
        Assert.Equal(90, answer.Number("all.minutes.p90"), 1e-9);
        Assert.Equal(100.5, answer.Number("all.bill.p90"), 1e-9);
        // Above 20: all but those stopped first. Above 95: finished with the part.
        Assert.Equal(75, answer.Number("aboveLinePercent"), 0.8);
        Assert.Equal(25, answer.Number("aboveWorthPercent"), 0.8);
    }

    [Fact]
    public void A_step_that_is_seldom_needed_counts_by_its_share_and_its_stop_applies_all_the_same()
    {
        var answer = Ask(
            """{ "id": "a", "prior": { "minutes": 40, "spread": 0 }, "percent": 25 }""",
            """
            , "stops": [ { "after": "a", "percent": 50, "fee": 1 } ], "draws": 20000
            """
        );
        Assert.Equal(10, answer.Number("finished.minutes.mean"), 1e-9);
        Assert.Equal(50, answer.Number("stops[0].percent"), 1e-9);
        Assert.Equal((0, 40), (answer.Number("finished.minutes.p50"), answer.Number("finished.minutes.p90")));
    }

    [Fact]
    public void Where_every_job_is_stopped_nothing_is_said_of_finished_ones()
    {
        var answer = Ask(Step("a", 20), """, "stops": [ { "after": "a", "percent": 100, "fee": 20 } ], "draws": 1000""");
        Assert.Equal(0, answer.Number("finishedPercent"));
        Assert.Null(answer.At("finished.bill.p50"));
        Assert.Equal(20, answer.Number("all.bill.p90"));
        Assert.Equal((null, null), (answer["aboveLinePercent"], answer["aboveWorthPercent"]));
    }

    [Fact]
    public void The_same_seed_prints_the_same_and_another_something_else()
    {
        string Of(string seed) => Ask(Step("a", 20) + "," + Step("b", 5), $", \"draws\": 1000{seed}").ToJsonString();
        Assert.Equal(Of(", \"seed\": 4"), Of(", \"seed\": 4"));
        Assert.Equal(Of(""), Of(", \"seed\": 1"));
        Assert.NotEqual(Of(", \"seed\": 4"), Of(", \"seed\": 5"));
    }

    [Fact]
    public void A_fee_is_printed_to_the_digit_that_was_typed() =>
        Assert.Equal(
            "19.90",
            Ask(Step("a", 20), """, "stops": [ { "after": "a", "percent": 1, "fee": 19.90 } ], "draws": 1000""")
                .At("stops[0].fee")!
                .ToJsonString()
        );

    [Theory]
    [InlineData("", "", "$.steps")]
    [InlineData("{ \"id\": \"a\", \"prior\": { \"minutes\": 20 }, \"records\": [5, 0] }", "", "$.steps[0].records[1]")]
    [InlineData("{ \"id\": \"a\" }", "", "$.steps[0].prior")]
    [InlineData(
        "{ \"id\": \"a\", \"prior\": { \"minutes\": 20 } }",
        ", \"stops\": [ { \"after\": \"b\", \"percent\": 1, \"fee\": 1 } ]",
        "$.stops[0].after"
    )]
    [InlineData("{ \"id\": \"a\", \"prior\": { \"minutes\": 20 } }", ", \"correlation\": 1", "$.correlation")]
    [InlineData("{ \"id\": \"a\", \"prior\": { \"minutes\": 20 } }", ", \"correlation\": -0.1", "$.correlation")]
    [InlineData("{ \"id\": \"a\", \"prior\": { \"minutes\": 20 } }", ", \"draws\": 999", "$.draws")]
    [InlineData(
        "{ \"id\": \"a\", \"prior\": { \"minutes\": 20 } }",
        ", \"parts\": [ { \"id\": \"p\", \"price\": -1 } ]",
        "$.parts[0].price"
    )]
    public void What_cannot_be_is_refused(string steps, string rest, string path) =>
        Assert.Equal([path], Asked.Refused($"\"question\": \"quote\", \"steps\": [{steps}]{rest}"));
}
