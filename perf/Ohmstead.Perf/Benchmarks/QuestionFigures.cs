using System.Globalization;
using System.Text;
using Ohmstead.Perf.Listening;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>Every question of <c>reckon</c>, and a recording for <c>listen</c>, as whole processes.</summary>
internal static class QuestionFigures
{
    private const double MostSeconds = 2;

    /// <summary>The search over sets of parts may take longer.</summary>
    private const double MostSearchSeconds = 5;

    private const double MostListenMegabytes = 150;
    private const int Runs = 3;

    public static int Run()
    {
        var tool = Path.Combine(RepositoryRoot.Path, "ohmstead");
        ProcessCost.Of(tool, "--version");
        var (table, broken) = (
            new StringBuilder("| question | slowest of 3 | most memory | allowed |\n|---|---|---|---|\n"),
            new List<string>()
        );
        foreach (
            var path in Directory
                .GetFiles(Path.Combine(RepositoryRoot.Path, "tests/Reference/questions"), "*.question.json")
                .Order(StringComparer.Ordinal)
        )
        {
            var name = Path.GetFileName(path)[..^".question.json".Length];
            var costs = Measure(tool, "reckon", path, "--sheet", RepositoryRoot.SamplePath, "--json");
            Row(
                table,
                broken,
                $"`reckon {name}`",
                costs,
                name == "now-or-later" ? MostSearchSeconds : MostSeconds,
                double.PositiveInfinity
            );
        }
        Trees(tool, table, broken);
        Listen(tool, table, broken, 1, MostSeconds, double.PositiveInfinity);
        Listen(tool, table, broken, 1250, double.PositiveInfinity, MostListenMegabytes);
        return new Figures("questions", table.ToString(), broken).Report();
    }

    private static void Trees(string tool, StringBuilder table, List<string> broken)
    {
        var folder = Directory.CreateTempSubdirectory("ohmstead-perf-").FullName;
        try
        {
            foreach (var (kind, sheet, question) in RenewalTrees.Write(folder))
                Row(
                    table,
                    broken,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"`reckon now-or-later`, {RenewalTrees.Parts} parts on {RenewalTrees.Steps} steps, {kind} tree"
                    ),
                    Measure(tool, "reckon", question, "--sheet", sheet, "--json"),
                    MostSearchSeconds,
                    double.PositiveInfinity
                );
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>A recording of so many times ten seconds: the hum goes round in them.</summary>
    private static void Listen(string tool, StringBuilder table, List<string> broken, int times, double mostSeconds, double mostMegabytes)
    {
        const int seconds = 10;
        var once = new MadeRecording(new Random(7), seconds, 60, [double.NegativeInfinity, -24], -68).ToWave();
        var folder = Directory.CreateTempSubdirectory("ohmstead-perf-").FullName;
        try
        {
            var path = Path.Combine(folder, "hum.wav");
            using (var file = File.Create(path))
            {
                // A length that was never written, as of a recording that goes on.
                file.Write(MadeRecording.Wave([], MadeRecording.Rate, 1, 16, 1, uint.MaxValue));
                for (var n = 0; n < times; n++)
                    file.Write(once.AsSpan(once.Length - (seconds * MadeRecording.Rate * 2)));
            }
            var size = new FileInfo(path).Length / 1e6;
            Row(
                table,
                broken,
                string.Create(CultureInfo.InvariantCulture, $"`listen`, {times * seconds} s, {size:0.#} MB"),
                Measure(tool, "listen", path, "--json"),
                mostSeconds,
                mostMegabytes
            );
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static ProcessCost[] Measure(string tool, params string[] arguments) =>
        [.. Enumerable.Range(0, Runs).Select(_ => ProcessCost.Of(tool, arguments))];

    private static void Row(
        StringBuilder table,
        List<string> broken,
        string what,
        ProcessCost[] costs,
        double mostSeconds,
        double mostMegabytes
    )
    {
        var (slowest, largest) = (costs.Max(c => c.Seconds), costs.Max(c => c.Megabytes));
        var allowed = string.Join(
            ", ",
            [
                .. double.IsFinite(mostSeconds) ? [FormattableString.Invariant($"{mostSeconds} s")] : Array.Empty<string>(),
                .. double.IsFinite(mostMegabytes) ? [FormattableString.Invariant($"{mostMegabytes} MB")] : Array.Empty<string>(),
            ]
        );
        table.AppendLine(CultureInfo.InvariantCulture, $"| {what} | {slowest:F2} s | {largest:F0} MB | {allowed} |");
        if (slowest > mostSeconds || largest > mostMegabytes)
            broken.Add(FormattableString.Invariant($"{what}: {slowest:F2} s, {largest:F0} MB; {allowed} are allowed"));
    }
}
