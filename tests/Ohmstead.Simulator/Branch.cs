namespace Ohmstead.Simulator;

/// <summary>A resistance, with an inductance in series where Henries is not zero.</summary>
/// <param name="IsWatched">Its current is asked for.</param>
internal sealed record Branch(int A, int B, double Ohms, double Henries = 0, bool IsWatched = false) : Part(A, B);
