using System.Text.Json.Nodes;
using Ohmstead.Workshop.Dating;

namespace Ohmstead.Workshop.Tests.Dating;

/// <summary>What dates a type, as it is kept and as it goes from bench to bench.</summary>
public class KindDatesTests
{
    private static readonly DateDetail Vents = new(
        "vents",
        "Vents",
        "on the case",
        3,
        "",
        [new("slots", "slots", null, 1951, 1), new("round", "round holes", 1952, null, 2)]
    );

    private static readonly DateDetail Plug = new("plug", "Plug", "", 15, "cord", [new("open", "two screws", 1946, 1950, 0)]);

    private static readonly KindDates Dates = new(1946, 1957, [Vents, Plug with { With = "" }]);

    [Fact]
    public void What_is_written_is_read_and_fields_of_a_later_version_stay()
    {
        var kept = JsonNode.Parse(KindDates.Write(Dates))!.AsObject();
        kept["climate"] = "damp";
        kept["details"]![0]!["smell"] = 4;
        kept["details"]![0]!["variants"]![1]!["paint"] = new JsonArray("red", "blue");
        var read = KindDates.Read(kept.ToJsonString())!;
        Assert.Equal((1946, 1957, 20.0), (read.FirstYear, read.LastYear, read.DonorPercent));
        Assert.Equal(Vents.Variants.Select(v => v.Years), read.Details[0].Variants.Select(v => v.Years));
        var changed = DatesEdit.PutVariant(read, "vents", "round", new("round holes", "1953", "", "2")).Dates!;
        var again = JsonNode.Parse(KindDates.Write(changed))!;
        Assert.Equal(1953, (int)again["details"]![0]!["variants"]![1]!["firstYear"]!);
        Assert.Equal("damp", (string)again["climate"]!);
        Assert.Equal(4, (int)again["details"]![0]!["smell"]!);
        Assert.Equal("blue", (string)again["details"]![0]!["variants"]![1]!["paint"]![1]!);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("""{ "firstYear": 1946, "lastYear": 1957, "details": [] }""", true)]
    [InlineData("""{ "ohmstead": "type-sheet/1", "details": [] }""")]
    [InlineData("""{ "ohmstead": "dating/1" }""")]
    [InlineData("""{ "ohmstead": "dating/1", "details": [ null ] }""")]
    [InlineData("""{ "ohmstead": "dating/1", "details": [ { "id": "x", "title": "X" } ] }""")]
    [InlineData("""{ "ohmstead": "dating/1", "details": [ { "id": "x", "title": "X", "variants": [ { "title": "Y" } ] } ] }""")]
    [InlineData("""{ "ohmstead": "dating/1", "details": [ { "id": "x", "title": "X", "variants": [] } ] }""", true)]
    public void What_is_something_else_is_not_read(string text, bool isRead = false) =>
        Assert.Equal(isRead, KindDates.Read(text) is not null);

    [Theory]
    [InlineData(null, null, "all years")]
    [InlineData(1946, null, "from 1946")]
    [InlineData(null, 1951, "until 1951")]
    [InlineData(1946, 1951, "1946 to 1951")]
    [InlineData(1946, 1946, "1946")]
    public void Years_are_said_as_a_person_says_them(int? first, int? last, string words) =>
        Assert.Equal(words, new DateVariant("x", "x", first, last, 0).Years);

    [Fact]
    public void What_comes_in_adds_what_is_not_here_and_changes_nothing_that_is()
    {
        var mine = Dates with { DonorPercent = 5 };
        var theirs = new KindDates(
            1900,
            1901,
            [
                Vents with
                {
                    Title = "Openings",
                    Variants = [new("round", "holes", 1900, null, 0), new("none", "none", null, 1947, 1)],
                },
                new("cord", "Cord", "", 60, "", []),
                Plug with
                {
                    Id = "knot",
                    With = "cord",
                },
                Plug with
                {
                    Id = "label",
                    With = "nowhere",
                },
            ]
        )
        {
            DonorPercent = 50,
        };
        var both = mine.With(theirs);
        Assert.Equal((1946, 1957, 5.0), (both.FirstYear, both.LastYear, both.DonorPercent));
        Assert.Equal(["vents", "plug", "cord", "knot", "label"], both.Details.Select(d => d.Id));
        Assert.Equal(["", "", "", "cord", ""], both.Details.Select(d => d.With));
        Assert.Equal(
            ["slots: until 1951", "round: from 1952", "none: until 1947"],
            both.Details[0].Variants.Select(v => $"{v.Id}: {v.Years}")
        );
        Assert.Equal("Vents", both.Details[0].Title);
        Assert.Equal(KindDates.Write(both), KindDates.Write(both.With(theirs)));
        var fresh = KindDates.None.With(theirs);
        Assert.Equal((1900, 1901, 50.0), (fresh.FirstYear, fresh.LastYear, fresh.DonorPercent));
    }

    [Fact]
    public void A_type_can_date_once_it_has_years_and_a_detail_with_a_variant()
    {
        Assert.True(Dates.CanDate);
        Assert.False((Dates with { FirstYear = null }).CanDate);
        Assert.False((Dates with { LastYear = null }).CanDate);
        Assert.False((Dates with { Details = [Vents with { Variants = [] }] }).CanDate);
        Assert.False(KindDates.None.CanDate);
    }
}
