namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>As <see cref="SmallLadderTests"/>, with more of the readings taken: the sum takes seconds then.</summary>
public class WholeLadderTests
{
    /// <summary>Readings taken, by their place in the sheet, and the seed of the unit.</summary>
    [Theory]
    [InlineData("0 1", 3)]
    [InlineData("1 2", 4, Traits = ["kind", "long"])]
    [InlineData("0 1 2", 5)]
    [InlineData("0 3 4", 6, Traits = ["kind", "long"])]
    [InlineData("0 1 2 3 4", 8, Traits = ["kind", "long"])]
    [InlineData("0 1 2 3 4", 9)]
    [InlineData("0 1 3", 10, Traits = ["kind", "long"])]
    [InlineData("0 1 2", 203)]
    public void Marginals_agree_with_the_sum_over_all_sets(string readings, int seed) => LadderDraw.Hold(readings, seed);
}
