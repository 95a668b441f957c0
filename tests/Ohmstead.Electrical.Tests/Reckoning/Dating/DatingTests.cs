using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.Tests.Reckoning.Dating;

/// <summary>Dating by details: small cases worked out by hand, the limits, what is said, what is refused.</summary>
public class DatingTests
{
    private const string Made = """ "made": { "firstYear": 1950, "lastYear": 1953 }, "nowYear": 1959, "donorPercent": 0 """;

    /// <summary>Slots until 1951, round holes from 1952, overnight.</summary>
    private const string Slots = """
        { "id": "vents", "title": "Vents", "swappedPercent": 0, "seen": "slots", "variants": [
          { "id": "slots", "lastYear": 1951, "softYears": 0 }, { "id": "round", "firstYear": 1952, "softYears": 0 } ] }
        """;

    private static string Cord(string rest = "", string seen = "plastic", string id = "cord") =>
        $$"""
            { "id": "{{id}}", "title": "Cord", "swappedPercent": 50, "seen": "{{seen}}"{{rest}}, "variants": [
              { "id": "cloth", "lastYear": 1955, "softYears": 0 }, { "id": "plastic", "title": "gray plastic", "firstYear": 1956, "softYears": 0 } ] }
            """;

    private static JsonObject Ask(params string[] details) => Asked.Answer(Question(details));

    private static string Question(params string[] details) =>
        $"\"question\": \"dating\", {Made}, \"details\": [ {string.Join(", ", details)} ]";

    private static double[] Years(JsonNode answer) => [.. answer.At("years")!.AsArray().Select(y => y!.Number("percent"))];

    private static void Same(double[] expected, double[] given)
    {
        Assert.Equal(expected.Length, given.Length);
        for (var n = 0; n < given.Length; n++)
            Assert.Equal(expected[n], given[n], 1e-10);
    }

    private static string[] Words(JsonNode answer) => [.. answer.At("words")!.AsArray().Select(w => w!.GetValue<string>())];

    /// <remarks>
    /// Slots leave 1950 and 1951. A swapped cord is of one of the 10 years from 1950 to 1959, or of the 9 from 1951, and of 4 of them in
    /// plastic: 4/10 against 4/9, so 9/19 and 10/19.
    /// </remarks>
    [Fact]
    public void A_cord_of_later_years_was_swapped_and_hardly_moves_the_range()
    {
        var answer = Ask(Slots, Cord());
        Same([900 / 19.0, 1000 / 19.0, 0, 0], Years(answer));
        Assert.Equal((1950, 1951, 1951), ((int)answer.Number("from"), (int)answer.Number("to"), (int)answer.Number("mostProbable")));
        Assert.Equal(100, answer.Number("percent"), 1e-9);
        Assert.Equal(("vents", "for", 100, 0), Said(answer, 0));
        Assert.Equal(("cord", "against", 0, 100), Said(answer, 1));
        Assert.Equal("cord", answer.Text("against"));
        Assert.Equal(
            [
                "Probably made between 1950 and 1951 (more than 99 in 100).",
                "One detail speaks against these years: Cord (gray plastic).",
                "It was probably swapped later (more than 99 in 100). Photograph it.",
            ],
            Words(answer)
        );
        Assert.Equal(["cord: argues against"], answer.At("next")!.AsArray().Select(n => $"{n!.Text("id")}: {n!.Text("why")}"));
        Assert.Null(answer.At("next[0].bits"));
        // Without the vents other years are left, without the cord none: nothing is divided by nothing.
        Assert.Null(answer.At("details[0].times"));
        Assert.Null(answer.At("details[1].times"));
    }

    private static (string, string, double, double) Said(JsonNode answer, int detail) =>
        (
            answer.At("details")![detail]!.Text("id"),
            answer.At("details")![detail]!.Text("argues"),
            Math.Round(answer.At("details")![detail]!.Number("fitsPercent"), 9),
            Math.Round(answer.At("details")![detail]!.Number("swappedPercent"), 9)
        );

