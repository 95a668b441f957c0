using System.Diagnostics;
using System.Globalization;
using System.Text;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>The cost of all readings and of a diagnosis at 1, 2 and 4 times the elements, made larger in two ways.</summary>
internal static class Scaling
{
    private static readonly string[] Faults = ["roller-left:worn", "disc-right:high-drop", "w-17:resistive"];

    private static readonly DiagnosisOptions Options = new()
    {
        RankNext = false,
        MostExpanded = 12,
        MostWork = long.MaxValue,
    };

    public static int Run()
    {
        var table = new StringBuilder();
        // Once for the compiler.
        Row(1, new UnitModel(RepeatedSheet.Of(1, RepeatedSheet.Supply)));
        foreach (
            var (way, single) in new[]
            {
                ("More secondaries on one core", RepeatedSheet.SupplyAndPrimary),
                ("Whole units on one supply", RepeatedSheet.Supply),
            }
        )
        {
            table.AppendLine(CultureInfo.InvariantCulture, $"**{way}**\n");
            table.AppendLine(
                "| copies | elements | readings | fault modes | parameters | rows left | all readings [ms] | a direct, phasor, periodic one [µs] | each fault alone [s] (solutions) | search [s] (sets expanded, solutions) |"
            );
            table.AppendLine("|---|---|---|---|---|---|---|---|---|---|");
            foreach (var copies in (ReadOnlySpan<int>)[1, 2, 4])
            {
                var row = Row(copies, new UnitModel(RepeatedSheet.Of(copies, single)));
                table.AppendLine(row);
                Console.WriteLine(row);
            }
            table.AppendLine();
        }
        return new Figures("scaling", table.ToString(), []).Report();
    }

    private static string Row(int copies, UnitModel model)
    {
        var solver = new ReadingSolver();
        var circuits = model.Sheet.Readings.Select(r => new FaultedCircuits(model, r, r.State).Usual).ToArray();
        Clock.Warm(solver, circuits, model.Nominal);
        var times = circuits.Select(c => Clock.Microseconds(solver, c, model.Nominal)).ToArray();
        var kinds = circuits.Select(c => ReadingKinds.Of(c, model.Nominal, solver)).ToArray();
        double Mean(ReadingKind kind) => times.Where((_, n) => kinds[n] == kind).Average();
        var rowsLeft = circuits
            .Where((_, n) => kinds[n] == ReadingKind.Phasor)
            .Average(c => c.Elimination.Unknowns + model.Sheet.Cores.Length);
        // The library remembers what each fault does alone; the second diagnosis with it is the search without that.
        var library = new ReadingLibrary(model);
        var readings = ReadingsOf(
            model,
            [.. Faults.Select(f => new Fault(library.Catalogue.Find(f)!, library.Catalogue.Find(f)!.MiddleSize))]
        );
        var (whole, all) = Diagnose(library, readings);
        var (search, effort) = Diagnose(library, readings);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {copies} | {model.Sheet.Elements.Length} | {circuits.Length} | {library.Catalogue.Modes.Length} | {model.Parameters.Length} | {rowsLeft:F0} | {times.Sum() / 1000:F2} | {Mean(ReadingKind.Direct):F1}, {Mean(ReadingKind.Phasor):F1}, {Mean(ReadingKind.Periodic):F0} | {whole - search:F2} ({all.ReadingsSolved - effort.ReadingsSolved:N0}) | {search:F2} ({effort.SetsExpanded}, {effort.ReadingsSolved:N0}) |"
        );
    }

    private static (double Seconds, SearchEffort Effort) Diagnose(ReadingLibrary library, UnitReadings readings)
    {
        var began = Stopwatch.GetTimestamp();
        var effort = Diagnoser.Run(library, readings, Options).Effort;
        return (Stopwatch.GetElapsedTime(began).TotalSeconds, effort);
    }

    /// <summary>What an exact meter reads on the nominal unit with these faults: the same answer to look for at every size.</summary>
    private static UnitReadings ReadingsOf(UnitModel model, Fault[] faults)
    {
        var solver = new ReadingSolver();
        var values = model.Nominal.Copy();
        foreach (var f in faults)
            f.ApplyTo(values);
        TakenReading Take(ReadingSpec spec)
        {
            var value = solver.Solve(new FaultedCircuits(model, spec, spec.State).For(faults), values).Value!.Value;
            return new TakenReading(
                spec,
                value > Solution.OverRange(spec.Quantity) ? Outcome.OverRange : Outcome.Value,
                value,
                [],
                "",
                "",
                spec.State
            );
        }
        return new UnitReadings(model.Sheet.Id, model.Sheet.SupplyVolts, 2, Meter.Usual, [.. model.Sheet.Readings.Select(Take)], []);
    }
}
