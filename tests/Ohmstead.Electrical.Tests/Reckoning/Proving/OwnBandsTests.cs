using System.Globalization;
using System.Text.Json.Nodes;
using MathNet.Numerics.Distributions;

namespace Ohmstead.Electrical.Tests.Reckoning.Proving;

/// <summary>A reading against the shop's own sound units.</summary>
public class OwnBandsTests
{
    private static JsonNode Band(string history, double low, double high, string @new) =>
        Asked
            .Answer(
                FormattableString.Invariant(
                    $"\"question\": \"own-bands\", \"readings\": [ {{ \"id\": \"x\", \"history\": [{history}], \"generic\": {{ \"low\": {low}, \"high\": {high} }}, \"new\": {@new} }} ]"
                )
            )
            .At("readings[0]")!;

    /// <remarks>By another road: the predictive law of a normal-inverse-gamma, its t by Math.NET Numerics, on a linear scale.</remarks>
    [Fact]
    public void The_band_is_students_t_around_the_history_and_the_generic_band()
    {
        double[] y = [-1, 0.5, 2, 1.5];
        var band = Band(string.Join(", ", y.Select(v => v.ToString(CultureInfo.InvariantCulture))), -3, 3, "4");
        // One unit's worth of the mean at 0, four of the spread s0 = 3/1.96.
        var (n, mean, s0) = (4, y.Average(), 3 / 1.959964);
        var (kappa, alpha) = (1.0 + n, (4.0 + n) / 2);
        var beta = (4 / 2.0 * s0 * s0 / 2) + (0.5 * y.Sum(v => (v - mean) * (v - mean))) + (0.5 * n * mean * mean / kappa);
        var t = new StudentT(n * mean / kappa, Math.Sqrt(beta * (kappa + 1) / (alpha * kappa)), 2 * alpha);
        Assert.Equal(t.Location, band.Number("centre"), 1e-9);
        Assert.Equal(t.InverseCumulativeDistribution(0.975), band.Number("high"), 1e-6);
        Assert.Equal(t.InverseCumulativeDistribution(0.025), band.Number("low"), 1e-6);
        var chance = 2 * t.CumulativeDistribution((2 * t.Location) - 4);
        Assert.Equal(100 * chance, band.Number("chancePercent"), 1e-6);
        Assert.Equal(-Normal.InvCDF(0, 1, chance / 2), band.Number("sigma"), 1e-6);
    }

    [Fact]
    public void Of_five_and_more_one_that_lies_far_off_is_left_out_and_named()
    {
        var band = Band("10, 10.2, 9.9, 25, 10.1, \"OL\", 9.8", 8, 13, "10");
        Assert.Equal("[25]", band.At("leftOut")!.ToJsonString());
        Assert.Equal(5, band.At("count")!.GetValue<int>());
        // Of four nothing is.
        Assert.Equal("[]", Band("10, 10.2, 25, 10.1", 8, 13, "10").At("leftOut")!.ToJsonString());
    }

    [Theory]
    [InlineData("10, 10.1, 9.9, 10.2", "10", "usual")]
    [InlineData("10, 10.1, 9.9, 10.2", "14", "unusual, outside the kind's band")]
    [InlineData("10, 10.1, 9.9, 10.2, 10, 10.1, 9.9, 10, 10.1, 10, 10.2, 9.8, 10, 10.1", "12.5", "unusual")]
    [InlineData("10, 10.1", "10", "too few of this kind")]
    [InlineData("10, 10.1, 9.9", "\"OL\"", "not judged")]
    public void The_verdict_has_its_words(string history, string @new, string verdict) =>
        Assert.Equal(verdict, Band(history, 8, 13, @new).Text("verdict"));

    [Fact]
    public void A_normal_deviate_is_at_most_six_and_has_its_sign() =>
        Assert.Equal(-6, Band(string.Join(", ", Enumerable.Repeat("10, 10.1, 9.9", 30)), 9, 11, "2").Number("sigma"));

    /// <remarks>
    /// 1,500 invented types with the 95 % band drawn on: it holds 96 to 98 of 100 (that it is wider than it says is the price of few
    /// units). The generic band is the type's own 95 %; the shop's units lie in a narrower one somewhere inside.
    /// </remarks>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_band_holds_what_it_says_also_with_one_bad_unit_in_five_histories(bool someBad)
    {
        var (random, held) = (new Random(8), 0);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        const int types = 1500;
        for (var k = 0; k < types; k++)
        {
            // Between batches and within one, together the spread of the type.
            var (all, share) = (0.1, 0.25 + (0.5 * random.NextDouble()));
            var (batch, within) = (all * Math.Sqrt(1 - (share * share)) * Gauss(), all * share);
            var units = Enumerable.Range(0, 5 + random.Next(12)).Select(_ => 10 * Math.Exp(batch + (within * Gauss()))).ToList();
            if (someBad && k % 5 == 0)
                units[0] *= 2;
            var band = new Electrical.Reckoning.Proving.OwnReading(
                "x",
                [.. units],
                10 * Math.Exp(-1.96 * all),
                10 * Math.Exp(1.96 * all),
                10 * Math.Exp(batch + (within * Gauss()))
            );
            var answer = new Electrical.Reckoning.Proving.OwnBands([band]).Answer().Readings[0];
            held += band.New >= answer.Low && band.New <= answer.High ? 1 : 0;
        }
        Assert.InRange(100.0 * held / types, 95.5, 98.5);
    }

    [Theory]
    [InlineData("1, 2", 5, 5, "3", "$.readings[0].generic")]
    [InlineData("1, \"x\"", 5, 6, "3", "$.readings[0].history[1]")]
    [InlineData("1, true", 5, 6, "3", "$.readings[0].history[1]")]
    public void What_is_no_history_is_refused(string history, double low, double high, string @new, string path) =>
        Assert.Equal(
            [path],
            Asked.Refused(
                FormattableString.Invariant(
                    $"\"question\": \"own-bands\", \"readings\": [ {{ \"id\": \"x\", \"history\": [{history}], \"generic\": {{ \"low\": {low}, \"high\": {high} }}, \"new\": {@new} }} ]"
                )
            )
        );
}
