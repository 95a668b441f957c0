using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

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

    /// <summary>
    /// Why the last value of a reading is doubted: "possible slip, ten times too high", "it does not fit the rest" where it is left out and
    /// no slip; empty where it is not doubted. A check that fails, or is too close, says that first.
    /// </summary>
    /// <param name="end">What became of it, where it is a check.</param>
    public string Why(TypeSheet sheet, ReadingSpec spec, CheckEnd end) =>
        end is CheckEnd.Failed or CheckEnd.TooClose ? ""
        : Slips.FirstOrDefault(s => s.Id == spec.Id) is { } slip ? SlipWords.Brief(sheet, spec, slip)
        : end != CheckEnd.Doubted ? ""
        : Checks.Readings.Contains(spec.Id) ? "it does not fit the rest"
        : $"test leads probably not taken off, about {ValueText.About(Checks.LeadOhms, Quantity.Ohms)}";

    /// <summary>What to do about a doubted check, after <see cref="Why"/>.</summary>
    public string Do(ReadingSpec spec) =>
        Checks.Readings.Contains(spec.Id)
            ? "Read it again"
            : "Touch the leads together and enter what they read under Shop. Then read it again: the leads are taken off for you";

    /// <summary>What begins the title of a doubted reading that is proposed: "Read again", "Read again, leads taken off".</summary>
    public string Again(ReadingSpec spec) => Checks.Readings.Contains(spec.Id) ? "Read again" : "Read again, leads taken off";
}
