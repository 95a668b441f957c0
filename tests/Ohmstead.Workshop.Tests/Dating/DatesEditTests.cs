using System.Collections.Immutable;
using Ohmstead.Workshop.Dating;

namespace Ohmstead.Workshop.Tests.Dating;

/// <summary>Years and details as they are typed: kept where they are sound, refused with what to do where not.</summary>
public class DatesEditTests
{
    private static KindDates Begun()
    {
        var dates = KindDates.None;
        foreach (var usual in DatesEdit.Usual)
            dates = DatesEdit.Add(dates, usual).Dates!;
        return dates;
    }

    [Theory]
    [InlineData("1946", "1957", "12,5", "")]
    [InlineData("1946", "1946", "0", "")]
    [InlineData("", "1957", "20", "First year: enter a year.")]
    [InlineData("1946", "x", "20", "Last year: ")]
    [InlineData("1946", "1945", "20", "The last year is before the first.")]
    [InlineData("1946.5", "1950", "20", "First year: a whole year.")]
    [InlineData("1799", "1950", "20", "First year: Must be 1800 to 2200.")]
    [InlineData("1846", "2046", "20", "At most 200 years.")]
    [InlineData("1946", "1950", "101", "Parts of other units: Must be 0 to 100.")]
    public void Years_of_making(string first, string last, string donors, string problem)
    {
        var made = DatesEdit.Made(KindDates.None, KindDates.None, first, last, donors, YearShares.Shown(KindDates.None));
        Assert.StartsWith(problem, made.Problem, StringComparison.Ordinal);
        Assert.Equal(problem.Length == 0, made.Dates is not null);
        if (donors == "12,5")
            Assert.Equal((1946, 1957, 12.5), (made.Dates!.FirstYear, made.Dates.LastYear, made.Dates.DonorPercent));
    }

    [Fact]
    public void The_usual_details_are_those_of_the_trade_and_the_plug_comes_with_the_cord()
    {
        var dates = Begun();
        Assert.Equal(["cord", "plug", "vents", "screws", "post-nuts", "wire-cover", "disc", "plate"], dates.Details.Select(d => d.Id));
        Assert.Equal("cord", Assert.Single(dates.Details, d => d.With.Length > 0).With);
        // Without a cord the plug goes alone, and as often as with the cord or without: not missed by 60 and not by 15 of 100.
        var alone = DatesEdit.Add(KindDates.None, DatesEdit.Usual[1]).Dates!;
        Assert.Equal(("", 66.0), (alone.Details[0].With, alone.Details[0].SwappedPercent));
        // When the cord comes it goes with it; where a person said how often, it stays as it was said.
        var led = DatesEdit.Add(alone, DatesEdit.Usual[0]).Dates!;
        Assert.Equal([("plug", "cord", 15.0), ("cord", "", 60.0)], led.Details.Select(d => (d.Id, d.With, d.SwappedPercent)));
        var said = DatesEdit.Add(DatesEdit.Put(alone, "plug", "Plug", "", "20", "").Dates!, DatesEdit.Usual[0]).Dates!;
        Assert.Equal(("", 20.0), (said.Details[0].With, said.Details[0].SwappedPercent));
    }

    [Fact]
    public void A_detail_of_ones_own_gets_a_key_that_no_other_has()
    {
        var dates = Begun();
        foreach (var title in (string[])["Cord", " Cord ", "Ω!", "Another"])
            dates = DatesEdit.Add(dates, new DateDetail("", title, "", 10, "", [])).Dates!;
        Assert.Equal(["cord-2", "cord-3", "detail-ff585a42", "another-2"], dates.Details.Skip(8).Select(d => d.Id));
        Assert.Equal("Cord", dates.Details[9].Title);
        Assert.Equal("It needs a name.", DatesEdit.Add(dates, new DateDetail("", " ", "", 10, "", [])).Problem);
    }

    [Theory]
    [InlineData("plate", "cord", "")]
    [InlineData("plate", "", "")]
    [InlineData("plate", "plug", "It can be swapped with a detail that itself goes with no other.")]
    [InlineData("plate", "plate", "It can be swapped with a detail that itself goes with no other.")]
    [InlineData("plate", "gone", "It can be swapped with a detail that itself goes with no other.")]
    [InlineData("cord", "plate", "Another detail goes with this one, so it cannot go with a third.")]
    public void What_is_swapped_together_has_one_that_the_others_come_with(string detail, string with, string problem)
    {
        var put = DatesEdit.Put(Begun(), detail, "A name", "a place", "7", with);
        Assert.Equal(problem, put.Problem);
        if (problem.Length == 0)
            Assert.Equal(("A name", "a place", 7.0, with), Of(put.Dates!.Details.Single(d => d.Id == detail)));

        static (string, string, double, string) Of(DateDetail d) => (d.Title, d.Where, d.SwappedPercent, d.With);
    }

