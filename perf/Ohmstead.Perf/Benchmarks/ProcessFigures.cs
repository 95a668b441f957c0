using System.Globalization;
using System.Text;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>The tool as a person starts it: whole processes, their time and peak memory.</summary>
internal static class ProcessFigures
{
    private const double MostStartSeconds = 0.5;
    private const double MostDiagnoseSeconds = 3;
    private const double MostDiagnoseMegabytes = 300;

    public static int Run()
    {
        var tool = Path.Combine(RepositoryRoot.Path, "ohmstead");
        var sheet = RepositoryRoot.SamplePath;
        var cases = Directory
            .GetFiles(Path.Combine(RepositoryRoot.Path, "tests/Reference/sample/cases"), "*.readings.json")
            .Order(StringComparer.Ordinal)
            .ToArray();
        ProcessCost.Of(tool, "--version");
        var start = Enumerable.Range(0, 9).Select(_ => ProcessCost.Of(tool, "--version")).ToArray();
        var predict = Enumerable.Range(0, 5).Select(_ => ProcessCost.Of(tool, "predict", sheet, "--json")).ToArray();
        var diagnose = cases.Select(c => ProcessCost.Of(tool, "diagnose", sheet, c, "--json")).ToArray();
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
        ProcessCost[] costs,
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
}
