using Ohmstead.Electrical.Reckoning;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Dating;

/// <summary>A unit dated by what was seen of it. The sums are held elsewhere; here is what is asked and what is said.</summary>
public class DatedUnitTests
{
    private static readonly KindDates Dates = new(
        1948,
        1957,
        [
            new("cord", "Cord", "", 60, "", [new("cloth", "cloth", null, 1951, 1), new("plastic", "gray plastic", 1961, null, 1)]),
            new("plug", "Plug", "", 10, "cord", [new("open", "two screws", null, 1952, 1), new("molded", "molded on", 1953, null, 1)]),
            new("vents", "Vents", "", 3, "", [new("slots", "slots", null, 1951, 1), new("round", "round holes", 1952, null, 1)]),
            new("nuts", "Post nuts", "", 35, "", []),
            new("cover", "Wire cover", "", 10, "", [new("rubber", "rubber", 1950, 1954, 1), new("plastic", "plastic", 1955, null, 1)]),
        ]
    );

    private static DatedUnit Of(params Fact[] facts) => Of(Dates, facts);

    private static DatedUnit Of(KindDates dates, params Fact[] facts)
    {
        var id = new Guid(1, 0, 0, new byte[8]);
        Fact[] all = [new TakenIn("F-1", "solo-110", "", ""), .. facts];
        var entries = all.Select((f, n) => new Entry(new Guid(n + 2, 0, 0, new byte[8]), id, n + 1, DateTimeOffset.UnixEpoch, "bench", f));
        return DatedUnit.Of(UnitHistory.Fold([.. entries]), dates, 2026);
    }

    private static DetailSeen Saw(string detail, string shows) => new(detail, shows, detail, shows);

    /// <summary>Of three years the one in which nine of ten were made is nine times as likely, before anything is seen and after.</summary>
    [Fact]
    public void How_many_were_made_in_each_year_counts()
    {
        var dates = Dates with { FirstYear = 1953, LastYear = 1955, Shares = [9, 0.5, 0.5] };
        Assert.True(Of(dates).IsUneven);
        Assert.Equal([90, 5, 5], Of(dates).Answer!.Years.Select(y => Math.Round(y.Percent, 9)));
        Assert.Null(Of(dates with { Shares = [1, 2] }).Answer);
    }

    /// <summary>Of two benches one said that the plug comes with the cord, the other that the cord comes with the vents: the plug goes alone then.</summary>
    [Fact]
    public void A_detail_whose_leader_follows_another_is_asked_alone()
    {
        var dates = Dates with { Details = [Dates.Details[0] with { With = "vents" }, .. Dates.Details.Skip(1)] };
        Assert.NotNull(Of(dates, Saw("plug", "molded")).Answer);
    }

    [Fact]
    public void Before_anything_was_seen_it_is_of_any_year_and_the_best_detail_is_asked_first()
    {
        var dated = Of();
        Assert.False(dated.IsSeen);
        Assert.Equal("", dated.Sentence);
        Assert.False(dated.IsUneven);
        Assert.Equal("Made between 1948 and 1957, like all of its type.", dated.Answer!.Words[0]);
        Assert.Null(dated.Against);
        Assert.Equal("cover", dated.Next!.Detail.Id);
        // One that can look in no way is not asked of.
        Assert.Equal(["cord", "plug", "vents", "cover"], dated.Details.Select(l => l.Detail.Id));
        Assert.All(dated.Details, l => Assert.Equal(("not looked at", ""), (l.Words, l.Says)));
    }

    [Fact]
    public void Of_one_detail_the_last_answer_counts_and_each_says_how_it_argues()
    {
        var dated = Of(
            Saw("vents", "slots"),
            Saw("vents", "round"),
            Saw("cover", "rubber"),
            Saw("cord", "plastic"),
            Saw("plug", "cannot tell")
        );
        Assert.Equal(["gray plastic", "could not tell", "round holes", "rubber"], dated.Details.Select(l => l.Words));
        Assert.Equal("Probably made between 1951 and 1955 (", dated.Sentence[..37]);
        Assert.True(dated.IsNarrowed);
        Assert.Equal("cord", dated.Against!.Detail.Id);
        Assert.Equal("speaks against these years: probably swapped later (more than 99 in 100)", dated.Against.Says);
        Assert.StartsWith("speaks for these years: ", dated.Details[2].Says, StringComparison.Ordinal);
        Assert.EndsWith(" times as likely in them as in the others", dated.Details[2].Says, StringComparison.Ordinal);
        Assert.Null(dated.Next);
        // The same file at the command line answers the same.
        var read = QuestionFile.Read(dated.Question, null).Question!.Answer();
        Assert.Equal(dated.Answer!.ToJson("dating").ToJsonString(), read.ToJson("dating").ToJsonString());
    }

