using System.Text.Json.Nodes;
using MathNet.Numerics.Distributions;

namespace Ohmstead.Electrical.Tests.Reckoning.Deciding;

/// <summary>Batches: the exact test against all ways to deal, the rates against drawn gamma variables.</summary>
public class BatchTests
{
    private static JsonObject Ask(string batch, string others, string rest = "") =>
        Asked.Answer($"\"question\": \"batch\", \"batch\": {batch}, \"others\": {others}{rest}");

    /// <remarks>
    /// Fisher's tea tasting (from memory): 4 of 8 cups poured milk first, all 4 told: 1 in 70 by luck. With one mistaken: 17 in 70.
    /// </remarks>
    [Theory]
    [InlineData(4, 0, 1.0 / 70)]
    [InlineData(3, 1, 17.0 / 70)]
    public void By_luck_is_the_exact_test(int failed, int otherFailed, double chance)
    {
        FormattableString batch = $"{{ \"fitted\": 4, \"failed\": {failed}, \"years\": 1 }}",
            others = $"{{ \"fitted\": 4, \"failed\": {otherFailed}, \"years\": 1 }}";
        var answer = Ask(FormattableString.Invariant(batch), FormattableString.Invariant(others), ", \"batchesLookedAt\": 5");
        Assert.Equal(100 * chance, answer.Number("chanceByLuckPercent"), 1e-9);
        Assert.Equal(Math.Min(100, 500 * chance), answer.Number("chanceByLuckAllBatchesPercent"), 1e-9);
        Assert.Null(answer["chanceAgainstKnownPercent"]);
    }

    /// <remarks>At least 1 of 3 at 10 %: 1 − 0.9³.</remarks>
    [Fact]
    public void Against_a_known_share_it_is_the_binomial() =>
        Assert.Equal(
            100 * (1 - (0.9 * 0.9 * 0.9)),
            Ask(
                    "{ \"fitted\": 3, \"failed\": 1, \"years\": 1 }",
                    "{ \"fitted\": 4, \"failed\": 1, \"years\": 1 }",
                    ", \"knownPercent\": 10"
                )
                .Number("chanceAgainstKnownPercent"),
            1e-9
        );

    /// <remarks>Drawn by the second program: two gamma rates, how often one is above twice the other; 400,000 draws, three standard errors 0.3 points.</remarks>
    [Fact]
    public void Worse_by_a_factor_is_how_often_drawn_rates_are()
    {
        var answer = Ask(
            "{ \"fitted\": 9, \"failed\": 3, \"years\": 5.2 }",
            "{ \"fitted\": 64, \"failed\": 9, \"years\": 40 }",
            ", \"prior\": { \"failed\": 1, \"years\": 3 }, \"factor\": 2"
        );
        var dice = new Random(8);
        var (one, other) = (new Gamma(4, 8.2, dice), new Gamma(10, 43, dice));
        var worse = Enumerable.Range(0, 400_000).Count(_ => one.Sample() > 2 * other.Sample()) / 4000.0;
        Assert.Equal(worse, answer.Number("chanceWorseByFactorPercent"), 0.3);
        Assert.Equal((4 / 8.2, 10 / 43.0), (answer.Number("batchPerYear"), answer.Number("othersPerYear")));
    }

    /// <remarks>As many gamma–Poisson failures as the second program's negative binomial has: its mean, and its chance of none.</remarks>
    [Fact]
    public void More_to_come_is_the_negative_binomial_of_what_is_still_out()
    {
        var answer = Ask(
            "{ \"fitted\": 9, \"failed\": 3, \"years\": 5.2 }",
            "{ \"fitted\": 1, \"failed\": 0, \"years\": 1 }",
            ", \"aheadYears\": 0.5"
        );
        var law = new NegativeBinomial(3.5, 10.2 / (10.2 + 3));
        Assert.Equal(6, answer.Number("stillOut"));
        Assert.Equal(law.Mean, answer.Number("expectedMore"), 1e-9);
        Assert.Equal(100 * (1 - law.Probability(0)), answer.Number("chanceOfOneMorePercent"), 1e-9);
        Assert.Equal(
            0,
            Ask("{ \"fitted\": 9, \"failed\": 3, \"years\": 5.2 }", "{ \"fitted\": 1, \"failed\": 0, \"years\": 1 }", ", \"stillOut\": 0")
                .Number("chanceOfOneMorePercent")
        );
    }

    [Theory]
    [InlineData("", "suspect")]
    [InlineData(", \"suspectPercent\": 92", "watch")]
    [InlineData(", \"suspectPercent\": 92, \"watchPercent\": 91.5", "nothing stands out")]
    [InlineData(", \"factor\": 20", "nothing stands out")]
    public void The_verdict_follows_its_limits(string rest, string verdict) =>
        // Worse than twice: 91.3 %, as in tests/Reference/questions/batch.answer.json.
        Assert.Equal(
            verdict,
            Ask("{ \"fitted\": 9, \"failed\": 3, \"years\": 5.2 }", "{ \"fitted\": 64, \"failed\": 4, \"years\": 71 }", rest)
                .Text("verdict")
        );

    [Fact]
    public void What_cannot_be_is_refused() =>
        Assert.Equal(
            ["$.batch.failed", "$.batch.years", "$.others.fitted", "$.prior.failed", "$.factor"],
            Asked.Refused(
                """
                "question": "batch", "batch": { "fitted": 3, "failed": 4, "years": -1 }, "others": { "fitted": 2.5, "failed": 1, "years": 1 }, "prior": { "failed": 0 }, "factor": 0
                """
            )
        );
}
