namespace Ohmstead.Simulator;

/// <summary>A resistance, with an inductance in series where Henries is not zero.</summary>
internal sealed record Branch(int A, int B, double Ohms, double Henries = 0) : Part(A, B);
