using Ohmstead.Storage.Zips;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Storage.Tests.Zips;

/// <summary>What dates a type goes with each unit of it, and comes in only where it can be read.</summary>
public sealed class DatesInZipTests : IAsyncLifetime
{
    private static readonly string Dates = KindDates.Write(
        new(1946, 1955, [new("cord", "Cord", "", 60, "", [new("cloth", "cloth", null, 1950, 1)])])
    );

    private readonly TempFolder folder = new();
    private readonly Draft draft = new();
    private Store from = null!;
    private Store to = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() =>
        (from, to) = (
            await Store.OpenAsync(folder.Of("from"), TimeProvider.System, Stop),
            await Store.OpenAsync(folder.Of("to"), TimeProvider.System, Stop)
        );

    public async ValueTask DisposeAsync()
    {
        await from.DisposeAsync();
        await to.DisposeAsync();
        folder.Dispose();
    }

    private async Task<MemoryStream> UnitAsync(string dates)
    {
        var unit = draft.Id();
        await from.SaveDocumentAsync("sheet", Sheets.Id, 0, Sheets.Text, Draft.Noon, Stop);
        await from.SaveDocumentAsync(KindDates.DocumentKind, Sheets.Id, 0, dates, Draft.Noon, Stop);
        await from.SaveDocumentAsync(KindDates.DocumentKind, "another", 0, Dates, Draft.Noon, Stop);
        await from.AppendAsync(
            unit,
            0,
            [draft.TakenIn("12", Sheets.Id), draft.Entry(new DetailSeen("cord", "cloth", "Cord", "cloth"))],
            Stop
        );
        var zip = new MemoryStream();
        await ZipOut.WriteUnitAsync(zip, unit, from, from.Photos, Draft.Noon, Stop);
        zip.Position = 0;
        return zip;
    }

    [Fact]
    public async Task A_unit_takes_the_years_of_its_own_type_along()
    {
        await using var zip = await UnitAsync(Dates);
        var read = (await ZipUnit.ReadAsync(zip, "12", new ZipLimits(), Stop)).Required;
        Assert.Equal(Dates, read.DatesText);
        zip.Position = 0;
        var taken = await ZipIn.TakeAsync(zip, to, to.Photos, Draft.Noon, new ZipLimits(), DifferingDocuments.KeepMine, Stop);
        Assert.Empty(taken.Problems);
        var here = Assert.Single(await to.DocumentsAsync(KindDates.DocumentKind, Stop));
        Assert.Equal((Sheets.Id, Dates), (here.Id, here.Text));
    }

    [Fact]
    public async Task Years_that_cannot_be_read_are_refused()
    {
        await using var zip = await UnitAsync("""{ "ohmstead": "dating/1", "details": 7 }""");
        var taken = await ZipIn.TakeAsync(zip, to, to.Photos, Draft.Noon, new ZipLimits(), DifferingDocuments.KeepMine, Stop);
        Assert.Contains(taken.Problems, p => p.Wrong.StartsWith("are no years and details of a type: ", StringComparison.Ordinal));
        Assert.Empty(await to.DocumentKindsAsync(Stop));
        Assert.Empty(DocumentFile.Check(KindDates.DocumentKind, Dates));
    }
}
