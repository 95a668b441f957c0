namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>
/// The diagnosis against an exhaustive sum: every set of the six faults of a small ladder, sizes on a dense grid, closed forms in
/// place of the solver. Marginals to 0.02, for units drawn by the chances and read with any of the readings.
/// </summary>
public class SmallLadderTests
{
    /// <summary>Readings taken, by their place in the sheet, and the seed of the unit.</summary>
    [Theory]
    [InlineData("0", 1)]
    [InlineData("0 3", 2)]
    [InlineData("3 4", 7)]
    public void Marginals_agree_with_the_sum_over_all_sets(string readings, int seed) => LadderDraw.Hold(readings, seed);

    [Fact]
    public void The_closed_forms_are_the_readings_of_the_sheet()
    {
        var nominal = SmallLadder.Parts.Select(p => p.Ohms).ToArray();
        var worn = new[] { 3, 10, 7.5, 0.01, 30 };
        foreach (var (id, of) in SmallLadder.Readings)
        {
            Assert.Equal(of(nominal), SmallLadder.Unit.ReadListed(id), 1e-9 * of(nominal));
            Assert.Equal(of(worn), SmallLadder.Unit.ReadListed(id, "w1:resistive=3", "w2:resistive=7.5", "r2:shorted"), 1e-9 * of(worn));
        }
    }
}
