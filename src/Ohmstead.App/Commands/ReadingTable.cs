using System.Globalization;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Commands;

/// <summary>The readings taken, each beside what a sound unit shows and with a verdict in words.</summary>
internal static class ReadingTable
{
    private const string Little = "a little";

    private const string NotJudged = "not judged: rectified";

    public static void Print(UnitModel model, UnitReadings taken, DiagnosisResult result)
    {
        var measured = taken.Readings.Where(r => r.IsTaken).ToList();
        if (measured.Count > 0)
        {
            Console.WriteLine(Style.Heading($"  {"reading",-21} {"measured",-11} {"sound units",-17} {"verdict",-26} faults give"));
            // All readings of a sort of meter at once, so that they share the cores.
            var sound = measured
                .GroupBy(r => taken.ErrorOf(r).IsAveraging)
                .SelectMany(g => g.Zip(Prediction.Run(model, g.Select(r => (r.Spec, r.State)), [], g.Key)))
                .ToDictionary(p => (object)p.First, p => p.Second, ReferenceEqualityComparer.Instance);
            for (var n = 0; n < measured.Count; n++)
            {
                var band = Expectation.Of(sound[measured[n]], taken.ErrorOf(measured[n]));
                Console.WriteLine(Row(measured[n], band, result.Readings[n], result.Unexplained.Contains(measured[n].Spec.Id)));
            }
        }
        NotTaken(taken);
        foreach (var told in taken.Told) Console.WriteLine(Shown.Wrapped($"told: {told.Observation.Title} – {(told.Yes ? "yes" : "no")}", 2));
        Console.WriteLine();
    }

    private static string Row(TakenReading taken, Expectation band, ExplainedReading explained, bool isUnexplained)
    {
        var verdict = isUnexplained ? "nothing explains it" : Verdict(taken, band);
        var mark = verdict is "normal" or NotJudged || verdict.StartsWith(Little, StringComparison.Ordinal) ? ' ' : '!';
        var quantity = taken.Spec.Quantity;
        return $"{mark} {Shown.Fit(taken.Spec.Id, 21)} {Shown.Fit(Measured(taken), 11)} {Shown.Fit(Shown.Band(band.Low, band.High, band.Quantity), 17)} {Shown.Fit(verdict, 26)} {Shown.Value(explained.Expected, quantity)}".TrimEnd();
    }

    /// <summary>What was read, as it is entered.</summary>
    public static string Measured(TakenReading r) => r.Outcome switch
    {
        Outcome.OverRange => "OL",
        Outcome.Jumps => string.Join("↔", r.JumpValues.Select(v => double.IsPositiveInfinity(v) ? "OL" : Shown.Number(v))),
        _ => Shown.Read(r.Value, r.Spec.Quantity),
    };

    private static string Verdict(TakenReading taken, Expectation band)
    {
        if (taken.Outcome == Outcome.Jumps) return "comes and goes when moved";
        var isOverRange = taken.Outcome == Outcome.OverRange;
        var standing = band.Judge(isOverRange ? double.PositiveInfinity : taken.Value);
        if (standing.Side == Side.NotJudged) return NotJudged;
        if (standing.Side == Side.Within) return "normal";
        if (isOverRange) return $"OL, expected {Shown.Band(band.Low, band.High, band.Quantity)}";
        if (double.IsPositiveInfinity(band.Value)) return "should be OL";
        var (off, side) = (Shown.Value(standing.Off, band.Quantity), standing.Side == Side.Below ? "low" : "high");
        return standing.IsClearlyOff ? $"{off} {side}" : $"{Little} {side}, by {off}";
    }

    private static void NotTaken(UnitReadings taken)
    {
        foreach (var r in taken.Readings.Where(r => !r.IsTaken))
        {
            var why = r.Why.Length > 0 ? r.Why : "no reason given";
            var instead = r.Instead.Length > 0 ? $" (instead: {r.Instead})" : "";
            var waived = r.WaivedBy.Length > 0 ? $"; WAIVED by {r.WaivedBy}{instead}: what follows rests on that" : "";
            Console.WriteLine(Shown.Wrapped(string.Create(CultureInfo.InvariantCulture, $"{r.Spec.Id} was not taken: {why}{waived}"), 2));
        }
    }
}
