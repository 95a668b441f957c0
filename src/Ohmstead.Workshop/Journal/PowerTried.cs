namespace Ohmstead.Workshop.Journal;

/// <summary>A step of first power: the mains brought up a part of the way, and what was read.</summary>
/// <param name="SetVolts">Volts put on the unit [V].</param>
/// <param name="Amps">What it drew [A]; null when not read.</param>
/// <param name="Watts">What it took [W]; null when not read.</param>
/// <param name="Went">True for go, false where it was stopped.</param>
public sealed record PowerTried(double SetVolts, double? Amps, double? Watts, bool Went) : Fact;
