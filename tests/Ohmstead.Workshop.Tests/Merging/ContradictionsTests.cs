using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.LookOver;
using Ohmstead.Workshop.Merging;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Merging;

public class ContradictionsTests
{
    private static readonly Guid Unit = new(1, 0, 0, new byte[8]);
    private static readonly DateTimeOffset Noon = new(2026, 1, 5, 12, 0, 0, TimeSpan.Zero);
    private static readonly ImmutableArray<Entry> Shared = With([], "a", 0, new TakenIn("F-1", "", "", ""));

    private static ImmutableArray<Entry> With(ImmutableArray<Entry> journal, string bench, double minute, params Fact[] facts)
    {
        foreach (var fact in facts)
        {
            var id = new Guid(bench[0], (short)journal.Length, (short)(minute * 2), new byte[8]);
            journal = journal.Add(Lineage.Append(journal, Unit, new NewEntry(id, Noon.AddMinutes(minute), "bench", fact), bench));
        }
        return journal;
    }

    private static BenchUnit Merged(ImmutableArray<Entry> one, ImmutableArray<Entry> other) =>
        UnitHistory.Fold(MergedJournal.Of(one, other));

    private static ContradictionSort[] Of(Fact one, Fact other, double minutesBetween = 5) =>
        [.. Contradictions.Of(Merged(With(Shared, "a", 10, one), With(Shared, "b", 10 + minutesBetween, other))).Select(c => c.Sort)];

    private static FindingJudged Judged(Judgement judgement, string words = "") => new("roller", "worn", judgement, words);

    private static ReadingEntered Read(double value) => new("left-full", Shown.Number(value), BenchState.AsSheet);

    [Fact]
    public void A_part_judged_one_way_here_and_the_other_there_is_asked_about()
    {
        Assert.Equal([ContradictionSort.Differently], Of(Judged(Judgement.Confirmed), Judged(Judgement.Dismissed)));
        Assert.Empty(Of(Judged(Judgement.Confirmed, "pitted"), Judged(Judgement.Confirmed, "worn flat")));
        Assert.Empty(Of(Judged(Judgement.Confirmed), new FindingJudged("disc", "weak", Judgement.Dismissed, "")));
    }

    [Fact]
    public void One_bench_may_change_its_mind()
    {
        var mine = With(Shared, "a", 10, Judged(Judgement.Confirmed), Judged(Judgement.Dismissed));
        Assert.Empty(Contradictions.Of(UnitHistory.Fold(mine)));
        Assert.Empty(Contradictions.Of(Merged(mine, With(Shared, "b", 12, new Noted("the cord is brittle")))));
    }

    [Fact]
    public void An_answer_is_an_entry_and_counts_until_another_bench_answers_otherwise()
    {
        var both = MergedJournal.Of(With(Shared, "a", 10, Judged(Judgement.Confirmed)), With(Shared, "b", 15, Judged(Judgement.Dismissed)));
        var here = With(both, "a", 20, Judged(Judgement.Confirmed));
        Assert.Empty(Contradictions.Of(UnitHistory.Fold(here)));
        Assert.Single(UnitHistory.Fold(here).Confirmed);
        // The other bench that did not answer changes nothing; one that answered otherwise is asked about again.
        Assert.Empty(Contradictions.Of(Merged(here, With(both, "b", 21, new Noted("a word")))));
        Assert.Empty(Contradictions.Of(Merged(here, With(both, "b", 21, Judged(Judgement.Confirmed)))));
        Assert.Single(Contradictions.Of(Merged(here, With(both, "b", 21, Judged(Judgement.Dismissed)))));
    }

    /// <summary>Whichever was entered later: what one bench found keeps mains locked until it is made good.</summary>
    [Theory]
    [InlineData(-5)]
    [InlineData(5)]
    public void A_cord_that_one_bench_called_good_and_the_other_found_crumbling_keeps_mains_locked(double minutes)
    {
        ConditionNoted Seen(string words) => new("cord", words, Decision.Open, "");
        var good = With(Shared, "a", 20, Seen("good"));
        var merged = Merged(good, With(Shared, "b", 20 + minutes, Seen("crumbling, bare wire showing")));
        Assert.DoesNotContain(Endangering.Open(UnitHistory.Fold(good), null, UsualShop.Make()), d => d.Item.Id == "cord");
        Assert.Contains(Endangering.Open(merged, null, UsualShop.Make()), d => d.Item.Id == "cord");
        Assert.Single(Contradictions.Of(merged));
    }

