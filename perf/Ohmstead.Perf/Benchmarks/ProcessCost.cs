using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>One process: wall time, and the most memory it held [MB], as Linux counts it (0 elsewhere).</summary>
internal readonly record struct ProcessCost(double Seconds, double Megabytes)
{
    /// <summary>Runs the tool to its end; what <c>--json</c> prints must be JSON.</summary>
    public static ProcessCost Of(string tool, params string[] arguments)
    {
        var start = new ProcessStartInfo(tool) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var a in arguments)
            start.ArgumentList.Add(a);
        var began = Stopwatch.GetTimestamp();
        using var process = Process.Start(start)!;
        var answer = process.StandardOutput.ReadToEndAsync();
        var said = process.StandardError.ReadToEndAsync();
        var kilobytes = 0.0;
        while (!process.WaitForExit(4))
            kilobytes = Math.Max(kilobytes, PeakKilobytes(process.Id));
        process.WaitForExit();
        var seconds = Stopwatch.GetElapsedTime(began).TotalSeconds;
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{tool} {string.Join(' ', arguments)} failed: {said.Result}");
        if (arguments.Contains("--json"))
            JsonDocument.Parse(answer.Result).Dispose();
        return new ProcessCost(seconds, kilobytes / 1000);
    }

    /// <summary>The most that a running process has held (VmHWM); 0 where nobody counts it.</summary>
    private static double PeakKilobytes(int process)
    {
        try
        {
            var line = File.ReadLines(FormattableString.Invariant($"/proc/{process}/status"))
                .FirstOrDefault(l => l.StartsWith("VmHWM:", StringComparison.Ordinal));
            return line is null
                ? 0
                : double.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[^2], CultureInfo.InvariantCulture) * 1.024;
        }
        catch (IOException)
        {
            return 0;
        }
    }
}
