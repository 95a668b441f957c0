using Ohmstead.Electrical.Solving;

namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>A period's harmonics are the sums that define them, and lead back to the period; a convolution is a sum over lags.</summary>
public class SpectrumTests
{
    private const int N = Harmonics.Samples;

    [Fact]
    public void Every_harmonic_is_the_sum_that_defines_it()
    {
        var wave = Drawn(1, N);
        var (real, imaginary) = (new double[Spectrum.Wide], new double[Spectrum.Wide]);
        Spectrum.Forward(wave, real, imaginary);
        for (var k = 0; k <= Harmonics.Highest; k++)
        {
            var (cosines, sines) = (0.0, 0.0);
            for (var n = 0; n < N; n++)
                (cosines, sines) = (cosines + (wave[n] * Math.Cos(Angle(k * n))), sines + (wave[n] * Math.Sin(Angle(k * n))));
            Assert.Equal(cosines, real[Spectrum.Place(k)], 1e-12);
            Assert.Equal(-sines, imaginary[Spectrum.Place(k)], 1e-12);
        }
    }

    [Fact]
    public void The_way_back_leads_to_the_wave()
    {
        var wave = Drawn(2, N);
        var (real, imaginary, back) = (new double[Spectrum.Wide], new double[Spectrum.Wide], new double[N]);
        Spectrum.Forward(wave, real, imaginary);
        Spectrum.Backward(real, imaginary, back);
        Assert.All(Enumerable.Range(0, N), n => Assert.Equal(wave[n], back[n], 1e-13));
    }

    [Fact]
    public void A_convolution_is_the_sum_over_lags_of_what_every_port_sends()
    {
        const int Ports = 3;
        var (network, input, output) = (new Convolution(), Drawn(3, Ports * N), new double[Ports * N]);
        network.Begin(Ports);
        var kernels = new double[Ports * Ports][];
        for (var n = 0; n < kernels.Length; n++)
            Spectrum.Forward(kernels[n] = Drawn(10 + n, N), network.Real(n / Ports, n % Ports), network.Imaginary(n / Ports, n % Ports));
        // 2 V RMS that lead by a sixth of a period.
        network.SetSource(1, System.Numerics.Complex.FromPolarCoordinates(2, Math.PI / 3));
        network.Apply(input, output);
        for (var p = 0; p < Ports; p++)
        for (var n = 0; n < N; n++)
        {
            var sum = p == 1 ? 2 * Math.Sqrt(2) * Math.Cos(Angle(n) + (Math.PI / 3)) : 0;
            for (var q = 0; q < Ports; q++)
            for (var lag = 0; lag < N; lag++)
                sum += kernels[(p * Ports) + q][lag] * input[(q * N) + ((n - lag) & (N - 1))];
            Assert.Equal(sum, output[(p * N) + n], 1e-11);
        }
    }

    private static double Angle(int steps) => 2 * Math.PI * (steps % N) / N;

    private static double[] Drawn(int seed, int count)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(_ => (2 * random.NextDouble()) - 1)];
    }
}
