using Ohmstead.Electrical.Diagnosis.Hypotheses;

namespace Ohmstead.Electrical.Tests.Diagnosis.Hypotheses;

/// <summary>The curve through solved points, against what a Catmull–Rom cubic does to a line and to a parabola (closed form).</summary>
public class CurveShapeTests
{
    private static readonly double[] Shares = [0, 0.25, 0.5, 0.75, 1];

    [Theory]
    [InlineData(0)]
    [InlineData(0.1)]
    [InlineData(0.25)]
    [InlineData(0.6)]
    [InlineData(1)]
    public void A_straight_line_stays_straight_to_its_ends(double share) =>
        Assert.Equal(3 - (8 * share), At(x => 3 - (8 * x), share), 1e-12);

    /// <summary>Tangents of a parabola are its central differences, so that the cubic between two inner points is the parabola itself.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(0.5)]
    [InlineData(0.7)]
    public void Between_inner_points_a_parabola_is_hit(double share) => Assert.Equal(16 * share * share, At(x => 16 * x * x, share), 1e-12);

    /// <summary>At an end the slope of the outermost piece is repeated: of u² it is 1 at u = 0 and 2 at u = 1, and half-way a cubic with these
    /// slopes is at (0 + 1)/2 + (1 − 2)/8; between 3 and 4 they are 6 and 7.</summary>
    [Theory]
    [InlineData(0.125, 0.5 - (1.0 / 8))]
    [InlineData(0.875, 12.5 - (1.0 / 8))]
    public void At_an_end_the_outermost_slope_is_repeated(double share, double expected) =>
        Assert.Equal(expected, At(x => 16 * x * x, share), 1e-12);

    private static double At(Func<double, double> curve, double share)
    {
        var into = new double[1];
        CurveShape.At(Shares, [.. Shares.Select(s => new[] { curve(s) })], share, into);
        return into[0];
    }
}
