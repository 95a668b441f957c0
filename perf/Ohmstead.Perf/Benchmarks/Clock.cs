using System.Diagnostics;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Solving;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>Times of short pieces on a machine that does other things too.</summary>
internal static class Clock
{
    /// <summary>
    /// Median time of solving a circuit [µs], over runs of at least a few microseconds each, so that an interruption spoils one
    /// run and not the answer.
    /// </summary>
    public static double Microseconds(ReadingSolver solver, ReadingCircuit circuit, UnitValues values)
    {
        const int warm = 20;
        const int runs = 61;
        for (var n = 0; n < warm; n++)
            solver.Solve(circuit, values);
        Span<double> times = stackalloc double[runs];
        for (var n = 0; n < runs; n++)
        {
            var began = Stopwatch.GetTimestamp();
            for (var k = 0; k < 4; k++)
                solver.Solve(circuit, values);
            times[n] = Stopwatch.GetElapsedTime(began).TotalMicroseconds / 4;
        }
        times.Sort();
        return times[runs / 2];
    }

    /// <summary>Solves until the compiler has done its last work on the solvers.</summary>
    public static void Warm(ReadingSolver solver, IEnumerable<ReadingCircuit> circuits, UnitValues values)
    {
        ReadingCircuit[] all = [.. circuits];
        for (var began = Stopwatch.GetTimestamp(); Stopwatch.GetElapsedTime(began).TotalSeconds < 2; )
            foreach (var c in all)
                solver.Solve(c, values);
    }

    /// <summary>The value that so large a share of a list does not exceed.</summary>
    /// <param name="share">0 to 1.</param>
    public static double Percentile(IEnumerable<double> values, double share)
    {
        double[] all = [.. values.Order()];
        return all[Math.Clamp((int)Math.Ceiling(share * all.Length) - 1, 0, all.Length - 1)];
    }

    /// <summary>The middle of a list.</summary>
    public static double Median(IEnumerable<double> values)
    {
        double[] all = [.. values.Order()];
        return all[all.Length / 2];
    }
}
