using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Tests.Diagnosis.WireBench;

namespace Ohmstead.Electrical.Tests.Diagnosis.Observed;

/// <summary>What was read on two resistances and a leak, one more that jumped: on the meter's scale, by hand.</summary>
public class EvidenceTests
{
    /// <summary>A meter of which half of the limit is one error of all its ohms.</summary>
    private static readonly Meter HalfShared = new(Meter.Usual.Errors.SetItem(Quantity.Ohms, new(0.8, 0.05, 0.5, 0)));

    private readonly Pieces pieces;
    private readonly Evidence evidence;

    public EvidenceTests()
    {
        var unit = new SheetDraft()
            .Resistor("one", "a", "g", 10)
            .Resistor("two", "b", "g", 20)
            .Wire("third", "c", "d", 0.1)
            .Element("insulation", "ins", "a", "case", new { ohms = 1e9 })
            .Reading("one", "ohms", ["a", "g"])
            .Reading("leak", "insulation-ohms", ["a", "case"])
            .Reading("third", "ohms", ["c", "d"])
            .Reading("two", "ohms", ["b", "g"])
            .Unit();
        var jumped = Value(unit, "third", 0) with { Outcome = Outcome.Jumps };
        pieces = new Pieces(unit, [Value(unit, "one", 10.3), OL(unit, "leak"), jumped, Value(unit, "two", 21)], meter: HalfShared);
        evidence = pieces.Evidence;
    }

    private Spread Spread(params double[] shift)
    {
        // One parameter moves both numbers, by 2 and by −1; another the second alone, by 3.
        var count = evidence.Set.Model.Parameters.Length;
        var slopes = new double[4 * count];
        (slopes[0], slopes[3 * count], slopes[(3 * count) + 1]) = (2, -1, 3);
        return evidence.SpreadOf(slopes, shift);
    }

    [Fact]
    public void Numbers_stand_at_their_value_on_the_scale_and_OL_at_the_limit()
    {
        Assert.Equal([0, 3], evidence.Numeric.ToArray());
        Assert.Equal(Math.Log(1 + (0.008 * 10.3 / 0.05)) / 0.008, evidence.Measured(0), 1e-9);
        Assert.Equal(evidence.Set.ToScale(1, 1e9), evidence.Measured(1), 1e-9);
        Assert.Equal([10.3, 0, 0, 21], Enumerable.Range(0, 4).Select(evidence.Value));
        Assert.Equal(1 / ((0.008 * 10.3) + 0.05), evidence.SlopeOfScale(0), 1e-9);
        Assert.Equal((0, 0), (evidence.SlopeOfScale(1), evidence.SlopeOfScale(2)));
        Assert.Equal([1], evidence.OverRange.Places.ToArray());
    }

    /// <summary>Half the limit in common and half each reading's own: (¼ + ¼)/3 of each, ¼/3 between them.</summary>
    [Fact]
    public void Readings_vary_together_by_what_moves_them_and_by_the_meter_s_common_error()
    {
        var covariance = Spread(0, 0, 0, 0).Gaussian.Covariance;
        Assert.Equal(4 + (0.5 / 3), covariance[0], 1e-12);
        Assert.Equal(1 + 9 + (0.5 / 3), covariance[3], 1e-12);
        Assert.Equal(-2 + (0.25 / 3), covariance[1], 1e-12);
        Assert.Equal(covariance[1], covariance[2]);
        var poor = evidence.On(evidence.Bench with { ErrorVariance = 9 }).SpreadOf(Spread(0, 0, 0, 0).Slopes, [0, 0, 0, 0]);
        Assert.Equal(-2 + (9 * 0.25 / 3), poor.Gaussian.Covariance[1], 1e-12);
    }

    [Fact]
    public void A_free_size_widens_them_along_its_direction()
    {
        var spread = Spread(0.1, 0.2, 0.3, 0.4);
        var free = evidence.Free(
            spread,
            [
                [3, 9, 9, -2],
                [0.5, 9, 9, 0],
            ],
            0.25
        );
        Assert.Equal(spread.Gaussian.Covariance[0] + ((9 + 0.25) / 16), free.Gaussian.Covariance[0], 1e-12);
        Assert.Equal(spread.Gaussian.Covariance[1] - (6 / 16.0), free.Gaussian.Covariance[1], 1e-12);
        Assert.Equal(spread.Gaussian.Covariance[3] + (4 / 16.0), free.Gaussian.Covariance[3], 1e-12);
        Assert.Equal(spread.Shift, free.Shift);
        Assert.Same(spread, evidence.Free(spread, [], 0.25));
    }

