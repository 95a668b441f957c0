using Ohmstead.Electrical.Reckoning.Standards;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>How warm a winding is beside its class of insulation.</summary>
/// <param name="Letter">The class.</param>
/// <param name="HottestSpotCelsius">IEC 60085.</param>
/// <param name="ByResistanceCelsius">The old American rule; null where it has no such class.</param>
/// <param name="NormalCelsius">IEC 61558-1 table 1.</param>
/// <param name="OverloadCelsius">Table 3, inherently protected.</param>
/// <param name="FirstHourCelsius">Table 3, the first hour with a protective device.</param>
/// <param name="OverKelvin">The average over what the class bears by resistance; negative below it.</param>
/// <param name="LifeTimes10">So many times its usual life, by the rule of 10 K.</param>
/// <param name="LifeTimes8">The same by the rule of 8 K.</param>
/// <param name="LifeYears">By the rule of 10 K, where its usual life was given.</param>
public sealed record ClassOfWinding(
    string Letter,
    double HottestSpotCelsius,
    double? ByResistanceCelsius,
    double? NormalCelsius,
    double? OverloadCelsius,
    double? FirstHourCelsius,
    double OverKelvin,
    double LifeTimes10,
    double LifeTimes8,
    double? LifeYears
)
{
    /// <summary>What an average by resistance is held against: that of the old rule, else that of normal use.</summary>
    public double LimitCelsius => LimitOf(ByResistanceCelsius, NormalCelsius, HottestSpotCelsius);

    private static double LimitOf(double? byResistance, double? normal, double hottestSpot) => byResistance ?? normal ?? hottestSpot;

    /// <summary>A winding at a temperature, the average by its resistance.</summary>
    internal static ClassOfWinding Of(InsulationClass row, double celsius, double? usualYears)
    {
        var over = celsius - LimitOf(row.OldByResistance, row.Normal, row.HottestSpot);
        var ten = InsulationClass.LifeTimes(over, 10);
        return new(
            row.Letter,
            row.HottestSpot,
            row.OldByResistance,
            row.Normal,
            row.Overload,
            row.FirstHour,
            over,
            ten,
            InsulationClass.LifeTimes(over, 8),
            usualYears * ten
        );
    }

    /// <summary>In a sentence; where it is within its class, that alone.</summary>
    internal string Words =>
        OverKelvin <= 0
            ? FormattableString.Invariant(
                $"Class {Letter} bears {LimitCelsius:0} °C by resistance: {-OverKelvin:0} °C left. The hottest spot is hotter than this average."
            )
            : FormattableString.Invariant(
                $"Class {Letter} bears {LimitCelsius:0} °C by resistance: {OverKelvin:0} °C over. The hottest spot is hotter than this average. Its insulation lasts {LifeTimes10:0.00} times as long by the 10 °C rule, {LifeTimes8:0.00} by the 8 °C rule."
            );
}
