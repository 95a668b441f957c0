using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>What one measurement gave: a table for the page, and the budgets that it broke.</summary>
/// <param name="Name">The verb that repeats it, and its place on the page.</param>
internal sealed record Figures(string Name, string Table, IReadOnlyList<string> Broken)
{
    private static string Folder => Path.Combine(RepositoryRoot.Path, ".build/perf");

    /// <summary>The table as it was last measured on this machine; null when it never was.</summary>
    public static string? Last(string name) => File.Exists(FileOf(name)) ? File.ReadAllText(FileOf(name)) : null;

    /// <summary>Shows the table, keeps it for the page, and returns the exit code.</summary>
    public int Report()
    {
        var stamp = string.Create(
            CultureInfo.InvariantCulture,
            $"{DateTime.UtcNow:yyyy-MM-dd}, {Environment.ProcessorCount} cores ({Processor()}), .NET {Environment.Version}{Load()}"
        );
        var text = $"{Table.TrimEnd()}\n\nMeasured {stamp}, by `-- {Name}`.\n";
        Directory.CreateDirectory(Folder);
        File.WriteAllText(FileOf(Name), text);
        Console.WriteLine("\n" + text);
        foreach (var b in Broken)
            Console.WriteLine("OVER BUDGET: " + b);
        return Broken.Count == 0 ? 0 : 1;
    }

    private static string FileOf(string name) => Path.Combine(Folder, name + ".md");

    private static string Processor()
    {
        const string list = "/proc/cpuinfo";
        var line = File.Exists(list)
            ? File.ReadLines(list).FirstOrDefault(l => l.StartsWith("model name", StringComparison.Ordinal))
            : null;
        return line is null
            ? RuntimeInformation.ProcessArchitecture.ToString()
            : line[(line.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim();
    }

    /// <summary>What else the machine was doing: the number to look at before believing a time.</summary>
    private static string Load()
    {
        const string file = "/proc/loadavg";
        return File.Exists(file) ? $", load average {File.ReadAllText(file).Split(' ')[0]} at the end{Priority()}" : "";
    }

    /// <summary>With `nice -n -15` in front a busy machine measures nearly as a quiet one does; the page says so.</summary>
    private static string Priority()
    {
        using var self = Process.GetCurrentProcess();
        return self.PriorityClass is ProcessPriorityClass.High or ProcessPriorityClass.AboveNormal or ProcessPriorityClass.RealTime
            ? ", run before all else by a high priority"
            : "";
    }
}
