using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Searching;

namespace Ohmstead.Electrical.Tests.Diagnosis.Searching;

/// <summary>
/// A resistor of 300 Ω that drifts, with a poor wire of an ohm before it: the ohm is worth the less on the meter's scale the more the resistor
/// has, by 0.2 to 0.6 limits along its size. So little is solved at the ends and in the middle only, and drawn through between.
/// </summary>
public class CandidateCurveTests
{
    private readonly Pieces pieces;
    private readonly Neighbourhood place;
    private readonly Worker worker;
    private readonly FaultClass drift;

    public CandidateCurveTests()
    {
        var unit = new SheetDraft()
            .Wire("w", "a", "b", 0.01)
            .Resistor("r", "b", "c", 300)
            .Reading("first", "ohms", ["a", "b"])
            .Reading("both", "ohms", ["a", "c"])
            .Unit();
        pieces = new Pieces(unit, [WireBench.Value(unit, "first", 1), WireBench.Value(unit, "both", 301)]);
        (worker, drift) = (new Worker(pieces.Evidence.Set), pieces.Class("r:drifted"));
        var poor = pieces.Fitted(pieces.Set(("w:resistive", 0.2)));
        place = new Neighbourhood(poor, [], poor.Members, poor.Predicted, pieces.Evidence, worker);
    }

    private double[] Displaced(int point)
    {
        var there = pieces.Predict(place.Members.With(drift, drift.PointShares[point]));
        return [.. there.Select((v, r) => v - place.Origin[r])];
    }

    [Fact]
    public void Small_corrections_are_drawn_through_the_ends_and_the_middle()
    {
        var curve = CandidateCurve.Exact(place, drift, worker);
        Assert.Equal(7, curve.Length);
        foreach (var k in new[] { 0, 3, 6 })
            Assert.Equal(Displaced(k)[1], curve[k][1], 1e-9);
        foreach (var k in new[] { 1, 2, 4, 5 })
        {
            Assert.Equal(Displaced(k)[1], curve[k][1], 0.03);
            // Alone it does something else.
            Assert.True(Math.Abs(Displaced(k)[1] - drift.Curve[k][1]) > 0.07);
        }
        Assert.All(curve, at => Assert.Equal(0, at[0], 1e-9));
    }

    [Fact]
    public void So_they_cost_three_solutions()
    {
        var before = worker.Predictor.Solved;
        CandidateCurve.Exact(place, drift, worker);
        Assert.Equal(3, worker.Predictor.Solved - before);
    }

    /// <summary>A contact of up to 20 Ω before 30: with half an ohm more there its middle is off as well, by an eighth of a limit, and its end by a half.</summary>
    [Fact]
    public void So_they_are_where_the_middle_is_off_too()
    {
        var unit = new SheetDraft()
            .Selector("lever", "on", "off")
            .Wire("w", "a", "b", 0.01)
            .Element("switch", "contact", "b", "c", new { control = "lever", closedIn = new[] { "on" } })
            .Resistor("r", "c", "d", 30)
            .Reading("first", "ohms", ["a", "b"])
            .Reading("all", "ohms", ["a", "d"])
            .Unit();
        var other = new Pieces(unit, [WireBench.Value(unit, "first", 0.45), WireBench.Value(unit, "all", 30.5)]);
        var (poor, contact) = (other.Fitted(other.Set(("w:resistive", 0.05))), other.Class("contact:resistive"));
        var own = new Worker(other.Evidence.Set);
        var curve = CandidateCurve.Exact(new(poor, [], poor.Members, poor.Predicted, other.Evidence, own), contact, own);
        for (var k = 0; k < curve.Length; k++)
        {
            var there = other.Predict(poor.Members.With(contact, contact.PointShares[k]))[1] - poor.Predicted[1];
            Assert.Equal(there, curve[k][1], 0.05);
        }
        Assert.InRange(Math.Abs(curve[3][1] - contact.Curve[3][1]), 0.09, 0.2);
    }
}
