namespace Ohmstead.Workshop.Journal;

/// <summary>What a unit may carry for hours in a warm room, by its heat run.</summary>
/// <param name="Amps">The most [A].</param>
/// <param name="RoomCelsius">In a room so warm [°C].</param>
/// <param name="NoLoadWatts">What it takes with no load [W].</param>
/// <param name="CopperWatts">What its windings lost at the load of the run, cold [W].</param>
public sealed record LoadForHours(double Amps, double RoomCelsius, double NoLoadWatts, double CopperWatts) : Fact;
