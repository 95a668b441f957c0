using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Commands;

/// <summary>The workshop out, in, copied and put back, as a person does it at the command line.</summary>
public sealed class KeepingTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("ohmstead-test-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task A_workshop_goes_out_and_in_and_into_a_backup_and_back()
    {
        var zip = Of("w.zip");
        Assert.Contains("holds no workshop", Refused(1, "export", zip, "--data", Of("a")), StringComparison.Ordinal);
        Assert.False(Path.Exists(Of("a")) || Path.Exists(zip));
        await (await Storage.Store.OpenAsync(Of("a"), TimeProvider.System, TestContext.Current.CancellationToken)).DisposeAsync();
        Assert.Contains("no units", Done("export", zip, "--data", Of("a")), StringComparison.Ordinal);
        Assert.Contains("no units", Done("import", zip, "--data", Of("b")), StringComparison.Ordinal);
        Assert.Contains("no units", Done("backup", Of("backups"), "--data", Of("a")), StringComparison.Ordinal);
        Assert.Contains("no units", Done("restore", Of("backups"), "--data", Of("c")), StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(Of("c"), "workshop.db")));
        Assert.Contains("is not empty", Refused("restore", Of("backups"), "--data", Of("c")), StringComparison.Ordinal);
        Assert.Contains("Nothing was restored", Refused(2, "restore", Of("backups"), "--database", "none"), StringComparison.Ordinal);
        Assert.Contains("is there already", Refused("export", zip, "--data", Of("a")), StringComparison.Ordinal);
        Assert.Contains("no unit has the tag", Refused("export", Of("x.zip"), "--unit", "12", "--data", Of("a")), StringComparison.Ordinal);
        Assert.Contains("is no zip", Refused("import", Path.Combine(Of("a"), "workshop.db"), "--data", Of("b")), StringComparison.Ordinal);
        Assert.Contains("no such file", Refused("import", Of("none.zip"), "--data", Of("b")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_restore_that_would_go_back_says_first_what_the_backup_lacks()
    {
        var stop = TestContext.Current.CancellationToken;
        var (unit, at) = (new Guid(1, 0, 0, new byte[8]), new DateTimeOffset(2026, 3, 4, 12, 0, 0, TimeSpan.Zero));
        NewEntry Entry(int n, Fact fact) => new(new Guid(2, (short)n, 0, new byte[8]), at.AddMinutes(n), "bench", fact);
        await using (var store = await Storage.Store.OpenAsync(Of("a"), TimeProvider.System, stop))
            await store.AppendAsync(unit, 0, [Entry(1, new TakenIn("T-1", "", "", ""))], stop);
        Done("backup", Of("backups"), "--data", Of("a"));
        await using (var store = await Storage.Store.OpenAsync(Of("a"), TimeProvider.System, stop))
            await store.AppendAsync(unit, 1, [Entry(2, new Noted("later"))], stop);
        var (code, _, error) = Tool.Run("restore", Of("backups"), "--data", Of("b"), "--instead-of", Of("a"));
        Assert.Equal(0, code);
        Assert.Contains("1 entry on 1 unit", error, StringComparison.Ordinal);
        Assert.Contains("from 2026-03-04 12:02 UTC on", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_bench_comes_in_and_what_contradicts_is_said_as_a_question()
    {
        var stop = TestContext.Current.CancellationToken;
        var (unit, at) = (new Guid(1, 0, 0, new byte[8]), new DateTimeOffset(2026, 3, 4, 12, 0, 0, TimeSpan.Zero));
        NewEntry Entry(int n, Fact fact) => new(new Guid(2, (short)n, 0, new byte[8]), at.AddMinutes(n), "bench", fact);
        await using (var store = await Storage.Store.OpenAsync(Of("a"), TimeProvider.System, stop))
            await store.AppendAsync(unit, 0, [Entry(1, new TakenIn("T-1", "", "", ""))], stop);
        Done("export", Of("shared.zip"), "--data", Of("a"));
        Done("import", Of("shared.zip"), "--data", Of("b"));
        await using (var store = await Storage.Store.OpenAsync(Of("a"), TimeProvider.System, stop))
            await store.AppendAsync(unit, 1, [Entry(2, new StageClosed(Stage.LookOver, true, ""))], stop);
        await using (var store = await Storage.Store.OpenAsync(Of("b"), TimeProvider.System, stop))
            await store.AppendAsync(unit, 1, [Entry(3, new StageClosed(Stage.LookOver, false, ""))], stop);
        var told = Done("merge", Of("b"), "--data", Of("a"));
        Assert.Contains("No new units, 1 unit with new entries, 1 new entry,", told, StringComparison.Ordinal);
        Assert.Contains(
            "Question, T-1: Two benches entered this differently. Which one is right? Look-over: done (",
            told,
            StringComparison.Ordinal
        );
        Assert.Contains("A backup from before is in", told, StringComparison.Ordinal);
        Assert.Contains("no new entries", Done("merge", Of("b"), "--data", Of("a"), "--backup", Of("kept")), StringComparison.Ordinal);
        Assert.True(Directory.Exists(Of("kept")));
        Assert.Contains("the workshop itself", Refused("merge", Of("a"), "--data", Of("a")), StringComparison.Ordinal);
        Assert.Contains("is not there", Refused("merge", Of("none.zip"), "--data", Of("a")), StringComparison.Ordinal);
    }

    private string Of(string name) => Path.Combine(folder, name);

    private static string Done(params string[] arguments)
    {
        var (code, output, error) = Tool.Run(arguments);
        Assert.True(code == 0 && error.Length == 0, error);
        return output;
    }

    private static string Refused(params string[] arguments) => Refused(2, arguments);

    private static string Refused(int exit, params string[] arguments)
    {
        var (code, output, error) = Tool.Run(arguments);
        Assert.Equal((exit, ""), (code, output));
        return error;
    }
}
