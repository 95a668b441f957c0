using System.Globalization;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Commands;

/// <summary>The readings worth taking next and why, and those that must wait and for what.</summary>
internal static class NextTable
{
    private const int Most = 3;
    private const double LeastBits = 0.005;
    private const double LowVolts = 30;

    public static void Print(UnitModel model, UnitReadings taken, DiagnosisResult result)
    {
        var open = result.Next.Where(n => n.BlockedBy.Length == 0 && n.Bits > LeastBits).Take(Most).ToList();
        Console.WriteLine(Style.Heading(open.Count > 0 ? "Worth taking next" : "Nothing that can be taken now would tell much."));
        var reasons = new NextReasons(model, taken, result);
        foreach (var n in open)
        {
            var opening = n.Minutes > n.Spec.Minutes + 0.01 ? ", opening included" : "";
            Console.WriteLine(Shown.Wrapped($"{n.Spec.Id}: {n.Spec.Title}", 2));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"     {n.Minutes:G3} min{opening}, worth {n.Bits:F2} bit"));
            foreach (var reason in reasons.Of(n)) Console.WriteLine(Shown.Wrapped(reason, 5));
            foreach (var caution in Cautions(n.Spec).Concat(Waived(n.Spec, model.Sheet, taken))) Console.WriteLine(Shown.Wrapped($"CAUTION: {caution}", 5));
        }
        Blocked(taken, result);
        Console.WriteLine();
    }

    private static void Blocked(UnitReadings taken, DiagnosisResult result)
    {
        var blocked = result.Next.Where(n => n.BlockedBy.Length > 0).ToList();
        if (blocked.Count == 0) return;
        Console.WriteLine(Style.Heading("Not to be taken yet"));
        foreach (var group in blocked.GroupBy(n => string.Join(", ", n.BlockedBy), StringComparer.Ordinal))
            Console.WriteLine(Shown.Wrapped($"{string.Join(", ", group.Select(n => n.Spec.Id))}: until {group.Key} {(group.First().BlockedBy.Length == 1 ? "has" : "have")} passed", 2));
        foreach (var id in blocked.SelectMany(n => n.BlockedBy).Distinct(StringComparer.Ordinal))
            if (taken.Readings.LastOrDefault(r => r.Spec.Id == id && r.IsTaken) is { } own)
                Console.WriteLine(Shown.Wrapped($"{id} {(Gates.EndOf(taken, own.Spec) == CheckEnd.TooClose ? "is too close for this meter" : "has failed")}: {ReadingTable.Measured(own)}, {LimitWords.WithSource(own.Spec)}", 2));
    }

    /// <summary>The waived readings on which this one rests, directly or through others.</summary>
    private static IEnumerable<string> Waived(ReadingSpec spec, TypeSheet sheet, UnitReadings taken)
    {
        var needs = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<ReadingSpec>([spec]);
        while (open.TryPop(out var next))
            foreach (var id in next.Needs)
                if (needs.Add(id) && sheet.FindReading(id) is { } need) open.Push(need);
        return taken.Readings.Where(r => r.WaivedBy.Length > 0 && needs.Contains(r.Spec.Id))
            .GroupBy(r => r.WaivedBy, r => r.Spec.Id, StringComparer.Ordinal)
            .Select(g => $"rests on what was never taken, only waived by {g.Key}: {string.Join(", ", g)}");
    }

    private static IEnumerable<string> Cautions(ReadingSpec spec)
    {
        if (spec.Hazard.Length > 0) yield return spec.Hazard;
        else if (spec.Quantity == Quantity.InsulationOhms) yield return "500 V at the clips; hands off while it is on, discharge afterwards";
        if (spec.State.Source is not { Volts: > LowVolts } source) yield break;
        yield return string.Create(CultureInfo.InvariantCulture, $"{source.Volts:G4} V on the unit")
            + (spec.IsOpenCase ? ", case open: live parts covered, one hand, someone within call" : ": case closed, clips on before the plug goes in, hands off while it is in");
    }
}
