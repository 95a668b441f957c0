using Ohmstead.Perf.Benches;
using Ohmstead.Perf.Stores;
using Ohmstead.Perf.Stores.Many;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>Puts the tables last measured on this machine between the marks of docs/performance.md.</summary>
internal static class PerformancePage
{
    private static readonly (string Name, Func<int> Measure)[] Parts =
    [
        ("bench", () => BenchmarkRuns.Run([])),
        ("process", ProcessFigures.Run),
        ("questions", QuestionFigures.Run),
        ("scaling", Scaling.Run),
        ("planning", PlanningFigures.Run),
        ("ngspice-ratio", SimulatorRatio.Run),
        ("store", () => StoreFigures.RunAsync().GetAwaiter().GetResult()),
        ("entry", () => EntryFigures.RunAsync().GetAwaiter().GetResult()),
        ("server", () => ServerFigures.RunAsync().GetAwaiter().GetResult()),
        ("memory", () => MemoryFigures.RunAsync([]).GetAwaiter().GetResult()),
        ("plan", () => PlanFigures.RunAsync().GetAwaiter().GetResult()),
        ("benches", () => BenchesFigures.RunAsync([]).GetAwaiter().GetResult()),
        ("seen", () => SeenFigures.RunAsync().GetAwaiter().GetResult()),
        ("many", () => ManyFigures.RunAsync([]).GetAwaiter().GetResult()),
        ("merge", () => MergeFigures.RunAsync().GetAwaiter().GetResult()),
        ("slow-laptop", () => SlowLaptopFigures.RunAsync().GetAwaiter().GetResult()),
    ];

    /// <param name="arguments">Names of parts: only these. <c>again</c> measures anew; otherwise only what was never measured.</param>
    public static int Run(string[] arguments)
    {
        var isAgain = arguments.Contains("again");
        var parts = Parts.Where(p => arguments.Contains(p.Name)).ToArray();
        if (parts.Length == 0)
            parts = Parts;
        var code = 0;
        foreach (var (name, measure) in parts)
            if (isAgain || Figures.Last(name) is null)
                code = Math.Max(code, measure());
        var file = Path.Combine(RepositoryRoot.Path, "docs/performance.md");
        var text = File.ReadAllText(file);
        foreach (var (name, _) in parts)
            if (Figures.Last(name) is { } table)
                text = WithTable(text, name, table);
        File.WriteAllText(file, text);
        return code;
    }

    private static string WithTable(string text, string name, string table)
    {
        var (begin, end) = ($"<!-- measured: {name} -->\n", $"<!-- end: {name} -->");
        var (from, to) = (text.IndexOf(begin, StringComparison.Ordinal), text.IndexOf(end, StringComparison.Ordinal));
        if (from < 0 || to < from)
            throw new InvalidOperationException($"docs/performance.md lacks the marks of {name}");
        return text[..(from + begin.Length)] + table + text[to..];
    }
}
