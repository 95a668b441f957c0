namespace Ohmstead.Simulator;

/// <summary>A junction with a resistance in series, and a leakage path across both; conducts from A to B.</summary>
internal sealed record Rectifier(int A, int B, double SaturationAmps, double SlopeVolts, double SeriesOhms, double LeakageOhms)
    : Part(A, B);
