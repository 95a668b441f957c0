using System.Globalization;
using Ohmstead.Storage.Backups;
using Ohmstead.Storage.Merging;
using Ohmstead.Storage.Zips;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Merging;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Storage.Tests.Merging;

/// <summary>Folders, backups and zips that were worked on apart become one workshop.</summary>
public sealed class WorkshopMergeTests : IAsyncLifetime
{
    private readonly TempFolder folder = new();
    private readonly Draft draft = new(7);
    private Store here = null!;
    private Store there = null!;
    private Guid unit;
    private int backups;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>One workshop with a unit and its copy, on which each bench then did something of its own.</summary>
    public async ValueTask InitializeAsync()
    {
        here = await OpenAsync("here");
        unit = draft.Id();
        await here.AppendAsync(unit, 0, [draft.TakenIn("12")], Stop);
        await here.SaveDocumentAsync("sheet", Sheets.Id, 0, Sheets.Text, Draft.Noon, Stop);
        await here.SaveDocumentAsync(Shop.DocumentKind, Shop.DocumentId, 0, ShopText.Write(UsualShop.Make()), Draft.Noon, Stop);
        await here.DisposeAsync();
        Copy(folder.Of("here"), folder.Of("there"));
        (here, there) = (await OpenAsync("here"), await OpenAsync("there"));
    }

    public async ValueTask DisposeAsync()
    {
        await here.DisposeAsync();
        await there.DisposeAsync();
        folder.Dispose();
    }

    private Task<Store> OpenAsync(string name) => Store.OpenAsync(folder.Of(name), TimeProvider.System, Stop);

