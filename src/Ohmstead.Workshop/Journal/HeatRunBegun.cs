namespace Ohmstead.Workshop.Journal;

/// <summary>A heat run began: the unit, as warm as the room, was switched on with a load.</summary>
/// <param name="SwitchedOnAt">When it was first switched on.</param>
/// <param name="ColdOhms">The winding before [Ω].</param>
/// <param name="ColdCelsius">Winding and room before [°C].</param>
/// <param name="LoadAmps">The load [A].</param>
/// <param name="LimitKelvin">The most rise [K].</param>
/// <param name="LimitSource">Who says so.</param>
/// <param name="RepeatPercent">One standard deviation of a reading of ohms [%].</param>
/// <param name="EveryMinutes">How often a reading is called for [min].</param>
public sealed record HeatRunBegun(
    DateTimeOffset SwitchedOnAt,
    double ColdOhms,
    double ColdCelsius,
    double LoadAmps,
    double LimitKelvin,
    string LimitSource,
    double RepeatPercent,
    double EveryMinutes
) : Fact;
