namespace Ohmstead.Electrical.Carrying;

/// <summary>What a pair of posts carries for hours, and what it is held by.</summary>
/// <param name="IdleVolts">With no load [V].</param>
/// <param name="LoadedVolts">With that load [V].</param>
/// <param name="Amps">The most for hours, this pair alone [A].</param>
/// <param name="LoadOhms">The resistance that draws it [Ω].</param>
/// <param name="By">What it is held by.</param>
/// <param name="Part">The part that it is held by; empty for the core.</param>
/// <param name="PartMostAmps">What that part carries for hours in its own circuit [A]; of the core, the usable watts over the volts.</param>
/// <param name="IsEstimated">The figure of that part is estimated: the sheet does not say it.</param>
/// <param name="IsProtected">A breaker of known rating lies in the path.</param>
public sealed record OutletLimit(
    double IdleVolts,
    double LoadedVolts,
    double Amps,
    double LoadOhms,
    HeldBy By,
    string Part,
    double PartMostAmps,
    bool IsEstimated,
    bool IsProtected
);

/// <summary>What holds the amps of a pair of posts.</summary>
public enum HeldBy
{
    /// <summary>The core: usable watts over volts.</summary>
    Core,

    /// <summary>A winding.</summary>
    Winding,

    /// <summary>A slider: a throttle's roller or shoe.</summary>
    Slider,

    /// <summary>A switch.</summary>
    Switch,

    /// <summary>A breaker.</summary>
    Breaker,
}
