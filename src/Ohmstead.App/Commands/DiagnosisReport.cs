using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Commands;

/// <summary>A diagnosis as tables that a person reads at a glance.</summary>
internal static class DiagnosisReport
{
    public static void Print(TypeSheet sheet, UnitReadings taken, DiagnosisResult result)
    {
        var model = new UnitModel(sheet);
        Console.WriteLine(Style.Heading(Shown.NameOf(sheet)));
        Console.WriteLine(FormattableString.Invariant($"{Shown.Count(taken.Readings.Count(r => r.IsTaken), "reading")} taken, at {taken.SupplyVolts:G5} V from the line"));
        Console.WriteLine();
        ReadingTable.Print(model, taken, result);
        FaultBars.Print(result);
        NextTable.Print(model, taken, result);
        if (result.Effort.Stop == SearchStop.Cancelled) Console.WriteLine("The search was stopped by hand; this is what it had found by then.");
        if (result.Effort.Stop == SearchStop.TimeUp)
            Console.WriteLine(Shown.Wrapped($"The search ended at its time limit, with the neighbourhood of {Shown.Count(result.Effort.SetsExpanded, "set")} of faults searched; --seconds gives it longer.", 0));
        Console.WriteLine("Concluded under the assumed chances (common practice, no source). Tests recorded; no certification.");
    }
}
