namespace Ohmstead.Workshop.Journal;

/// <summary>The check before mains was found to stand for the wiring as it is.</summary>
/// <param name="RestsOn">Mark of the wiring and the readings it rests on; it falls when either changes.</param>
/// <param name="By">Who says so.</param>
/// <param name="LookedAt">What was looked at by eye because no reading tells it; empty when the readings tell all.</param>
public sealed record RewireChecked(string RestsOn, string By, string LookedAt) : Fact;
