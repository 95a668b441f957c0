namespace Ohmstead.Workshop.Journal;

/// <summary>A reading after the last switching off of a heat run: the winding falls toward the core.</summary>
/// <param name="Seconds">Since that switching off [s].</param>
/// <param name="Ohms">Of the winding [Ω].</param>
public sealed record HeatCooled(double Seconds, double Ohms) : Fact;
