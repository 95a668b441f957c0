namespace Ohmstead.Simulator;

/// <summary>A capacitor, with a resistance in series where that is not zero.</summary>
internal sealed record Capacitor(int A, int B, double Farads, double SeriesOhms) : Part(A, B);
