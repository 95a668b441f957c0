using Ohmstead.App.Queue;
using Ohmstead.App.Web;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Background;

/// <summary>
/// Works out in the background what is probably wrong with a unit, after every entry on it from whichever window or phone, one
/// unit at a time with both cores, by what its journal says when its turn comes (<see cref="UnitJobs"/>); nobody waits for it.
/// </summary>
public sealed partial class UnitDiagnoses : IAsyncDisposable
{
    /// <summary>An entry is often followed by the next at once.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(0.15);

    /// <summary>The last guard. What bounds the search is counted; nobody waits for it, and the next entry ends it.</summary>
    private static readonly TimeSpan MostTime = TimeSpan.FromMinutes(5);

    private const string Unfinished =
        "Still searching after five minutes, and stopped. There is no finding for the last entry yet. Open the findings again to search on. Readings are kept.";

    private const string StoppedByHand =
        "The search was stopped. There is no finding for the last entry yet. Open the findings again to search on. Readings are kept.";

    /// <summary>Units whose answer is kept, with what each fault does to each reading: what lies on a bench at a time.</summary>
    private const int MostKept = 8;

    private readonly Bench bench;
    private readonly ILogger<UnitDiagnoses> log;
    private readonly Func<ReadingLibrary, UnitReadings, DiagnosisOptions, DiagnosisResult> diagnose;
    private readonly BoundedCache<Guid, KeptDiagnosis> units;
    private readonly UnitJobs jobs;

    /// <param name="bench">Where the units are read from.</param>
    /// <param name="log">Where a search that broke off is told.</param>
    /// <param name="diagnose">What answers; the diagnosis itself where it is left out.</param>
    public UnitDiagnoses(
        Bench bench,
        ILogger<UnitDiagnoses> log,
        Func<ReadingLibrary, UnitReadings, DiagnosisOptions, DiagnosisResult>? diagnose = null
    )
    {
        (this.bench, this.log, this.diagnose) = (bench, log, diagnose ?? Diagnoser.Run);
        jobs = new(bench.Work, "Findings", bench.Time, Patience)
        {
            Do = WorkOutAsync,
            Broke = Broke,
            Stopped = WasStopped,
        };
        units = new("Findings of units", MostKept, mayGo: id => !jobs.IsBusy(id));
        bench.UnitEntered += Ask;
        bench.UnitChanged += AskWhereShown;
        bench.ShopChanged += AskAll;
    }

    /// <summary>The state of a unit's answer changed. Called from any thread.</summary>
    public event Action<Guid>? Changed;

    /// <summary>How it stands with a unit.</summary>
    public DiagnosisState Of(Guid unitId) => units.Peek(unitId)?.State ?? DiagnosisState.Nothing;

    /// <summary>How many answers are kept, and how often one was there.</summary>
    public CacheCount Counted => units.Counted;

    /// <summary>How many units wait for an answer, with the one that is worked on.</summary>
    public int Waiting => jobs.Count;

    /// <summary>Ends what is being worked out, and returns when nothing of it will touch the store any more.</summary>
    public async ValueTask DisposeAsync()
    {
        bench.UnitEntered -= Ask;
        bench.UnitChanged -= AskWhereShown;
        bench.ShopChanged -= AskAll;
        await jobs.DisposeAsync();
    }

    private void Broke(Guid id, Exception e)
    {
        log.LogError(e, "What is wrong with unit {Unit} could not be worked out", id);
        EndWith(id, "What is probably wrong could not be worked out. Readings are kept. Open the findings again to try once more.");
    }

    private void WasStopped(Guid id) => EndWith(id, StoppedByHand);

    private void EndWith(Guid id, string trouble)
    {
        var kept = units.GetOrAdd(id, _ => new KeptDiagnosis());
        Tell(id, kept, kept.State with { Progress = null, Trouble = trouble });
    }

