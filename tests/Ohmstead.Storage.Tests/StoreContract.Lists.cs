using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Storage.Tests;

/// <content>The lists of units, which a bench with very many of them does not read to their ends.</content>
public abstract partial class StoreContract
{
    [Fact]
    public async Task The_first_cards_of_the_bench_are_those_of_the_whole_list_in_the_order_of_the_half_hour()
    {
        await using var opened = await BeginAsync();
        NextAction[] actions = [.. Enum.GetValues<NextAction>()];
        for (var n = 0; n < 2 * actions.Length; n++)
        {
            var unit = draft.Id();
            await opened.Store.AppendAsync(unit, 0, [draft.TakenIn(Draft.Name(n))], Stop);
            // Every second one takes longer than fits, and stands at the end whatever it is.
            var next = new NextThing(actions[n / 2], "do", n % 2 == 0 ? HalfHour.Minutes : HalfHour.Minutes + 1, "");
            await opened.Store.SaveFoundAsync(unit, 1, next, UnitDoubts.None, Stop);
        }
        var whole = HalfHour.Order(await opened.Store.CardsAsync(withHandedBack: false, Stop)).ToList();
        Assert.Equal(2 * actions.Length, whole.Count);
        foreach (var most in (int[])[1, 5, 1000])
        {
            var first = await opened.Store.OnBenchAsync(most, Stop);
            Assert.Equal(whole.Take(most), first.Cards);
            Assert.Equal(whole.Count, first.Count);
        }
        Assert.Equal(0, (await opened.Store.HandedBackAsync(5, Stop)).Count);
    }

    [Fact]
    public async Task What_was_handed_back_is_listed_by_itself_last_touched_first()
    {
        await using var opened = await BeginAsync();
        foreach (var tag in (string[])["1", "2", "3"])
            await opened.Store.AppendAsync(
                draft.Id(),
                0,
                [draft.TakenIn(tag), draft.Entry(new StageClosed(Stage.Papers, tag != "2", ""))],
                Stop
            );
        var back = await opened.Store.HandedBackAsync(1, Stop);
        Assert.Equal(("3", 2), (Assert.Single(back.Cards).Tag, back.Count));
        Assert.Equal(["3", "1"], (await opened.Store.HandedBackAsync(9, Stop)).Cards.Select(c => c.Tag));
        Assert.Equal(["2"], (await opened.Store.OnBenchAsync(9, Stop)).Cards.Select(c => c.Tag));
    }

    [Fact]
    public async Task A_tag_that_two_units_on_the_bench_share_is_named_with_both()
    {
        await using var opened = await BeginAsync();
        foreach (var tag in (string[])["Brass 7", "other", " BRASS 7 ", "", ""])
            await opened.Store.AppendAsync(draft.Id(), 0, [draft.TakenIn(tag)], Stop);
        await opened.Store.AppendAsync(draft.Id(), 0, [draft.TakenIn("other"), draft.Entry(new StageClosed(Stage.Papers, true, ""))], Stop);
        Assert.Equal(
            [" BRASS 7 ", "Brass 7"],
            (await opened.Store.TwiceTaggedAsync(Stop)).Select(c => c.Tag).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task Units_are_counted_by_their_type()
    {
        await using var opened = await BeginAsync();
        foreach (var (sheet, owner) in ((string, string)[])[("a", "x"), ("a", "y"), ("b", "x"), ("", "x"), ("a", "nobody")])
            await opened.Store.AppendAsync(draft.Id(), 0, [draft.TakenIn("t", sheet, owner)], Stop);
        var counts = await opened.Store.CountOfTypesAsync(without: "nobody", Stop);
        Assert.Equal([("", 1), ("a", 2), ("b", 1)], counts.OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => (c.Key, c.Value)));
    }

    [Theory]
    [InlineData("zinc", "1")]
    [InlineData("inc", "1")]
    [InlineData("zi", "1")]
    [InlineData("zin pewt", "1")]
    [InlineData("pewter", "1 2")]
    [InlineData("zinc brass", "")]
    [InlineData("\"zinc", "")]
    [InlineData("a\"b", "2")]
    public async Task What_was_entered_later_is_found_too_and_the_index_and_the_look_at_each_say_the_same(string asked, string tags)
    {
        await using var opened = await BeginAsync();
        var (one, two) = (draft.Id(), draft.Id());
        await opened.Store.AppendAsync(one, 0, [draft.TakenIn("1", owner: "")], Stop);
        await opened.Store.AppendAsync(two, 0, [draft.TakenIn("2", owner: "")], Stop);
        await opened.Store.AppendAsync(one, 1, [draft.Note("zinc"), draft.Note("pewter")], Stop);
        await opened.Store.AppendAsync(two, 1, [draft.Note("pewter a\"b")], Stop);
        Assert.Equal(tags, Tags(await opened.Store.SearchAsync(asked, 9, Stop)));
        // As many as are wanted are found among the newest: the index is not asked.
        if (tags.Length > 0)
            Assert.Equal(tags, Tags(await opened.Store.SearchAsync(asked, tags.Split(' ').Length, Stop)));

        static string Tags(IReadOnlyList<Hit> hits) => string.Join(' ', hits.Select(h => h.Card.Tag).Order(StringComparer.Ordinal));
    }
}