    /// <remarks>
    /// A swapped vent plate of 1950 on has slots in 2 of 10 years, of 1951 on in 1 of 9. By year: 0.9 + 0.1·0.2 = 0.92, 0.9 + 0.1/9, 0, 0; over
    /// the mean of the others in the range 1950 to 1951, and none outside. Of a donor, at 100 percent, in 2 of 4 years whatever the year.
    /// </remarks>
    [Fact]
    public void What_a_swapped_part_can_be_is_counted_from_the_year_of_the_unit_or_taken_from_a_donor()
    {
        var vents = Slots.Replace("\"swappedPercent\": 0", "\"swappedPercent\": 10", StringComparison.Ordinal);
        double[] law = [0.92, 0.9 + (0.1 / 9), 0, 0];
        Same([.. law.Select(l => 100 * l / law.Sum())], Years(Ask(vents)));
        var donors = Asked.Answer(Question(vents).Replace("\"donorPercent\": 0", "\"donorPercent\": 100", StringComparison.Ordinal));
        double[] shared = [0.95, 0.95, 0.05, 0.05];
        Same([.. shared.Select(l => 100 * l / 2)], Years(donors));
        // Inside 0.95 a year, outside 0.05: 19 times. Swapped: 0.1·0.5 of 0.95 in the range, all of it outside.
        Assert.Equal(19, donors.Number("details[0].times"), 1e-9);
        Assert.Equal(100 * (0.05 + 0.05 + 0.05 + 0.05) / 2, donors.Number("details[0].swappedPercent"), 1e-9);
        Assert.Equal((95, "for"), (Math.Round(donors.Number("percent"), 9), donors.Text("details[0].argues")));
    }

    /// <remarks>Weights 1, 1 − 1/3, 1 − 2/3, 0 with two soft years; what is left over is another variant.</remarks>
    [Theory]
    [InlineData("only", 6, 4, 2, 0)]
    [InlineData("another", 0, 2, 4, 6)]
    public void Soft_years_taper_off_in_equal_steps_and_leave_the_rest_to_another_variant(string seen, params int[] sixths)
    {
        var answer = Ask(
            $$"""{ "id": "x", "swappedPercent": 0, "seen": "{{seen}}", "variants": [ { "id": "only", "lastYear": 1950, "softYears": 2 } ] }"""
        );
        Same([.. sixths.Select(s => 100.0 * s / sixths.Sum())], Years(answer));
        var mirrored = Ask(
            $$"""{ "id": "x", "swappedPercent": 0, "seen": "{{seen}}", "variants": [ { "id": "only", "firstYear": 1953, "softYears": 2 } ] }"""
        );
        Same([.. sixths.Reverse().Select(s => 100.0 * s / sixths.Sum())], Years(mirrored));
    }

    /// <remarks>1950 a alone; 1951 a at 1 and b at one half; 1952 the other way round; 1953 b alone.</remarks>
    [Fact]
    public void Variants_that_run_side_by_side_share_the_year_by_their_weights()
    {
        var answer = Ask(
            """{ "id": "x", "swappedPercent": 0, "seen": "a", "variants": [ { "id": "a", "lastYear": 1951 }, { "id": "b", "firstYear": 1952 } ] }"""
        );
        Same([50, 100 / 3.0, 50 / 3.0, 0], Years(answer));
    }

    [Fact]
    public void With_hard_edges_and_nothing_swapped_the_years_common_to_all_are_left()
    {
        string Detail(string id, string first, string last) =>
            $$"""{ "id": "{{id}}", "swappedPercent": 0, "seen": "v", "variants": [ { "id": "v", "firstYear": {{first}}, "lastYear": {{last}}, "softYears": 0 } ] }""";
        Same([0, 50, 50, 0], Years(Ask(Detail("a", "1948", "1952"), Detail("b", "1951", "1960"))));
        Assert.Equal(["$.details"], Asked.Refused(Question(Detail("a", "1948", "1950"), Detail("b", "1951", "1960"))));
    }