    private async Task WorkOutAsync(Guid id, Work work)
    {
        var kept = units.GetOrAdd(id, _ => new KeptDiagnosis());
        if (await bench.ReadAsync(id) is not { } unit || await bench.SheetOfAsync(unit) is not { } sheet)
        {
            Tell(id, kept, kept.State with { Progress = null, SoFar = null });
            return;
        }
        var shop = await bench.ShopAsync();
        var own = OwnSheet.OnBench(unit, sheet, shop);
        if (!own.IsSound)
        {
            Tell(id, kept, new(null, null, $"The changes of this unit make no circuit: {own.Problems[0].Wrong}."));
            return;
        }
        var judged = JudgedSheet.Of(unit, own.Value!, shop.Chances);
        // What an earlier search doubted is not what the next one goes by.
        var taken = BenchReadings.Of(unit with { Doubts = UnitDoubts.None }, new UnitModel(judged), shop);
        if (taken.Value is not { } readings)
        {
            Tell(id, kept, new(null, null, $"The readings cannot be used: {taken.Problems[0].Wrong}."));
            return;
        }
        var key = JudgedKey.Of(unit, sheet, shop);
        if (kept.State.Latest is { } known && key.Equals(kept.Key) && readings.Equals(kept.Readings))
        {
            await bench.Store.SaveFoundAsync(
                id,
                unit.LastNumber,
                CardOf.NextAfter(unit, sheet, shop, known),
                known.Doubts,
                CancellationToken.None
            );
            Tell(id, kept, new(known with { Number = unit.LastNumber }, null, ""));
            return;
        }
        Tell(id, kept, kept.State with { Progress = 0, SoFar = null, Trouble = "" });
        var done = Diagnose(
            unit,
            shop,
            own.Value!,
            judged,
            readings,
            kept,
            key,
            share =>
            {
                work.Tell(share);
                Tell(id, kept, kept.State with { Progress = share });
            },
            early => Tell(id, kept, kept.State with { SoFar = SoFar.Of(unit, own.Value!, early) }),
            work.Stopped
        );
        work.Stopped.ThrowIfCancellationRequested();
        if (done is null)
        {
            // Half an answer is no finding: what was found before stays, marked as older by its number.
            Tell(id, kept, kept.State with { Progress = null, SoFar = null, Trouble = Unfinished });
            return;
        }
        var isSaved = false;
        try
        {
            var next = CardOf.NextAfter(unit, sheet, shop, done);
            await bench.Store.SaveFoundAsync(id, unit.LastNumber, next, done.Doubts, CancellationToken.None);
            isSaved = true;
        }
        finally
        {
            // Even where it was not saved a doubted check opens nothing.
            bench.Doubt(unit, done.Doubts, isSaved);
        }
        (kept.Key, kept.Readings) = (key, readings);
        Tell(id, kept, new(done, null, ""));
    }

    /// <summary>The answer; null where the last guard ended the search.</summary>
    private Diagnosed? Diagnose(
        BenchUnit unit,
        Workshop.Shops.Shop shop,
        TypeSheet own,
        TypeSheet judged,
        UnitReadings readings,
        KeptDiagnosis kept,
        JudgedKey key,
        Action<double> progress,
        Action<EarlyAnswer> early,
        CancellationToken cancel
    )
    {
        // What each fault does to each reading stays as it was while the unit and its judgements do.
        if (kept.Library is not { } library || !key.Equals(kept.LibraryKey))
            (kept.Library, kept.LibraryKey) = (library = new ReadingLibrary(new UnitModel(judged)), key);
        var (begun, told) = (bench.Time.GetTimestamp(), 0.0);
        var result = diagnose(
            library,
            readings,
            new DiagnosisOptions
            {
                IsOverdue = () => bench.Time.GetElapsedTime(begun) > MostTime,
                Cancellation = cancel,
                // The screens have threads of their own (Site). Where units wait, several benches are at work, and a core is left to them.
                Threads = jobs.Count > 1 ? Math.Max(1, Environment.ProcessorCount / 2) : Environment.ProcessorCount,
                Early = early,
                Progress = share =>
                {
                    if (share - told >= 0.05)
                        progress(told = share);
                },
            }
        );
        cancel.ThrowIfCancellationRequested();
        return result.Effort.IsFinished ? Diagnosed.Of(unit, shop, new UnitModel(own), library.Model, readings, result) : null;
    }

    private void Tell(Guid id, KeptDiagnosis kept, DiagnosisState state)
    {
        kept.State = state;
        // What is begun anew may still end as before: only its end changes what the screens say to do.
        if (state.Progress is null)
            bench.DoubtTrouble(id, state.Trouble);
        Changed?.Invoke(id);
    }
}
