using System.Diagnostics;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>The same readings of the sample sheet through ngspice, as the reference program of the tests runs it, and through ours.</summary>
internal static class SimulatorRatio
{
    public static int Run()
    {
        var program = Path.Combine(RepositoryRoot.Path, "tests/Ohmstead.Simulator/bin/Release/net10.0/Ohmstead.Simulator.dll");
        if (!File.Exists(program))
        {
            Console.Error.WriteLine("Build tests/Ohmstead.Simulator first (./test does).");
            return 1;
        }
        var began = Stopwatch.GetTimestamp();
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true };
        foreach (var a in new[] { program, "predict", Path.Combine(RepositoryRoot.Path, "tests/Reference/contract/twin-160.sheet.json") }) start.ArgumentList.Add(a);
        using var process = Process.Start(start)!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        var simulator = Stopwatch.GetElapsedTime(began).TotalSeconds;
        var model = new UnitModel(RepositoryRoot.Sample);
        var solver = new ReadingSolver();
        var circuits = model.Sheet.Readings.Select(r => new FaultedCircuits(model, r, r.State).Usual).ToArray();
        var times = new List<double>();
        for (var n = 0; n < 300; n++)
        {
            var at = Stopwatch.GetTimestamp();
            foreach (var c in circuits) solver.Solve(c, model.Nominal);
            times.Add(Stopwatch.GetElapsedTime(at).TotalMilliseconds);
        }
        times.Sort();
        Console.WriteLine(FormattableString.Invariant($"42 readings: ngspice {simulator:F2} s, ours {times[150]:F3} ms, ratio {simulator * 1000 / times[150]:F0}"));
        return 0;
    }
}
