using System.Globalization;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary>The readings worth taking next and why, and those that must wait and for what.</summary>
internal static class NextTable
{
    private const int Most = 3;
    private const double LeastBits = 0.005;

    public static void Print(UnitModel model, UnitReadings taken, DiagnosisResult result)
    {
        var order = NextInOrder.Of(model.Sheet, taken, result);
        var doubts = UnitDoubts.Of(taken, result);
        bool IsAgain(NextReading n) => NextInOrder.IsDoubted(taken, n.Spec);
        var open = order.Where(n => n.BlockedBy.Length == 0 && (n.Bits > LeastBits || IsAgain(n))).Take(Most).ToList();
        Console.WriteLine(Style.Heading(open.Count > 0 ? "Best next readings" : "No reading that you can take now would settle more."));
        var reasons = new NextReasons(model, taken, result);
        foreach (var n in open)
        {
            var opening = n.Minutes > n.Spec.Minutes + 0.01 ? ", opening included" : "";
            Console.WriteLine(Shown.Wrapped($"{n.Spec.Id.PadRight(21)} {PartNames.Reading(model.Sheet, n.Spec.Id)}", 2));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"     {n.Minutes:G3} min{opening}"));
            foreach (
                var reason in IsAgain(n)
                    ? [Sentences.Large($"{doubts.Why(model.Sheet, n.Spec, CheckEnd.Doubted)}. {doubts.Do(n.Spec)}")]
                    : reasons.Of(n)
            )
                Console.WriteLine(Shown.Wrapped(reason, 5));
            foreach (
                var caution in ReadingCautions
                    .Of(model, n.Spec, taken.StateOf(model.Sheet, n.Spec))
                    .Concat(Waived(n.Spec, model.Sheet, taken))
            )
                Console.WriteLine(Shown.Wrapped($"CAUTION: {caution}", 5));
        }
        Blocked(model.Sheet, taken, order, doubts);
        Console.WriteLine();
    }

    private static void Blocked(TypeSheet sheet, UnitReadings taken, IEnumerable<NextReading> order, UnitDoubts doubts)
    {
        var blocked = order.Where(n => n.BlockedBy.Length > 0).ToList();
        if (blocked.Count == 0)
            return;
        Console.WriteLine(Style.Heading("Locked"));
        foreach (var group in blocked.GroupBy(n => string.Join(", ", n.BlockedBy), StringComparer.Ordinal))
        {
            var first = group.First().BlockedBy;
            Console.WriteLine(
                Shown.Wrapped(
                    $"{Counted.Of(group.Count(), "reading")}, until {(first.Length == 1 ? "this passes" : "these pass")}: {string.Join("; ", first.Select(b => PartNames.Reading(sheet, b)))}",
                    2
                )
            );
            Console.WriteLine(Shown.Ids(group.Select(n => n.Spec.Id)));
        }
        foreach (var id in blocked.SelectMany(n => n.BlockedBy).Distinct(StringComparer.Ordinal))
            if (taken.Readings.LastOrDefault(r => r.Spec.Id == id && r.IsTaken) is { } own)
                Console.WriteLine(
                    Shown.Wrapped(
                        $"{PartNames.Reading(sheet, id)}: {Ended(sheet, taken, own.Spec, doubts)}: {ReadingTable.Measured(own)}, {LimitWords.WithSource(own.Spec)}",
                        2
                    )
                );
    }

    private static string Ended(TypeSheet sheet, UnitReadings taken, ReadingSpec check, UnitDoubts doubts) =>
        Gates.EndOf(taken, check) switch
        {
            CheckEnd.TooClose => "too close for this meter",
            CheckEnd.Doubted => $"{doubts.Why(sheet, check, CheckEnd.Doubted)}, read it again",
            _ => "failed",
        };

    /// <summary>The waived readings on which this one rests, directly or through others.</summary>
    private static IEnumerable<string> Waived(ReadingSpec spec, TypeSheet sheet, UnitReadings taken)
    {
        var needs = sheet.NeedsOf(spec);
        return taken
            .Readings.Where(r => r.WaivedBy.Length > 0 && needs.Contains(r.Spec.Id))
            .GroupBy(r => r.WaivedBy, r => PartNames.Reading(sheet, r.Spec.Id), StringComparer.Ordinal)
            .Select(g => $"waived by {g.Key}, never taken: {string.Join("; ", g)}");
    }
}
