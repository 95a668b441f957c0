using System.Diagnostics;
using System.Globalization;

namespace Ohmstead.Mutants;

/// <summary>The tests of the core in a folder of their own, where the core is exchanged for one with mistakes; a class of tests is a process.</summary>
/// <param name="folder">A copy of what the tests were built to.</param>
internal sealed class CoreTests(string folder)
{
    private const string Assembly = "Ohmstead.Electrical.Tests.dll";

    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(250);

    /// <summary>What gets no processor time for so long waits for something that will not come.</summary>
    private static readonly TimeSpan Stalled = TimeSpan.FromMinutes(2);

    public string Core => Path.Combine(folder, "Ohmstead.Electrical.dll");

    /// <summary>Copies the built tests.</summary>
    public static CoreTests Copy(string repository, string to)
    {
        var from = Path.Combine(repository, "tests", "Ohmstead.Electrical.Tests", "bin", "Release", "net10.0");
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy, overwrite: true);
        }
        return new CoreTests(to);
    }

    public IReadOnlyList<string> Classes() =>
        [
            .. Start(["-list", "classes", "-noLogo"], [], TimeSpan.FromMinutes(1))
                .Output.Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Select(l => l.Trim())
                .Where(l => l.StartsWith("Ohmstead.", StringComparison.Ordinal))
                .Distinct(StringComparer.Ordinal),
        ];

    /// <summary>Runs a class with all mistakes asleep.</summary>
    /// <param name="most">Processor time, after which it is given up.</param>
    /// <returns>The processor time it took, and the mistakes it came by; null when it was given up.</returns>
    public Recording? Record(string name, TimeSpan most)
    {
        var seen = Path.Combine(folder, $"seen-{name}.txt");
        File.Delete(seen);
        var (end, _) = Start(Ran([name]), new() { ["MISTAKES_SEEN"] = seen }, most);
        if (end == End.GivenUp)
            return null;
        if (end == End.Failed)
            throw new InvalidOperationException($"{name} fails with every mistake asleep.");
        // A class that never touches the core writes nothing.
        int[] numbers = File.Exists(seen) ? [.. File.ReadLines(seen).Select(l => int.Parse(l, CultureInfo.InvariantCulture))] : [0];
        return new(TimeSpan.FromMilliseconds(numbers[0]), numbers[1..]);
    }

    /// <summary>Runs classes with one mistake awake, to the first test that fails.</summary>
    /// <param name="most">Processor time, and not time on the wall: a busy machine notices no mistake.</param>
    /// <returns>True when a test failed or did not come to an end.</returns>
    public bool Notices(int mistake, IEnumerable<string> classes, TimeSpan most) =>
        Start(Ran(classes), new() { ["MISTAKE"] = mistake.ToString(CultureInfo.InvariantCulture) }, most).End != End.Passed;

    private static IEnumerable<string> Ran(IEnumerable<string> classes) =>
        classes
            .SelectMany(c => new[] { "-class", c })
            .Concat(["-trait-", "kind=long", "-stopOnFail", "-maxThreads", "1", "-noLogo", "-noColor"]);

    private (End End, string Output) Start(IEnumerable<string> arguments, Dictionary<string, string> environment, TimeSpan most)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(folder, Assembly), .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        // Code that lives for seconds does not earn back what measuring it costs.
        start.Environment["DOTNET_TieredPGO"] = "0";
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        using var process = Process.Start(start)!;
        var (output, _) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        var (worked, since) = (TimeSpan.Zero, Stopwatch.StartNew());
        while (!process.WaitForExit(LookEvery))
        {
            process.Refresh();
            if (Worked(process) is not { } now)
                continue;
            if (now > worked)
                (worked, since) = (now, Stopwatch.StartNew());
            if (worked < most && since.Elapsed < Stalled)
                continue;
            process.Kill(entireProcessTree: true);
            process.WaitForExit();
            return (End.GivenUp, "");
        }
        return (process.ExitCode == 0 ? End.Passed : End.Failed, output.GetAwaiter().GetResult());
    }

    /// <summary>The processor time so far; null when the process ended meanwhile.</summary>
    private static TimeSpan? Worked(Process process)
    {
        try
        {
            return process.TotalProcessorTime;
        }
        catch (Exception e) when (e is InvalidOperationException or System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }

    private enum End
    {
        Passed,
        Failed,
        GivenUp,
    }
}

/// <summary>What a class of tests did with all mistakes asleep.</summary>
/// <param name="Took">Processor time.</param>
/// <param name="Seen">Numbers of the mistakes it came by.</param>
internal sealed record Recording(TimeSpan Took, IReadOnlyList<int> Seen);
