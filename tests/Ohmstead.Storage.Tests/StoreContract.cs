using System.Security.Cryptography;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Storage.Tests;

/// <summary>What every store must do, whatever lies under it. A store under test derives from this and says how it is opened.</summary>
public abstract partial class StoreContract
{
    private readonly Draft draft = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>An empty store.</summary>
    internal abstract Task<OpenStore> BeginAsync();

    /// <summary>A store as a test holds it.</summary>
    /// <param name="Again">Closes it and opens it again.</param>
    internal sealed record OpenStore(IStore Store, IPhotos Photos, Func<Task<OpenStore>> Again, Func<ValueTask> Close) : IAsyncDisposable
    {
        public ValueTask DisposeAsync() => Close();
    }

    [Fact]
    public async Task Entries_are_numbered_from_one_and_are_there_after_opening_again()
    {
        var opened = await BeginAsync();
        var unit = draft.Id();
        NewEntry[] sent = [draft.TakenIn(), draft.Note("cord is brittle"), draft.Reading("left-full", 18.6)];
        var first = await opened.Store.AppendAsync(unit, 0, sent[..2], Stop);
        var second = await opened.Store.AppendAsync(unit, 2, sent[2..], Stop);
        Assert.Equal([1, 2], first.Written.Select(e => e.Number));
        Assert.Equal([3], second.Written.Select(e => e.Number));
        Assert.Empty(second.Between);
        await using var again = await opened.Again();
        var told = await again.Store.ReadAsync(unit, Stop);
        Assert.Equal(
            sent.Select(e => (e.Id, e.At, e.By, FactText.Write(e.Fact))),
            told!.Journal.Select(e => (e.Id, e.At, e.By, FactText.Write(e.Fact)))
        );
    }

    [Fact]
    public async Task Every_kind_of_fact_comes_back_as_it_went_in()
    {
        await using var opened = await BeginAsync();
        var unit = draft.Id();
        var facts = EveryKind.Facts(draft);
        await opened.Store.AppendAsync(unit, 0, [.. facts.Select(f => draft.Entry(f))], Stop);
        var told = await opened.Store.ReadAsync(unit, Stop);
        Assert.Equal(facts.Select(FactText.Write), told!.Journal.Select(e => FactText.Write(e.Fact)));
    }

    [Fact]
    public async Task An_entry_sent_twice_is_kept_once_with_its_number()
    {
        await using var opened = await BeginAsync();
        var unit = draft.Id();
        var note = draft.Note("once");
        await opened.Store.AppendAsync(unit, 0, [draft.TakenIn(), note], Stop);
        await opened.Store.AppendAsync(unit, 2, [draft.Note("another")], Stop);
        var again = await opened.Store.AppendAsync(unit, 3, [note, draft.Note("new"), note], Stop);
        Assert.Equal([2, 4], again.Written.Select(e => e.Number));
        Assert.Equal(4, (await opened.Store.ReadAsync(unit, Stop))!.LastNumber);
    }

    [Fact]
    public async Task A_writer_who_looked_earlier_is_told_what_came_between_and_loses_nothing()
    {
        await using var opened = await BeginAsync();
        var unit = draft.Id();
        await opened.Store.AppendAsync(unit, 0, [draft.TakenIn()], Stop);
        await opened.Store.AppendAsync(unit, 1, [draft.Note("from the phone"), draft.Note("and more")], Stop);
        var late = await opened.Store.AppendAsync(unit, 1, [draft.Note("from the bench")], Stop);
        Assert.Equal([4], late.Written.Select(e => e.Number));
        Assert.Equal(["from the phone", "and more"], late.Between.Select(e => ((Noted)e.Fact).Words));
    }

    [Fact]
    public async Task A_journal_begins_with_taking_in_and_an_entry_belongs_to_one_unit()
    {
        await using var opened = await BeginAsync();
        var (unit, other) = (draft.Id(), draft.Id());
        await Assert.ThrowsAsync<JournalRefused>(() => opened.Store.AppendAsync(unit, 0, [draft.Note("no unit")], Stop));
        Assert.Null(await opened.Store.ReadAsync(unit, Stop));
        var taken = draft.TakenIn();
        await opened.Store.AppendAsync(unit, 0, [taken], Stop);
        await Assert.ThrowsAsync<JournalRefused>(() => opened.Store.AppendAsync(other, 0, [taken], Stop));
        Assert.Null(await opened.Store.ReadAsync(other, Stop));
    }

