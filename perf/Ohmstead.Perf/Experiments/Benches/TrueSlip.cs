using Ohmstead.Electrical.Readings;

namespace Ohmstead.Perf.Experiments.Benches;

/// <summary>How a reading was really noted or taken wrongly.</summary>
internal enum SpoiledBy
{
    /// <summary>Ten times too high.</summary>
    TimesTen,

    /// <summary>Ten times too low.</summary>
    Tenth,

    /// <summary>Noted in the place of another of the same quantity, and the other in its place.</summary>
    Exchange,

    /// <summary>The steady part noted as alternating, or the other way.</summary>
    Quantity,

    /// <summary>One probe on another terminal.</summary>
    Place,

    /// <summary>A throttle not quite at full.</summary>
    Control,
}

/// <summary>A reading that was really noted or taken wrongly.</summary>
/// <param name="Clean">The reading as it would have been.</param>
/// <param name="With">The other reading of an exchange; empty otherwise.</param>
/// <param name="Matters">It moved by more than three of the meter's limits.</param>
internal sealed record TrueSlip(TakenReading Clean, SpoiledBy By, string With, bool Matters)
{
    /// <summary>The reading.</summary>
    public string Id => Clean.Spec.Id;
}
