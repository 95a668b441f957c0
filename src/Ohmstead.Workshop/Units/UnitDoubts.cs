using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Workshop.Units;

/// <summary>
/// What the last finished diagnosis of a unit doubts. It goes with the unit (<see cref="Units.BenchUnit.Doubts"/>), so that every
/// screen, paper and lock goes by the same; it holds until the next diagnosis is finished.
/// </summary>
/// <param name="Number">Number of the last entry that the diagnosis knew; 0 where there is no journal.</param>
/// <param name="Checks">As the checks take it.</param>
/// <param name="Slips">Readings whose last value is probably a slip, most probable first.</param>
/// <param name="Bench">What is probably wrong with the bench or the type sheet, most probable first.</param>
public sealed record UnitDoubts(int Number, CheckDoubts Checks, ImmutableArray<ProbableSlip> Slips, ImmutableArray<Doubt> Bench)
{
    /// <summary>Nothing is doubted, or nothing was worked out yet.</summary>
    public static UnitDoubts None { get; } = new(0, CheckDoubts.None, [], []);

    /// <summary>Why the last search gave no answer, and what to do; empty where it did, or will.</summary>
    public string Trouble { get; init; } = "";

    /// <summary>True when nothing is doubted.</summary>
    public bool IsEmpty => Checks.Readings.IsEmpty && Checks.LeadOhms == 0 && Slips.IsEmpty && Bench.IsEmpty;

    /// <summary>What a diagnosis doubts.</summary>
    /// <param name="readings">Those that it was made from.</param>
    /// <param name="number">Number of the last entry that it knew.</param>
    public static UnitDoubts Of(UnitReadings readings, DiagnosisResult result, int number = 0)
    {
        var checks = Gates.DoubtsOf(readings, result);
        return new(number, checks, [.. result.Slips.Where(s => checks.Readings.Contains(s.Id))], result.Doubts);
    }
}