    [Fact]
    public async Task Many_units_go_in_together_or_not_at_all()
    {
        await using var opened = await BeginAsync();
        var (first, second, third) = (draft.Id(), draft.Id(), draft.Id());
        await opened.Store.AppendAllAsync(
            [new UnitEntries(first, [draft.TakenIn(), draft.Note("a")]), new UnitEntries(second, [draft.TakenIn()])],
            Stop
        );
        Assert.Equal(2, (await opened.Store.ReadAsync(first, Stop))!.LastNumber);
        UnitEntries[] faulty = [new UnitEntries(third, [draft.TakenIn()]), new UnitEntries(draft.Id(), [draft.Note("nobody")])];
        await Assert.ThrowsAsync<JournalRefused>(() => opened.Store.AppendAllAsync(faulty, Stop));
        Assert.Null(await opened.Store.ReadAsync(third, Stop));
        Assert.Equal(2, (await opened.Store.CardsAsync(true, Stop)).Count);
    }

    [Fact]
    public async Task Writers_at_the_same_time_drop_nothing()
    {
        await using var opened = await BeginAsync();
        var (shared, own) = (draft.Id(), draft.Id());
        await opened.Store.AppendAllAsync([new UnitEntries(shared, [draft.TakenIn()]), new UnitEntries(own, [draft.TakenIn()])], Stop);
        var sent = Enumerable
            .Range(0, 8)
            .Select(w => Enumerable.Range(0, 20).Select(n => draft.Note(Draft.Name(w * 100 + n))).ToList())
            .ToList();
        var told = await Task.WhenAll(
            sent.Select(
                (notes, writer) =>
                    Task.Run(
                        async () =>
                        {
                            var between = new List<Entry>();
                            var seen = 1;
                            foreach (var note in notes)
                            {
                                var answer = await opened.Store.AppendAsync(writer == 7 ? own : shared, seen, [note], Stop);
                                between.AddRange(answer.Between);
                                seen = answer.Written[0].Number;
                            }
                            return (Between: between, Seen: seen);
                        },
                        Stop
                    )
            )
        );
        var journal = (await opened.Store.ReadAsync(shared, Stop))!.Journal;
        Assert.Equal(Enumerable.Range(1, 141), journal.Select(e => e.Number));
        Assert.Equal(sent.Take(7).SelectMany(s => s).Select(e => e.Id).Order(), journal.Skip(1).Select(e => e.Id).Order());
        Assert.Equal(21, (await opened.Store.ReadAsync(own, Stop))!.LastNumber);
        // Each writer was told, once, of every entry of the others up to its own last.
        for (var w = 0; w < 7; w++)
            Assert.Equal(
                journal.Where(e => e.Number > 1 && e.Number < told[w].Seen && !sent[w].Any(s => s.Id == e.Id)).Select(e => e.Id),
                told[w].Between.Select(e => e.Id)
            );
    }

    [Fact]
    public async Task Cards_come_last_touched_first_and_those_handed_back_only_when_asked()
    {
        await using var opened = await BeginAsync();
        var (older, newer, gone) = (draft.Id(), draft.Id(), draft.Id());
        await opened.Store.AppendAsync(older, 0, [draft.TakenIn("1")], Stop);
        await opened.Store.AppendAsync(newer, 0, [draft.TakenIn("2")], Stop);
        await opened.Store.AppendAsync(gone, 0, [draft.TakenIn("3"), draft.Entry(new StageClosed(Stage.Papers, true, ""))], Stop);
        Assert.Equal(["2", "1"], (await opened.Store.CardsAsync(false, Stop)).Select(c => c.Tag));
        await opened.Store.AppendAsync(older, 1, [draft.Note("touched")], Stop);
        var cards = await opened.Store.CardsAsync(true, Stop);
        Assert.Equal(["1", "3", "2"], cards.Select(c => c.Tag));
        Assert.Equal("touched", cards[0].LastDone);
        Assert.True(cards[1].IsHandedBack);
    }

