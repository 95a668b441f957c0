using Ohmstead.Workshop.LookOver;

namespace Ohmstead.Workshop.Tests.LookOver;

public class ConditionWordsTests
{
    [Theory]
    [InlineData("", "", "")]
    [InlineData("stiff", "stiff", "")]
    [InlineData("stiff; near the plug", "stiff", "near the plug")]
    [InlineData("stiff and cold; so it seems", "stiff and cold", "so it seems")]
    [InlineData("stiffish", "", "stiffish")]
    [InlineData("like new; stiff", "", "like new; stiff")]
    public void Answer_and_own_words_are_told_apart_and_written_back(string words, string answer, string own)
    {
        var read = ConditionWords.Read(words, ["stiff", "stiff and cold"]);
        Assert.Equal(new ConditionWords(answer, own), read);
        Assert.Equal(words, read.ToString());
    }
}
