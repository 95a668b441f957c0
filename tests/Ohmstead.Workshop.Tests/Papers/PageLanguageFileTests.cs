using Ohmstead.Workshop.Papers;

namespace Ohmstead.Workshop.Tests.Papers;

/// <summary>Words files: what is taken, and which line is refused.</summary>
public class PageLanguageFileTests
{
    private const string Head = "language = Polski\ncode = pl\n";

    [Fact]
    public void A_line_is_the_english_an_equals_sign_and_the_other_words()
    {
        var read = PageLanguageFile
            .Read("polski", "\uFEFF// a remark\r\n\r\n" + Head + "Cord = Przewód = kabel\r\n# low = # za mało")
            .Required;
        Assert.Equal(("polski", "Polski", "pl"), (read.Id, read.Title, read.Code));
        Assert.Equal("Przewód = kabel", read.Words["Cord"]);
        Assert.Equal("Przewód = kabel", read.Words["cord"]);
        Assert.Equal("# za mało", read.Words["# low"]);
    }

    [Theory]
    [InlineData(Head + "Cord", "line 3: has no words on both sides")]
    [InlineData(Head + "Cord = ", "line 3: has no words on both sides")]
    [InlineData(Head + "Cord = a\n\ncord = b", "line 5: has “cord” a second time")]
    [InlineData(Head + "For {0}. = Dla.", "line 3: does not keep the marks of “For {0}.”")]
    [InlineData(Head + "For {0}. = Dla {0} {1}.", "line 3: does not keep the marks")]
    [InlineData(Head + "Cord = {", "line 3: does not keep the marks")]
    [InlineData(Head + "# low = za mało", "line 3: does not keep the marks")]
    [InlineData(Head + "worn * = stary", "line 3: does not keep the marks")]
    [InlineData(Head + "* of * = * z *", "line 3: has more than one *")]
    [InlineData("code = pl\nCord = a", "the file: does not say its language")]
    [InlineData("language = Polski", "the file: does not say its code")]
    public void A_wrong_line_is_named_and_nothing_is_taken(string text, string said)
    {
        var read = PageLanguageFile.Read("x", text);
        Assert.Null(read.Value);
        Assert.Contains(read.Problems, p => p.ToString().StartsWith(said, StringComparison.Ordinal));
    }

    [Fact]
    public void A_file_without_end_is_refused() =>
        Assert.Null(PageLanguageFile.Read("x", Head + new string('x', PageLanguageFile.MostLetters)).Value);
}
