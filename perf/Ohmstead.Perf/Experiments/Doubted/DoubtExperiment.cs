using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Perf.Experiments.Limits;

namespace Ohmstead.Perf.Experiments.Doubted;

/// <summary>How far the diagnosis can be trusted on benches that do not match the sheet.</summary>
internal static class DoubtExperiment
{
    private const int ThreadsOverUnits = 2;

    private static readonly DiagnosisOptions Usual = new() { Threads = 1 };

    /// <summary>Runs it and prints each row as soon as it is there. What was stopped goes on where it was.</summary>
    /// <returns>What is asked, and what came of it.</returns>
    public static ImmutableArray<Asked> Run(string root, DoubtArguments run, StringBuilder page)
    {
        Dictionary<string, DoubtFigures> tight = [],
            wide = [];
        var kept = KeptResults.OfDiagnosis(root);
        foreach (var of in run.Sheets)
        {
            var model = new UnitModel(TypeSheetFile.Read(File.ReadAllText(Path.Combine(root, of.File))).Required);
            Write(
                page,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"\n### {model.Sheet.Title}{(of.IsWide ? ", made from a plate" : "")}\n\n{DoubtFigures.Heading}"
                )
            );
            foreach (var condition in run.Conditions)
            {
                var (alone, together) = (new DoubtFigures(condition), FiguresIn(of.IsWide ? wide : tight, condition));
                var judged = new JudgedUnit[run.Units ?? of.Units];
                Parallel.For(
                    0,
                    judged.Length,
                    new ParallelOptions { MaxDegreeOfParallelism = ThreadsOverUnits },
                    n =>
                        judged[n] = kept.Of(
                            FormattableString.Invariant($"{of.Name} {condition.Name} {run.Seed + n}"),
                            () => JudgedUnit.Of(Diagnose(model, condition, run.Seed + n), condition)
                        )
                );
                foreach (var unit in judged)
                {
                    if (run.IsVerbose)
                        Console.WriteLine(unit.Line);
                    alone.Add(unit);
                    together.Add(unit);
                }
                Write(page, alone.Row());
            }
        }
        ImmutableArray<Asked> asked = [.. DoubtLimits.Of(tight, wide)];
        Write(page, $"\n### What is asked\n\n{Asked.Heading}");
        foreach (var figure in asked)
            Write(page, figure.Row());
        return asked;
    }

    private static DoubtFigures FiguresIn(Dictionary<string, DoubtFigures> all, DoubtCondition condition)
    {
        if (!all.TryGetValue(condition.Name, out var figures))
            all[condition.Name] = figures = new DoubtFigures(condition);
        return figures;
    }

    private static DiagnosedUnit Diagnose(UnitModel model, DoubtCondition condition, int seed)
    {
        var unit = DrawnUnit.Draw(model, seed, atNominal: condition.IsWalk, bench: condition.Bench);
        if (condition.IsWalk)
            return TwelveReadings.Take(model, unit, Usual);
        var result = Diagnoser.Run(model, unit.Readings, Usual);
        return new DiagnosedUnit(unit, result, DoubtedCheck.Count(model.Sheet, unit.Readings, result));
    }

    private static void Write(StringBuilder page, string line)
    {
        page.AppendLine(line);
        Console.WriteLine(line);
    }
}
