using System.Globalization;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Commands;

/// <summary>A diagnosis as tables that a person reads at a glance.</summary>
internal static class DiagnosisReport
{
    private const double WorthShowing = 0.05;
    private const int MostFaults = 12;

    public static void Print(TypeSheet sheet, UnitReadings taken, DiagnosisResult result)
    {
        Console.WriteLine(sheet.Title);
        Console.WriteLine();
        Readings(sheet, taken, result);
        Faults(result);
        Next(result);
        Console.WriteLine("Concluded under the assumed chances of faults (common practice, no source). Tests recorded; no certification.");
        if (result.Effort.Stop is SearchStop.TimeUp or SearchStop.Cancelled)
            Console.WriteLine(FormattableString.Invariant($"The search was ended early, after {result.Effort.SetsExpanded} sets of faults; --seconds gives it longer."));
    }

    private static void Readings(TypeSheet sheet, UnitReadings taken, DiagnosisResult result)
    {
        if (result.Readings.Length == 0) return;
        var sound = Prediction.Run(new Electrical.Circuits.UnitModel(sheet), taken.Readings.Where(r => r.IsTaken).Select(r => (r.Spec, r.State)), []);
        Console.WriteLine($"  {"reading",-19} {"measured",-10} {"sound units",-20} {"verdict",-26} as the best set has it");
        for (var n = 0; n < result.Readings.Length; n++)
        {
            var (r, p) = (result.Readings[n], sound[n]);
            var measured = r.IsOverRange ? "OL" : r.Measured is { } m ? Shown.Value(m, r.Spec.Quantity) : "jumps";
            Console.WriteLine($"  {Shown.Fit(r.Spec.Id, 19)} {measured,-10} {Shown.Band(p.Low, p.High, p.Spec.Quantity),-20} {Shown.Fit(Verdict(r, p, result), 26)} {Shown.Value(r.Expected, r.Spec.Quantity)}");
        }
        foreach (var waived in taken.Readings.Where(r => r.WaivedBy.Length > 0))
            Console.WriteLine($"  {Shown.Fit(waived.Spec.Id, 19)} not taken: {waived.Why}; waived by {waived.WaivedBy}");
        Console.WriteLine();
    }

    private static string Verdict(ExplainedReading r, PredictedReading sound, DiagnosisResult result)
    {
        if (result.Unexplained.Contains(r.Spec.Id)) return "! nothing explains it";
        if (r.IsOverRange) return double.IsPositiveInfinity(sound.High) ? "normal" : "OL, an open path";
        if (r.Measured is not { } measured) return "jumps when moved";
        if (Math.Abs(r.Deviation) < 2.5) return "normal";
        if (double.IsPositiveInfinity(sound.Value)) return "should be OL";
        var off = Math.Abs(measured - sound.Value);
        return $"{Shown.Value(off, r.Spec.Quantity)} {(r.Deviation < 0 ? "low" : "high")}";
    }

    private static void Faults(DiagnosisResult result)
    {
        if (result.SoundProbability > 0.5) Console.WriteLine($"Nothing in the list seems wrong: {Shown.Percent(result.SoundProbability)}.");
        if (!result.IsExplained) Console.WriteLine($"Nothing in the list of faults explains these readings; they disagree: {string.Join(", ", result.Unexplained)}.");
        Console.WriteLine("Probable faults");
        foreach (var f in result.Faults.Where(f => f.Probability >= WorthShowing).Take(MostFaults))
            Console.WriteLine($"  {Shown.Bar(f.Probability)} {Shown.Percent(f.Probability),6}  {Shown.Fit(f.Mode.Element, 22)} {Shown.Fit(f.Mode.Mode.Replace('-', ' '), 14)} {Size(f)}");
        foreach (var group in result.Alike)
        {
            var shown = group.Where(m => result.Faults.First(f => f.Mode == m).Probability >= 0.02).Select(m => m.Name).ToList();
            if (shown.Count > 1) Console.WriteLine($"  Not told apart by what was taken: {string.Join(", ", shown)}");
        }
        if (result.Unexplained.Length > 0 && result.IsExplained)
            Console.WriteLine($"  Left out as wrong readings: {string.Join(", ", result.Unexplained)} – take them again.");
        Console.WriteLine();
    }

    private static string Size(FaultProbability f)
    {
        if (f.Size is not { } size || f.Mode.Size == SizeKind.None) return "";
        var unit = f.Mode.Size == SizeKind.WholeTurns ? "turns" : f.Mode.Mode == "drifted" ? "times" : "";
        return unit.Length > 0
            ? $"{Shown.Number(size)} {unit} ({Shown.Number(f.Low!.Value)}–{Shown.Number(f.High!.Value)})"
            : $"{Shown.Value(size, Quantity.Ohms)} ({Shown.Band(f.Low!.Value, f.High!.Value, Quantity.Ohms)})";
    }

    private static void Next(DiagnosisResult result)
    {
        var open = result.Next.Where(n => n.BlockedBy.Length == 0 && n.Bits > 1e-3).Take(3).ToList();
        if (open.Count > 0) Console.WriteLine("Worth taking next");
        foreach (var n in open)
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {n.Spec.Id}: {n.Spec.Title}"));
            var opening = n.Minutes > n.Spec.Minutes + 0.01 ? ", opening included" : "";
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"     tells {n.Bits:F2} bit in {n.Minutes:G3} min{opening}"));
            if (Caution(n.Spec) is { Length: > 0 } caution) Console.WriteLine($"     CAUTION: {caution}");
        }
        foreach (var group in result.Next.Where(n => n.BlockedBy.Length > 0).GroupBy(n => string.Join(", ", n.BlockedBy), StringComparer.Ordinal))
            Console.WriteLine(FormattableString.Invariant($"  {group.Count()} reading(s) wait until these stand: {group.Key}"));
        if (result.Next.Length > 0) Console.WriteLine();
    }

    private static string Caution(ReadingSpec spec)
    {
        if (spec.Hazard.Length > 0) return spec.Hazard;
        if (spec.State.Source is { Volts: > 30 })
            return spec.IsOpenCase ? "mains with the case open: guard the primary, one hand, another person present" : "mains: case closed, hands off the cord and plug, local codes and practice apply";
        return "";
    }
}
