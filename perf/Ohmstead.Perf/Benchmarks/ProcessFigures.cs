using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>The tool as a person starts it: whole processes, their time and peak memory.</summary>
internal static class ProcessFigures
{
    private const double MostStartSeconds = 0.5;
    private const double MostDiagnoseSeconds = 3;
    private const double MostDiagnoseMegabytes = 300;

    /// <summary>One process: wall time and the most memory it held [MB].</summary>
    private readonly record struct Cost(double Seconds, double Megabytes);

    public static int Run()
    {
        var tool = Path.Combine(RepositoryRoot.Path, "ohmstead");
        var sheet = RepositoryRoot.SamplePath;
        var cases = Directory
            .GetFiles(Path.Combine(RepositoryRoot.Path, "tests/Reference/sample/cases"), "*.readings.json")
            .Order(StringComparer.Ordinal)
            .ToArray();
        Measure(tool, "--version");
        var start = Enumerable.Range(0, 9).Select(_ => Measure(tool, "--version")).ToArray();
        var predict = Enumerable.Range(0, 5).Select(_ => Measure(tool, "predict", sheet, "--json")).ToArray();
        var diagnose = cases.Select(c => Measure(tool, "diagnose", sheet, c, "--json")).ToArray();
        var table = new StringBuilder("| command | runs | median | slowest | most memory | allowed |\n|---|---|---|---|---|---|\n");
        var broken = new List<string>();
        Row(table, broken, "./ohmstead --version", start, MostStartSeconds, double.PositiveInfinity);
        Row(table, broken, "./ohmstead predict twin-160.sheet.json --json", predict, double.PositiveInfinity, double.PositiveInfinity);
        Row(table, broken, "./ohmstead diagnose twin-160.sheet.json CASE --json", diagnose, MostDiagnoseSeconds, MostDiagnoseMegabytes);
        return new Figures("process", table.ToString(), broken).Report();
    }

    private static void Row(
        StringBuilder table,
        List<string> broken,
        string command,
        Cost[] costs,
        double mostSeconds,
        double mostMegabytes
    )
    {
        var (slowest, largest) = (costs.Max(c => c.Seconds), costs.Max(c => c.Megabytes));
        var allowed =
            double.IsFinite(mostMegabytes) ? FormattableString.Invariant($"{mostSeconds} s, {mostMegabytes} MB")
            : double.IsFinite(mostSeconds) ? FormattableString.Invariant($"{mostSeconds} s")
            : "";
        table.AppendLine(
            CultureInfo.InvariantCulture,
            $"| `{command}` | {costs.Length} | {Clock.Median(costs.Select(c => c.Seconds)):F2} s | {slowest:F2} s | {largest:F0} MB | {allowed} |"
        );
        if (slowest > mostSeconds || largest > mostMegabytes)
            broken.Add(FormattableString.Invariant($"{command}: {slowest:F2} s, {largest:F0} MB; {allowed} are allowed"));
    }

    private static Cost Measure(string tool, params string[] arguments)
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
        return new Cost(seconds, kilobytes / 1000);
    }

    /// <summary>The most that a running process has held, as Linux counts it (VmHWM); 0 elsewhere.</summary>
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
