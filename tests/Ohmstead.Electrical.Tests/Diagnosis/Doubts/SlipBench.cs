using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>A sound unit of the sample sheet with all its readings, some of them noted otherwise.</summary>
internal static class SlipBench
{
    public static readonly BenchUnit Twin = new(Reference.Twin160);

    /// <summary>What each fault does to each reading, worked out once for all that is noted here.</summary>
    public static readonly ReadingLibrary Library = new(Twin.Model);

    public static DiagnosisResult Run(params (string Id, double Value)[] noted) =>
        Diagnoser.Run(Library, WireBench.Unit(Twin, Taken(noted)), new DiagnosisOptions { RankNext = false });

    public static TakenReading[] Taken(params (string Id, double Value)[] noted) =>
        [
            .. Reference.Twin160.Readings.Select(r =>
            {
                var at = Array.FindIndex(noted, n => n.Id == r.Id);
                var value = at >= 0 ? noted[at].Value : Twin.ReadListed(r.Id);
                return double.IsInfinity(value) ? WireBench.OL(Twin, r.Id) : WireBench.Value(Twin, r.Id, value);
            }),
        ];
}