    [Fact]
    public async Task A_next_thing_is_put_on_the_card_unless_the_journal_has_grown()
    {
        await using var opened = await BeginAsync();
        var unit = draft.Id();
        await opened.Store.AppendAsync(unit, 0, [draft.TakenIn()], Stop);
        var next = new NextThing(NextAction.TakeReading, "Take the reading: left post", 2.5, "left-full");
        await opened.Store.SaveFoundAsync(unit, 1, next, UnitDoubts.None, Stop);
        Assert.Equal(next, (await opened.Store.CardsAsync(false, Stop)).Single().Next);
        Assert.Equal(next, await opened.Store.NextAsync(unit, Stop));
        Assert.Null(await opened.Store.NextAsync(draft.Id(), Stop));
        await opened.Store.AppendAsync(unit, 1, [draft.Note("more")], Stop);
        await opened.Store.SaveFoundAsync(unit, 1, next, UnitDoubts.None, Stop);
        Assert.Equal(NextAction.LookOver, (await opened.Store.CardsAsync(false, Stop)).Single().Next.Action);
    }

    /// <summary>A doubted check must open nothing, also where an entry came between.</summary>
    [Fact]
    public async Task What_is_doubted_is_read_with_the_unit_until_the_next_diagnosis_even_where_the_journal_has_grown()
    {
        await using var opened = await BeginAsync();
        var unit = draft.Id();
        var next = new NextThing(NextAction.TakeReading, "Read again: left post", 2.5, "left-full");
        var doubts = new UnitDoubts(
            1,
            new(["left-full"], 0.3),
            [new("left-full", SlipKind.TimesTen, null, 17.3, 0.9)],
            [new(DoubtAbout.Leads, 0.8, 0.3, ["ohms-5"], [])]
        );
        await opened.Store.AppendAsync(unit, 0, [draft.TakenIn()], Stop);
        Assert.True((await opened.Store.ReadAsync(unit, Stop))!.Doubts.IsEmpty);
        await opened.Store.AppendAsync(unit, 1, [draft.Note("more")], Stop);
        await opened.Store.SaveFoundAsync(unit, 1, next, doubts, Stop);
        var kept = (await opened.Store.ReadAsync(unit, Stop))!.Doubts;
        Assert.Equal((1, 0.3, "left-full"), (kept.Number, kept.Checks.LeadOhms, Assert.Single(kept.Checks.Readings)));
        Assert.Equal(doubts.Slips[0], Assert.Single(kept.Slips));
        Assert.Equal((DoubtAbout.Leads, "ohms-5"), (Assert.Single(kept.Bench).About, Assert.Single(kept.Bench[0].Readings)));
        await opened.Store.SaveFoundAsync(unit, 2, next, UnitDoubts.None, Stop);
        Assert.True((await opened.Store.ReadAsync(unit, Stop))!.Doubts.IsEmpty);
    }

    [Theory]
    [InlineData("brass", "12 13")]
    [InlineData("BRÄSS", "12 13")]
    [InlineData("13 brass", "13")]
    [InlineData("brittle", "12")]
    [InlineData("rittl 18.6", "12")]
    [InlineData("rittl 18.7", "")]
    [InlineData("100%", "13")]
    [InlineData("1_0", "")]
    [InlineData("  ", "")]
    [InlineData("'; drop table", "")]
    public async Task Search_finds_units_in_which_every_word_occurs(string asked, string tags)
    {
        await using var opened = await BeginAsync();
        await opened.Store.AppendAsync(draft.Id(), 0, [draft.TakenIn("13"), draft.Note("cleaned to 100%")], Stop);
        await opened.Store.AppendAsync(
            draft.Id(),
            0,
            [draft.TakenIn("12"), draft.Note("Cord is BRITTLE"), draft.Reading("left-full", 18.6)],
            Stop
        );
        var hits = await opened.Store.SearchAsync(asked, 10, Stop);
        Assert.Equal(tags, string.Join(' ', hits.Select(h => h.Card.Tag)));
        if (asked == "brittle")
            Assert.Equal("Cord is BRITTLE", hits[0].Where);
        Assert.True((await opened.Store.SearchAsync(asked, 1, Stop)).Count <= 1);
    }

    [Fact]
    public async Task Documents_are_kept_in_versions_and_a_version_edited_meanwhile_is_not_overwritten()
    {
        await using var opened = await BeginAsync();
        var first = await opened.Store.SaveDocumentAsync("shop", "shop", 0, "one", Draft.Noon, Stop);
        var second = await opened.Store.SaveDocumentAsync("shop", "shop", 1, "two", Draft.Noon.AddHours(1), Stop);
        var late = await opened.Store.SaveDocumentAsync("shop", "shop", 1, "three", Draft.Noon.AddHours(2), Stop);
        await opened.Store.SaveDocumentAsync("shop", "b", 0, "other", Draft.Noon, Stop);
        Assert.True(first.IsSaved && second.IsSaved);
        Assert.Equal(new DocumentSaved(false, new Document("shop", "shop", 2, Draft.Noon.AddHours(1), "two")), late);
        Assert.Equal(
            ["b 1 other", "shop 2 two"],
            (await opened.Store.DocumentsAsync("shop", Stop)).Select(d => FormattableString.Invariant($"{d.Id} {d.Version} {d.Text}"))
        );
        Assert.Equal("two", (await opened.Store.ReadDocumentAsync("shop", "shop", Stop))!.Text);
        Assert.Null(await opened.Store.ReadDocumentAsync("shop", "none", Stop));
    }

