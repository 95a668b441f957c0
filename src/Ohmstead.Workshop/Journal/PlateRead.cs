namespace Ohmstead.Workshop.Journal;

/// <summary>What the plate of a unit says; what was read last counts.</summary>
/// <param name="Volts">Mains volts [V RMS]; null where the plate does not say.</param>
/// <param name="Watts">Watts, which on such plates are what goes in [W]; null where it does not say.</param>
public sealed record PlateRead(double? Volts, double? Watts) : Fact;