    [Fact]
    public void An_answer_that_was_taken_back_or_whose_variant_is_gone_says_nothing()
    {
        var open = Of(Saw("cover", "rubber")).Question;
        Assert.Equal(open, Of(Saw("cover", "rubber"), Saw("vents", "round"), Saw("vents", "")).Question);
        Assert.Equal(open, Of(Saw("cover", "rubber"), Saw("vents", "oval"), Saw("gone", "x")).Question);
        Assert.Equal("none of those known", Of(Saw("vents", DetailSeen.Another)).Details[2].Words);
    }

    [Fact]
    public void What_comes_with_a_detail_that_is_not_asked_goes_alone()
    {
        var dates = Dates with { Details = [Dates.Details[0] with { Variants = [] }, .. Dates.Details.Skip(1)] };
        var dated = Of(dates, Saw("plug", "molded"));
        Assert.NotNull(dated.Answer);
        Assert.Equal("plug", Assert.Single(dated.Answer.Details).Id);
        // 60 of 100 by the cord, 10 of the others alone: 64. The same as with a cord that shows nothing.
        Assert.Contains("\"swappedPercent\": 64,", dated.Question, StringComparison.Ordinal);
        Assert.DoesNotContain("\"with\": \"cord\"", dated.Question, StringComparison.Ordinal);
        var unseen = Of(Saw("plug", "molded"));
        foreach (var (year, other) in unseen.Answer!.Years.Zip(dated.Answer.Years))
            Assert.Equal(year.Percent, other.Percent, 1e-9);
    }

    [Fact]
    public void More_details_than_a_question_takes_are_not_said_to_leave_no_year()
    {
        var many = Dates with
        {
            Details = [.. Enumerable.Range(0, 41).Select(n => Dates.Details[2] with { Id = FormattableString.Invariant($"d{n}") })],
        };
        Assert.Equal("The years of this type cannot be used. Look through them.", Of(many, Saw("d0", "slots")).Problem);
    }

    [Fact]
    public void Where_no_year_is_left_it_says_so_and_what_to_do()
    {
        var sure = Dates with
        {
            DonorPercent = 0,
            Details =
            [
                .. Dates.Details.Select(d =>
                    d with
                    {
                        SwappedPercent = 0,
                        Variants = [.. d.Variants.Select(v => v with { SoftYears = 0 })],
                    }
                ),
            ],
        };
        var dated = Of(sure, Saw("vents", "slots"), Saw("cover", "plastic"));
        Assert.Null(dated.Answer);
        Assert.Equal(DatedUnit.NoYear, dated.Problem);
        Assert.Equal(("slots", ""), (dated.Details[2].Words, dated.Sentence));
        // A file that came with years that cannot be is no reason to fall over.
        var wrong = Of(Dates with { LastYear = 1940 }, Saw("vents", "slots"));
        Assert.Equal("The years of this type cannot be used. Look through them.", wrong.Problem);
        var none = Of(KindDates.None, Saw("vents", "slots"));
        Assert.Equal((true, ""), (none.Answer is null, none.Problem));
    }

    [Theory]
    [InlineData(0, "less than 1 in 100")]
    [InlineData(0.49, "less than 1 in 100")]
    [InlineData(0.5, "1 in 100")]
    [InlineData(71.2, "71 in 100")]
    [InlineData(99.4, "99 in 100")]
    [InlineData(99.5, "more than 99 in 100")]
    [InlineData(100, "more than 99 in 100")]
    public void A_chance_is_never_said_to_be_sure(double percent, string words) => Assert.Equal(words, DatedLine.InHundred(percent));

    [Fact]
    public void The_log_says_what_was_seen_in_the_words_of_that_day()
    {
        Assert.Equal("Cord: gray plastic", FactWords.Of(new DetailSeen("cord", "plastic", "Cord", "gray plastic"), null));
        Assert.Equal("Cord: none of those known", FactWords.Of(new DetailSeen("cord", "another", "Cord", ""), null));
        Assert.Equal("Cord: could not tell", FactWords.Of(new DetailSeen("cord", "cannot tell", "Cord", ""), null));
        Assert.Equal("Cord: not looked at", FactWords.Of(new DetailSeen("cord", "", "Cord", ""), null));
    }
}
