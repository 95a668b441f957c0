namespace Ohmstead.Workshop.Journal;

/// <summary>In a heat run the plug was pulled for a reading, at the time of this entry.</summary>
/// <param name="Minutes">From first switching on, by the clock [min].</param>
public sealed record HeatUnplugged(double Minutes) : Fact;
