using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>What the last diagnosis doubts, said of one reading.</summary>
public static class DoubtWords
{
    /// <summary>
    /// Why the last value of a reading is doubted: "possible slip, ten times too high", "it does not fit the rest" where it is left out and
    /// no slip; empty where it is not doubted. A check that fails, or is too close, says that first.
    /// </summary>
    /// <param name="end">What became of it, where it is a check.</param>
    public static string Why(this UnitDoubts doubts, TypeSheet sheet, ReadingSpec spec, CheckEnd end) =>
        end is CheckEnd.Failed or CheckEnd.TooClose ? ""
        : doubts.Slips.FirstOrDefault(s => s.Id == spec.Id) is { } slip ? SlipWords.Brief(sheet, spec, slip)
        : end != CheckEnd.Doubted ? ""
        : doubts.Checks.Readings.Contains(spec.Id) ? "it does not fit the rest"
        : $"test leads probably not taken off, about {ValueText.About(doubts.Checks.LeadOhms, Quantity.Ohms)}";

    /// <summary>What to do about a doubted check, after <see cref="Why"/>.</summary>
    public static string Do(this UnitDoubts doubts, ReadingSpec spec) =>
        doubts.Checks.Readings.Contains(spec.Id)
            ? "Read it again"
            : "Touch the leads together and enter what they read under Shop. Then read it again: the leads are taken off for you";

    /// <summary>What begins the title of a doubted reading that is proposed: "Read again", "Read again, leads taken off".</summary>
    public static string Again(this UnitDoubts doubts, ReadingSpec spec) =>
        doubts.Checks.Readings.Contains(spec.Id) ? "Read again" : "Read again, leads taken off";
}
