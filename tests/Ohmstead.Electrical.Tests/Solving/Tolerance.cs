using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>
/// How close a reading must come to the circuit simulator: the larger of 0.3 % and 3 mV, 3 mA, 3 mΩ,
/// 0.05 W for direct current and phasors, 1 % for insulation; the larger of 1 % and 15 mV where a rectifier conducts.
/// </summary>
internal static class Tolerance
{
    public static double Of(Quantity quantity, double expected, bool isPeriodic)
    {
        var size = Math.Abs(expected);
        if (isPeriodic)
            return quantity switch
            {
                Quantity.AcVolts or Quantity.DcVolts => Math.Max(0.01 * size, 0.015),
                Quantity.AcAmps => Math.Max(0.01 * size, 0.003),
                _ => Math.Max(0.01 * size, 0.05),
            };
        return quantity switch
        {
            Quantity.InsulationOhms => 0.01 * size,
            Quantity.Watts => Math.Max(0.003 * size, 0.05),
            _ => Math.Max(0.003 * size, 0.003),
        };
    }
}
