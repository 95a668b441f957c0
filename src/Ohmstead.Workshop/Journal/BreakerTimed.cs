namespace Ohmstead.Workshop.Journal;

/// <summary>A breaker was timed from cold.</summary>
/// <param name="Breaker">Which.</param>
/// <param name="Amps">Through it [A].</param>
/// <param name="Seconds">Until it opened, or until the load was switched off [s].</param>
/// <param name="Opened">False when it was switched off before it opened.</param>
/// <param name="Why">Why it does not count: "stopped by hand"; empty when it does.</param>
public sealed record BreakerTimed(string Breaker, double Amps, double Seconds, bool Opened, string Why) : Fact;
