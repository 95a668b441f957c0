namespace Ohmstead.Electrical.Solving;

/// <summary>
/// What came of solving a reading: its value, or none where the iteration did not end, with the evidence of either. An open path gives
/// a large finite resistance (up to <see cref="NoPathOhms"/>); whether a meter shows OL is decided by <see cref="OverRange"/>.
/// </summary>
/// <param name="Value">In the quantity's unit, before any meter; null where the iteration did not end: there is no value to use then.</param>
/// <param name="Rounds">Rounds of all nested iterations.</param>
/// <param name="Residual">Last relative residual.</param>
public readonly record struct Solution(double? Value, int Rounds, double Residual)
{
    /// <summary>What stands for no path at all [Ω].</summary>
    public const double NoPathOhms = 1e18;

    /// <summary>True where a rectifier carried alternating current.</summary>
    public bool IsPeriodic { get; init; }

    /// <summary>A value that counts only where its iteration ended, and with a number.</summary>
    internal static Solution Of(double value, Ending ending, bool isPeriodic = false) =>
        new(ending.HasConverged && !double.IsNaN(value) ? value : null, ending.Rounds, ending.Residual) { IsPeriodic = isPeriodic };

    /// <summary>The resistance above which the quantity's meter shows OL [Ω]; infinite where it never does.</summary>
    public static double OverRange(TypeSheets.Quantity quantity) =>
        quantity switch
        {
            TypeSheets.Quantity.Ohms => 20e6,
            TypeSheets.Quantity.InsulationOhms => 1e9,
            _ => double.PositiveInfinity,
        };
}
