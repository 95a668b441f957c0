using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Experiments;

/// <summary>
/// The minutes until each true fault, or the group it cannot be told from, stands above 0.8 with no false one above it:
/// following the proposed next reading, the sheet's own order, and the shortest first. A fault for which it never comes to
/// that costs every reading that the unit's gates let through.
/// </summary>
internal static class NextExperiment
{
    private const double Found = 0.8;
    private static readonly DiagnosisOptions Quick = new()
    {
        MostExpanded = 10,
        ExactAdditions = 6,
        ExactExchanges = 3,
        Margin = 5,
        Threads = 1,
    };

    /// <summary>Follows the three orders on units of one sheet.</summary>
    /// <returns>Minutes of each, summed over the faults: proposed, sheet's order, shortest first.</returns>
    public static double[] Run(UnitModel model, int units, KeptResults kept, StringBuilder page)
    {
        var library = new ReadingLibrary(model);
        var drawn = Enumerable
            .Range(0, 10 * units)
            .Select(n => DrawnUnit.Draw(model, 5000 + n, 1, atNominal: true))
            .Where(u => u.Truth.Count > 0)
            .Take(units)
            .ToArray();
        var walks = new (Walk[] Next, Walk[] Sheet, Walk[] Short)[units];
        Parallel.For(
            0,
            units,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            n =>
                walks[n] = (
                    kept.Of(FormattableString.Invariant($"{model.Sheet.Id} next {n}"), () => Follow(library, drawn[n], NextOf)),
                    kept.Of(FormattableString.Invariant($"{model.Sheet.Id} in order {n}"), () => Follow(library, drawn[n], InSheetOrder)),
                    kept.Of(FormattableString.Invariant($"{model.Sheet.Id} shortest {n}"), () => Follow(library, drawn[n], ShortestFirst))
                )
        );
        var (next, sheet, shortest) = (All(walks.Select(w => w.Next)), All(walks.Select(w => w.Sheet)), All(walks.Select(w => w.Short)));
        page.AppendLine(
            CultureInfo.InvariantCulture,
            $"\n| order, {model.Sheet.Title}: {units} units, {next.Length} faults | mean minutes to a fault, capped at the full list | of those found by all three | never found | blocked proposals |\n|---|---|---|---|---|"
        );
        var common = Enumerable.Range(0, next.Length).Where(k => next[k].Reached && sheet[k].Reached && shortest[k].Reached).ToArray();
        Row(page, "the proposed next reading", next, common);
        Row(page, "the sheet's own order", sheet, common);
        Row(page, "shortest first", shortest, common);
        var line = FormattableString.Invariant(
            $"\nThe proposed order takes {Mean(next) / Mean(sheet):P0} of the minutes of the sheet's order and {Mean(next) / Mean(shortest):P0} of shortest first."
        );
        page.AppendLine(line);
        Console.WriteLine(line);
        return [.. new[] { next, sheet, shortest }.Select(o => o.Sum(w => w.Minutes))];
    }

    /// <summary>How long one true fault took.</summary>
    private sealed record Walk(double Minutes, bool Reached, int Blocked);

    private static Walk[] All(IEnumerable<Walk[]> walks) => [.. walks.SelectMany(w => w)];

    private static double Mean(IEnumerable<Walk> walks) => walks.Average(w => w.Minutes);

    private static void Row(StringBuilder page, string order, Walk[] walks, int[] common) =>
        page.AppendLine(
            CultureInfo.InvariantCulture,
            $"| {order} | {Mean(walks):F1} | {common.Average(k => walks[k].Minutes):F1} | {walks.Count(w => !w.Reached) / (double)walks.Length:P0} | {walks.Sum(w => w.Blocked)} |"
        );

    private static Walk[] Follow(
        ReadingLibrary library,
        DrawnUnit unit,
        Func<ReadingLibrary, UnitReadings, DiagnosisResult, ReadingSpec?> choose
    )
    {
        var sheet = library.Model.Sheet;
        var all = unit.Readings.Readings.ToDictionary(r => r.Spec.Id, StringComparer.Ordinal);
        var so = unit.Readings with { Readings = [] };
        var found = new Dictionary<string, double>(StringComparer.Ordinal);
        var (minutes, blocked) = (0.0, 0);
        while (true)
        {
            var result = Diagnoser.Run(library, so, Quick with { RankNext = choose == NextOf });
            foreach (var fault in unit.Truth.Where(t => !found.ContainsKey(t) && IsFound(result, unit.Truth, t)))
                found[fault] = minutes;
            var spec = found.Count < unit.Truth.Count ? choose(library, so, result) : null;
            if (spec is null)
                return
                [
                    .. unit
                        .Truth.Order(StringComparer.Ordinal)
                        .Select((t, n) => new Walk(found.GetValueOrDefault(t, minutes), found.ContainsKey(t), n == 0 ? blocked : 0)),
                ];
            if (Gates.Missing(sheet, so, spec).Length > 0)
                blocked++;
            minutes += MinutesOf(sheet, so, spec);
            so = so with { Readings = so.Readings.Add(all[spec.Id]) };
        }
    }

    /// <summary>True when the fault, or the group that it cannot be told from, stands above 0.8 and no false one above it.</summary>
    private static bool IsFound(DiagnosisResult result, ImmutableHashSet<string> truth, string fault)
    {
        var groups = result
            .Alike.SelectMany(g => g.Select(m => (m.Name, Group: g)))
            .ToDictionary(p => p.Name, p => p.Group, StringComparer.Ordinal);
        var p = result.Faults.ToDictionary(f => f.Mode.Name, f => f.Probability, StringComparer.Ordinal);
        double Of(string name) => groups.TryGetValue(name, out var g) ? g.Sum(m => p[m.Name]) : p[name];
        bool IsTrue(string name) => truth.Contains(name) || (groups.TryGetValue(name, out var g) && g.Any(m => truth.Contains(m.Name)));
        var own = Of(fault);
        return own > Found && result.Faults.All(f => IsTrue(f.Mode.Name) || Of(f.Mode.Name) < own);
    }

    private static ReadingSpec? NextOf(ReadingLibrary library, UnitReadings so, DiagnosisResult result) =>
        result.Next.FirstOrDefault(n => n.BlockedBy.Length == 0)?.Spec;

    private static ReadingSpec? InSheetOrder(ReadingLibrary library, UnitReadings so, DiagnosisResult result) =>
        Open(library, so).FirstOrDefault();

    private static ReadingSpec? ShortestFirst(ReadingLibrary library, UnitReadings so, DiagnosisResult result) =>
        Open(library, so).OrderBy(r => MinutesOf(library.Model.Sheet, so, r)).FirstOrDefault();

    private static double MinutesOf(TypeSheet sheet, UnitReadings so, ReadingSpec spec) =>
        spec.Minutes + Gates.OpeningMinutes(sheet, [spec.Access], so.Readings.Select(r => r.Spec.Access));

    private static IEnumerable<ReadingSpec> Open(ReadingLibrary library, UnitReadings so) =>
        library.Model.Sheet.Readings.Where(r =>
            !so.Readings.Any(t => t.Spec.Id == r.Id) && Gates.Missing(library.Model.Sheet, so, r).Length == 0
        );
}
