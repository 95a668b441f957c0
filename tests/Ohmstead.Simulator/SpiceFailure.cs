namespace Ohmstead.Simulator;

/// <summary>ngspice did not converge, or did not know what it was asked for.</summary>
internal sealed class SpiceFailure(string message) : Exception(message)
{
    /// <summary>True where it was ended, for it had lost its way: nothing else is tried then.</summary>
    public bool HasEnded { get; init; }
}
