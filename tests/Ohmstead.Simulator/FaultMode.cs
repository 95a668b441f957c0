namespace Ohmstead.Simulator;

/// <summary>A mode of a kind of element: its chance in percent, and the range of its size where it has one.</summary>
internal sealed record FaultMode(string Name, double Percent, (double Low, double High)? Size = null);