    /// <summary>The largest difference, and none between two places that are both above the range.</summary>
    [Fact]
    public void Two_predictions_are_apart_by_their_largest_difference_as_the_meter_shows_them()
    {
        var top = evidence.Measured(1);
        Assert.Equal(4, evidence.Apart([10, top - 1, 5, 5], [14, top, 5, 8]), 1e-12);
        Assert.Equal(4, evidence.Apart([14, top, 5, 8], [10, top - 1, 5, 5]), 1e-12);
        Assert.Equal(0, evidence.Apart([10, top + 1, 5, 5], [10, top + 60, 5, 5]), 1e-12);
        Assert.Equal(2, evidence.Apart([10, top - 2, 5, 5], [10, top + 60, 5, 5]), 1e-9);
    }

    /// <summary>Three deviations of √(4 + ½/3) on either side of what was read, the shift of the mean counted.</summary>
    [Fact]
    public void A_prediction_within_three_deviations_is_near()
    {
        var spread = Spread(1, 0, 0, 0);
        var slack = 3 * Math.Sqrt(4 + (0.5 / 3));
        var read = evidence.Measured(0);
        Assert.True(evidence.IsNear(0, read - 1 + slack - 0.01, spread));
        Assert.False(evidence.IsNear(0, read - 1 + slack + 0.01, spread));
        Assert.True(evidence.IsNear(0, read - 1 - slack + 0.01, spread));
        Assert.False(evidence.IsNear(0, read - 1 - slack - 0.01, spread));
    }

    /// <summary>A drift of the first resistor reaches some way up and down, that of the second moves the first reading not at all.</summary>
    [Fact]
    public void A_fault_explains_what_lies_within_its_reach()
    {
        var (spread, drift) = (Spread(0, 0, 0, 0), pieces.Class("one:drifted"));
        var slack = 3 * Math.Sqrt(4 + (0.5 / 3));
        var (down, up) = (drift.Curve[0][0], drift.Curve[^1][0]);
        Assert.True(down < -20 && up > 20);
        var read = evidence.Measured(0);
        Assert.True(evidence.CanExplain(drift, 0, read - up - slack + 0.01, spread));
        Assert.False(evidence.CanExplain(drift, 0, read - up - slack - 0.01, spread));
        Assert.True(evidence.CanExplain(drift, 0, read - down + slack - 0.01, spread));
        Assert.False(evidence.CanExplain(drift, 0, read - down + slack + 0.01, spread));
        Assert.True(evidence.CanExplain(drift, 0, read, spread));
        Assert.False(evidence.CanExplain(pieces.Class("two:drifted"), 0, read, spread));
    }

    [Fact]
    public void One_reading_by_itself_has_its_own_density()
    {
        var spread = Spread(0.5, 0, 0, 0);
        double[] predicted = [evidence.Measured(0) - 2, evidence.Measured(1) + 500, 0, 0];
        var variance = 4 + (0.5 / 3);
        var density = Math.Exp(-0.5 * 1.5 * 1.5 / variance) / Math.Sqrt(2 * Math.PI * variance);
        Assert.Equal(Math.Log((0.999 * density) + (0.001 / 300)), evidence.LogOfOne(0, predicted, spread), 1e-9);
        // What jumped has no value to be held against: the same whatever is expected of it.
        Assert.Equal(evidence.LogOfOne(2, [0, 0, 900, 0], spread), evidence.LogOfOne(2, predicted, spread));
        Assert.Equal(evidence.OverRange.LogChanceOf(1, predicted[1], 1.0 / 3), evidence.LogOfOne(1, predicted, spread), 1e-6);
    }

    [Fact]
    public void Two_that_are_exchanged_keep_their_places_and_change_what_was_noted()
    {
        var other = evidence.Exchanged(0, 3);
        Assert.Equal((21, 10.3), (other.Value(0), other.Value(3)));
        Assert.Equal(["one", "leak", "third", "two"], other.Taken.Select(t => t.Spec.Id));
        Assert.Equal((10.3, 21), (evidence.Value(0), evidence.Value(3)));
        var open = evidence.Exchanged(0, 1);
        Assert.Equal([1, 3], open.Numeric.ToArray());
        Assert.Equal([0], open.OverRange.Places.ToArray());
    }
}
