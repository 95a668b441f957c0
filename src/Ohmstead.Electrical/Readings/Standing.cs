namespace Ohmstead.Electrical.Readings;

/// <summary>How a value stands to what a meter shows on sound units (<see cref="Expectation"/>).</summary>
/// <param name="Off">
/// Beyond the end of the band, in the quantity's unit; 0 within it, infinite where one of the two is OL. It is what a person finds who
/// takes the value from what it should read.
/// </param>
/// <param name="Deviations">
/// From the nominal unit in standard deviations, the end of the band on that side taken as 1.96 of them; infinite where that end or
/// the value is OL. Counted on a logarithmic scale where the band spans decades.
/// </param>
public readonly record struct Standing(Side Side, double Off, double Deviations)
{
    /// <summary>Beyond this many standard deviations a reading is off, not a little off.</summary>
    public const double ClearDeviations = 3;

    /// <summary>This many times beyond the end of the band nothing is off by little, however wide the band. Common practice, no source.</summary>
    public const double ClearTimes = 10;

    /// <summary>How many times beyond the end of the band, 1 or more; 0 within it, and for a value of the other sign.</summary>
    public double TimesOut { get; init; }

    /// <summary>True when it lies outside, and not by little: of sound units one in twenty lies outside by little.</summary>
    public bool IsClearlyOff => Side is Side.Below or Side.Above && (Deviations >= ClearDeviations || TimesOut >= ClearTimes);
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
