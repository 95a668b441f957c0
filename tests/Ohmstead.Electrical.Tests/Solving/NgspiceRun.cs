using System.Diagnostics;
using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>The circuit simulator as a process: <c>tests/Ohmstead.Simulator</c> writes the netlists and drives ngspice.</summary>
internal static class NgspiceRun
{
    /// <summary>True when ngspice can be started here.</summary>
    public static bool IsThere { get; } =
        (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator)
            .Any(folder => File.Exists(Path.Combine(folder, "ngspice")) || File.Exists(Path.Combine(folder, "ngspice.exe")));

    /// <summary>What ngspice finds for a sheet with faults: by reading a number, or "OL".</summary>
    public static JsonObject Predict(string sheetPath, IEnumerable<string> faults) =>
        Run(["predict", sheetPath, .. faults.SelectMany(f => new[] { "--fault", f })]);

    /// <summary>What ngspice finds on the cold and low-voltage readings with one mistake of a rewire.</summary>
    public static JsonObject Mistake(string sheetPath, string mistake, double ohms) =>
        Run(["mistake", sheetPath, mistake, ohms.ToString("R", System.Globalization.CultureInfo.InvariantCulture)]);

    /// <summary>What ngspice finds with a rectifier in the place of one of a sheet, for a state of a file.</summary>
    public static JsonObject Part(string file, int state) =>
        Run(["part", file, state.ToString(System.Globalization.CultureInfo.InvariantCulture)]);

    /// <summary>Draws further sheets of the new sorts into a folder, with what ngspice finds for them.</summary>
    public static void More(string folder, int count) =>
        Say(["more", folder, "--count", count.ToString(System.Globalization.CultureInfo.InvariantCulture)]);

    private static JsonObject Run(string[] arguments) => JsonNode.Parse(Say(arguments))!.AsObject();

    private static string Say(string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "Ohmstead.Simulator.dll"));
        foreach (var a in arguments)
            start.ArgumentList.Add(a);
        using var process = Process.Start(start)!;
        var complaints = process.StandardError.ReadToEndAsync();
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, complaints.Result);
        return text;
    }
}
