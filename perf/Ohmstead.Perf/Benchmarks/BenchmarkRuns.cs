using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>Runs the benchmarks in this process.</summary>
internal static class BenchmarkRuns
{
    public static int Run(string[] arguments)
    {
        var config = ManualConfig.Create(DefaultConfig.Instance)
            .AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance).WithIterationCount(8))
            .AddDiagnoser(MemoryDiagnoser.Default);
        BenchmarkSwitcher.FromTypes([typeof(SolveBenchmark), typeof(DiagnoseBenchmark)]).Run(arguments.Length == 0 ? ["--filter", "*"] : arguments, config);
        return 0;
    }
}
