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
    private readonly double[] kernel = new double[N];
    private double[] ohms = [];
    private double[] sizes = [];
    private double[] answer = [];
    private double[] roots = [];
    private int[] places = [];
    private readonly WaveFactors factors = new();
    private double[] right = [];
    private int active;

    /// <summary>Sets the network; factors of an earlier one stay.</summary>
    public void Begin(int portCount, WaveReflection rest)
    {
        ports = portCount;
        var square = ports * ports;
        if (answer.Length < ports * N)
        {
            (ohms, sizes, answer) = (new double[square * N], new double[ports], new double[ports * N]);
            (roots, places, right) = (new double[ports * N], new int[ports * N], new double[ports * N]);
        }
        network.Begin(ports);
        for (var i = 0; i < ports; i++)
        {
            for (var j = 0; j < ports; j++)
            {
                rest.Real(i, j).CopyTo(network.Real(i, j));
                rest.Imaginary(i, j).CopyTo(network.Imaginary(i, j));
            }
            network.SetSource(i, rest.Open(i));
        }
    }

    /// <summary>The kernel in ohms, L·ẑ·Lᵀ.</summary>
    private void Unscale(ReferenceResistance reference)
    {
        Array.Clear(ohms, 0, ports * ports * N);
        for (var k = 0; k < ports; k++)
        for (var l = 0; l < ports; l++)
        {
            network.Kernel(k, l, kernel);
            for (var i = k; i < ports; i++)
            for (var j = l; j < ports; j++)
                Harmonics.AddScaled(
                    ohms.AsSpan(((i * ports) + j) * N, N),
                    kernel,
                    reference.Factor[(i * ports) + k] * reference.Factor[(j * ports) + l]
                );
        }
        for (var i = 0; i < ports; i++)
        {
            sizes[i] = 0;
            foreach (var z in ohms.AsSpan(((i * ports) + i) * N, N))
                sizes[i] += Math.Abs(z);
        }
    }

    /// <summary>Factors the equations of a step.</summary>
    /// <param name="slopes">Slopes of the junctions' currents [S].</param>
    public void Factor(ReadOnlySpan<double> slopes, ReferenceResistance reference)
    {
        Unscale(reference);
        Collect(slopes);
        Fill();
        factors.Factor();
    }

    /// <summary>Moves the incident waves by a step of Newton's method, with the slopes that were factored last.</summary>
    /// <param name="incident">â, to which the junctions answer; then the waves of the step's end.</param>
    /// <param name="reflected">Their answer ŵ; used up.</param>
    /// <param name="volts">Their voltages [V].</param>
    public void Take(Span<double> incident, Span<double> reflected, ReadOnlySpan<double> volts, ReferenceResistance reference)
    {
        var size = ports * N;
        var negative = reflected;
        for (var n = 0; n < size; n++)
            negative[n] = 0.5 * (reflected[n] - incident[n]);
        network.Apply(negative, answer);
        SetMiss(volts, reference);
        for (var a = 0; a < active; a++)
            right[a] = roots[a] * answer[places[a]];
        factors.Solve(right.AsSpan(0, active));
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

    private void Collect(ReadOnlySpan<double> slopes)
    {
        active = 0;
        for (var n = 0; n < ports * N; n++)
        {
            if (slopes[n] * sizes[n / N] < Shut)
                continue;
            (places[active], roots[active]) = (n, Math.Sqrt(slopes[n]));
            active++;
        }
    }

    private void Fill()
    {
        factors.Begin(active);
        for (var a = 0; a < active; a++)
        {
            var row = factors.Row(a);
            var (port, at) = (places[a] / N * ports, places[a] & (N - 1));
            for (var b = 0; b < row.Length; b++)
            {
                var place = places[b];
                row[b] = roots[a] * roots[b] * ohms[((port + (place / N)) * N) + ((at - place) & (N - 1))];
            }
            row[a] += 1;
        }
    }
}