    [Fact]
    public void A_detail_that_is_taken_away_leaves_what_came_with_it_by_itself()
    {
        var dates = DatesEdit.Without(Begun(), "cord");
        Assert.Equal(7, dates.Details.Length);
        Assert.All(dates.Details, d => Assert.Equal("", d.With));
        Assert.Equal(66, dates.Details[0].SwappedPercent);
    }

    [Fact]
    public void A_detail_that_is_put_back_is_where_it_was_and_leads_again_what_nobody_changed()
    {
        var before = DatesEdit.PutVariant(Begun(), "cord", "", new("cloth", "1946", "1951", "1")).Dates!;
        var without = DatesEdit.Without(before, "cord");
        Assert.Equal(KindDates.Write(before), KindDates.Write(DatesEdit.PutBack(without, before, "cord").Dates!));
        var changed = DatesEdit.Put(without, "plug", "Plug", "", "30", "").Dates!;
        var back = DatesEdit.PutBack(changed, before, "cord").Dates!;
        Assert.Equal(
            ("cord", "plug", "", 30.0),
            (back.Details[0].Id, back.Details[1].Id, back.Details[1].With, back.Details[1].SwappedPercent)
        );
        // Another window has put one there already.
        Assert.Same(back, DatesEdit.PutBack(back, before, "cord").Dates);
        var plugOnly = DatesEdit.Without(DatesEdit.Without(before, "plug"), "cord");
        Assert.Equal(66, DatesEdit.PutBack(plugOnly, before, "plug").Dates!.Details[1].SwappedPercent);
    }

    [Fact]
    public void What_another_window_took_away_is_not_said_to_be_kept()
    {
        var gone = DatesEdit.Put(Begun(), "gone", "A name", "", "7", "");
        Assert.Equal((null, "This detail is no longer there."), (gone.Dates, gone.Problem));
        var look = DatesEdit.PutVariant(Begun(), "cord", "gone", new("cloth", "", "", "1"));
        Assert.Equal((null, "This look is no longer there."), (look.Dates, look.Problem));
    }

    [Fact]
    public void Of_the_years_only_those_that_were_changed_here_are_written()
    {
        var shown = new KindDates(1946, 1957, []);
        var now = shown with { FirstYear = 1948, DonorPercent = 35 };
        var made = DatesEdit.Made(now, shown, "1946", "1960", "20", YearShares.Shown(shown)).Dates!;
        Assert.Equal((1948, 1960, 35.0), (made.FirstYear, made.LastYear, made.DonorPercent));
        made = DatesEdit.Made(now with { LastYear = 1955 }, shown, "1947", "1957", "10", YearShares.Shown(shown)).Dates!;
        Assert.Equal((1947, 1955, 10.0), (made.FirstYear, made.LastYear, made.DonorPercent));
        Assert.Equal(
            "The last year is before the first.",
            DatesEdit.Made(now, shown, "1946", "1947", "20", YearShares.Shown(shown)).Problem
        );
    }

    [Fact]
    public void Titles_in_other_letters_have_keys_of_their_own_and_the_same_at_every_bench()
    {
        string Key(string title) => DatesEdit.Add(KindDates.None, new DateDetail("", title, "", 10, "", [])).Dates!.Details[0].Id;
        Assert.Equal(Key("шнур"), Key(" Шнур "));
        Assert.NotEqual(Key("шнур"), Key("вилка"));
        Assert.NotEqual(Key("Schlüssel"), Key("Schlössel"));
        Assert.NotEqual(Key(new string('a', 60)), Key(new string('a', 61)));
        Assert.All(new[] { "шнур", "Schlüssel" }, t => Assert.Matches("^[a-z-]+-[0-9a-f]{8}$", Key(t)));
        Assert.Equal("lead-wires", Key("Lead wires"));
    }

    [Theory]
    [InlineData("cloth", "1946", "1951", "2", "")]
    [InlineData("cloth", "", "", "0", "")]
    [InlineData("", "1946", "1951", "1", "It needs a name.")]
    [InlineData("cloth", "1952", "1951", "1", "The last year is before the first.")]
    [InlineData("cloth", "19", "1951", "1", "First year: Must be 1800 to 2200.")]
    [InlineData("cloth", "1946", "next", "1", "Last year: ")]
    [InlineData("cloth", "1946", "1951", "", "Give or take: ")]
    [InlineData("cloth", "1946", "1951", "1.5", "Give or take: a whole number of years.")]
    [InlineData("cloth", "1946", "1951", "51", "Give or take: Must be 0 to 50.")]
    public void A_way_it_looks(string title, string first, string last, string soft, string problem)
    {
        var put = DatesEdit.PutVariant(Begun(), "cord", "", new(title, first, last, soft));
        Assert.StartsWith(problem, put.Problem, StringComparison.Ordinal);
        Assert.Equal(problem.Length == 0, put.Dates is not null);
    }

