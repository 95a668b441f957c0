using Ohmstead.Electrical.Reckoning.Deciding;

namespace Ohmstead.Electrical.Tests.Reckoning.Deciding;

/// <summary>Leads and plates: the fin against its own differential equation, junctions against published cases, limits against the law itself.</summary>
public class PartCoolingTests
{
    private static LeadCooling Leads(double millimetres, double joint) => new(10, millimetres, 1.3, 390, 15, joint, 125);

    /// <remarks>
    /// d²θ/dx² = (4h/(kd))·θ with θ(0) = 1 and −k·A·θ′(L) = joint·θ(L), solved by steps from the lug backwards: begun there with θ = 1 and its
    /// slope, the heat at the other end over the warmth there is G (Runge and Kutta, fourth order).
    /// </remarks>
    [Theory]
    [InlineData(12, 0.05)]
    [InlineData(40, 0)]
    [InlineData(5, 0.001)]
    [InlineData(200, 0.02)]
    public void A_lead_gives_off_what_its_equation_says(double millimetres, double joint)
    {
        var (k, d, h) = (390.0, 0.0013, 15.0);
        var (area, pull, steps) = (Math.PI * d * d / 4, 4 * 15 / (390 * 0.0013), 4000);
        var (theta, heat, dx) = (1.0, joint, millimetres / 1000 / steps);
        for (var n = 0; n < steps; n++)
        {
            // Away from the lug: θ rises by heat/(kA), heat by h·πd·θ.
            (double T, double Q) Slope(double t, double q) => (q / (k * area), h * Math.PI * d * t);
            var a = Slope(theta, heat);
            var b = Slope(theta + (dx / 2 * a.T), heat + (dx / 2 * a.Q));
            var c = Slope(theta + (dx / 2 * b.T), heat + (dx / 2 * b.Q));
            var e = Slope(theta + (dx * c.T), heat + (dx * c.Q));
            theta += dx / 6 * (a.T + (2 * b.T) + (2 * c.T) + e.T);
            heat += dx / 6 * (a.Q + (2 * b.Q) + (2 * c.Q) + e.Q);
        }
        Assert.Equal(4 * h / (k * d), pull, 1e-9);
        Assert.Equal((10 + (theta / heat)) / 2, Leads(millimetres, joint).KelvinPerWatt, 1e-7);
    }

    /// <remarks>Two leads side by side carry half each; one of no length gives its heat to the lug alone.</remarks>
    [Fact]
    public void Without_length_only_the_lug_cools() => Assert.Equal((10 + (1 / 0.05)) / 2, Leads(0, 0.05).KelvinPerWatt, 1e-12);

    [Theory]
    [InlineData(0.05, 1.318, "at-most")]
    [InlineData(0.001, 0.5, "at-least")]
    [InlineData(0.05, 0.5, "any")]
    [InlineData(0.05, 12, "none")]
    [InlineData(0.0001, 1.9, "none")]
    [InlineData(0.05, 0, "any")]
    public void The_length_at_the_limit_is_at_the_limit_and_the_rule_says_which_side_is_cooler(double joint, double watts, string rule)
    {
        var (said, millimetres) = Leads(12, joint).Lengths(45, watts);
        Assert.Equal(rule, said);
        double At(double length) => Leads(length, joint).JunctionCelsius(45, watts);
        if (rule is "any" or "none")
        {
            Assert.Null(millimetres);
            Assert.All(new[] { 0.1, 1, 10, 100, 1000 }, length => Assert.Equal(rule == "any", At(length) <= 125));
            return;
        }
        Assert.Equal(125, At(millimetres!.Value), 1e-6);
        Assert.Equal(rule == "at-most", At(millimetres.Value * 0.9) < 125);
        Assert.Equal(rule == "at-least", At(millimetres.Value * 1.1) < 125);
    }

    [Fact]
    public void A_place_hotter_than_the_junction_may_be_is_never_cool_enough() =>
        Assert.Equal(("none", null), Leads(12, 0.05).Lengths(126, 0));

    [Theory]
    [InlineData("4.12")]
    [InlineData("4.13")]
    [InlineData("4.14")]
    public void A_junction_is_as_warm_as_published(string id)
    {
        var p = Published.Case("heat", id);
        // A plate of this area by one face gives off exactly these kelvin per watt to the air.
        var plate = new PlateCooling(
            p.Given("junctionKelvinPerWatt"),
            1e4 / (10 * p.Given("airKelvinPerWatt")),
            false,
            10,
            p.Expected("junctionCelsius")
        );
        p.Agrees("junctionCelsius", plate.JunctionCelsius(p.Given("insideCelsius"), p.Expected("watts")), 0.1);
        // The published watts are those at the limit: the least plate is this plate.
        Assert.Equal(
            plate.PlateSquareCentimetres,
            plate.LeastSquareCentimetres(p.Given("insideCelsius"), p.Expected("watts"))!.Value,
            0.002 * plate.PlateSquareCentimetres
        );
    }

    [Fact]
    public void The_least_plate_is_at_the_limit_and_half_of_it_by_both_faces()
    {
        var one = new PlateCooling(2, 50, false, 10, 125);
        var least = one.LeastSquareCentimetres(45, 3)!.Value;
        Assert.Equal(125, (one with { PlateSquareCentimetres = least }).JunctionCelsius(45, 3), 1e-9);
        Assert.Equal(least / 2, (one with { IsBothFaces = true }).LeastSquareCentimetres(45, 3)!.Value, 1e-9);
        Assert.Null(one.LeastSquareCentimetres(45, 41));
        Assert.Equal(0, one.LeastSquareCentimetres(45, 0));
    }
}