    [Fact]
    public void What_is_surely_swapped_for_a_donors_part_says_nothing()
    {
        var answer = Asked.Answer(
            Question(Slots.Replace("\"swappedPercent\": 0", "\"swappedPercent\": 100", StringComparison.Ordinal))
                .Replace("\"donorPercent\": 0", "\"donorPercent\": 100", StringComparison.Ordinal)
        );
        Same([25, 25, 25, 25], Years(answer));
        Assert.Equal(100, answer.Number("details[0].swappedPercent"), 1e-9);
        Assert.Null(answer.At("details[0].times"));
        Assert.Equal("Made between 1950 and 1953, like all of its type.", Words(answer)[0]);
    }

    /// <remarks>The cord alone: 4/10, 4/9, 4/8 and 4/7 of the years that a swapped one can be of.</remarks>
    [Fact]
    public void Two_details_of_one_swap_say_what_one_of_them_says()
    {
        double[] once = [1 / 10.0, 1 / 9.0, 1 / 8.0, 1 / 7.0];
        double[] Spread(Func<double, double> of) => [.. once.Select(o => 100 * of(o) / once.Sum(of))];
        Same(Spread(o => o), Years(Ask(Cord())));
        var plug = Cord(", \"with\": \"cord\"", id: "plug").Replace("\"swappedPercent\": 50, ", "", StringComparison.Ordinal);
        Same(Spread(o => o), Years(Ask(Cord(), plug)));
        Same(Spread(o => o), Years(Ask(plug, Cord())));
        Same(Spread(o => o * o), Years(Ask(Cord(), Cord(id: "plug"))));
    }

    [Fact]
    public void What_could_not_be_told_says_nothing_and_is_not_asked_again()
    {
        var unseen = Slots.Replace("\"seen\": \"slots\", ", "", StringComparison.Ordinal);
        var open = Ask(Cord(), unseen);
        var untold = Ask(Cord(), Slots.Replace("\"slots\", \"var", "\"cannot tell\", \"var", StringComparison.Ordinal));
        Same(Years(open), Years(untold));
        Assert.Single(untold.At("details")!.AsArray());
        string[] Next(JsonNode answer) => [.. answer.At("next")!.AsArray().Select(n => $"{n!.Text("id")}: {n!.Text("why")}")];
        Assert.Equal(["cord: argues against", "vents: tells most"], Next(open));
        Assert.Equal(["cord: argues against"], Next(untold));
        Assert.Contains("Look at this next, and photograph it: Vents.", Words(open));
        Assert.NotEmpty(open.At("cautions")!.AsArray());
    }

    /// <remarks>Two of four years each: one bit.</remarks>
    [Fact]
    public void A_detail_that_halves_the_years_tells_one_bit_and_one_that_never_changed_nothing()
    {
        var unseen = Slots.Replace("\"seen\": \"slots\", ", "", StringComparison.Ordinal);
        var answer = Ask("""{ "id": "case", "swappedPercent": 0, "variants": [ { "id": "tin" } ] }""", unseen);
        Assert.Equal("vents", Assert.Single(answer.At("next")!.AsArray())!.Text("id"));
        Assert.Equal(1, answer.Number("next[0].bits"), 1e-12);
        Assert.Null(answer.At("against"));
        Assert.Equal("Made between 1950 and 1953, like all of its type.", Words(answer)[0]);
        Assert.Contains("Nothing seen so far says more than that.", Words(answer));
    }

