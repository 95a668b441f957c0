using System.Numerics;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// A step of Newton's method on the whole exchange of waves, v + Z ∗ i(v) = v_open, for where the exchange contracts slowly. Only
/// the samples at which a junction conducts enter the equations; where it is shut its current stays as it is.
/// </summary>
internal sealed class WaveLeap
{
    private const int N = Harmonics.Samples;

    /// <summary>
    /// A junction whose slope times the impedance is less than this counts as shut: the step is as good as Newton's to two digits
    /// there, and the equations are fewer.
    /// </summary>
    private const double Shut = 1e-2;

    private readonly Convolution network = new();
    private int ports;
    private double[] ohms = [];
    private double[] sizes = [];
    private double[] answer = [];
    private double[] roots = [];
    private int[] places = [];
    private double[] matrix = [];
    private double[] right = [];

    /// <summary>Sets the network.</summary>
    /// <param name="scaled">Impedances at all harmonics, then the open-circuit voltages, on the reference resistance.</param>
    public void Begin(int portCount, ReadOnlySpan<Complex> scaled, ReferenceResistance reference)
    {
        ports = portCount;
        var square = ports * ports;
        if (answer.Length < ports * N)
        {
            (ohms, sizes, answer) = (new double[square * N], new double[ports], new double[ports * N]);
            (roots, places, right) = (new double[ports * N], new int[ports * N], new double[ports * N]);
        }
        network.Begin(ports);
        for (var k = 0; k <= Harmonics.Highest; k++)
            network.Add(k, scaled.Slice(k * square, square), ports);
        for (var p = 0; p < ports; p++)
            network.AddSource(p, scaled[((Harmonics.Highest + 1) * square) + p]);
        Unscale(reference);
    }

    /// <summary>The kernel in ohms, L·ẑ·Lᵀ.</summary>
    private void Unscale(ReferenceResistance reference)
    {
        Array.Clear(ohms, 0, ports * ports * N);
        for (var i = 0; i < ports; i++)
        {
            sizes[i] = 0;
            for (var j = 0; j < ports; j++)
            {
                var into = ohms.AsSpan(((i * ports) + j) * N, N);
                for (var k = 0; k <= i; k++)
                for (var l = 0; l <= j; l++)
                    Harmonics.AddScaled(
                        into,
                        network.Kernel(k, l),
                        reference.Factor[(i * ports) + k] * reference.Factor[(j * ports) + l]
                    );
                if (i == j)
                    foreach (var z in into)
                        sizes[i] += Math.Abs(z);
            }
        }
    }

    /// <summary>Moves the incident waves by a step of Newton's method.</summary>
    /// <param name="incident">â, to which the junctions answer; then the waves of the step's end.</param>
    /// <param name="reflected">Their answer ŵ; used up.</param>
    /// <param name="volts">Their voltages [V].</param>
    /// <param name="slopes">Slopes of their currents [S].</param>
    public void Take(
        Span<double> incident,
        Span<double> reflected,
        ReadOnlySpan<double> volts,
        ReadOnlySpan<double> slopes,
        ReferenceResistance reference
    )
    {
        var size = ports * N;
        var negative = reflected;
        for (var n = 0; n < size; n++)
            negative[n] = 0.5 * (reflected[n] - incident[n]);
        network.Apply(negative, answer);
        SetMiss(volts, reference);
        var active = Collect(slopes);
        Fill(active);
        SmallSolve.InPlace(matrix, right, active);
        for (var a = 0; a < active; a++)
        {
            var (q, n) = (places[a] / N, places[a] % N);
            var amps = roots[a] * right[a];
            for (var k = 0; k <= q; k++)
                negative[(k * N) + n] -= reference.Factor[(q * ports) + k] * amps;
        }
        network.Apply(negative, incident);
        for (var n = 0; n < size; n++)
            incident[n] -= negative[n];
    }

    /// <summary>Turns the network's answer to volts and takes the junctions' from it: v_open − Z ∗ i − v.</summary>
    private void SetMiss(ReadOnlySpan<double> volts, ReferenceResistance reference)
    {
        for (var n = 0; n < N; n++)
        for (var i = ports - 1; i >= 0; i--)
        {
            var sum = 0.0;
            for (var k = 0; k <= i; k++)
                sum += reference.Factor[(i * ports) + k] * answer[(k * N) + n];
            answer[(i * N) + n] = sum - volts[(i * N) + n];
        }
    }

    private int Collect(ReadOnlySpan<double> slopes)
    {
        var active = 0;
        for (var n = 0; n < ports * N; n++)
        {
            if (slopes[n] * sizes[n / N] < Shut)
                continue;
            (places[active], roots[active]) = (n, Math.Sqrt(slopes[n]));
            right[active] = roots[active] * answer[n];
            active++;
        }
        return active;
    }

    private void Fill(int active)
    {
        if (matrix.Length < active * active)
            matrix = new double[active * active];
        for (var a = 0; a < active; a++)
        for (var b = 0; b < active; b++)
        {
            var lag = (places[a] - places[b]) & (N - 1);
            matrix[(a * active) + b] =
                (a == b ? 1 : 0)
                + (roots[a] * roots[b] * ohms[(((places[a] / N * ports) + (places[b] / N)) * N) + lag]);
        }
    }
}
