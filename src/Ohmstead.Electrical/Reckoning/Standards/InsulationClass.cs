using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Standards;

/// <summary>A class of insulation and the temperatures that standards give for it [°C]; null where a table has no row for the class.</summary>
/// <param name="Letter">Y (O of old), A, E, B, F, H.</param>
/// <param name="HottestSpot">Of IEC 60085: three pages agree (key iec-60085).</param>
/// <param name="OldByResistance">Of the old American rule, by resistance (key old-insulation).</param>
/// <param name="Normal">Of a winding in normal use, IEC 61558-1 table 1; from memory.</param>
/// <param name="Overload">In an overload or on a short, inherently protected, IEC 61558-1 table 3; from memory.</param>
/// <param name="FirstHour">The peak of the first hour where a device protects it, the same table; from memory.</param>
public sealed record InsulationClass(
    string Letter,
    double HottestSpot,
    double? OldByResistance,
    double? Normal,
    double? Overload,
    double? FirstHour
)
{
    /// <summary>The room for which rises are said [°C].</summary>
    public const double RoomCelsius = 40;

    /// <summary>All of them, the coolest first.</summary>
    public static ImmutableArray<InsulationClass> All { get; } =
    [
        new("Y", 90, 85, null, null, null),
        new("A", 105, 100, 100, 150, 200),
        new("E", 120, null, 115, 165, 215),
        new("B", 130, 120, 120, 175, 225),
        new("F", 155, 140, 140, 190, 240),
        new("H", 180, 160, 165, 210, 260),
    ];

    /// <summary>The class of a letter; the old letter O is Y.</summary>
    public static InsulationClass Of(string letter) => All.First(c => c.Letter == (letter == "O" ? "Y" : letter));

    /// <summary>The letters that a question may name.</summary>
    public static ImmutableArray<string> Letters { get; } = [.. All.Select(c => c.Letter), "O"];

    /// <summary>
    /// How many times as long insulation lasts as at its limit: 2^(−over/halving). The rule of 10 K (key kosow, example 13-1) and that of
    /// 8 K (key montsinger) differ: whoever prints it names the rule.
    /// </summary>
    /// <param name="kelvinOver">Over its limit; negative below it.</param>
    /// <param name="halvingKelvin">So many halve it.</param>
    public static double LifeTimes(double kelvinOver, double halvingKelvin) => Math.Pow(2, -kelvinOver / halvingKelvin);
}
