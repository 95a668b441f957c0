using System.Globalization;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary>The readings taken, each beside what a sound unit shows and with a verdict in words.</summary>
internal static class ReadingTable
{
    public static void Print(UnitModel model, UnitReadings taken, DiagnosisResult result)
    {
        var measured = taken.Readings.Where(r => r.IsTaken).ToList();
        if (measured.Count > 0)
        {
            // An id is typed as it is shown: never cut.
            var wide = Math.Max(21, measured.Max(r => r.Spec.Id.Length));
            Console.WriteLine(
                Style.Heading($"  {"reading".PadRight(wide)} {"measured", -11} {"should read", -17} {"verdict", -26} faults give")
            );
            // All readings of a sort of meter at once, so that they share the cores.
            var sound = measured
                .GroupBy(r => taken.ErrorOf(r).IsAveraging)
                .SelectMany(g => g.Zip(Prediction.Run(model, g.Select(r => (r.Spec, r.State)), [], g.Key)))
                .ToDictionary(p => (object)p.First, p => p.Second, ReferenceEqualityComparer.Instance);
            var (follows, doubts) = (new List<string>(), UnitDoubts.Of(taken, result));
            for (var n = 0; n < measured.Count; n++)
            {
                var (own, error) = (measured[n], taken.ErrorOf(measured[n]));
                var band = Expectation.Of(sound[own], error);
                // Of a reading taken several times only the last is doubted (Gates.DoubtsOf).
                var isLast = !measured.Skip(n + 1).Any(r => r.Spec.Id == own.Spec.Id);
                var why = isLast
                    ? doubts.Why(model.Sheet, own.Spec, own.Spec.Limits is null ? CheckEnd.NotTaken : Gates.EndOf(taken, own.Spec))
                    : "";
                var meaning = why.Length > 0 ? Meaning.OfDoubted(why, own.Spec) : Meaning.Of(own, band, error);
                Console.WriteLine(Row(wide, own, band, meaning, result.Readings[n], result.Unexplained.Contains(own.Spec.Id)));
                if (meaning.Next.Length > 0)
                    follows.Add($"{PartNames.Reading(model.Sheet, own.Spec.Id)}, {Measured(own)}: {meaning.Next}");
            }
            foreach (var line in follows)
                Console.WriteLine(Shown.Wrapped(line, 2));
        }
        NotTaken(model.Sheet, taken);
        foreach (var told in taken.Symptoms)
            Console.WriteLine(
                Shown.Wrapped($"Symptom: {PartNames.Symptom(model.Sheet, told.Observation.Id)}: {(told.Yes ? "yes" : "no")}", 2)
            );
        Console.WriteLine();
    }

    private static string Row(
        int wide,
        TakenReading taken,
        Expectation band,
        Meaning meaning,
        ExplainedReading explained,
        bool isUnexplained
    )
    {
        // What fails a check says so, whatever else is known of it.
        var verdict =
            isUnexplained && meaning.Verdict is not (Verdict.Failed or Verdict.TooClose or Verdict.Doubted)
                ? "fits no listed fault"
                : meaning.Words;
        var isQuiet = !isUnexplained && meaning.Verdict is Verdict.Normal or Verdict.NotJudged or Verdict.AlittleOff;
        var quantity = taken.Spec.Quantity;
        return $"{(isQuiet ? ' ' : '!')} {taken.Spec.Id.PadRight(wide)} {Measured(taken), -11} {ValueText.Band(band.Low, band.High, band.Quantity), -17} {Shown.Fit(verdict, 26)} {(explained.Expected is { } expected ? ValueText.Of(expected, quantity) : "")}".TrimEnd();
    }

    /// <summary>What was read, as it is entered.</summary>
    public static string Measured(TakenReading r) =>
        r.Outcome switch
        {
            Outcome.OverRange => "OL",
            Outcome.Jumps => string.Join("↔", r.JumpValues.Select(v => double.IsPositiveInfinity(v) ? "OL" : ValueText.Number(v))),
            _ => ValueText.Read(r.Value, r.Spec.Quantity),
        };

    private static void NotTaken(TypeSheet sheet, UnitReadings taken)
    {
        foreach (var r in taken.Readings.Where(r => !r.IsTaken))
        {
            var why = r.Why.Length > 0 ? r.Why : "no reason given";
            var instead = r.Instead.Length > 0 ? $" (instead: {r.Instead})" : "";
            var waived = r.WaivedBy.Length > 0 ? $"; WAIVED by {r.WaivedBy}{instead}" : "";
            Console.WriteLine(
                Shown.Wrapped(
                    string.Create(CultureInfo.InvariantCulture, $"Not taken: {PartNames.Reading(sheet, r.Spec.Id)}: {why}{waived}"),
                    2
                )
            );
        }
    }
}
