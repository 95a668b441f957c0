using System.Numerics;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// The resistance on which waves between junctions and the rest of the network are defined: a matrix R = L·Lᵀ near what the
/// junctions see at the supply frequency. With one number for each junction the waves would fit only one of the ways in which
/// junctions share their currents: two that meet at a node without a load see an ohm from one to the other and megohms to anywhere
/// else.
/// </summary>
internal sealed class ReferenceResistance
{
    /// <summary>A share of the reactance keeps R positive where the network has next to no resistance.</summary>
    private const double ReactanceShare = 0.5;

    /// <summary>R's least pivot, as a share of its diagonal and in ohms: two junctions may see one and the same pair of nodes.</summary>
    private const double LeastShare = 1e-12;
    private const double LeastOhms = 1e-6;

    private int ports;
    private bool isInductive;
    private Complex[] work = [];

    /// <summary>L, lower triangle, row by row [Ω^½].</summary>
    public double[] Factor { get; private set; } = [];

    /// <summary>L⁻¹, lower triangle, row by row [Ω^−½].</summary>
    public double[] Inverse { get; private set; } = [];

    /// <summary>
    /// Takes R = Re Z + Im Z/2, both of which are positive semidefinite in a network of resistances and coupled inductances. With a
    /// capacitor the reactances have either sign: their amounts count then, each at its own junction.
    /// </summary>
    /// <param name="isInductiveOnly">No capacitor is in the network.</param>
    /// <param name="z">Impedances between the junctions at the supply frequency [Ω].</param>
    public void Set(ReadOnlySpan<Complex> z, int portCount, bool isInductiveOnly = true)
    {
        (ports, isInductive) = (portCount, isInductiveOnly);
        if (Inverse.Length < ports * ports)
            (Inverse, Factor, work) = (new double[ports * ports], new double[ports * ports], new Complex[ports * ports]);
        for (var i = 0; i < ports; i++)
        for (var j = 0; j <= i; j++)
        {
            var sum = At(z, i, j);
            for (var k = 0; k < j; k++)
                sum -= Factor[(i * ports) + k] * Factor[(j * ports) + k];
            Factor[(i * ports) + j] =
                i == j ? Math.Sqrt(Math.Max(sum, LeastOhms + (LeastShare * At(z, i, i)))) : sum / Factor[(j * ports) + j];
        }
        Invert();
    }

    private double At(ReadOnlySpan<Complex> z, int i, int j)
    {
        var mean = 0.5 * (z[(i * ports) + j] + z[(j * ports) + i]);
        return mean.Real
            + (
                ReactanceShare
                * (
                    isInductive ? mean.Imaginary
                    : i == j ? Math.Abs(mean.Imaginary)
                    : 0
                )
            );
    }

    private void Invert()
    {
        Array.Clear(Inverse, 0, ports * ports);
        for (var j = 0; j < ports; j++)
        for (var i = j; i < ports; i++)
        {
            var sum = i == j ? 1.0 : 0.0;
            for (var k = j; k < i; k++)
                sum -= Factor[(i * ports) + k] * Inverse[(k * ports) + j];
            Inverse[(i * ports) + j] = sum / Factor[(i * ports) + i];
        }
    }

    /// <summary>L⁻¹·v for voltages v.</summary>
    public void ScaleVolts(ReadOnlySpan<Complex> volts, Span<Complex> into)
    {
        for (var i = 0; i < ports; i++)
        {
            into[i] = Complex.Zero;
            for (var k = 0; k <= i; k++)
                into[i] += Inverse[(i * ports) + k] * volts[k];
        }
    }

    /// <summary>Turns impedances z into L⁻¹·z·L⁻ᵀ, numbers about 1.</summary>
    public void ScaleOhms(Span<Complex> z)
    {
        for (var i = 0; i < ports; i++)
        for (var j = 0; j < ports; j++)
        {
            var sum = Complex.Zero;
            for (var k = 0; k <= i; k++)
                sum += Inverse[(i * ports) + k] * z[(k * ports) + j];
            work[(i * ports) + j] = sum;
        }
        for (var i = 0; i < ports; i++)
        for (var j = 0; j < ports; j++)
        {
            var sum = Complex.Zero;
            for (var k = 0; k <= j; k++)
                sum += work[(i * ports) + k] * Inverse[(j * ports) + k];
            z[(i * ports) + j] = sum;
        }
    }
}
