using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>
/// The same readings of the sample sheet through ngspice, as the reference program of the tests drives it, and through ours.
/// </summary>
internal static class SimulatorRatio
{
    private static readonly string Program = Path.Combine(
        RepositoryRoot.Path,
        "tests/Ohmstead.Simulator/bin/Release/net10.0/Ohmstead.Simulator.dll"
    );

    public static int Run()
    {
        if (!File.Exists(Program) || !HasNgspice())
        {
            Console.Error.WriteLine("Skipped: build tests/Ohmstead.Simulator in Release and install ngspice first (./test does both).");
            return 0;
        }
        var model = new UnitModel(RepositoryRoot.Sample);
        var solver = new ReadingSolver();
        var circuits = model.Sheet.Readings.Select(r => new FaultedCircuits(model, r, r.State).Usual).ToArray();
        var kinds = circuits.ToLookup(c => ReadingKinds.Of(c, model.Nominal, solver));
        var table = new StringBuilder(
            "| kind | readings | ngspice [s] | ours [ms] | ratio | largest difference |\n|---|---|---|---|---|---|\n"
        );
        Clock.Warm(solver, circuits, model.Nominal);
        Simulate("none", out var start);
        var (theirs, ours) = (0.0, 0.0);
        foreach (var kind in Enum.GetValues<ReadingKind>())
        {
            ReadingCircuit[] some = [.. kinds[kind]];
            var values = Simulate(string.Join(',', some.Select(c => c.Reading.Id)), out var whole);
            var (seconds, milliseconds) = (Math.Max(whole - start, 0), some.Sum(c => Clock.Microseconds(solver, c, model.Nominal)) / 1000);
            var worst = some.Max(c => Difference(values[c.Reading.Id]!, solver.Solve(c, model.Nominal).Value!.Value, c.Reading.Quantity));
            Row(
                table,
                ReadingKinds.NameOf(kind),
                some.Length,
                seconds,
                milliseconds,
                string.Create(CultureInfo.InvariantCulture, $"{worst:P3}")
            );
            (theirs, ours) = (theirs + seconds, ours + milliseconds);
        }
        Row(table, "all", circuits.Length, theirs, ours, "");
        table.AppendLine(
            CultureInfo.InvariantCulture,
            $"\nSound unit; the start of the reference program and of ngspice ({start:F2} s) is taken off."
        );
        return new Figures("ngspice-ratio", table.ToString(), []).Report();
    }

    private static void Row(StringBuilder table, string kind, int count, double seconds, double milliseconds, string difference) =>
        table.AppendLine(
            CultureInfo.InvariantCulture,
            $"| {kind} | {count} | {seconds:F2} | {milliseconds:F3} | {seconds * 1000 / milliseconds:N0} | {difference} |"
        );

    private static bool HasNgspice()
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo("ngspice", "--version") { RedirectStandardOutput = true });
            process!.StandardOutput.ReadToEnd();
            return true;
        }
        catch (Win32Exception)
        {
            return false;
        }
    }

    private static JsonObject Simulate(string readings, out double seconds)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true };
        foreach (var a in new[] { Program, "predict", RepositoryRoot.SamplePath, "--readings", readings })
            start.ArgumentList.Add(a);
        var began = Stopwatch.GetTimestamp();
        using var process = Process.Start(start)!;
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        seconds = Stopwatch.GetElapsedTime(began).TotalSeconds;
        return JsonNode.Parse(text)!.AsObject();
    }

    /// <summary>Relative difference; below a meter's floor, of the floor.</summary>
    private static double Difference(JsonNode theirs, double ours, Quantity quantity)
    {
        var limit = Solution.OverRange(quantity);
        if (theirs.GetValueKind() == System.Text.Json.JsonValueKind.String)
            return ours > limit ? 0 : double.PositiveInfinity;
        var floor = Electrical.Readings.Meter.Usual.For(quantity).Floor;
        return Math.Abs((double)theirs - ours) / Math.Max(Math.Abs(ours), floor);
    }
}
