using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary>The findings with bars and sizes, what they are together, and what could be either.</summary>
internal static class FaultBars
{
    private const double WorthShowing = 0.05;
    private const double WorthNaming = 0.02;
    private const int MostFaults = 12;
    private const int MostSets = 3;

    public static void Print(TypeSheet sheet, UnitReadings taken, DiagnosisResult result)
    {
        Unexplained(sheet, result, UnitDoubts.Of(taken, result));
        var probable = result.Faults.Where(f => f.Probability >= WorthShowing).Take(MostFaults).ToList();
        if (probable.Count == 0)
            Console.WriteLine($"No listed fault reaches {ValueText.Percent(WorthShowing)}.");
        else
            Console.WriteLine(Style.Heading("Findings"));
        foreach (var f in probable)
            Console.WriteLine(
                $"  {Shown.Bar(f.Probability)} {ValueText.Percent(f.Probability), 6}  {Shown.Fit(PartNames.Headline(sheet, f.Mode), 46)} {Size(f)}".TrimEnd()
            );
        foreach (var group in result.Alike)
            Alike(sheet, group, result);
        Sets(sheet, result);
        Console.WriteLine();
    }

    private static void Unexplained(TypeSheet sheet, DiagnosisResult result, UnitDoubts doubts)
    {
        // A slip was said with what it probably is.
        var left = result.Unexplained.Where(id => !doubts.Slips.Any(s => s.Id == id)).ToList();
        if (left.Count == 0)
            return;
        var names = string.Join("; ", left.Select(r => PartNames.Reading(sheet, r)));
        var (fit, them) = left.Count == 1 ? ("This reading does not fit the rest", "it") : ("These readings do not fit the rest", "them");
        Console.WriteLine(
            Shown.Wrapped(
                result.IsExplained
                    ? $"{fit}: {names}. No listed fault fits {them} too. Read {them} again."
                    : $"NO LISTED FAULT EXPLAINS THIS. These readings fit no listed fault: {names}. Read them again. Then look for earlier repairs, other wiring, a different part or another type. What follows is weak.",
                0
            )
        );
        Console.WriteLine();
    }

    private static void Alike(TypeSheet sheet, ImmutableArray<FaultMode> group, DiagnosisResult result)
    {
        var shown = group
            .Where(m => result.Faults.First(f => f.Mode == m).Probability >= WorthNaming)
            .Select(m => PartNames.Fault(sheet, m))
            .ToList();
        if (shown.Count > 1)
            Console.WriteLine(Shown.Wrapped($"Could be {(shown.Count == 2 ? "either" : "any")}: {string.Join("; ", shown)}", 2));
    }

    private static void Sets(TypeSheet sheet, DiagnosisResult result)
    {
        var sets = result.Hypotheses.Take(MostSets).Where(h => h.Probability >= WorthShowing && h.Faults.Length > 0).ToList();
        if (result.SoundProbability >= WorthShowing)
            Console.WriteLine($"  None of the listed faults: {ValueText.Percent(result.SoundProbability)}");
        if (sets.Count == 0)
            return;
        Console.WriteLine("  Together:");
        foreach (var h in sets)
            Console.WriteLine(
                Shown.Wrapped(
                    $"{ValueText.Percent(h.Probability)}  {string.Join(" + ", h.Faults.Select(m => PartNames.Fault(sheet, m)))}",
                    4
                )
            );
    }

    private static string Size(FaultProbability f)
    {
        if (f is not { Size: { } size, Low: { } low, High: { } high } || f.Mode.Size == SizeKind.None)
            return "";
        var unit =
            f.Mode.Size == SizeKind.WholeTurns ? "turns"
            : f.Mode.Mode == "drifted" ? "times its ohms"
            : "";
        return unit.Length > 0
            ? $"{ValueText.Number(size)} {unit} ({ValueText.Number(low)}–{ValueText.Number(high)})"
            : $"{ValueText.Of(size, Quantity.Ohms)} ({ValueText.Band(low, high, Quantity.Ohms)})";
    }
}
