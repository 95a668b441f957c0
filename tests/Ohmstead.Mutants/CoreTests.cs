using System.Diagnostics;
using System.Globalization;

namespace Ohmstead.Mutants;

/// <summary>The tests of the core in a folder of their own, where the core is exchanged for one with mistakes; a class of tests is a process.</summary>
/// <param name="folder">A copy of what the tests were built to.</param>
internal sealed class CoreTests(string folder)
{
    private const string Assembly = "Ohmstead.Electrical.Tests.dll";
    private const int NotEnded = -1;

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
            .. Start(["-list", "classes", "-noLogo"], [])
                .Output.Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Select(l => l.Trim())
                .Where(l => l.StartsWith("Ohmstead.", StringComparison.Ordinal)),
        ];

    /// <summary>Runs a class with all mistakes asleep.</summary>
    /// <returns>Whether it passed, the processor time it took, and the mistakes it came by.</returns>
    public (bool HasPassed, TimeSpan Took, IReadOnlyList<int> Seen) Record(string name, TimeSpan most)
    {
        var seen = Path.Combine(folder, $"seen-{name}.txt");
        File.Delete(seen);
        var (code, _) = Start(Ran([name]), new() { ["MISTAKES_SEEN"] = seen }, most);
        if (code == NotEnded)
            return (true, TimeSpan.MaxValue, []);
        // A class that never touches the core writes nothing.
        if (!File.Exists(seen))
            return (code == 0, TimeSpan.Zero, []);
        int[] numbers = [.. File.ReadLines(seen).Select(l => int.Parse(l, CultureInfo.InvariantCulture))];
        return (code == 0, TimeSpan.FromMilliseconds(numbers[0]), numbers[1..]);
    }

    /// <summary>Runs classes with one mistake awake, to the first test that fails.</summary>
    /// <returns>True when a test failed or did not come to an end.</returns>
    public bool Notices(int mistake, IEnumerable<string> classes, TimeSpan most) =>
        Start(Ran(classes), new() { ["MISTAKE"] = mistake.ToString(CultureInfo.InvariantCulture) }, most).Code != 0;

    private static IEnumerable<string> Ran(IEnumerable<string> classes) =>
        classes
            .SelectMany(c => new[] { "-class", c })
            .Concat(["-trait-", "kind=long", "-stopOnFail", "-maxThreads", "1", "-noLogo", "-noColor"]);

    private (int Code, string Output) Start(IEnumerable<string> arguments, Dictionary<string, string> environment, TimeSpan? most = null)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(folder, Assembly), .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        using var process = Process.Start(start)!;
        var (output, _) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        if (!process.WaitForExit(most ?? TimeSpan.FromMinutes(1)))
        {
            process.Kill(entireProcessTree: true);
            process.WaitForExit();
            return (NotEnded, "");
        }
        return (process.ExitCode, output.GetAwaiter().GetResult());
    }
}
