namespace Ohmstead.Workshop.Journal;

/// <summary>A heat run ended, and what it came to by the readings until then.</summary>
/// <param name="EndMinutes">The last switching off [min]; 0 when it was given up before three readings.</param>
/// <param name="RoomCelsius">The room then [°C].</param>
/// <param name="RiseKelvin">The rise after hours of the same load [K]; null when it was given up.</param>
/// <param name="LowKelvin">Lower end of its 90 % band [K].</param>
/// <param name="HighKelvin">Upper end [K].</param>
/// <param name="MayStop">below, above, or go on: as question files answer.</param>
/// <param name="Why">Why it was given up; empty when it was not.</param>
public sealed record HeatRunEnded(
    double EndMinutes,
    double RoomCelsius,
    double? RiseKelvin,
    double? LowKelvin,
    double? HighKelvin,
    string MayStop,
    string Why
) : Fact;