    /// <summary>The plate and the knob contradict each other; the plate is hardly ever swapped, so the knob argues against.</summary>
    [Fact]
    public void Of_two_that_contradict_each_other_the_one_that_is_swapped_more_often_argues_against()
    {
        string Detail(string id, string swapped, string seen) =>
            $$"""{ "id": "{{id}}", "swappedPercent": {{swapped}}, "seen": "{{seen}}", "variants": [ { "id": "early", "lastYear": 1951, "softYears": 0 }, { "id": "late", "firstYear": 1952, "softYears": 0 } ] }""";
        foreach (var turned in new[] { false, true })
        {
            string[] details = [Detail("plate", "1", "early"), Detail("knob", "30", "late")];
            var answer = Ask(turned ? [.. details.Reverse()] : details);
            Assert.Equal((1950, 1951), ((int)answer.Number("from"), (int)answer.Number("to")));
            Assert.Equal("knob", answer.Text("against"));
            Assert.Equal("for", answer.At("details")![turned ? 1 : 0]!.Text("argues"));
        }
        // A knob that is never swapped is right, whatever the plate says: that came from a donor.
        var sure = Asked.Answer(
            Question(Detail("plate", "1", "early"), Detail("knob", "0", "late"))
                .Replace("\"donorPercent\": 0", "\"donorPercent\": 20", StringComparison.Ordinal)
        );
        Assert.Equal((1952, 1953, "plate"), ((int)sure.Number("from"), (int)sure.Number("to"), sure.Text("against")));
    }

    /// <remarks>
    /// Nothing was swapped, so what it shows is what it was made with. Seldom on the first ones, as 0.4 of 1956 and 0.6 of 1957: the years
    /// after it show it more, and no unit is of those.
    /// </remarks>
    [Theory]
    [InlineData("")]
    [InlineData(""", { "id": "before", "lastYear": 1956, "softYears": 2 }""")]
    public void One_detail_alone_that_narrows_never_argues_against(string beside)
    {
        const string kind = "\"question\": \"dating\", \"made\": { \"firstYear\": 1948, \"lastYear\": 1957 }, \"nowYear\": 2026";
        var answer = Asked.Answer(
            $$"""{{kind}}, "details": [ { "id": "x", "swappedPercent": 0, "seen": "late", "variants": [ { "id": "late", "firstYear": 1957, "softYears": 2 }{{beside}} ] } ]"""
        );
        Assert.Equal((1955, 1957), ((int)answer.Number("from"), (int)answer.Number("to")));
        Assert.Equal("for", answer.Text("details[0].argues"));
        Assert.Null(answer.At("against"));
        // No other year shows it.
        Assert.Null(answer.At("details[0].times"));
    }

    /// <remarks>1/16 of 1950 to 4/16 of 1953 and up to 10/16 of 1959; of all years asked for, there are no others to be likelier than.</remarks>
    [Fact]
    public void What_was_never_swapped_does_not_argue_against_because_later_parts_show_it_more()
    {
        const string late = """
            { "id": "x", "swappedPercent": 0, "seen": "late", "variants": [ { "id": "late", "firstYear": 1965, "softYears": 15 } ] }
            """;
        var answer = Asked.Answer($"\"rangePercent\": 100, {Question(late)}");
        Assert.Equal("neither", answer.Text("details[0].argues"));
        Assert.Null(answer.At("against"));
        // A hair of a chance, and it does.
        var swapped = late.Replace("\"swappedPercent\": 0", "\"swappedPercent\": 1", StringComparison.Ordinal);
        Assert.Equal("against", Asked.Answer($"\"rangePercent\": 100, {Question(swapped)}").Text("details[0].argues"));
    }

    /// <remarks>In 1950 seven, two and one tenth, which add up to 1 less a rounding; then one that is all: another is not possible.</remarks>
    [Fact]
    public void Where_the_variants_fill_the_year_there_is_no_other_one()
    {
        const string tenths = """
            { "id": "x", "swappedPercent": 0, "seen": "another", "variants": [
              { "id": "a", "lastYear": 1947, "softYears": 9 }, { "id": "b", "lastYear": 1942, "softYears": 9 },
              { "id": "c", "lastYear": 1941, "softYears": 9 }, { "id": "d", "firstYear": 1951, "softYears": 0 } ] }
            """;
        Assert.Equal(["$.details"], Asked.Refused(Question(tenths)));
    }

