namespace Ohmstead.Electrical.Reckoning.Standards;

/// <summary>How hard a test with DC is on insulation, beside AC. A test with high volts is for new equipment, never for an old unit.</summary>
public static class HighVolts
{
    /// <summary>AC that is as hard on it as DC: the same peak [V RMS].</summary>
    public static double AcOf(double dcVolts) => dcVolts / Math.Sqrt(2);

    /// <summary>DC as hard as AC [V].</summary>
    public static double DcOf(double acVolts) => acVolts * Math.Sqrt(2);

    /// <summary>What makers put on new equipment: 1000 V and twice its line (from memory) [V RMS].</summary>
    public static double OfNewEquipment(double lineVolts) => 1000 + (2 * lineVolts);
}
