using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Tests.Words;

/// <summary>What a part is, by its name.</summary>
public class PartNounTests
{
    [Theory]
    [InlineData("Roller, carbon", "roller", true)]
    [InlineData("Carbon rollers (worn)", "roller", true)]
    [InlineData("Roller pin", "roller", false)]
    [InlineData("Roller pin", "pin", true)]
    [InlineData("Pilot lamp 14 V", "pilot lamp", true)]
    [InlineData("Lamp 14 V", "pilot lamp", true)]
    [InlineData("Supply cord, 18 AWG", "cord", true)]
    [InlineData("Diode 8 A", "silicon diode", true)]
    [InlineData("Post nut", "nut and washer", true)]
    [InlineData("Post nut", "posts", false)]
    [InlineData("Recorder", "cord", false)]
    [InlineData("Accordion", "cord", false)]
    [InlineData("Glass", "gla", false)]
    [InlineData("Pin", "", false)]
    public void The_last_word_before_comma_figure_or_bracket_says_it(string name, string other, bool isOne)
    {
        Assert.Equal(isOne, PartNoun.IsOne(name, other));
        Assert.Equal(isOne, PartNoun.IsOne(other, name));
    }
}
