using System.Collections.Immutable;

namespace Ohmstead.Workshop.Shops;

/// <summary>How far windings of a class of insulation may rise in a heat run, by their resistance.</summary>
/// <param name="Title">"Class A: cotton, paper, enamel".</param>
/// <param name="RiseKelvin">The most, over a room of up to 40 °C [K].</param>
/// <param name="Source">Who says so.</param>
public sealed record WindingClass(string Title, double RiseKelvin, string Source)
{
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
}