    private static void Copy(string from, string to)
    {
        foreach (var file in Directory.GetFiles(from, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }

    private Task<MergeOutcome> MergeAsync(Store into, string from, Action<MergeProgress>? told = null, CancellationToken? stop = null) =>
        new WorkshopMerge(into, into.Photos, TimeProvider.System).RunAsync(
            from,
            _ => Task.FromResult(FormattableString.Invariant($"backup {++backups}")),
            new Told(told ?? (_ => { })),
            stop ?? Stop
        );

    private static async Task<string> TextAsync(Store store)
    {
        var text = new List<string>();
        foreach (var card in (await store.CardsAsync(withHandedBack: true, Stop)).OrderBy(c => c.Id))
            text.Add(JournalFile.Write(card.Id, (await store.ReadAsync(card.Id, Stop))!.Journal));
        foreach (var kind in await store.DocumentKindsAsync(Stop))
            if (kind is not (Shop.DocumentKind or BenchNames.OtherShopKind))
                text.AddRange(
                    (await store.DocumentsAsync(kind, Stop)).Select(d =>
                        FormattableString.Invariant($"{d.Kind} {d.Id} {d.At.UtcTicks} {d.Text}")
                    )
                );
        return string.Join('\n', text);
    }

    [Fact]
    public async Task A_copied_folder_is_a_bench_of_its_own_and_stays_it()
    {
        Assert.NotEqual(here.Bench, there.Bench);
        var mark = there.Bench;
        await there.DisposeAsync();
        there = await OpenAsync("there");
        Assert.Equal(mark, there.Bench);
        await there.AppendAsync(unit, 1, [draft.Note("at the vise")], Stop);
        Assert.Equal([here.Bench, there.Bench], (await there.ReadAsync(unit, Stop))!.Journal.Select(e => e.Bench));
    }

    /// <summary>A version is named by its number, and each bench counts its own.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_unit_that_keeps_a_version_which_is_another_text_here_is_named(bool isAnother)
    {
        if (isAnother)
            await here.SaveDocumentAsync("sheet", Sheets.Id, 1, Sheets.Text + " ", Draft.Noon.AddHours(1), Stop);
        await there.SaveDocumentAsync("sheet", Sheets.Id, 1, Sheets.Text + "  ", Draft.Noon.AddHours(2), Stop);
        var (other, newest) = (draft.Id(), draft.Id());
        await there.AppendAsync(other, 0, [draft.TakenIn("13", Sheets.Id), draft.Entry(new SheetKept(Sheets.Id, 2))], Stop);
        await there.AppendAsync(newest, 0, [draft.TakenIn("14", Sheets.Id), draft.Entry(new SheetKept(Sheets.Id, 0))], Stop);
        Assert.Equal(isAnother ? ["13"] : [], (await MergeAsync(here, folder.Of("there"))).TypesToLookAt);
        // It was said.
        Assert.Empty((await MergeAsync(here, folder.Of("there"))).TypesToLookAt);
    }

    /// <summary>The later one does not win: what each bench entered of the years of a type counts at both, with the same text.</summary>
    [Fact]
    public async Task Years_of_a_type_that_both_entered_are_joined_and_again_changes_nothing()
    {
        KindDates Look(KindDates dates, string title) =>
            dates.ChangedTo(DatesEdit.PutVariant(dates, "vents", "", new(title, "", "", "0")).Dates!);
        async Task SayAsync(Store store, int version, KindDates dates, int minutes) =>
            Assert.True(
                (
                    await store.SaveDocumentAsync(
                        KindDates.DocumentKind,
                        Sheets.Id,
                        version,
                        KindDates.Write(dates),
                        Draft.Noon.AddMinutes(minutes),
                        Stop
                    )
                ).IsSaved
            );
        async Task<KindDates> SaidAsync(Store store) =>
            KindDates.Read((await store.ReadDocumentAsync(KindDates.DocumentKind, Sheets.Id, Stop))!.Text)!;
        var first = KindDates.None with { Details = [new("vents", "Vents", "", 3, "", [])] };
        await SayAsync(here, 0, Look(first, "slots"), 5);
        // Its clock is behind: what it saved last counts there all the same.
        await SayAsync(there, 0, first, 3);
        await SayAsync(there, 1, Look(first, "mesh"), 2);
        await MergeAsync(here, folder.Of("there"));
        await MergeAsync(there, folder.Of("here"));
        Assert.Equal(["mesh", "slots"], (await SaidAsync(here)).Details[0].Variants.Select(v => v.Title));
        Assert.Equal(KindDates.Write(await SaidAsync(here)), KindDates.Write(await SaidAsync(there)));
        var versions = (await here.VersionsAsync(KindDates.DocumentKind, Stop)).Count;
        Assert.Equal(0, (await MergeAsync(here, folder.Of("there"))).NewDocuments);
        Assert.Equal(versions, (await here.VersionsAsync(KindDates.DocumentKind, Stop)).Count);
        // What one takes away after it is away at both.
        var now = await SaidAsync(there);
        await SayAsync(
            there,
            (await there.ReadDocumentAsync(KindDates.DocumentKind, Sheets.Id, Stop))!.Version,
            now.ChangedTo(DatesEdit.WithoutVariant(now, "vents", "slots")),
            9
        );
        await MergeAsync(here, folder.Of("there"));
        Assert.Equal("mesh", Assert.Single((await SaidAsync(here)).Details[0].Variants).Title);
    }

    [Fact]
    public async Task Two_folders_become_the_same_in_either_direction_and_again_changes_nothing()
    {
        await here.AppendAsync(unit, 1, [draft.Note("here 1"), draft.Note("here 2")], Stop);
        await there.AppendAsync(unit, 1, [draft.Note("there 1")], Stop);
        var other = draft.Id();
        await there.AppendAsync(other, 0, [draft.TakenIn("13")], Stop);
        using var picture = new MemoryStream(Draft.Picture(3));
        var photo = (await there.Photos.KeepAsync(picture, 1_000_000, Draft.Noon, Stop)).Hash;
        await there.AppendAsync(other, 1, [draft.Entry(new PhotoAdded(photo, "front", ""))], Stop);
        await there.SaveDocumentAsync("sheet", Sheets.Id, 1, Sheets.Text + " ", Draft.Noon.AddDays(1), Stop);
        var outcome = await MergeAsync(here, folder.Of("there"));
        Assert.Empty(outcome.Problems);
        Assert.Equal(
            (1, 1, 3, 1, 1, 0),
            (outcome.NewUnits, outcome.GrownUnits, outcome.NewEntries, outcome.NewPhotos, outcome.NewDocuments, outcome.MissingPhotos)
        );
        Assert.Equal(("backup 1", there.Bench, new MergeProgress(2, 2)), (outcome.Backup, outcome.Bench, outcome.Progress));
        Assert.NotNull(await here.Photos.OpenAsync(photo, Stop));
        await MergeAsync(there, folder.Of("here"));
        var text = await TextAsync(here);
        Assert.Equal(text, await TextAsync(there));
        var again = await MergeAsync(here, folder.Of("there"));
        Assert.Equal((0, 0, 0, 0), (again.NewUnits, again.GrownUnits, again.NewEntries, again.NewDocuments));
        Assert.Equal(text, await TextAsync(here));
        Assert.Equal(Sheets.Text + " ", (await here.ReadDocumentAsync("sheet", Sheets.Id, Stop))!.Text);
        Assert.Contains(await here.VersionsAsync("sheet", Stop), d => d.Text == Sheets.Text);
    }

    [Fact]
    public async Task What_was_merged_is_there_after_opening_again_in_the_order_of_the_merge()
    {
        await there.AppendAsync(unit, 1, [draft.Note("first")], Stop);
        await here.AppendAsync(unit, 1, [draft.Note("second")], Stop);
        await MergeAsync(here, folder.Of("there"));
        await here.AppendAsync(unit, 3, [draft.Note("third")], Stop);
        var before = (await here.ReadAsync(unit, Stop))!.Journal;
        await here.DisposeAsync();
        here = await OpenAsync("here");
        var after = (await here.ReadAsync(unit, Stop))!.Journal;
        Assert.Equal(["first", "second", "third"], after.Select(e => e.Fact).OfType<Noted>().Select(n => n.Words));
        Assert.Equal(JournalFile.Write(unit, before), JournalFile.Write(unit, after));
        var lineage = new Lineage(after);
        Assert.True(lineage.AreApart(after[1].Id, after[2].Id));
        Assert.True(lineage.IsAfter(after[3].Id, after[1].Id) && lineage.IsAfter(after[3].Id, after[2].Id));
    }

    [Fact]
    public async Task A_zip_of_one_unit_and_one_of_all_bring_the_same()
    {
        await there.AppendAsync(unit, 1, [draft.Note("at the vise")], Stop);
        var (one, all) = (folder.Of("one.zip"), folder.Of("all.zip"));
        await using (var to = File.Create(one))
            await ZipOut.WriteUnitAsync(to, unit, there, there.Photos, Draft.Noon, Stop);
        await using (var to = File.Create(all))
            await ZipOut.WriteAllAsync(to, there, there.Photos, Draft.Noon, Stop);
        Assert.Equal(1, (await MergeAsync(here, one)).NewEntries);
        var text = await TextAsync(here);
        var outcome = await MergeAsync(here, all);
        Assert.Equal((0, there.Bench), (outcome.NewEntries, outcome.Bench));
        Assert.Equal(text, await TextAsync(here));
    }

    [Fact]
    public async Task A_backup_brings_its_photos_too()
    {
        using var picture = new MemoryStream(Draft.Picture(5));
        var photo = (await there.Photos.KeepAsync(picture, 1_000_000, Draft.Noon, Stop)).Hash;
        await there.AppendAsync(unit, 1, [draft.Entry(new PhotoAdded(photo, "front", ""))], Stop);
        var made = await Backup.MakeAsync(folder.Of("there"), folder.Of("backups"), Draft.Noon, 3, Stop);
        var outcome = await MergeAsync(here, made.Folder);
        Assert.Equal((1, 1), (outcome.NewEntries, outcome.NewPhotos));
        Assert.NotNull(await here.Photos.OpenAsync(photo, Stop));
    }

    [Fact]
    public async Task What_contradicts_is_counted_until_it_is_answered()
    {
        await here.AppendAsync(unit, 1, [draft.Entry(new FindingJudged("roller", "worn", Judgement.Confirmed, ""))], Stop);
        await there.AppendAsync(unit, 1, [draft.Entry(new FindingJudged("roller", "worn", Judgement.Dismissed, ""))], Stop);
        Assert.Empty(await here.ContradictedAsync(Stop));
        await MergeAsync(here, folder.Of("there"));
        Assert.Equal([(unit, 1)], await here.ContradictedAsync(Stop));
        await here.AppendAsync(unit, 3, [draft.Entry(new FindingJudged("roller", "worn", Judgement.Dismissed, ""))], Stop);
        Assert.Empty(await here.ContradictedAsync(Stop));
        // The answer goes to the other bench, which is asked nothing then.
        await MergeAsync(there, folder.Of("here"));
        Assert.Empty(await there.ContradictedAsync(Stop));
    }

    [Fact]
    public async Task Shop_settings_lie_side_by_side_and_ones_own_stand()
    {
        var theirs = ShopText.Write(UsualShop.Make() with { Name = "The club" });
        await there.SaveDocumentAsync(Shop.DocumentKind, Shop.DocumentId, 1, theirs, Draft.Noon.AddDays(1), Stop);
        var mine = (await here.ReadDocumentAsync(Shop.DocumentKind, Shop.DocumentId, Stop))!.Text;
        Assert.True((await MergeAsync(here, folder.Of("there"))).HasOtherShop);
        Assert.Equal(mine, (await here.ReadDocumentAsync(Shop.DocumentKind, Shop.DocumentId, Stop))!.Text);
        Assert.Equal(theirs, (await here.ReadDocumentAsync(BenchNames.OtherShopKind, there.Bench, Stop))!.Text);
        // Here they are one's own again, and no choice.
        await MergeAsync(there, folder.Of("here"));
        Assert.Null(await there.ReadDocumentAsync(BenchNames.OtherShopKind, there.Bench, Stop));
    }

    [Fact]
    public async Task Stopped_it_goes_on_where_it_was_when_it_is_begun_again()
    {
        for (var n = 0; n < 5; n++)
            await there.AppendAsync(draft.Id(), 0, [draft.TakenIn($"T-{n.ToString(CultureInfo.InvariantCulture)}")], Stop);
        using var stop = new CancellationTokenSource();
        var first = await MergeAsync(here, folder.Of("there"), p => (p.Done == 2 ? stop : null)?.Cancel(), stop.Token);
        Assert.True(first.IsStopped);
        Assert.Equal(new MergeProgress(2, 6), first.Progress);
        var second = await MergeAsync(here, folder.Of("there"));
        Assert.Equal((false, 5), (second.IsStopped, first.NewUnits + second.NewUnits));
        await MergeAsync(there, folder.Of("here"));
        Assert.Equal(await TextAsync(there), await TextAsync(here));
    }

    [Fact]
    public async Task What_is_no_workshop_is_refused_before_a_backup_is_made()
    {
        await File.WriteAllTextAsync(folder.Of("letter.zip"), "no zip", Stop);
        foreach (var from in new[] { folder.Of("nowhere"), folder.Path, folder.Of("letter.zip") })
            Assert.NotEmpty((await MergeAsync(here, from)).Problems);
        Assert.Equal(0, backups);
    }

    [Fact]
    public async Task An_import_keeps_what_was_made_after_what_so_that_a_later_merge_is_the_same()
    {
        await here.AppendAsync(unit, 1, [draft.Note("here")], Stop);
        await there.AppendAsync(unit, 1, [draft.Note("there")], Stop);
        var zip = folder.Of("one.zip");
        await using (var to = File.Create(zip))
            await ZipOut.WriteUnitAsync(to, unit, there, there.Photos, Draft.Noon, Stop);
        await using (var from = File.OpenRead(zip))
            await ZipIn.TakeAsync(from, here, here.Photos, Draft.Noon, new ZipLimits(), DifferingDocuments.KeepMine, Stop);
        await MergeAsync(there, folder.Of("here"));
        var merged = (await there.ReadAsync(unit, Stop))!.Journal;
        Assert.True(new Lineage(merged).AreApart(merged[1].Id, merged[2].Id));
        await MergeAsync(here, folder.Of("there"));
        Assert.Equal(await TextAsync(there), await TextAsync(here));
    }

    private sealed class Told(Action<MergeProgress> tell) : IProgress<MergeProgress>
    {
        public void Report(MergeProgress value) => tell(value);
    }
}