    [Fact]
    public async Task Entries_of_the_drawer_made_at_the_same_time_are_all_kept_and_none_is_written_over()
    {
        await using var opened = await BeginAsync();
        var bin = draft.Id();
        DrawerEntry[] made =
        [
            .. Enumerable.Range(1, 12).Select(n => new DrawerEntry(draft.Id(), Draft.Noon, "bench", [new BinCounted(bin, n)])),
        ];
        await Task.WhenAll(
            made.Select(e => opened.Store.SaveDocumentAsync(DrawerEntry.DocumentKind, e.DocumentId, 0, e.Write(), Draft.Noon, Stop))
        );
        var over = await opened.Store.SaveDocumentAsync(DrawerEntry.DocumentKind, made[0].DocumentId, 0, "{}", Draft.Noon, Stop);
        Assert.False(over.IsSaved);
        var kept = (await opened.Store.DocumentsAsync(DrawerEntry.DocumentKind, Stop)).Select(d => DrawerEntry.Read(d.Id, d.Text)!);
        Assert.Equal(made.Select(e => e.Write()).Order(StringComparer.Ordinal), kept.Select(e => e.Write()).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task What_came_out_of_the_drawer_is_told_by_the_journals_of_the_units_as_they_stand()
    {
        var opened = await BeginAsync();
        var (unit, other, bin) = (draft.Id(), draft.Id(), draft.Id());
        var origin = new FromDrawer(bin, null, 1, "Roller", "");
        var fitted = draft.Entry(new PartChanged("roller", PartChange.Renewed, null, "") { From = origin });
        await opened.Store.AppendAsync(
            unit,
            0,
            [draft.TakenIn("12"), fitted, draft.Entry(new PartChanged("cord", PartChange.Renewed, null, ""))],
            Stop
        );
        await opened.Store.AppendAsync(other, 0, [draft.TakenIn("13"), draft.Entry(new StageClosed(Stage.Papers, true, ""))], Stop);
        await opened.Store.AppendAsync(
            other,
            2,
            [draft.Entry(new PartChanged("shoe", PartChange.Renewed, null, "") { From = origin with { Count = 2 } })],
            Stop
        );
        await using var again = await opened.Again();
        var told = await again.Store.FittedAsync(Stop);
        Assert.Equal([("12", 1), ("13", 2)], told.Select(f => (f.Tag, f.From.Count)).Order());
        Assert.Equal((fitted.Id, fitted.At, bin), told.Where(f => f.Unit == unit).Select(f => (f.Entry, f.At, f.From.Bin)).Single());
        await again.Store.AppendAsync(unit, 3, [draft.Entry(new Corrected(fitted.Id, null))], Stop);
        Assert.Equal(other, (await again.Store.FittedAsync(Stop)).Single().Unit);
    }

    [Fact]
    public async Task A_sheet_that_comes_later_names_the_kind_of_units_that_wait_for_it()
    {
        await using var opened = await BeginAsync();
        await opened.Store.AppendAsync(draft.Id(), 0, [draft.TakenIn("12", Sheets.Id)], Stop);
        Assert.Equal(NextAction.NameKind, (await opened.Store.CardsAsync(false, Stop)).Single().Next.Action);
        await opened.Store.SaveDocumentAsync("sheet", Sheets.Id, 0, Sheets.Text, Draft.Noon, Stop);
        var card = (await opened.Store.CardsAsync(false, Stop)).Single();
        Assert.Equal((Sheets.Title, NextAction.LookOver), (card.Kind, card.Next.Action));
        await opened.Store.SaveDocumentAsync(
            "sheet",
            Sheets.Id,
            1,
            Sheets.Text.Replace(Sheets.Title, "Another title", StringComparison.Ordinal),
            Draft.Noon,
            Stop
        );
        Assert.Equal("Another title", (await opened.Store.SearchAsync("another", 5, Stop)).Single().Card.Kind);
    }

    [Fact]
    public async Task A_sheet_is_read_once_for_each_of_its_versions()
    {
        await using var opened = await BeginAsync();
        Assert.Null(await opened.Store.SheetAsync(Sheets.Id, Stop));
        await opened.Store.SaveDocumentAsync("sheet", Sheets.Id, 0, Sheets.Text, Draft.Noon, Stop);
        var first = await opened.Store.SheetAsync(Sheets.Id, Stop);
        Assert.Equal(Sheets.Title, first!.Title);
        Assert.Same(first, await opened.Store.SheetAsync(Sheets.Id, Stop));
        await opened.Store.SaveDocumentAsync("sheet", Sheets.Id, 1, "{}", Draft.Noon, Stop);
        Assert.Null(await opened.Store.SheetAsync(Sheets.Id, Stop));
        await opened.Store.SaveDocumentAsync("sheet", Sheets.Id, 2, Sheets.Text, Draft.Noon, Stop);
        var third = await opened.Store.SheetAsync(Sheets.Id, Stop);
        Assert.NotSame(first, third);
        Assert.Equal(Sheets.Title, third!.Title);
        Assert.Equal(1, opened.Store.Caches.Single(c => c.Name == "Type sheets").Count);
    }

    [Fact]
    public async Task A_unit_keeps_the_version_of_its_sheet_that_it_was_measured_with()
    {
        await using var opened = await BeginAsync();
        string Titled(string title) => Sheets.Text.Replace(Sheets.Title, title, StringComparison.Ordinal);
        await opened.Store.SaveDocumentAsync("sheet", Sheets.Id, 0, Titled("The first"), Draft.Noon, Stop);
        var (kept, other) = (draft.Id(), draft.Id());
        foreach (var unit in new[] { kept, other })
            await opened.Store.AppendAsync(unit, 0, [draft.Entry(new TakenIn("1", Sheets.Id, "", ""))], Stop);
        await opened.Store.AppendAsync(kept, 1, [draft.Entry(new SheetKept(Sheets.Id, 1))], Stop);
        await opened.Store.SaveDocumentAsync("sheet", Sheets.Id, 1, Titled("The second"), Draft.Noon, Stop);
        Assert.Equal("The first", (await opened.Store.SheetAsync(Sheets.Id, 1, Stop))!.Title);
        Assert.Equal("The second", (await opened.Store.SheetAsync(Sheets.Id, 2, Stop))!.Title);
        Assert.Equal("The second", (await opened.Store.SheetAsync(Sheets.Id, 0, Stop))!.Title);
        // A version that did not come along is read as the newest.
        Assert.Equal("The second", (await opened.Store.SheetAsync(Sheets.Id, 9, Stop))!.Title);
        async Task<string> CardOf(Guid unit) => (await opened.Store.CardsAsync(false, Stop)).Single(c => c.Id == unit).Kind;
        Assert.Equal(("The first", "The second"), (await CardOf(kept), await CardOf(other)));
        await opened.Store.AppendAsync(kept, 2, [draft.Entry(new SheetKept(Sheets.Id, 0))], Stop);
        Assert.Equal("The second", await CardOf(kept));
    }

    [Fact]
    public async Task A_photo_is_kept_under_its_hash_byte_for_byte()
    {
        var opened = await BeginAsync();
        var picture = Draft.Picture(1);
        var hash = Convert.ToHexStringLower(SHA256.HashData(picture));
        var kept = await KeepAsync(opened, picture);
        Assert.Equal(new PhotoKept(hash, "", 64, 48), kept);
        Assert.Equal(kept, await KeepAsync(opened, picture));
        await using var again = await opened.Again();
        Assert.Equal(picture, await BytesAsync(await again.Photos.OpenAsync(hash, Stop)));
        Assert.Null(await again.Photos.OpenAsync(new string('0', 64), Stop));
        Assert.Null(await again.Photos.OpenAsync("../workshop.db", Stop));
        Assert.Null(await again.Photos.OpenThumbnailAsync("", Stop));
    }

    private static async Task<PhotoKept> KeepAsync(OpenStore opened, byte[] picture)
    {
        using var stream = new MemoryStream(picture);
        return await opened.Photos.KeepAsync(stream, 1_000_000, Draft.Noon, Stop);
    }

    private static async Task<byte[]> BytesAsync(PhotoFile? photo)
    {
        await using var content = photo!.Content;
        using var bytes = new MemoryStream();
        await content.CopyToAsync(bytes, Stop);
        return bytes.ToArray();
    }
}
