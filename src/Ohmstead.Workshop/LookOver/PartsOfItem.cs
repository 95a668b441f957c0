using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.LookOver;

/// <summary>Which parts of the circuit a part of the look-over speaks of, and whether one of them is new since.</summary>
internal static class PartsOfItem
{
    /// <summary>The look-over's rollers; they belong to a winding, and their ids are the sheet's.</summary>
    private const string Rollers = "flats";

    /// <summary>True for a part of the circuit that the look-over speaks of: named after it ("cord-1"), or a roller.</summary>
    /// <param name="sheet">The unit's sheet; null while its kind is not known.</param>
    public static bool IsOf(string element, string item, TypeSheet? sheet) =>
        element == item
        || element.StartsWith(item + "-", StringComparison.Ordinal)
        || (item == Rollers && sheet?.Sliders.Any(s => s.Id == element) == true);

    /// <summary>True when such a part was put in new after an entry.</summary>
    /// <param name="number">Number of the entry.</param>
    public static bool IsNewSince(BenchUnit unit, TypeSheet? sheet, string item, int number) =>
        unit.All<PartChanged>()
            .Any(p =>
                p.Entry.Number > number && p.Fact.Change is PartChange.Renewed or PartChange.Replaced && IsOf(p.Fact.Element, item, sheet)
            );
}
