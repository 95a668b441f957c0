namespace Ohmstead.Electrical.Solving;

/// <summary>
/// A solved reading. An open path gives a large finite resistance (up to <see cref="NoPathOhms"/>); whether a meter shows
/// OL is decided by <see cref="OverRange"/>.
/// </summary>
/// <param name="Value">In the quantity's unit, before any meter.</param>
/// <param name="Rounds">Rounds of all nested iterations.</param>
/// <param name="Residual">Last relative residual.</param>
public readonly record struct Solution(double Value, int Rounds, double Residual, Stop Stop)
{
    /// <summary>What stands for no path at all [Ω].</summary>
    public const double NoPathOhms = 1e18;

    /// <summary>The resistance above which the quantity's meter shows OL [Ω]; infinite where it never does.</summary>
    public static double OverRange(TypeSheets.Quantity quantity) => quantity switch
    {
        TypeSheets.Quantity.Ohms => 20e6,
        TypeSheets.Quantity.InsulationOhms => 1e9,
        _ => double.PositiveInfinity,
    };
}

/// <summary>Why a solver stopped.</summary>
public enum Stop
{
    /// <summary>The residual fell below the tolerance.</summary>
    Converged,

    /// <summary>The largest number of rounds was reached first.</summary>
    OutOfRounds,
}
