using Ohmstead.Workshop.Kinds;

namespace Ohmstead.Workshop.Tests.Kinds;

public class SheetPlacesTests
{
    private static PlacedProblem First(string text) => SheetText.Read(text).Problems[0];

    [Fact]
    public void A_sound_text_has_no_problem() => Assert.NotNull(SheetText.Read(Kind.Text).Sheet);

    [Fact]
    public void A_wrong_value_is_told_at_its_line_and_column()
    {
        var found = First(Kind.Text.Replace("\"ohms\": 0.1", "\"ohms\": \"Ω\"", StringComparison.Ordinal));
        Assert.Equal("$.elements[1].ohms", found.Problem.Path);
        Assert.Equal(8, found.Line);
        Assert.Equal('"', found.LineText[found.Column - 1 - 4]);
        Assert.StartsWith("\"Ω\"", found.LineText[(found.Column - 1 - 4)..], StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_field_is_told_at_what_it_is_missing_in()
    {
        var found = First(Kind.Text.Replace("\"turns\": 50, ", "", StringComparison.Ordinal));
        Assert.Equal("$.elements[1].turns", found.Problem.Path);
        Assert.Equal(8, found.Line);
    }

    [Fact]
    public void What_is_no_JSON_is_told_where_the_reading_stopped()
    {
        var found = First(Kind.Text.Replace("\"readings\": [", "\"readings\": [ oops", StringComparison.Ordinal));
        Assert.Equal(10, found.Line);
    }

    [Fact]
    public void An_empty_text_is_told_at_its_start() => Assert.Equal((1, 1), (First("").Line, First("").Column));

    [Fact]
    public void Letters_before_count_as_letters_not_as_bytes()
    {
        var text = Kind
            .Text.Replace("\"title\": \"A pair\"", "\"title\": \"Ωµ😀\", \"cores\": 5", StringComparison.Ordinal)
            .Replace("  \"cores\": [ {", "  \"x\": [ {", StringComparison.Ordinal);
        var found = SheetText.Read(text).Problems.First(p => p.Problem.Path == "$.cores");
        Assert.Equal(3, found.Line);
        Assert.Equal(text.Split('\n')[2].IndexOf('5', StringComparison.Ordinal) + 1, found.Column);
    }
}
