namespace Ohmstead.Electrical.Reckoning.Standards;

/// <summary>The line as it may come out of an outlet: 120 V nominal, 5 % either way (ANSI C84.1 range A, from memory).</summary>
public static class SupplyRange
{
    private const double Share = 0.05;

    /// <summary>The nominal line of houses at 60 Hz [V].</summary>
    public const double NominalVolts = 120;

    /// <summary>The least of the range [V].</summary>
    public const double Low = NominalVolts * (1 - Share);

    /// <summary>The most of it [V].</summary>
    public const double High = NominalVolts * (1 + Share);
}
