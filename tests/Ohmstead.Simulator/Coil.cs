namespace Ohmstead.Simulator;

/// <summary>Turns on a core with their share of resistance and leakage; the dotted end is A.</summary>
internal sealed record Coil(int A, int B, Core Core, double Turns, double Ohms, double Henries) : Part(A, B);
