using Ohmstead.Workshop.Dating;

namespace Ohmstead.Workshop.Tests.Dating;

/// <summary>Two benches entered years of one type apart: both are kept, and only what they say differently of one thing is asked about.</summary>
public class JoinedDatesTests
{
    private static readonly KindDates Base = new(
        1946,
        1955,
        [
            new("cord", "Cord", "", 60, "", [new("cloth", "cloth", null, 1950, 1), new("plastic", "plastic", 1951, null, 1)]),
            new("vents", "Vents", "", 3, "", [new("slots", "slots", null, 1949, 0)]),
        ]
    );

    private static KindDates Kept(KindDates dates) => KindDates.Read(KindDates.Write(dates))!;

    private static KindDates Changed(KindDates from, Func<KindDates, KindDates> change) => Kept(from.ChangedTo(change(from)));

    private static KindDates Look(KindDates dates, string detail, string look, string title, string first, string last) =>
        DatesEdit.PutVariant(dates, detail, look, new(title, first, last, "0")).Dates!;

    private static KindDates Both(KindDates one, KindDates other)
    {
        var both = Kept(one.Join(other));
        Assert.Equal(KindDates.Write(both), KindDates.Write(Kept(other.Join(one))));
        return both;
    }

    [Fact]
    public void Details_looks_and_years_of_both_are_kept_and_nothing_is_asked()
    {
        var here = Changed(Base, d => Look(d, "vents", "", "round holes", "1950", ""));
        here = Changed(here, d => DatesEdit.Made(d, d, "1944", "1955", "20", YearShares.Shown(d)).Dates!);
        var there = Changed(Base, d => DatesEdit.Add(d, DatesEdit.Usual.First(u => u.Id == "disc")).Dates!);
        there = Changed(there, d => Look(d, "disc", "", "copper", "", "1952"));
        there = Changed(there, d => Look(d, "cord", "cloth", "brown cloth", "", "1951"));
        var both = Both(here, there);
        Assert.Empty(DatesQuestion.Of(both));
        Assert.Equal((1944, 1955), (both.FirstYear, both.LastYear));
        Assert.Equal(["cord", "vents", "disc"], both.Details.Select(d => d.Id));
        Assert.Equal(["brown cloth: until 1951", "plastic: from 1951"], both.Details[0].Variants.Select(v => $"{v.Title}: {v.Years}"));
        Assert.Equal(["slots", "round holes"], both.Details[1].Variants.Select(v => v.Title));
        Assert.Equal("copper", Assert.Single(both.Details[2].Variants).Title);
    }

    [Fact]
    public void What_both_changed_differently_is_asked_and_the_answer_holds_at_every_bench()
    {
        var here = Changed(Base, d => Look(d, "cord", "cloth", "cloth", "", "1949"));
        var there = Changed(Base, d => Look(d, "cord", "cloth", "cloth", "", "1953"));
        var both = Both(here, there);
        var question = Assert.Single(DatesQuestion.Of(both));
        Assert.Equal("Cord, cloth: two benches say different things. Which is right?", question.Question);
        Assert.Equal(["Cloth: until 1953", "Cloth: until 1949"], question.Answers.Select(a => a.Words));
        foreach (var (answer, year) in question.Answers.Zip([1953, 1949]))
        {
            var answered = Kept(question.Answer(both, answer));
            // A bench that asks no more is asked nothing by those that did not hear of it.
            foreach (var joined in new[] { answered, Both(answered, here), Both(Both(answered, there), both) })
            {
                Assert.Empty(DatesQuestion.Of(joined));
                Assert.Equal(year, joined.Details[0].Variants.First(v => v.Id == "cloth").LastYear);
            }
        }
        // Two benches that answered differently are asked again.
        var again = Both(question.Answer(both, question.Answers[0]), question.Answer(both, question.Answers[1]));
        Assert.Equal(question.Key, Assert.Single(DatesQuestion.Of(again)).Key);
        // What is typed instead is an answer too.
        Assert.Empty(DatesQuestion.Of(Changed(both, d => Look(d, "cord", "cloth", "cloth", "", "1947"))));
    }

    [Fact]
    public void An_older_copy_changes_nothing_and_a_change_back_is_a_change()
    {
        var later = Changed(
            Changed(Base, d => DatesEdit.Made(d, d, "1940", "1955", "20", YearShares.Shown(d)).Dates!),
            d => DatesEdit.Made(d, d, "1946", "1955", "20", YearShares.Shown(d)).Dates!
        );
        var other = Changed(Base, d => DatesEdit.Made(d, d, "1948", "1955", "20", YearShares.Shown(d)).Dates!);
        Assert.Equal(1946, Both(later, Base).FirstYear);
        Assert.Empty(DatesQuestion.Of(Both(later, Base)));
        var question = Assert.Single(DatesQuestion.Of(Both(later, other)));
        Assert.Equal(["1948 to 1955", "1946 to 1955"], question.Answers.Select(a => a.Words));
    }

