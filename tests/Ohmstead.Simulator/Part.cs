namespace Ohmstead.Simulator;

/// <summary>A two-ended part of the circuit; the ends are numbers of nodes, current counted from A to B.</summary>
internal abstract record Part(int A, int B);
