using Ohmstead.Electrical.Fitting;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Kinds;

namespace Ohmstead.Workshop.Tests.Kinds;

public class KindTextTests
{
    [Fact]
    public void A_copy_differs_in_id_and_title_alone()
    {
        var copy = KindText.Copy(Kind.Text, "pair-2", "Ein \"Paar\"");
        var sheet = TypeSheetFile.Read(copy).Required;
        Assert.Equal(("pair-2", "Ein \"Paar\""), (sheet.Id, sheet.Title));
        Assert.Equal(Kind.Text, KindText.Copy(copy, "pair", "A pair"));
    }

    [Theory]
    [InlineData("", "")]
    [InlineData("{ half", "")]
    [InlineData("[1]", "")]
    [InlineData("{\"id\": 7}", "")]
    [InlineData("{\"id\": \"x-1\"}", "x-1")]
    public void The_id_of_a_text_is_read_or_empty(string text, string id) => Assert.Equal(id, KindText.IdOf(text));

    [Theory]
    [InlineData("twin-175", true)]
    [InlineData("", false)]
    [InlineData("../up", false)]
    [InlineData("<b>", false)]
    public void An_id_is_plain_letters(string id, bool isGood) => Assert.Equal(isGood, KindText.IdProblem(id).Length == 0);

    [Fact]
    public void A_free_id_is_the_next_number() => Assert.Equal("pair-3", KindText.FreeId("pair", ["pair", "PAIR-2"]));

    [Fact]
    public void Fitted_values_go_where_they_stand_and_what_is_not_determined_stays()
    {
        FittedParameter[] fitted =
        [
            new("elements.primary.ohms", 3.45678, 0.01, true),
            new("elements.secondary.ohms", 9, 5, false),
            new("cores.core.lossOhms", 1612.4, 20, true),
            new("elements.primary.turns", 301, 1, true),
            new("elements.primary.spread.ohms", 0.05, 0.01, true),
        ];
        var (text, put, left) = KindFit.Apply(Kind.Text, Kind.Sheet, fitted);
        var sheet = TypeSheetFile.Read(text).Required;
        Assert.Equal((2, 2), (put, left));
        Assert.Equal([3.457, 0.1], sheet.Windings.Select(w => w.Ohms));
        Assert.Equal(1612, sheet.Cores[0].LossOhms);
        Assert.Equal(Kind.Text, text.Replace("3.457", "3", StringComparison.Ordinal).Replace("1612", "1500", StringComparison.Ordinal));
    }
}