    /// <summary>The plug is swapped with the cord in 60 of 100, or alone in 15 of the others: 1 − 0.4 · 0.85 = 0.66.</summary>
    [Fact]
    public void What_another_is_swapped_with_goes_only_when_that_is_answered_and_the_other_then_stands_alone()
    {
        var without = Changed(Base, d => DatesEdit.Without(d, "cord"));
        var led = Changed(Base, d => DatesEdit.Add(d, new("plug", "Plug", "", 15, "cord", [])).Dates!);
        var both = Both(without, led);
        Assert.Equal(["cord", "plug", "vents"], both.Details.Select(d => d.Id));
        Assert.Equal(("cord", 15), (both.Details[1].With, both.Details[1].SwappedPercent));
        var question = Assert.Single(DatesQuestion.Of(both));
        Assert.Equal("Cord: one bench took it away, another still uses it. Does it stay?", question.Question);
        var stays = Kept(question.Answer(both, question.Answers[0]));
        Assert.Empty(DatesQuestion.Of(stays));
        Assert.Equal(("cord", 2), (stays.Details[1].With, stays.Details[0].Variants.Length));
        var gone = Kept(question.Answer(both, question.Answers[1]));
        Assert.Empty(DatesQuestion.Of(gone));
        Assert.Equal(["plug", "vents"], gone.Details.Select(d => d.Id));
        Assert.Equal(("", 66), (gone.Details[0].With, gone.Details[0].SwappedPercent));
        // A bench that did not hear of it asks no more.
        Assert.Equal(KindDates.Write(gone), KindDates.Write(Both(gone, led)));
    }

    [Fact]
    public void What_one_took_away_is_away_unless_the_other_changed_it()
    {
        var without = Changed(Base, d => DatesEdit.Without(d, "cord"));
        Assert.Equal(["vents"], Both(without, Base).Details.Select(d => d.Id));
        var more = Changed(Base, d => Look(d, "cord", "", "rubber", "1953", ""));
        var both = Both(without, more);
        Assert.Equal(["rubber"], both.Details.First(d => d.Id == "cord").Variants.Select(v => v.Title));
        var question = Assert.Single(DatesQuestion.Of(both));
        Assert.Equal(["It stays: Cord, swapped in 60 of 100 units", "Take it away"], question.Answers.Select(a => a.Words));
        var stays = Kept(question.Answer(both, question.Answers[0]));
        Assert.Empty(DatesQuestion.Of(stays));
        Assert.Contains(Both(stays, without).Details, d => d.Id == "cord");
        // It stays with all its looks, also with those that nobody touched.
        var looks = Base.Details.Single(d => d.Id == "cord").Variants.Select(v => v.Title).Append("rubber");
        Assert.Equal(looks.Order(), stays.Details.Single(d => d.Id == "cord").Variants.Select(v => v.Title).Order());
        var gone = Kept(question.Answer(both, question.Answers[1]));
        Assert.Equal(["vents"], gone.Details.Select(d => d.Id));
        Assert.Equal(["vents"], Both(gone, more).Details.Select(d => d.Id));
        Assert.Empty(DatesQuestion.Of(gone));
        // Put back, it is there again, and a bench that took it away before that does not take it once more.
        var back = Changed(without, d => DatesEdit.PutBack(d, Base, "cord").Dates!);
        Assert.Contains(Both(back, without).Details, d => d.Id == "cord");
    }

    [Fact]
    public void A_look_that_one_took_away_and_the_other_changed_is_asked_about()
    {
        var without = Changed(Base, d => DatesEdit.WithoutVariant(d, "cord", "cloth"));
        Assert.Equal(["plastic"], Both(without, Base).Details[0].Variants.Select(v => v.Id));
        var both = Both(without, Changed(Base, d => Look(d, "cord", "cloth", "cloth", "", "1952")));
        Assert.Equal(["Cloth: until 1952", "Take it away"], Assert.Single(DatesQuestion.Of(both)).Answers.Select(a => a.Words));
    }

    [Fact]
    public void Two_texts_without_a_record_are_joined_and_what_differs_is_asked()
    {
        var other = Base with { FirstYear = 1947, DonorPercent = 35, Details = [Base.Details[1] with { SwappedPercent = 8 }] };
        var both = Both(Base, other);
        Assert.Equal(2, both.Details.Length);
        Assert.Equal(["made", "detail:vents"], DatesQuestion.Of(both).Select(q => q.Key));
        // What only one has entered is taken as it is.
        Assert.Equal(35, both.DonorPercent);
    }

    [Fact]
    public void A_record_that_was_broken_by_hand_is_refused_and_one_that_was_overtaken_by_hand_follows()
    {
        var kept = Changed(Base, d => Look(d, "cord", "cloth", "cloth", "", "1949"));
        var text = KindDates.Write(kept);
        Assert.Null(KindDates.Read(text.Replace("\"key\": \"look:", "\"key\": \"lock:", StringComparison.Ordinal)));
        var byHand = KindDates.Read(
            KindDates.Write(kept with { Details = [Look(kept, "cord", "cloth", "cloth", "", "1944").Details[0], kept.Details[1]] })
        )!;
        Assert.Equal(1944, Both(byHand, kept).Details[0].Variants.First(v => v.Id == "cloth").LastYear);
        Assert.Empty(DatesQuestion.Of(Both(byHand, kept)));
    }
}
