using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Experiments;

/// <summary>
/// The minutes until every true fault, or the group it cannot be told from, stands above 0.8 with no false one above it:
/// following the proposed next reading, the sheet's own order, and the shortest first.
/// </summary>
internal static class NextExperiment
{
    private const double Found = 0.8;

    private static readonly DiagnosisOptions Quick = new() { MostExpanded = 12, Margin = 5, Threads = 1 };

    public static void Run(UnitModel model, int units, StringBuilder page)
    {
        var library = new ReadingLibrary(model, DrawnUnit.CaseMeter);
        var drawn = Enumerable.Range(0, 10 * units).Select(n => DrawnUnit.Draw(model, 5000 + n, 1, atNominal: true)).Where(u => u.Truth.Count > 0).Take(units).ToArray();
        var results = new (Walk Next, Walk Sheet, Walk Short)[units];
        Parallel.For(0, units, new ParallelOptions { MaxDegreeOfParallelism = 2 }, n =>
        {
            results[n] = (Follow(library, drawn[n], NextOf), Follow(library, drawn[n], InSheetOrder), Follow(library, drawn[n], ShortestFirst));
        });
        var (next, sheet, shortest) = (Mean(results.Select(r => r.Next)), Mean(results.Select(r => r.Sheet)), Mean(results.Select(r => r.Short)));
        page.AppendLine(CultureInfo.InvariantCulture, $"\n| order, {model.Sheet.Title}, {units} units with a fault | mean minutes, capped at the full list | never got there | blocked proposals |\n|---|---|---|---|");
        Row(page, "the proposed next reading", next, results.Count(r => !r.Next.Reached), units, results.Sum(r => r.Next.Blocked));
        Row(page, "the sheet's own order", sheet, results.Count(r => !r.Sheet.Reached), units, 0);
        Row(page, "shortest first", shortest, results.Count(r => !r.Short.Reached), units, 0);
        var line = string.Create(CultureInfo.InvariantCulture, $"\nThe proposed order takes {next / sheet:P0} of the minutes of the sheet's order and {next / shortest:P0} of shortest first.");
        page.AppendLine(line);
        Console.WriteLine(line);
    }

    private sealed record Walk(double Minutes, bool Reached, int Blocked);

    private static double Mean(IEnumerable<Walk> walks) => walks.Average(w => w.Minutes);

    private static void Row(StringBuilder page, string order, double minutes, int never, int units, int blocked) =>
        page.AppendLine(CultureInfo.InvariantCulture, $"| {order} | {minutes:F1} | {never / (double)units:P0} | {blocked} |");

    private static Walk Follow(ReadingLibrary library, DrawnUnit unit, Func<ReadingLibrary, UnitReadings, DiagnosisResult, ReadingSpec?> choose)
    {
        var sheet = library.Model.Sheet;
        var all = unit.Readings.Readings.ToDictionary(r => r.Spec.Id, StringComparer.Ordinal);
        var so = unit.Readings with { Readings = [] };
        var (minutes, blocked) = (0.0, 0);
        while (true)
        {
            var isNext = choose == NextOf;
            var result = Diagnoser.Run(library, so, Quick with { RankNext = isNext });
            if (so.Readings.Length > 0 && IsFound(result, unit.Truth)) return new Walk(minutes, true, blocked);
            var spec = choose(library, so, result);
            if (spec is null) return new Walk(FullList(library), false, blocked);
            if (Gates.Missing(sheet, so, spec).Length > 0) blocked++;
            minutes += spec.Minutes + (so.Readings.Any(r => r.Spec.Access == spec.Access) ? 0 : Gates.OpeningMinutes(sheet, spec.Access));
            so = so with { Readings = so.Readings.Add(all[spec.Id]) };
        }
    }

    /// <summary>All readings that the unit's gates let through, with opening.</summary>
    private static double FullList(ReadingLibrary library) =>
        library.Model.Sheet.Readings.Sum(r => r.Minutes) + library.Model.Sheet.Readings.Select(r => r.Access).Distinct(StringComparer.Ordinal).Sum(a => Gates.OpeningMinutes(library.Model.Sheet, a));

    private static bool IsFound(DiagnosisResult result, ImmutableHashSet<string> truth)
    {
        var groups = result.Alike.SelectMany(g => g.Select(m => (m.Name, Group: g))).ToDictionary(p => p.Name, p => p.Group, StringComparer.Ordinal);
        var p = result.Faults.ToDictionary(f => f.Mode.Name, f => f.Probability, StringComparer.Ordinal);
        double Of(string name) => groups.TryGetValue(name, out var g) ? g.Sum(m => p[m.Name]) : p[name];
        bool IsTrue(string name) => truth.Contains(name) || (groups.TryGetValue(name, out var g) && g.Any(m => truth.Contains(m.Name)));
        return truth.All(t => Of(t) > Found) && result.Faults.All(f => IsTrue(f.Mode.Name) || f.Probability <= Found);
    }

    private static ReadingSpec? NextOf(ReadingLibrary library, UnitReadings so, DiagnosisResult result) =>
        result.Next.FirstOrDefault(n => n.BlockedBy.Length == 0)?.Spec;

    private static ReadingSpec? InSheetOrder(ReadingLibrary library, UnitReadings so, DiagnosisResult result) => Open(library, so).FirstOrDefault();

    private static ReadingSpec? ShortestFirst(ReadingLibrary library, UnitReadings so, DiagnosisResult result) =>
        Open(library, so).OrderBy(r => r.Minutes + (so.Readings.Any(t => t.Spec.Access == r.Access) ? 0 : Gates.OpeningMinutes(library.Model.Sheet, r.Access))).FirstOrDefault();

    private static IEnumerable<ReadingSpec> Open(ReadingLibrary library, UnitReadings so) =>
        library.Model.Sheet.Readings.Where(r => !so.Readings.Any(t => t.Spec.Id == r.Id) && Gates.Missing(library.Model.Sheet, so, r).Length == 0);
}
