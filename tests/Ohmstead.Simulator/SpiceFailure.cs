namespace Ohmstead.Simulator;

/// <summary>ngspice did not converge, or did not know what it was asked for.</summary>
internal sealed class SpiceFailure(string message) : Exception(message);