    [Fact]
    public void Two_readings_of_one_minute_are_asked_about_where_they_differ()
    {
        Assert.Equal([ContradictionSort.SameMinute], Of(Read(17.3), Read(18.1), 1));
        Assert.Empty(Of(Read(17.3), Read(17.3), 1));
        Assert.Empty(Of(Read(17.3), Read(18.1), 1.5));
        Assert.Empty(Of(Read(17.3), new ReadingEntered("right-full", Shown.Number(18.1), BenchState.AsSheet), 1));
    }

    [Fact]
    public void What_was_undone_or_left_as_it_is_contradicts_no_more()
    {
        var both = MergedJournal.Of(With(Shared, "a", 10, Read(17.3)), With(Shared, "b", 10.5, Read(18.1)));
        var asked = Assert.Single(Contradictions.Of(UnitHistory.Fold(both)));
        Assert.Empty(Contradictions.Of(UnitHistory.Fold(With(both, "a", 20, new Corrected(asked.Entries[1].Id, null)))));
        Assert.Empty(Contradictions.Of(UnitHistory.Fold(With(both, "a", 20, new Settled([.. asked.Entries.Select(e => e.Id)], "")))));
        Assert.Single(Contradictions.Of(UnitHistory.Fold(With(both, "a", 20, new Settled([asked.Entries[0].Id], "")))));
    }

    [Fact]
    public void Returned_by_one_and_repaired_by_the_other_is_asked_about_until_it_is_back_on_the_bench()
    {
        var part = new PartChanged("roller", PartChange.Renewed, null, "");
        Assert.Equal([ContradictionSort.Returned], Of(new Returned(ReturnManner.Working, ""), part));
        Assert.Equal([ContradictionSort.Returned], Of(new Returned(ReturnManner.Working, ""), part, -5));
        Assert.Empty(Of(new Returned(ReturnManner.Working, ""), new Noted("called the owner")));
        var both = MergedJournal.Of(With(Shared, "a", 10, part), With(Shared, "b", 15, new Returned(ReturnManner.Working, "")));
        Assert.Empty(Contradictions.Of(UnitHistory.Fold(With(both, "a", 20, new StageClosed(Stage.Papers, false, "")))));
    }

    [Fact]
    public void A_repair_done_and_then_returned_by_one_bench_is_no_question()
    {
        var mine = With(Shared, "a", 10, new PartChanged("roller", PartChange.Renewed, null, ""), new Returned(ReturnManner.Working, ""));
        Assert.Empty(Contradictions.Of(Merged(mine, With(Shared, "b", 12, new Noted("a word")))));
    }

    [Fact]
    public void A_part_changed_at_both_benches_is_asked_about() =>
        Assert.Equal(
            [ContradictionSort.DoneTwice],
            Of(new PartChanged("roller", PartChange.Renewed, null, "one"), new PartChanged("roller", PartChange.Renewed, null, "two"))
        );

    [Fact]
    public void A_card_changed_at_both_is_asked_about() =>
        Assert.Equal(
            [ContradictionSort.Card],
            Of(new CardChanged("F-1", "", "A. Brass", "", "", ""), new CardChanged("F-2", "", "", "", "", ""))
        );

    [Fact]
    public void One_entry_corrected_in_two_ways_is_asked_about()
    {
        var shared = With(Shared, "a", 5, Read(17.3));
        var both = Merged(
            With(shared, "a", 10, new Corrected(shared[1].Id, Read(18.3))),
            With(shared, "b", 15, new Corrected(shared[1].Id, null))
        );
        Assert.Equal([ContradictionSort.Corrected], Contradictions.Of(both).Select(c => c.Sort));
        // Until it is answered, the last one counts.
        Assert.Empty(both.CurrentReadings);
    }
}
