using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>The cost of a take-apart plan on trees of three sizes and two kinds, and of the check of a rewire on three sheets.</summary>
internal static class PlanningFigures
{
    private static readonly string[] Sheets =
    [
        "demo/solo-110.sheet.json",
        "demo/twin-175.sheet.json",
        "tests/Reference/sample/twin-160.sheet.json",
    ];

    public static int Run()
    {
        var (table, broken) = (new StringBuilder(), new List<string>());
        table.AppendLine(
            "| tree | steps | ways asked for | proved | bound, share of the cost | median [ms] | slowest [ms] | allowed [ms] |"
        );
        table.AppendLine("|---|---|---|---|---|---|---|---|");
        foreach (var (kind, near, groups) in new[] { ("loose", 30, 2), ("dense", 40, 3) })
        foreach (var (steps, allowed) in new[] { (60, 50), (250, 1000), (1000, 1000) })
        {
            // Once for the compiler.
            Plan(kind, steps, near, groups, 99);
            var runs = Enumerable.Range(0, 9).Select(seed => Plan(kind, steps, near, groups, seed)).ToList();
            var row = string.Create(
                CultureInfo.InvariantCulture,
                $"| {kind} | {steps} | {runs.Count} | {runs.Count(r => r.Plan.IsProved)} | {runs.Min(r => r.Plan.LowerBound / r.Plan.ExpectedCost):F2} to {runs.Max(r => r.Plan.LowerBound / r.Plan.ExpectedCost):F2} | {Clock.Median(runs.Select(r => r.Milliseconds)):F1} | {runs.Max(r => r.Milliseconds):F1} | {allowed} |"
            );
            Console.WriteLine(row);
            table.AppendLine(row);
            if (runs.Max(r => r.Milliseconds) > allowed)
                broken.Add(row);
        }
        table.AppendLine(
            "\n| sheet | elements | mistakes | list [s] | allowed [s] | judged with all its readings [s] | allowed [s] | ohmmeter list [s] |"
        );
        table.AppendLine("|---|---|---|---|---|---|---|---|");
        foreach (var file in Sheets)
        {
            var sheet = TypeSheetFile.Read(File.ReadAllText(Path.Combine(RepositoryRoot.Path, file))).Required;
            RewireCheck.Run(sheet, Taken(sheet, []));
            var began = Stopwatch.GetTimestamp();
            var list = RewireCheck.Run(sheet, Taken(sheet, []));
            var listed = Stopwatch.GetElapsedTime(began).TotalSeconds;
            began = Stopwatch.GetTimestamp();
            RewireCheck.Run(sheet, Taken(sheet, list.ToRead.Select(t => t.Spec)));
            var judged = Stopwatch.GetElapsedTime(began).TotalSeconds;
            began = Stopwatch.GetTimestamp();
            ContinuityPlanner.Plan(sheet, ImmutableDictionary<string, ControlPosition>.Empty, Meter.Usual);
            var ohms = Stopwatch.GetElapsedTime(began).TotalSeconds;
            var row = string.Create(
                CultureInfo.InvariantCulture,
                $"| {sheet.Id} | {sheet.Elements.Length} | {list.Mistakes.Length} | {listed:F2} | 5 | {judged:F2} | 2 | {ohms:F2} |"
            );
            Console.WriteLine(row);
            table.AppendLine(row);
            if (listed > 5 || judged > 2)
                broken.Add(row);
        }
        return new Figures("planning", table.ToString(), broken).Report();
    }

    private static (TakeApartPlan Plan, double Milliseconds) Plan(string kind, int steps, int near, int groups, int seed)
    {
        var isDense = kind == "dense";
        var tree = Tree(steps, near, groups, isDense, seed);
        var began = Stopwatch.GetTimestamp();
        var plan = TakeApartPlanner.Plan(tree, [.. tree.TakeLast(isDense ? steps / 20 : 3).Select(s => s.Id)]);
        return (plan, Stopwatch.GetElapsedTime(began).TotalMilliseconds);
    }

    /// <summary>Steps that need one or none of those shortly before them, half of them (all, where dense) one of several groups besides.</summary>
    public static ImmutableArray<TakeApartStep> Tree(int count, int near, int groups, bool isDense, int seed)
    {
        var dice = new Random(seed);
        string Id(int n) => "s" + n.ToString("D4", CultureInfo.InvariantCulture);
        string Before(int n) => Id(Math.Max(0, n - 1 - dice.Next(near)));
        ImmutableArray<string> Group(int n) => [.. Enumerable.Range(0, 1 + dice.Next(isDense ? 3 : 2)).Select(_ => Before(n)).Distinct()];
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(n => new TakeApartStep(
                    Id(n),
                    Id(n),
                    n > 0 && dice.Next(3) > 0 ? [Before(n)] : [],
                    n > 1 && (isDense || dice.Next(2) == 0) ? [.. Enumerable.Range(0, groups).Select(_ => Group(n))] : [],
                    1 + dice.Next(9),
                    1 + dice.Next(9),
                    dice.Next(10),
                    dice.Next(40),
                    [],
                    "",
                    0
                )),
        ];
    }

    private static UnitReadings Taken(TypeSheet sheet, IEnumerable<ReadingSpec> specs)
    {
        var (model, solver) = (new UnitModel(sheet), new ReadingSolver());
        TakenReading Take(ReadingSpec spec)
        {
            var value = solver.Solve(new FaultedCircuits(model, spec, spec.State).Usual, model.Nominal).Value!.Value;
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
        return new UnitReadings(sheet.Id, sheet.SupplyVolts, null, Meter.Usual, [.. specs.Select(Take)], []);
    }
}
