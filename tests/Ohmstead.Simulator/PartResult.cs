namespace Ohmstead.Simulator;

/// <summary>What a rectifier saw in the last cycle, the whole of it, leakage included.</summary>
internal sealed record PartResult(double PeakReverseVolts, double PeakAmps, double Watts);
