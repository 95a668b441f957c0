using System.Diagnostics;
using System.Globalization;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Experiments.Drafted;

/// <summary>Units of a type, drawn and read through ngspice and a cheap meter by the reference program of the tests.</summary>
internal static class SimulatedUnits
{
    private const string Program = "tests/Ohmstead.Simulator/bin/Release/net10.0/Ohmstead.Simulator.dll";

    /// <summary>Makes those that are not there yet.</summary>
    /// <param name="expected">Faults in a unit on average; 0 for sound ones.</param>
    public static void Make(string root, TypeSheet sheet, string folder, int count, int seed, double expected)
    {
        Directory.CreateDirectory(folder);
        var file = Path.Combine(folder, "type.sheet.json");
        File.WriteAllText(file, TypeSheetFile.Write(sheet));
        var start = new ProcessStartInfo("dotnet") { RedirectStandardError = true };
        string Number(double n) => n.ToString(CultureInfo.InvariantCulture);
        foreach (
            var a in (string[])
                [
                    Path.Combine(root, Program),
                    "units",
                    file,
                    Path.Combine(folder, "units"),
                    "--count",
                    Number(count),
                    "--seed",
                    Number(seed),
                    "--expected",
                    Number(expected),
                ]
        )
            start.ArgumentList.Add(a);
        using var process = Process.Start(start)!;
        var said = process.StandardError.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"the reference program: {said}");
    }

    /// <summary>The readings file of one of them.</summary>
    public static string ReadingsOf(string folder, int n) =>
        Path.Combine(folder, "units", n.ToString("000", CultureInfo.InvariantCulture) + ".readings.json");
}
