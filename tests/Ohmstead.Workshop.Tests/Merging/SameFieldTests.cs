using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Merging;

namespace Ohmstead.Workshop.Tests.Merging;

public class SameFieldTests
{
    private static ReadingEntered Read(string id, double value) => new(id, Shown.Number(value), BenchState.AsSheet);

    [Fact]
    public void Two_values_of_one_reading_fill_in_the_same_field_and_those_of_two_do_not()
    {
        Assert.Equal(SameField.Of(Read("blades", 3.6)), SameField.Of(Read("blades", 3.8)));
        Assert.NotEqual(SameField.Of(Read("blades", 3.6)), SameField.Of(Read("left", 3.6)));
        Assert.NotEmpty(SameField.Of(Read("blades", 3.6)));
    }

    [Fact]
    public void A_judgement_a_deed_and_a_reading_are_fields_of_their_own_and_a_note_is_none()
    {
        Fact[] all = [new FindingJudged("roller", "worn", Judgement.Confirmed, ""), new TakenOff("cover", 1, 4, ""), Read("cover", 1)];
        Assert.Equal(all.Length, all.Select(SameField.Of).Distinct().Count(f => f.Length > 0));
        Assert.Equal(SameField.Of(all[0]), SameField.Of(new FindingJudged("roller", "worn", Judgement.Dismissed, "no")));
        Assert.Empty(SameField.Of(new Noted("a word")));
    }
}
