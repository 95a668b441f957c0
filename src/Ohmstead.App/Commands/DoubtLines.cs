using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary>What is doubted of the bench and of single readings, before the findings that rest on them.</summary>
internal static class DoubtLines
{
    public static void Print(TypeSheet sheet, UnitReadings taken, DiagnosisResult result)
    {
        var lines = Of(sheet, taken, result).ToList();
        foreach (var line in lines)
            Console.WriteLine(Shown.Wrapped(line, 0));
        if (lines.Count > 0)
            Console.WriteLine();
    }

    /// <summary>The doubts about the bench, once that findings count less for them, then the slips.</summary>
    public static IEnumerable<string> Of(TypeSheet sheet, UnitReadings taken, DiagnosisResult result)
    {
        var doubted = UnitDoubts.Of(taken, result);
        var bench = BenchDoubt.Of(sheet, taken, doubted.Bench);
        foreach (var doubt in bench)
            yield return $"{doubt.Headline}. {doubt.Do}{(doubt == bench.LastOrDefault(d => d.Weakens) ? $" {BenchDoubt.CountLess}" : "")}";
        foreach (var slip in doubted.Slips.Select(s => SlipWords.Of(sheet, taken, s)).OfType<SlipWords>())
            yield return $"Possible slip: {PartNames.Reading(sheet, slip.Spec.Id)}. {slip.Headline} {slip.Do}";
    }
}
