namespace Ohmstead.Workshop.Journal;

/// <summary>The low supply for the check before mains was measured, on alternating and on direct volts.</summary>
/// <param name="AcVolts">What the meter showed on AC [V RMS].</param>
/// <param name="DcVolts">What it showed on DC [V].</param>
/// <param name="By">Who measured it and answers for its isolating transformer and its fuse.</param>
public sealed record SupplyStated(double AcVolts, double DcVolts, string By) : Fact;
