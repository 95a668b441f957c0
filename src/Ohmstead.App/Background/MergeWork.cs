using Ohmstead.App.Web;
using Ohmstead.Storage;
using Ohmstead.Storage.Backups;
using Ohmstead.Storage.Merging;

namespace Ohmstead.App.Background;

/// <summary>The merge that is under way, one at a time: how far it is, how it ended, and the way to stop it. It goes on when its screen is closed.</summary>
internal sealed class MergeWork(Bench bench, ILogger<MergeWork> log)
{
    /// <summary>The folder beside the data in which the backups from before merges lie.</summary>
    public const string BackupFolder = "before-merging";

    /// <summary>So many of them are kept.</summary>
    private const int BackupsKept = 3;

    private readonly Lock door = new();
    private CancellationTokenSource? running;

    /// <summary>It moved on, or ended. Called from any thread.</summary>
    public event Action? Changed;

    /// <summary>True while it runs.</summary>
    public bool IsRunning => running is not null;

    /// <summary>How far it is; null until the other workshop was looked at.</summary>
    public MergeProgress? Progress { get; private set; }

    /// <summary>How the last one ended; null while none did.</summary>
    public MergeOutcome? Outcome { get; private set; }

    /// <summary>Why the last one broke off; empty where it did not.</summary>
    public string Trouble { get; private set; } = "";

    /// <summary>Begins; nothing where one runs.</summary>
    /// <param name="from">A data folder, one backup, or a zip.</param>
    /// <param name="after">Called when it ended, or did not begin because one runs: what was only for it goes.</param>
    /// <exception cref="NotAllowed">A device asks: it would name files of this machine.</exception>
    public void Begin(string from, Action after)
    {
        Asker.MustBeHere();
        CancellationTokenSource? stop = null;
        lock (door)
            if (running is null)
            {
                stop = running = new();
                (Progress, Outcome, Trouble) = (null, null, "");
            }
        if (stop is null)
            after();
        else
            _ = bench.Work.BesideAsync("A merge", _ => RunAsync(from, after, stop));
    }

    /// <summary>Ends it after the unit that is being merged; what came in stays.</summary>
    public void Stop()
    {
        Asker.MustBeHere();
        lock (door)
            running?.Cancel();
    }

    /// <summary>A backup of this workshop, as it is made before a merge.</summary>
    /// <returns>Where it is.</returns>
    public static async Task<string> BackUpAsync(Store store, string? folder, DateTimeOffset at, CancellationToken cancel) =>
        (await Backup.MakeAsync(store, folder ?? Path.Combine(store.Folder, BackupFolder), at, BackupsKept, cancel)).Folder;

    private async Task RunAsync(string from, Action after, CancellationTokenSource stop)
    {
        try
        {
            if (bench.Itself is not Store store)
                throw new StoreUnusable("Merging needs a workshop in a folder, where a backup can be made first");
            Outcome = await new WorkshopMerge(store, store.Photos, bench.Time).RunAsync(
                from,
                cancel => BackUpAsync(store, null, bench.Time.GetUtcNow(), cancel),
                new Told(this),
                stop.Token
            );
            bench.TellMerged(Outcome.Changed);
        }
        catch (OperationCanceledException)
        {
            Outcome = new MergeOutcome { IsStopped = true };
        }
        catch (Exception broken) when (broken is StoreUnusable or IOException or UnauthorizedAccessException)
        {
            Trouble = broken.Message;
        }
        catch (Exception broken)
        {
            Mishaps.Note(log, broken);
            Trouble = Mishaps.Why(broken);
        }
        finally
        {
            lock (door)
                running = null;
            stop.Dispose();
            after();
            Changed?.Invoke();
        }
    }

    private sealed class Told(MergeWork work) : IProgress<MergeProgress>
    {
        public void Report(MergeProgress value)
        {
            work.Progress = value;
            work.Changed?.Invoke();
        }
    }
}
