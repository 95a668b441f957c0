namespace Ohmstead.Electrical.Diagnosis;

/// <summary>A reading that was probably noted or taken wrongly; its value is no evidence for a fault.</summary>
/// <param name="Id">The reading.</param>
/// <param name="Kind">The most probable way it went wrong.</param>
/// <param name="With">The other reading of an exchange; the terminals <c>a..b</c> of another place; null otherwise.</param>
/// <param name="Meant">The value that would fit, in the quantity's unit; null where none is said.</param>
/// <param name="Probability">That it is wrong at all [0.5..1].</param>
public sealed record ProbableSlip(string Id, SlipKind Kind, string? With, double? Meant, double Probability);

/// <summary>How a reading goes wrong between the probe and the paper.</summary>
public enum SlipKind
{
    /// <summary>Nothing listed fits.</summary>
    Unknown,

    /// <summary>Noted ten times too high: the decimal point.</summary>
    TimesTen,

    /// <summary>Noted ten times too low.</summary>
    Tenth,

    /// <summary>A unit prefix: noted a thousand times too high.</summary>
    TimesThousand,

    /// <summary>A unit prefix: noted a thousand times too low.</summary>
    Thousandth,

    /// <summary>Exchanged with another reading of the same quantity.</summary>
    Exchanged,

    /// <summary>The wrong sign.</summary>
    Sign,

    /// <summary>The steady part noted as alternating, or the other way.</summary>
    Quantity,

    /// <summary>Read between other terminals.</summary>
    Place,

    /// <summary>Read with a control elsewhere.</summary>
    Control,
}