    [Fact]
    public void A_way_it_looks_keeps_its_key_when_its_name_is_changed()
    {
        var dates = DatesEdit.PutVariant(Begun(), "cord", "", new("Cloth, brown", "1946", "", "1")).Dates!;
        dates = DatesEdit.PutVariant(dates, "cord", "", new("Cloth, brown", "1950", "", "1")).Dates!;
        Assert.Equal(["cloth--brown", "cloth--brown-2"], dates.Details[0].Variants.Select(v => v.Id));
        dates = DatesEdit.PutVariant(dates, "cord", "cloth--brown", new("Rubber", "", "1951", "3")).Dates!;
        Assert.Equal(new DateVariant("cloth--brown", "Rubber", null, 1951, 3).Years, dates.Details[0].Variants[0].Years);
        Assert.Equal(
            ("cloth--brown", "Rubber", 3),
            (dates.Details[0].Variants[0].Id, dates.Details[0].Variants[0].Title, dates.Details[0].Variants[0].SoftYears)
        );
        Assert.Equal("cloth--brown-2", Assert.Single(DatesEdit.WithoutVariant(dates, "cord", "cloth--brown").Details[0].Variants).Id);
        Assert.Equal("This detail is no longer there.", DatesEdit.PutVariant(dates, "gone", "", new("x", "", "", "1")).Problem);
    }

    private static KindDates Years(params double[] shares) =>
        KindDates.None with
        {
            FirstYear = 1946,
            LastYear = 1948,
            Shares = shares.Length > 0 ? [.. shares] : null,
        };

    private static DatesEdited Each(KindDates now, string first, string last, params string[] typed) =>
        DatesEdit.Made(now, now, first, last, "20", typed.Select((t, n) => KeyValuePair.Create(1946 + n, t)).ToImmutableSortedDictionary());

    [Fact]
    public void How_many_were_made_in_each_year_is_entered_for_all_years_or_none()
    {
        Assert.Equal(["", "", ""], YearShares.Shown(Years()).Values);
        Assert.Equal([1946, 1947, 1948], YearShares.Shown(Years()).Keys);
        Assert.Equal(["1", "2.5", "0"], YearShares.Shown(Years(1, 2.5, 0)).Values);
        Assert.Equal([1, 2.5, 0], Each(Years(), "1946", "1948", "1", "2.5", "0").Dates!.Shares!.Value);
        Assert.Null(Each(Years(1, 2, 3), "1946", "1948", "", " ", "").Dates!.Shares);
        Assert.Equal(
            "1947: how many? Enter a number for every year, or leave them all empty.",
            Each(Years(), "1946", "1948", "1", "", "3").Problem
        );
        Assert.Equal("In one year at least there must be more than 0.", Each(Years(), "1946", "1948", "0", "0", "0").Problem);
        Assert.StartsWith("1948: ", Each(Years(), "1946", "1948", "1", "1", "-1").Problem, StringComparison.Ordinal);
        // Years that go take theirs along; one that comes counts as the others do until it is entered.
        Assert.Equal([2, 6], Each(Years(4, 2, 6), "1947", "1948", "4", "2", "6").Dates!.Shares!.Value);
        Assert.Equal([4, 2, 6, 4], Each(Years(4, 2, 6), "1946", "1949", "4", "2", "6").Dates!.Shares!.Value);
        // What another window entered meanwhile stays where nothing was typed over it.
        var made = DatesEdit.Made(Years(4, 2, 6), Years(1, 1, 1), "1946", "1948", "20", YearShares.Shown(Years(1, 1, 1))).Dates!;
        Assert.Equal([4, 2, 6], made.Shares!.Value);
        Assert.Equal([4, 2, 6], KindDates.Read(KindDates.Write(made))!.Shares!.Value);
    }

    [Fact]
    public void A_look_that_was_taken_away_comes_back_where_it_was()
    {
        var had = KindDates.None with
        {
            Details = [new("vents", "Vents", "", 3, "", [new("a", "a", 1946, null), new("b", "b", 1947, null), new("c", "c", 1948, null)])],
        };
        var without = DatesEdit.WithoutVariant(had, "vents", "b");
        Assert.Equal(["a", "c"], without.Details[0].Variants.Select(v => v.Id));
        var back = DatesEdit.PutVariantBack(without, had, "vents", "b").Dates!;
        Assert.Equal(had.Details[0].Variants, back.Details[0].Variants);
        // Twice is once; what was never there is not made up; a detail that is gone is said to be.
        Assert.Equal(3, DatesEdit.PutVariantBack(back, had, "vents", "b").Dates!.Details[0].Variants.Length);
        Assert.Equal(2, DatesEdit.PutVariantBack(without, had, "vents", "x").Dates!.Details[0].Variants.Length);
        Assert.Equal("This detail is no longer there.", DatesEdit.PutVariantBack(KindDates.None, had, "vents", "b").Problem);
    }
}
