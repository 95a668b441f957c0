namespace Ohmstead.Electrical.Readings;

/// <summary>How a value stands to what a meter shows on sound units (<see cref="Expectation"/>).</summary>
/// <param name="Off">From the nominal unit, never negative, in the quantity's unit; infinite where one of the two is OL.</param>
/// <param name="Deviations">
/// The same in standard deviations, the end of the band on that side taken as 1.96 of them; infinite where that end or the
/// value is OL.
/// </param>
public readonly record struct Standing(Side Side, double Off, double Deviations)
{
    /// <summary>Beyond this many standard deviations a reading is off, not a little off.</summary>
    public const double ClearDeviations = 3;

    /// <summary>True when it lies outside, and not by little: of sound units one in twenty lies outside by little.</summary>
    public bool IsClearlyOff => Side is Side.Below or Side.Above && Deviations >= ClearDeviations;
}

/// <summary>On which side of what sound units show a reading lies.</summary>
public enum Side
{
    /// <summary>Among the 95 %.</summary>
    Within,

    /// <summary>Below them.</summary>
    Below,

    /// <summary>Above them; OL is above every number.</summary>
    Above,

    /// <summary>Nothing may be concluded from the reading (<see cref="Judging"/>).</summary>
    NotJudged,
}
