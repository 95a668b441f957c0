using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Untyped;

/// <summary>
/// What the ohms between the blades may be by the plate alone. At full watts the copper of a primary turns 2 to 10 of every 100 W
/// into heat: with I = W/V, ohms = share·W/I² = share·V²/W. Common practice, no source.
/// </summary>
public static class PlateRule
{
    /// <summary>Least share of the plate's watts that the primary's copper takes.</summary>
    public const double LeastShare = 0.02;

    /// <summary>Most of it.</summary>
    public const double MostShare = 0.10;

    /// <summary>Mains volts where the plate does not say [V].</summary>
    public const double UsualVolts = 120;

    /// <summary>Units of this trade have between these watts on their plates [W].</summary>
    private const double LeastWatts = 25;
    private const double MostWatts = 300;

    /// <summary>The plate as it was read last.</summary>
    public static PlateRead PlateOf(BenchUnit unit) =>
        unit.All<PlateRead>().Select(p => p.Fact).LastOrDefault() ?? new PlateRead(null, null);

    /// <summary>The band of the ohms between the blades [Ω].</summary>
    public static (double Low, double High) BladeOhms(PlateRead plate)
    {
        var square = Math.Pow(plate.Volts ?? UsualVolts, 2);
        return (LeastShare * square / (plate.Watts ?? MostWatts), MostShare * square / (plate.Watts ?? LeastWatts));
    }

    /// <summary>The rule in words, with what it rests on.</summary>
    public static string Words(PlateRead plate)
    {
        var volts = ValueText.Read(plate.Volts ?? UsualVolts, Quantity.AcVolts);
        var from = plate.Watts is { } watts
            ? $"Worked out from {volts} and {ValueText.Read(watts, Quantity.Watts)} on the plate"
            : $"Worked out for {volts} and {ValueText.Plain(LeastWatts)} to {ValueText.Plain(MostWatts)} W. Enter the plate’s watts for a closer range";
        return $"{from}: the primary’s copper takes 2 to 10 of every 100 W. Common practice, no source.";
    }

    /// <summary>What is wrong with a plate as typed; empty when nothing is.</summary>
    public static string Problem(PlateRead plate) =>
        plate.Volts is { } v && !(v is >= 12 and <= 250) ? "Volts must be 12 to 250. They are on the plate, beside the watts."
        : plate.Watts is { } w && !(w is >= 5 and <= 1000) ? "Watts must be 5 to 1000. Leave them empty if the plate does not say."
        : "";
}
