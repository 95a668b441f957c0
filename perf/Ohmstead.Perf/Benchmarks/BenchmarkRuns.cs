using System.Globalization;
using System.Text;
using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>Runs the benchmarks in this process.</summary>
internal static class BenchmarkRuns
{
    /// <summary>The issue's budget for all readings of one set of faults, warm [ms].</summary>
    private const double MostMilliseconds = 2;

    public static int Run(string[] arguments)
    {
        var config = ManualConfig
            .Create(DefaultConfig.Instance)
            .AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance).WithIterationCount(9))
            .AddDiagnoser(MemoryDiagnoser.Default)
            .AddColumn(StatisticColumn.Median)
            .WithOptions(ConfigOptions.DisableLogFile)
            .WithArtifactsPath(Path.Combine(RepositoryRoot.Path, ".build/perf/benchmarks"));
        var isWhole = arguments.Length == 0;
        var summaries = BenchmarkSwitcher
            .FromTypes([typeof(SolveBenchmark), typeof(DiagnoseBenchmark)])
            .Run(isWhole ? ["--filter", $"*{nameof(SolveBenchmark)}*"] : arguments, config);
        return isWhole ? FiguresOf([.. summaries.SelectMany(s => s.Reports)]).Report() : 0;
    }

    private static Figures FiguresOf(List<BenchmarkReport> reports)
    {
        var table = new StringBuilder("| what | median | a tenth are slower than | allocated |\n|---|---|---|---|\n");
        var broken = new List<string>();
        var setUp = new SolveBenchmark();
        setUp.SetUp();
        foreach (var r in reports)
        {
            var name = r.BenchmarkCase.Descriptor.WorkloadMethod.Name;
            if (r.ResultStatistics is not { } times)
            {
                broken.Add($"{name} gave no result");
                continue;
            }
            var bytes = Allocated(setUp, name);
            table.AppendLine(
                CultureInfo.InvariantCulture,
                $"| {Says(name)} | {Milliseconds(times.Median)} | {Milliseconds(times.Percentiles.P90)} | {Size(bytes)} |"
            );
            if (bytes != 0)
                broken.Add(FormattableString.Invariant($"{name} allocates {bytes} bytes a call; 0 are allowed"));
            if (name == nameof(SolveBenchmark.AllReadings) && times.Median > MostMilliseconds * 1e6)
                broken.Add(FormattableString.Invariant($"{name}: {times.Median / 1e6:F2} ms, {MostMilliseconds} ms are allowed"));
        }
        table.AppendLine(CultureInfo.InvariantCulture, $"\n{setUp.Counts()}; one thread.");
        return new Figures("bench", table.ToString(), broken);
    }

    /// <summary>
    /// Bytes that a call allocates on its own thread, counted exactly: the benchmark's own count has other threads in it.
    /// </summary>
    private static long Allocated(SolveBenchmark benchmark, string method)
    {
        const int calls = 100;
        var call = typeof(SolveBenchmark).GetMethod(method)!.CreateDelegate<Func<double>>(benchmark);
        call();
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var n = 0; n < calls; n++)
            call();
        return (GC.GetAllocatedBytesForCurrentThread() - before + calls - 1) / calls;
    }

    private static string Says(string method) =>
        method switch
        {
            nameof(SolveBenchmark.AllReadings) => "all readings, one set of faults",
            nameof(SolveBenchmark.DirectCurrent) => "… of them direct current",
            nameof(SolveBenchmark.Phasor) => "… phasor",
            _ => "… periodic",
        };

    private static string Milliseconds(double nanoseconds) => string.Create(CultureInfo.InvariantCulture, $"{nanoseconds / 1e6:G3} ms");

    private static string Size(long bytes) =>
        string.Create(CultureInfo.InvariantCulture, $"{(bytes < 1_000_000 ? bytes : bytes / 1e6):F0} {(bytes < 1_000_000 ? "B" : "MB")}");
}
