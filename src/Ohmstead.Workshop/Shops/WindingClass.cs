using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Standards;

namespace Ohmstead.Workshop.Shops;

/// <summary>How far windings of a class of insulation may rise in a heat run, by their resistance.</summary>
/// <param name="Title">"Class A: cotton, paper, enamel".</param>
/// <param name="RiseKelvin">The most, over a room of up to 40 °C [K].</param>
/// <param name="Source">Who says so.</param>
public sealed record WindingClass(string Title, double RiseKelvin, string Source)
{
    // The table's own temperatures less a room of 40 °C are 60, 75 and 80 K: 5 K stricter. The figures here are what is usual for old units; the
    // stricter ones only make a unit "warm" (docs/methods/proving.md).
    private const string AfterTable = "common practice, after IEC 61558-1, table 1, from memory";

    /// <summary>Old units are of class A; so a shop starts with its rise.</summary>
    public static WindingClass Usual { get; } = new("Class A: cotton, paper, enamel", 65, AfterTable);

    /// <summary>All of them, the usual one first.</summary>
    public static ImmutableArray<WindingClass> All { get; } =
    [
        Usual,
        new("Class E: newer enamel", 80, AfterTable),
        new("Class B: glass, mica", 85, AfterTable),
        new("An isolating transformer", 55, "FAA L-830, 4.2.4"),
    ];

    /// <summary>The rise over 40 °C by the table itself, for a limit that is a class of it [K]; null for any other limit.</summary>
    public static double? WarmOf(double limitKelvin) =>
        All.FirstOrDefault(c => c.RiseKelvin == limitKelvin && c.Title.StartsWith("Class ", StringComparison.Ordinal)) is { } row
            ? InsulationClass.Of(row.Title.Substring("Class ".Length, 1)).Normal - InsulationClass.RoomCelsius
            : null;
}
