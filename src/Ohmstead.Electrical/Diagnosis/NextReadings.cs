using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>Ranks untaken readings.</summary>
internal static class NextReadings
{
    public static ImmutableArray<NextReading> Rank(
        UnitModel model, FaultCatalogue catalogue, UnitReadings readings, Marginals marginals, SpreadModel spreads, Evidence evidence, DiagnosisOptions options) => [];
}
