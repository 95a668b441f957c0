using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>Two faults and a dead path on the sample sheet, and all that a diagnosis says of it.</summary>
internal static class DeadPath
{
    public static readonly BenchUnit Twin = new(Reference.Twin160);

    /// <summary>Two faults and a dead path on the sample sheet: several sets to expand.</summary>
    public static readonly UnitReadings Taken = WireBench.Unit(
        Twin,
        [
            WireBench.Value(Twin, "ohms-right", Twin.ReadListed("ohms-right") + 5),
            WireBench.Value(Twin, "ohms-left", Twin.ReadListed("ohms-left") + 2),
            WireBench.OL(Twin, "blades"),
        ]
    );

    public static readonly DiagnosisOptions Options = new() { Threads = 1 };

    public static string Answer(DiagnosisOptions options) => Text(Diagnoser.Run(Twin.Model, Taken, options));

    /// <summary>All that an answer says, to the last bit.</summary>
    public static string Text(DiagnosisResult result) =>
        string.Join(
            '\n',
            result
                .Faults.Select(f => FormattableString.Invariant($"{f.Mode.Name} {f.Probability:R} {f.Size:R} {f.Low:R} {f.High:R}"))
                .Concat(result.Next.Select(n => FormattableString.Invariant($"{n.Spec.Id} {n.Bits:R}")))
                .Concat(result.Readings.Select(r => FormattableString.Invariant($"{r.Spec.Id} {r.Expected:R} {r.Deviation:R}")))
                .Append(
                    FormattableString.Invariant(
                        $"{result.SoundProbability:R} {result.Effort.SetsTried} {result.Effort.SetsExpanded} {result.Effort.Stop}"
                    )
                )
        );
}
