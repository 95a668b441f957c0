namespace Ohmstead.Workshop.Journal;

/// <summary>A breaker is being timed: the load was switched on at the time of this entry.</summary>
/// <param name="Breaker">Which.</param>
/// <param name="Amps">Through it [A].</param>
/// <param name="StopSeconds">Switch off at this count, tripped or not [s].</param>
/// <param name="LowSeconds">It should open from here [s]; null where it should never.</param>
/// <param name="HighSeconds">To here [s].</param>
public sealed record BreakerStarted(string Breaker, double Amps, double StopSeconds, double? LowSeconds, double? HighSeconds) : Fact;
