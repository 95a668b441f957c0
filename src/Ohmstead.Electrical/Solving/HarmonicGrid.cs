using Ohmstead.Electrical.Circuits;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// The harmonics at which a network is solved. Impedances of windings change smoothly with frequency, so a few are enough and those
/// between are interpolated along straight lines; with a capacitor every harmonic is solved.
/// </summary>
internal sealed class HarmonicGrid
{
    private HarmonicGrid(params int[] solved)
    {
        Solved = solved;
        Between = [.. Enumerable.Range(0, Harmonics.Highest + 1).Select(Place)];
        Shares = new double[Solved.Length * Spectrum.Wide];
        for (var k = 0; k <= Harmonics.Highest; k++)
        {
            var (place, share) = Between[k];
            Shares[(place * Spectrum.Wide) + Spectrum.Place(k)] += 1 - share;
            Shares[((place + 1) * Spectrum.Wide) + Spectrum.Place(k)] += share;
        }
    }

    /// <summary>For windings and resistances.</summary>
    public static HarmonicGrid Few { get; } = new(0, 1, 2, 4, 11, Harmonics.Highest);

    /// <summary>Every one.</summary>
    public static HarmonicGrid Every { get; } = new([.. Enumerable.Range(0, Harmonics.Highest + 1)]);

    /// <summary>That of a circuit.</summary>
    public static HarmonicGrid Of(ReadingCircuit circuit) => circuit.NeedsEveryHarmonic ? Every : Few;

    /// <summary>The harmonics that are solved, from 0 to the highest.</summary>
    public int[] Solved { get; }

    /// <summary>For each harmonic the place in <see cref="Solved"/> at or below it, and how far it is to the next.</summary>
    public (int Place, double Share)[] Between { get; }

    /// <summary>For each solved harmonic, what of it is in the impedances by the place of the harmonic.</summary>
    public double[] Shares { get; }

    private (int, double) Place(int k)
    {
        var at = 0;
        while (at + 2 < Solved.Length && Solved[at + 1] <= k)
            at++;
        return (at, (k - Solved[at]) / (double)(Solved[at + 1] - Solved[at]));
    }
}
