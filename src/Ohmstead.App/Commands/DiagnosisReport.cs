using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary>A diagnosis as tables that a person reads at a glance.</summary>
internal static class DiagnosisReport
{
    public static void Print(TypeSheet sheet, UnitReadings taken, DiagnosisResult result)
    {
        var model = new UnitModel(sheet);
        Console.WriteLine(Style.Heading(Shown.NameOf(sheet)));
        Console.WriteLine(FormattableString.Invariant($"{Sentences.Large(Counted.Of(taken.Readings.Count(r => r.IsTaken), "reading"))} taken. Line voltage: {taken.SupplyVolts:G5} V"));
        Console.WriteLine();
        ReadingTable.Print(model, taken, result);
        FaultBars.Print(sheet, result);
        NextTable.Print(model, taken, result);
        if (result.Effort.Stop == SearchStop.Cancelled) Console.WriteLine("Stopped by hand. This is what it had found.");
        if (result.Effort.Stop == SearchStop.TimeUp)
            Console.WriteLine(Shown.Wrapped("Stopped at the time limit. --seconds gives it longer.", 0));
        Console.WriteLine("Chances: common practice, no source. Tests recorded; no certification.");
    }
}
