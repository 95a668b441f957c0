using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>A unit of the sample sheet on a bench that may be another than the noted one.</summary>
internal static class DoubtBench
{
    public static readonly BenchUnit Twin = SlipBench.Twin;

    public static bool OnMains(ReadingSpec r) => r.State.Source is { IsDirect: false, IsMains: true };

    public static TakenReading[] All(Func<ReadingSpec, bool> which, Func<ReadingSpec, double, double> shown) =>
        [
            .. Twin
                .Model.Sheet.Readings.Where(which)
                .Select(r => (r.Id, Value: shown(r, Twin.ReadListed(r.Id))))
                .Select(r => double.IsInfinity(r.Value) ? WireBench.OL(Twin, r.Id) : WireBench.Value(Twin, r.Id, r.Value)),
        ];

    public static DiagnosisResult Run(TakenReading[] taken) =>
        Diagnoser.Run(
            SlipBench.Library,
            WireBench.Unit(Twin, taken) with
            {
                SupplyVolts = Twin.Model.Sheet.SupplyVolts,
            },
            new DiagnosisOptions { RankNext = false }
        );
}
