using System.Collections.Immutable;

namespace Ohmstead.Workshop.Findings;

/// <summary>
/// All readings beside what sound units show, one row each: the deviation in standard deviations of a sound unit, so that the
/// edges of all bands are in one line. The scale is even within ±4 and squeezed beyond, so that a reading of fifty deviations
/// does not hide the others.
/// </summary>
/// <param name="Rows">From top to bottom, in the order of the journal; the place runs from 0 (left) to 1.</param>
/// <param name="BandLow">Left end of the band that holds 95 % of sound units.</param>
/// <param name="BandHigh">Its right end.</param>
public sealed record DeviationPlot(ImmutableArray<(ReadingPoint Point, double Place)> Rows, double BandLow, double BandHigh)
{
    private const double BandDeviations = 1.96;
    private const double Even = 4;

    /// <summary>Where the squeezed scale ends [deviations]; what is farther stands at its end.</summary>
    private const double Most = 100;

    /// <summary>Lays out the plot.</summary>
    public static DeviationPlot Of(ImmutableArray<ReadingPoint> points) =>
        new([.. points.Select(p => (p, Place(p.Deviations)))], Place(-BandDeviations), Place(BandDeviations));

    private static double Place(double deviations)
    {
        var size = Math.Min(Math.Abs(deviations), Most);
        var squeezed = size <= Even ? size : Even + (2 * Math.Log(size / Even));
        var end = Even + (2 * Math.Log(Most / Even));
        return 0.5 + (Math.Sign(deviations) * squeezed / end / 2);
    }
}
