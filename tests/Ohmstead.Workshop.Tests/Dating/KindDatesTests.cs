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
    [InlineData("""{ "ohmstead": "dating/1", "details": [ { "id": "x", "title": "X", "swappedPercent": 1, "variants": [] } ] }""", true)]
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
                    Title = " vents ",
                    Variants = [new("round", "Round holes", 1900, null, 0), new("none", "none", null, 1947, 1)],
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

    /// <summary>Nothing of another bench is taken for what has the same key here, and a second time adds nothing.</summary>
    [Fact]
    public void Under_one_key_two_titles_are_two_details_and_two_looks()
    {
        var theirs = new KindDates(
            null,
            null,
            [
                Vents with
                {
                    Title = "Openings",
                },
                Plug with
                {
                    With = "vents",
                    Variants = [new("open", "three screws", 1951, null, 1)],
                },
                Plug with
                {
                    Id = "knot",
                    With = "vents",
                },
            ]
        );
        var both = Dates.With(theirs);
        Assert.Equal(["Vents", "Plug", "Openings", "Plug"], both.Details.Select(d => d.Title));
        Assert.Equal(4, both.Details.Select(d => d.Id).Distinct().Count());
        Assert.Matches("^vents-[0-9a-f]{8}$", both.Details[2].Id);
        Assert.Equal(both.Details[2].Id, both.Details[3].With);
        Assert.Equal(["two screws", "three screws"], both.Details[1].Variants.Select(v => v.Title));
        Assert.Equal(2, both.Details[1].Variants.Select(v => v.Id).Distinct().Count());
        Assert.Equal(KindDates.Write(both), KindDates.Write(both.With(theirs)));
    }

    [Fact]
    public void What_comes_in_without_the_one_that_it_was_swapped_with_keeps_the_chance_of_both()
    {
        var here = new KindDates(1946, 1957, [new("cord", "Cord", "", 60, "plate", []), new("plate", "Plate", "", 2, "", [])]);
        var both = here.With(new KindDates(1946, 1957, [new("cord", "Cord", "", 60, "", []), Plug]));
        Assert.Equal(("", 66.0), (both.Details[2].With, both.Details[2].SwappedPercent));
    }

    [Theory]
    [InlineData("\"swappedPercent\": 3", "", 3, 1)]
    [InlineData("\"swappedPercent\": 3, \"where\": null, \"with\": null", "", 3, 1)]
    [InlineData("\"with\": \"y\"", "y", 0, 1)]
    public void What_is_left_out_means_what_it_means_in_the_question(string more, string with, double swapped, int soft)
    {
        var read = KindDates.Read(Text(more))!;
        Assert.Equal((with, "", swapped), (read.Details[0].With, read.Details[0].Where, read.Details[0].SwappedPercent));
        Assert.Equal(soft, read.Details[0].Variants[0].SoftYears);
        Assert.NotEmpty(KindDates.Write(DatesEdit.Put(read, "x", "X", read.Details[0].Where, "4", "").Dates!));
    }

    private static string Text(string more, string variants = """{ "id": "v", "title": "V" }""", string after = "") =>
        $$"""{ "ohmstead": "dating/1", "details": [ { "id": "x", "title": "X", {{more}}, "variants": [ {{variants}} ] }{{after}} ] }""";

    [Fact]
    public void What_cannot_be_used_says_why()
    {
        const string sound = "\"swappedPercent\": 3";
        const string variant = """{ "id": "v", "title": "V" }""";
        Assert.Equal("X: swappedPercent is missing.", KindDatesRead.Of(Text("\"where\": \"\"")).Problem);
        Assert.Equal("X: swappedPercent must be 0 to 100.", KindDatesRead.Of(Text("\"swappedPercent\": 101")).Problem);
        Assert.Equal("X: two variants have the id \"v\".", KindDatesRead.Of(Text(sound, $"{variant}, {variant}")).Problem);
        var twice = Text(sound, variant, """, { "id": "x", "title": "Z", "swappedPercent": 3, "variants": [] }""");
        Assert.Equal("Two details have the id \"x\".", KindDatesRead.Of(twice).Problem);
        var many = new KindDates(
            1946,
            1957,
            [.. Enumerable.Range(0, 41).Select(n => Vents with { Id = FormattableString.Invariant($"d{n}") })]
        );
        Assert.Equal("It has more than 40 details.", KindDatesRead.Of(KindDates.Write(many)).Problem);
        Assert.Equal((true, null), (KindDatesRead.Of(twice).IsOne, KindDatesRead.Of(twice).Dates));
        Assert.True(KindDatesRead.Of("""{ "ohmstead": "dating/2", "details": 5 }""").IsOne);
        Assert.False(KindDatesRead.Of("""{ "ohmstead": "type-sheet/1" }""").IsOne);
        Assert.Equal("", KindDatesRead.Of(Text(sound)).Problem);
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

    /// <summary>A file that says nothing of years is a file of something else.</summary>
    [Theory]
    [InlineData("{}", false)]
    [InlineData("""{ "details": [] }""", false)]
    [InlineData("""{ "ohmstead": "dating/1" }""", true)]
    [InlineData("""{ "ohmstead": "dating/9", "details": [] }""", true)]
    [InlineData("[1, 2]", false)]
    [InlineData("", false)]
    public void Only_what_says_so_is_of_years_and_details(string text, bool isOne) => Assert.Equal(isOne, KindDatesRead.Of(text).IsOne);
}