    [Fact]
    public void Years_that_more_were_made_in_are_more_probable_before_anything_is_seen()
    {
        var answer = Asked.Answer(
            Question(Slots.Replace("\"seen\": \"slots\", ", "", StringComparison.Ordinal))
                .Replace("\"lastYear\": 1953 }", "\"lastYear\": 1953, \"shares\": [0, 1, 6, 3] }", StringComparison.Ordinal)
        );
        Same([0, 10, 60, 30], Years(answer));
        Assert.Equal((1952, 1953, 1952), ((int)answer.Number("from"), (int)answer.Number("to"), (int)answer.Number("mostProbable")));
        Assert.Equal("Probably made between 1952 and 1953 (90 in 100).", Words(answer)[0]);
    }

    [Theory]
    [InlineData("\"firstYear\": 1950, ", "", "$.made.firstYear")]
    [InlineData("\"lastYear\": 1953 }", "\"lastYear\": 1949 }", "$.made.lastYear")]
    [InlineData("\"firstYear\": 1950, ", "\"firstYear\": 1800, \"x\": 1, ", "")]
    [InlineData("\"lastYear\": 1953 }, \"nowYear\": 1959", "\"lastYear\": 2150 }, \"nowYear\": 2159", "$.made.lastYear")]
    [InlineData("\"nowYear\": 1959", "\"nowYear\": 1952", "$.nowYear")]
    [InlineData("\"nowYear\": 1959", "\"nowYear\": 1959.5", "$.nowYear")]
    [InlineData("\"lastYear\": 1953 }", "\"lastYear\": 1953, \"shares\": [1, 2, 3] }", "$.made.shares")]
    [InlineData("\"lastYear\": 1953 }", "\"lastYear\": 1953, \"shares\": [0, 0, 0, 0] }", "$.made.shares")]
    [InlineData("\"lastYear\": 1953 }", "\"lastYear\": 1953, \"shares\": [0, 0, -1, 2] }", "$.made.shares[2]")]
    [InlineData("\"seen\": \"slots\"", "\"seen\": \"holes\"", "$.details[0].seen")]
    [InlineData("\"swappedPercent\": 0, ", "", "$.details[0].swappedPercent")]
    [InlineData("\"swappedPercent\": 0", "\"swappedPercent\": 101", "$.details[0].swappedPercent")]
    [InlineData("\"lastYear\": 1951", "\"firstYear\": 1952, \"lastYear\": 1951", "$.details[0].variants[0].lastYear")]
    [InlineData("\"lastYear\": 1951, \"softYears\": 0", "\"softYears\": -1", "$.details[0].variants[0].softYears")]
    [InlineData("\"id\": \"round\"", "\"id\": \"slots\"", "$.details[0].variants[1].id")]
    [InlineData("\"id\": \"round\"", "\"id\": \"another\"", "$.details[0].variants[1].id")]
    [InlineData("\"id\": \"cord\"", "\"id\": \"vents\"", "$.details[1].id")]
    [InlineData("\"id\": \"cord\"", "\"with\": \"plug\", \"id\": \"cord\"", "$.details[1].with")]
    [InlineData("\"id\": \"cord\"", "\"with\": \"cord\", \"id\": \"cord\"", "$.details[1].with")]
    [InlineData("\"donorPercent\": 0", "\"donorPercent\": -1", "$.donorPercent")]
    [InlineData("\"question\"", "\"rangePercent\": 0, \"question\"", "$.rangePercent")]
    public void What_cannot_be_is_refused_where_it_stands(string from, string to, string path)
    {
        var question = Question(Slots, Cord());
        Assert.Contains(from, question, StringComparison.Ordinal);
        var spoiled = question.Replace(from, to, StringComparison.Ordinal);
        if (path.Length > 0)
            Assert.Equal([path], Asked.Refused(spoiled));
        else
            Assert.Equal(154, Years(Asked.Answer(spoiled)).Length);
    }

    [Fact]
    public void One_that_comes_with_another_has_none_that_comes_with_it() =>
        Assert.Equal(
            ["$.details[2].with"],
            Asked.Refused(Question(Cord(), Cord(", \"with\": \"cord\"", id: "plug"), Cord(", \"with\": \"plug\"", id: "knot")))
        );
}
