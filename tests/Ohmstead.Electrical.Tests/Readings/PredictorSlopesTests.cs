using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>
/// How a reading moves with its parts, of two wires in a row read by a meter of ± 0.1 Ω and nothing else: its scale is ohms times ten, and a
/// part at z deviations is R·e^(σz). Expected values are these closed forms.
/// </summary>
public class PredictorSlopesTests
{
    private const double Narrow = 0.15;
    private const double Wide = 0.5;

    private static readonly BenchUnit Unit = new SheetDraft()
        .Element("wire", "narrow", "a", "b", new { ohms = 2, spread = new { ohms = Narrow } })
        .Element("wire", "wide", "b", "c", new { ohms = 3, spread = new { ohms = Wide } })
        .Reading("row", "ohms", ["a", "c"])
        .Unit();

    private static ReadingSet Set(double leadOhms = 0, double shared = 0)
    {
        var spec = Unit.Model.Sheet.Readings[0];
        return new ReadingSet(Unit.Model, Unit.Catalogue, [(spec, spec.State, new MeterError(0, 0.1, shared, leadOhms))]);
    }

    /// <summary>The narrow one by a tenth of a deviation on one side, without a bend; the wide one across ± one.</summary>
    [Fact]
    public void A_narrow_part_is_differenced_on_one_side_and_a_wide_one_across()
    {
        var (slopes, bends) = (new double[2], new double[2]);
        new Predictor(Set()).SlopesOf(0, [], 50, [true, true], slopes, bends);
        Assert.Equal(20 * (Math.Exp(0.1 * Narrow) - 1) / 0.1, slopes[0], 1e-4);
        Assert.Equal(0, bends[0]);
        Assert.Equal(30 * Math.Sinh(Wide), slopes[1], 1e-4);
        Assert.Equal(30 * (Math.Cosh(Wide) - 1), bends[1], 1e-4);
    }

    [Fact]
    public void What_is_not_asked_for_stays_as_it_was()
    {
        var (slopes, bends) = (new double[] { 7, 7 }, new double[] { 8, 8 });
        new Predictor(Set()).SlopesOf(0, [], 50, [false, true], slopes, bends);
        Assert.Equal((7, 8), (slopes[0], bends[0]));
        Assert.NotEqual(7, slopes[1]);
        new Predictor(Set()).SlopesAbout(0, [], 50, [1, 1], [1, 1], [true, false], slopes, bends);
        Assert.NotEqual(7, slopes[0]);
        Assert.Equal(30 * Math.Sinh(Wide), slopes[1], 1e-4);
    }

    /// <summary>About 1.2 times the wide part, by half a deviation: the slope is for one deviation, the bend for one step.</summary>
    [Fact]
    public void About_other_values_the_steps_are_as_given_and_the_factors_stay()
    {
        var (slopes, bends, factors) = (new double[2], new double[2], new[] { 0.9, 1.2 });
        var centre = (0.9 * 20) + (1.2 * 30);
        new Predictor(Set()).SlopesAbout(0, [], centre, factors, [1, 0.5], [true, true], slopes, bends);
        Assert.Equal([0.9, 1.2], factors);
        Assert.Equal(0.9 * 20 * Math.Sinh(Narrow), slopes[0], 1e-4);
        Assert.Equal(0.9 * 20 * (Math.Cosh(Narrow) - 1), bends[0], 1e-4);
        Assert.Equal(1.2 * 30 * Math.Sinh(0.5 * Wide) / 0.5, slopes[1], 1e-4);
        Assert.Equal(1.2 * 30 * (Math.Cosh(0.5 * Wide) - 1), bends[1], 1e-4);
    }

    [Fact]
    public void Factors_come_before_faults_and_each_unit_begins_as_the_nominal_one()
    {
        var (predictor, faults) = (new Predictor(Set()), Unit.Faults("wide:resistive=7"));
        using (var both = predictor.Assume(faults, [1.5, 4]))
            Assert.Equal(10 * (3 + 7), both.Scaled(0)!.Value, 1e-4);
        using (var scaled = predictor.Assume([], [1.5, 4]))
            Assert.Equal(3 + 12, scaled.Value(0)!.Value, 1e-5);
        using (var faulty = predictor.Assume(faults))
            Assert.Equal(2 + 7, faulty.Value(0)!.Value, 1e-5);
        Assert.Equal(50, predictor.OfSound(0), 1e-4);
        Assert.Equal((4, 4), (predictor.Solved, predictor.Work));
    }

    /// <summary>The leads of an ohmmeter are in what it shows; above 20 MΩ it shows OL; no path at all counts as 10¹⁸ Ω.</summary>
    [Fact]
    public void The_scale_has_the_leads_in_it_and_an_end()
    {
        Assert.Equal(10 * (5 + 0.2), new Predictor(Set(leadOhms: 0.2)).OfSound(0), 1e-4);
        Assert.Equal(10 * 20e6, Set().OverRangeOnScale(0), 1e-3);
        var apart = new SheetDraft().Resistor("r", "a", "b", 1).Resistor("s", "c", "d", 1).Reading("gap", "ohms", ["a", "c"]).Unit();
        var spec = apart.Model.Sheet.Readings[0];
        var predictor = new Predictor(new ReadingSet(apart.Model, apart.Catalogue, [(spec, spec.State)], Meter.Usual));
        using var sound = predictor.Assume();
        Assert.InRange(sound.Value(0)!.Value, 1e9, Solution.NoPathOhms);
    }
}
