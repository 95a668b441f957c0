using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>What is probably wrong, told to a person.</summary>
/// <param name="Findings">Faults that are at least unlikely, or that were judged, most probable first.</param>
/// <param name="SoundProbability">Chance that none of the listed faults is there.</param>
/// <param name="IsExplained">False when nothing in the list explains the readings.</param>
/// <param name="Unexplained">The readings that disagree with the best that was found.</param>
public sealed record FindingsView(
    ImmutableArray<Finding> Findings,
    ImmutableArray<AlikeFindings> Alike,
    ImmutableArray<ReadingPoint> Readings,
    double SoundProbability,
    bool IsExplained,
    ImmutableArray<ReadingSpec> Unexplained
)
{
    /// <summary>Below this a fault is not named [probability].</summary>
    public const double WorthNaming = 0.05;

    /// <summary>In a group of faults alike a lesser one is named too.</summary>
    private const double WorthNamingAlike = 0.02;

    private const int MostFindings = 12;

    /// <summary>A reading that makes a fault less than twice as likely, or half, is not heard [nat].</summary>
    private const double WorthHearing = 0.7;

    /// <summary>Puts a diagnosis into words.</summary>
    /// <param name="model">The unit's own sheet.</param>
    public static FindingsView Of(BenchUnit unit, UnitModel model, UnitReadings readings, DiagnosisResult result)
    {
        var judged = JudgedSheet.Judgements(unit);
        var taken = readings.Readings.Where(r => r.IsTaken).ToList();
        var speeches = result.Speeches.ToDictionary(s => s.Mode.Name, StringComparer.Ordinal);
        Finding Tell(FaultProbability f)
        {
            var said = speeches.TryGetValue(f.Mode.Name, out var s) ? s.Readings : [];
            var all = said.Where(r => Math.Abs(r.Nats) >= WorthHearing).Select(r => new Speech(
                    taken[r.Place].Spec,
                    $"{taken[r.Place].Spec.Title}: {Measured(taken[r.Place])}",
                    r.Nats
                ))
                .ToList();
            var judgement = judged.TryGetValue((f.Mode.Element, f.Mode.Mode), out var fact)
                ? fact.Judgement
                : Judgement.Open;
            return new(
                f.Mode,
                PartNames.Fault(model.Sheet, f.Mode),
                f.Probability,
                Finding.SureOf(f.Probability),
                Finding.SizeOf(model.Sheet, f),
                judgement,
                [.. all.Where(w => w.Nats > 0)],
                [.. all.Where(w => w.Nats < 0)]
            );
        }
        var worth = result
            .Faults.Where(f => judged.ContainsKey((f.Mode.Element, f.Mode.Mode)))
            .Concat(result.Faults.Where(f => f.Probability >= WorthNaming).Take(MostFindings));
        var findings = worth
            .DistinctBy(f => f.Mode.Name)
            .OrderByDescending(f => f.Probability)
            .ThenBy(f => f.Mode.Number)
            .Select(Tell)
            .ToImmutableArray();
        var points =
            from pair in result.Readings.Zip(taken)
            let r = pair.First
            let deviation = r.Deviation
            where deviation.HasValue
            select new ReadingPoint(
                r.Spec,
                Measured(pair.Second),
                deviation.GetValueOrDefault(),
                ValueText.Of(r.Expected, r.Spec.Quantity),
                result.Unexplained.Contains(r.Spec.Id),
                pair.Second.Outcome == Outcome.Jumps
            );
        return new(
            findings,
            [.. AlikeOf(model, readings, result, Tell)],
            [.. points],
            result.SoundProbability,
            result.IsExplained,
            [.. result.Unexplained.Select(id => model.Sheet.FindReading(id)!)]
        );
    }

    private static IEnumerable<AlikeFindings> AlikeOf(
        UnitModel model,
        UnitReadings readings,
        DiagnosisResult result,
        Func<FaultProbability, Finding> tell
    )
    {
        var byName = result.Faults.ToDictionary(f => f.Mode.Name, StringComparer.Ordinal);
        foreach (var group in result.Alike)
        {
            var faults = group
                .Select(m => byName[m.Name])
                .Where(f => f.Probability >= WorthNamingAlike)
                .OrderByDescending(f => f.Probability)
                .ToImmutableArray();
            if (faults.Length > 1)
                yield return new([.. faults.Select(tell)], Teller.For(model, readings, result, faults));
        }
    }

    /// <summary>What was read, with its unit.</summary>
    public static string Measured(TakenReading r) =>
        r.Outcome switch
        {
            Outcome.OverRange => "OL",
            Outcome.Jumps => "jumps " + string.Join(" ↔ ", r.JumpValues.Select(v => ValueText.Of(v, r.Spec.Quantity))),
            _ => ValueText.Read(r.Value, r.Spec.Quantity),
        };
}

/// <summary>Faults that nothing taken tells apart, and the readings that would.</summary>
public sealed record AlikeFindings(ImmutableArray<Finding> Findings, ImmutableArray<Teller> Tellers);

/// <summary>A reading taken, as it lies beside what sound units show.</summary>
/// <param name="Measured">What was read, with its unit.</param>
/// <param name="Deviations">From the sound unit, in standard deviations; 0 for a reading that jumped.</param>
/// <param name="WithFaults">What the best set of faults gives, with its unit.</param>
/// <param name="IsUnexplained">True when no set of faults explains it too.</param>
public sealed record ReadingPoint(
    ReadingSpec Spec,
    string Measured,
    double Deviations,
    string WithFaults,
    bool IsUnexplained,
    bool Jumped
)
{
    /// <summary>True when it lies outside what 95 % of sound units show.</summary>
    public bool IsOff => Math.Abs(Deviations) > 1.96;
}
