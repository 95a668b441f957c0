namespace Ohmstead.Electrical.Solving;

/// <summary>How an iteration ended.</summary>
/// <param name="Rounds">Rounds of all nested iterations.</param>
/// <param name="Residual">Last relative residual.</param>
/// <param name="HasConverged">False when the largest number of rounds was reached first.</param>
internal readonly record struct Ending(int Rounds, double Residual, bool HasConverged);
