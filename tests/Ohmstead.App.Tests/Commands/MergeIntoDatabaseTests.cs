using Ohmstead.App.Web;
using Ohmstead.Storage.Tests.Databases;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Commands;

/// <summary>A laptop that was away comes home: its folder is merged into the club's database, at the command line.</summary>
public sealed class MergeIntoDatabaseTests(PostgresServer server) : IDisposable
{
    private static readonly Guid Unit = new(1, 0, 0, new byte[8]);
    private static readonly DateTimeOffset Noon = new(2026, 3, 4, 12, 0, 0, TimeSpan.Zero);

    private static readonly KindDates Dates = new(1946, 1955, [new("vents", "Vents", "", 3, "", [new("slots", "slots", null, 1949, 0)])]);

    private readonly string folder = Directory.CreateTempSubdirectory("ohmstead-test-").FullName;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task A_folder_comes_into_the_database_once_and_what_differs_is_asked_about()
    {
        var address = await server.DatabaseAsync("club_merge");
        await using (var store = await Storage.Store.OpenAsync(Of("home"), TimeProvider.System, Stop))
        {
            await store.AppendAsync(Unit, 0, [Entry(1, new TakenIn("T-1", "", "", ""))], Stop);
            await SayAsync(store, Dates);
        }
        Done("export", Of("shared.zip"), "--data", Of("home"));
        Done("import", Of("shared.zip"), "--data", Of("away"));
        Done("move", "database", "--data", Of("home"), "--database", address);
        await using (var store = await Storage.Store.OpenSharedAsync(address, Of("home"), Guid.NewGuid(), Stop))
        {
            await store.AppendAsync(Unit, 1, [Entry(2, new StageClosed(Stage.LookOver, true, ""))], Stop);
            await SayAsync(store, Look(Dates, "slots", "1948"));
        }
        string photo;
        await using (var store = await Storage.Store.OpenAsync(Of("away"), TimeProvider.System, Stop))
        {
            using var picture = new MemoryStream(Convert.FromBase64String(Pixel));
            photo = (await store.Photos.KeepAsync(picture, 1_000_000, Noon, Stop)).Hash;
            await store.AppendAsync(
                Unit,
                1,
                [Entry(3, new StageClosed(Stage.LookOver, false, "")), Entry(4, new PhotoAdded(photo, "front", ""))],
                Stop
            );
            await store.AppendAsync(new Guid(1, 1, 0, new byte[8]), 0, [Entry(5, new TakenIn("T-2", "", "", ""))], Stop);
            await SayAsync(store, Look(Look(Dates, "slots", "1951"), "", "1950"));
        }

        var told = Done("merge", Of("away"), "--data", Of("home"), "--database", address, "--backup", Of("kept"));
        Assert.Contains("1 new unit, 1 unit with new entries, 3 new entries, 1 new photo,", told, StringComparison.Ordinal);
        Assert.Contains("Question, T-1: Two benches entered this differently.", told, StringComparison.Ordinal);
        Assert.Contains(
            "Vents, slots: two benches say different things. Which is right? Slots: until 1951; Slots: until 1948.",
            told,
            StringComparison.Ordinal
        );
        Assert.True(Directory.Exists(Of("kept")));
        Assert.Contains("no new entries", Done("merge", Of("away"), "--data", Of("home"), "--database", address), StringComparison.Ordinal);

        // Another bench of the club finds all of it.
        await using var other = await Storage.Store.OpenSharedAsync(address, Of("other"), Guid.NewGuid(), Stop);
        Assert.Equal([1, 2, 3, 4], (await other.ReadAsync(Unit, Stop))!.Journal.Select(e => (int)e.Id.ToByteArray()[4]).Order());
        Assert.Equal("T-2", (await other.ReadAsync(new Guid(1, 1, 0, new byte[8]), Stop))!.Card.Tag);
        await using var kept = (await other.Photos.OpenAsync(photo, Stop))!.Content;
        Assert.NotEqual(-1, kept.ReadByte());
        var dates = KindDates.Read((await other.ReadDocumentAsync(KindDates.DocumentKind, "type", Stop))!.Text)!;
        Assert.Equal(["until 1951", "until 1950"], dates.Details[0].Variants.Select(v => v.Years).OrderDescending(StringComparer.Ordinal));
        Assert.Equal(2, await OpenQuestions.CountAsync(other));
    }

    private const string Pixel = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";

    private static NewEntry Entry(int n, Fact fact) => new(new Guid(2, (short)n, 0, new byte[8]), Noon.AddMinutes(n), "bench", fact);

    private static async Task SayAsync(Storage.Store store, KindDates dates)
    {
        var now = await store.ReadDocumentAsync(KindDates.DocumentKind, "type", Stop);
        await store.SaveDocumentAsync(KindDates.DocumentKind, "type", now?.Version ?? 0, KindDates.Write(dates), Noon, Stop);
    }

    private static KindDates Look(KindDates dates, string look, string last) =>
        dates.ChangedTo(DatesEdit.PutVariant(dates, "vents", look, new(look.Length > 0 ? look : "mesh", "", last, "0")).Dates!);

    private string Of(string name) => Path.Combine(folder, name);

    private static string Done(params string[] arguments)
    {
        var (code, output, error) = Tool.Run(arguments);
        Assert.True(code == 0, error);
        return output;
    }
}
