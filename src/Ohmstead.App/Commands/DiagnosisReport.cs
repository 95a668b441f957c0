using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary>A diagnosis as tables that a person reads at a glance.</summary>
internal static class DiagnosisReport
{
    private const string ByHand =
        "NOT FINISHED: stopped by hand while still searching. The chances above may change. Run it again before you act on them.";

    private const string OutOfTime =
        "NOT FINISHED: still searching when the time ran out. The chances above may change. Give it longer with --seconds before you act on them.";

    public static void Print(TypeSheet sheet, UnitReadings taken, DiagnosisResult result)
    {
        var model = new UnitModel(sheet);
        Console.WriteLine(Style.Heading(Shown.NameOf(sheet)));
        Console.WriteLine(
            FormattableString.Invariant(
                $"{Sentences.Large(Counted.Of(taken.Readings.Count(r => r.IsTaken), "reading"))} taken. Line voltage: {taken.SupplyVolts:G5} V"
            )
        );
        Console.WriteLine();
        ReadingTable.Print(model, taken, result);
        DoubtLines.Print(sheet, taken, result);
        FaultBars.Print(sheet, taken, result);
        NextTable.Print(model, taken, result);
        if (!result.Effort.IsFinished)
            Console.WriteLine(Shown.Wrapped(result.Effort.Stop == SearchStop.Cancelled ? ByHand : OutOfTime, 0));
        Console.WriteLine("Chances: common practice, no source. Tests recorded; no certification.");
    }
}
