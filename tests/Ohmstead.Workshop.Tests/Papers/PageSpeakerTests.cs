using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Tests.Papers;

/// <summary>How the owner's page is said in another language, and what of it stays English.</summary>
public class PageSpeakerTests
{
    private static PageLanguage Of(params string[] lines) =>
        PageLanguageFile.Read("polski", "language = Polski\ncode = pl\n" + string.Join('\n', lines)).Required;

    [Fact]
    public void A_missing_key_is_named_once_and_its_english_stands()
    {
        var say = new PageSpeaker(Of("Cord = Przewód"));
        Assert.Equal("Przewód", say.Name("Cord"));
        Assert.Equal("Plug", say.Name("Plug"));
        Assert.Equal("For an owner.", say.Say($"For {"an owner"}."));
        Assert.Equal("Plug", say.Name("plug").Replace('p', 'P'));
        Assert.Equal(["Plug", "For {0}."], say.Missing);
    }

    [Theory]
    [InlineData("8.3 V low", "za mało o 8.3 V")]
    [InlineData("Post A, full throttle, 4 Ω load", "Zacisk A, pełny, obciążenie 4 Ω")]
    [InlineData("Post U-2: 8.3 V low", "Zacisk U-2: za mało o 8.3 V")]
    [InlineData("worn roller, post 2", "zużyta rolka, zacisk 2")]
    [InlineData("Worn roller", "Zużyta rolka")]
    [InlineData("roller of post 2", "rolka (zacisk 2)")]
    public void Numbers_and_marks_of_posts_stay_and_names_are_put_together(string english, string own)
    {
        var say = new PageSpeaker(
            Of(
                "# low = za mało o #",
                "post # = zacisk #",
                "full throttle = pełny",
                "# load = obciążenie #",
                "worn * = zużyta *",
                "roller = rolka",
                "{0} of {1} = {0} ({1})"
            )
        );
        Assert.Equal(own, say.Name(english));
        Assert.Empty(say.Missing);
    }

    [Fact]
    public void A_caution_keeps_the_english_beside_it_and_is_said_once_where_it_is_english_only()
    {
        var say = new PageSpeaker(Of("Never open it. = Nigdy nie otwierać."));
        Assert.Equal("Nigdy nie otwierać. / Never open it.", say.Caution(s => s.Name("Never open it.")));
        Assert.Equal(["Nigdy nie otwierać.", "Never open it.", "Hot."], say.Cautions(s => [s.Name("Never open it."), s.Name("Hot.")]));
        Assert.Equal("Never open it.", PageSpeaker.English.Caution(s => s.Name("Never open it.")));
    }

    /// <summary>Words that a person wrote are nobody's to translate; those that the shop's list proposed are known.</summary>
    [Fact]
    public void Words_of_a_person_stay_and_are_no_missing_key()
    {
        var say = new PageSpeaker(Of("good = dobry"));
        Assert.Equal(("dobry", "smells of mice"), (say.Known("good"), say.Known("smells of mice")));
        Assert.Empty(say.Missing);
    }

    [Fact]
    public void A_day_is_said_with_its_month_in_words()
    {
        var at = new DateTimeOffset(2026, 3, 14, 12, 0, 0, TimeSpan.Zero);
        Assert.Equal("14. März 2026", new PageSpeaker(PageLanguage.OfCarried("deutsch")).Day(at));
        Assert.Equal("14 Mar 2026", PageSpeaker.English.Day(at));
    }

    /// <summary>Every part, fault, post and reading of the types that come along, and every part and answer of the usual look-over.</summary>
    [Theory]
    [InlineData("solo-110")]
    [InlineData("twin-175")]
    [InlineData("step-230")]
    public void The_german_file_has_every_name_of_the_types_that_come_along(string type)
    {
        var sheet = OnTheBench.SheetOf($"demo/{type}.sheet.json");
        var say = new PageSpeaker(PageLanguage.OfCarried("deutsch"));
        foreach (var mode in new FaultCatalogue(new UnitModel(sheet)).Modes)
        {
            say.Name(PartNames.Headline(sheet, mode));
            say.Name(PartNames.Title(sheet, mode.Element));
        }
        foreach (var reading in sheet.Readings)
        {
            say.Name(reading.Title);
            if (reading.Quantity is Quantity.AcVolts or Quantity.DcVolts && !reading.IsOpenCase)
                say.Name(Sentences.Bare(PartNames.Terminal(sheet, reading.From)));
        }
        foreach (var item in Shop.Usual.LookOver)
        {
            say.Name(item.Title);
            foreach (var answer in item.Answers)
                say.Name(answer);
        }
        Assert.Empty(say.Missing);
    }
}
