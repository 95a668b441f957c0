using System.Collections.Concurrent;
using System.Diagnostics;

namespace Ohmstead.Mutants;

/// <summary>
/// The tests of the core in a folder of their own, where the core is exchanged for one with mistakes. A few processes stay and run one
/// mistake after the other; a fresh one is started where what was made before could hide the mistake.
/// </summary>
/// <param name="folder">A copy of what the tests were built to.</param>
internal sealed class CoreTests(string folder) : IDisposable
{
    private const string Assembly = "Ohmstead.Electrical.Tests.dll";

    private readonly ConcurrentBag<WorkerProcess> idle = [];

    public string Core => Path.Combine(folder, "Ohmstead.Electrical.dll");

    /// <summary>Copies the built tests, and this program to run them.</summary>
    public static CoreTests Copy(string repository, string to)
    {
        var from = Path.Combine(repository, "tests", "Ohmstead.Electrical.Tests", "bin", "Release", "net10.0");
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy, overwrite: true);
        }
        var itself = typeof(CoreTests).Assembly.Location;
        File.Copy(itself, Path.Combine(to, Path.GetFileName(itself)), overwrite: true);
        return new CoreTests(to);
    }

    public IReadOnlyList<string> Classes()
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(folder, Assembly), "-list", "classes", "-noLogo"])
        {
            RedirectStandardOutput = true,
        };
        using var process = Process.Start(start)!;
        var listed = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return
        [
            .. listed
                .Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Select(l => l.Trim())
                .Where(l => l.StartsWith("Ohmstead.", StringComparison.Ordinal))
                .Distinct(StringComparer.Ordinal),
        ];
    }

    /// <summary>Runs a class with all mistakes asleep, in a process of its own: the first time, and once more.</summary>
    /// <param name="most">Processor time, after which it is given up.</param>
    /// <returns>Null when it was given up, or failed.</returns>
    public Recording? Record(string name, TimeSpan most)
    {
        using var fresh = new WorkerProcess(folder);
        // One that asks a clock may fail on a busy machine, and would seem to notice what it does not.
        if (fresh.Ask(Worker.Counted, [name], most) is not { Passed: true } first)
            return null;
        var again = fresh.Ask(Worker.Counted, [name], most) is { Passed: true } second ? second : null;
        return new(
            first.Took,
            again?.Took ?? first.Took,
            first.Came.ToDictionary(c => c.Key, c => again?.Came.GetValueOrDefault(c.Key) == c.Value)
        );
    }

    /// <summary>Runs classes with one mistake awake in a process that has run them before, to the first test that fails.</summary>
    /// <returns>True when a test failed or did not come to an end.</returns>
    public bool Notices(int mistake, IReadOnlyCollection<string> classes, TimeSpan most)
    {
        var worker = idle.TryTake(out var some) ? some : new WorkerProcess(folder);
        string[] cold = [.. classes.Where(c => !worker.Warm.Contains(c))];
        // They pass in a fresh process: something that a mistake before this one left behind is in their way.
        if (cold.Length > 0 && worker.Ask(Worker.Asleep, cold, TimeSpan.MaxValue) is not { Passed: true })
        {
            worker.Dispose();
            return NoticesAtFirst(mistake, classes, most);
        }
        worker.Warm.UnionWith(cold);
        var answer = worker.Ask(mistake, classes, most);
        // What a mistake leaves behind must not be held against the next one, nor what befell the process.
        if (answer is null || (!answer.Passed && worker.Ask(Worker.Asleep, classes, most) is not { Passed: true }))
        {
            worker.Dispose();
            return NoticesAtFirst(mistake, classes, most);
        }
        if (worker.IsAlive)
            idle.Add(worker);
        return !answer.Passed;
    }

    /// <summary>The same in a fresh process: for a mistake in what is made once for all.</summary>
    public bool NoticesAtFirst(int mistake, IEnumerable<string> classes, TimeSpan most)
    {
        using var fresh = new WorkerProcess(folder);
        return fresh.Ask(mistake, classes, most) is not { Passed: true };
    }

    public void Dispose()
    {
        foreach (var worker in idle)
            worker.Dispose();
    }
}

/// <summary>What a class of tests did with all mistakes asleep.</summary>
/// <param name="Took">Processor time in a fresh process.</param>
/// <param name="TookAgain">Processor time once it had run before.</param>
/// <param name="Seen">By number of a mistake it came by: whether it came by it as often when it ran once more.</param>
internal sealed record Recording(TimeSpan Took, TimeSpan TookAgain, IReadOnlyDictionary<int, bool> Seen);
