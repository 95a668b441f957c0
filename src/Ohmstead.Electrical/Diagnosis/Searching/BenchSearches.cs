using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>
/// The search on the matching bench, and on those others that the readings make likely: each is first weighed by the sets of faults
/// that are known already, which costs no solution; only what carries weight is searched by itself.
/// </summary>
internal sealed class BenchSearches
{
    /// <summary>A bench that carries less is not looked at.</summary>
    private const double LeastWeight = 0.1;

    /// <summary>Of fewer readings nothing is concluded about a bench: one that is off is a fault, or a slip.</summary>
    private const int LeastReadings = 3;

    /// <summary>Each of them has this share of the work: where a bench explains the readings, few faults are left to be looked for.</summary>
    private const int WorkShare = 4;

    /// <summary>Most benches searched beside the matching one.</summary>
    private const int MostSearched = 2;

    private readonly List<Search> searches = [];

    public BenchSearches(SearchSetting setting)
    {
        var (evidence, workers, options) = (setting.Evidence, setting.Workers, setting.Options);
        var matching = new Search(setting);
        Stop = matching.Run();
        searches.Add(matching);
        if (options.IsBenchAsNoted)
            return;
        AssumedBench[] others = [.. new BenchTable(evidence).Others().Where(b => Bear(evidence, b) >= LeastReadings)];
        var logs = new double[others.Length];
        workers.Each(
            others.Length,
            (n, worker) => logs[n] = Math.Log(others[n].Chance) + matching.LogTotalBy(evidence.On(others[n]), worker)
        );
        var all = Vectors.LogSum([.. logs, matching.LogBench + matching.LogTotal]);
        foreach (
            var bench in Enumerable
                .Range(0, others.Length)
                .Where(n => logs[n] - all > Math.Log(LeastWeight))
                .OrderByDescending(n => logs[n])
                .Take(MostSearched)
                .Select(n => others[n])
        )
        {
            if (setting.Guard.IsOver)
                return;
            var search = new Search(
                setting with
                {
                    Evidence = evidence.On(bench),
                    Options = options with { MostWork = options.MostWork / WorkShare },
                    Watch = null,
                }
            );
            Stop = search.Run() is var stop && stop != SearchStop.Complete ? stop : Stop;
            searches.Add(search);
        }
    }

    /// <summary>Those that were run, the matching bench first.</summary>
    public IReadOnlyList<Search> All => searches;

    /// <summary>Why the last that did not look at everything stopped.</summary>
    public SearchStop Stop { get; }

    public int SetsTried => searches.Sum(s => s.Known.Count);

    public int Expanded => searches.Sum(s => s.Expanded);

    /// <summary>How many readings bear on a bench.</summary>
    private static int Bear(Evidence evidence, AssumedBench bench) =>
        bench.About is DoubtAbout.Line or DoubtAbout.Leads
            ? evidence.Numeric.ToArray().Count(r => bench.Shared[0][r] != 0)
            : evidence.Numeric.Length;
}
