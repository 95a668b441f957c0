namespace Ohmstead.Workshop.Listening;

/// <summary>How an ear hears a hum: low tones are soft, by the A-weighting of IEC 61672 (key iec-61672).</summary>
public static class EarWeight
{
    private const double Low = 20.598997;
    private const double SecondLow = 107.65265;
    private const double ThirdLow = 737.86223;
    private const double High = 12194.217;

    /// <summary>At 1000 Hz nothing is added [dB].</summary>
    private static readonly double AtThousand = Unscaled(1000);

    /// <summary>What is added to a level at a frequency [dB].</summary>
    public static double Db(double hertz) => Unscaled(hertz) - AtThousand;

    /// <summary>
    /// The lines that are above the noise as an ear adds them, by their power [dB(A) of a sine of full scale]; null where there are none.
    /// </summary>
    public static double? LevelOf(IEnumerable<HumLine> lines)
    {
        var power = lines.Where(l => l.IsThere).Sum(l => Math.Pow(10, (l.LevelDb + Db(l.Hertz)) / 10));
        return power > 0 ? 10 * Math.Log10(power) : null;
    }

    private static double Unscaled(double hertz)
    {
        var f = hertz * hertz;
        return 20
            * Math.Log10(
                High
                    * High
                    * f
                    * f
                    / ((f + (Low * Low)) * Math.Sqrt((f + (SecondLow * SecondLow)) * (f + (ThirdLow * ThirdLow))) * (f + (High * High)))
            );
    }
}
