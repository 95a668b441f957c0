using CsCheck;
using Ohmstead.Electrical.Solving;

namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>Junctions seen by waves obey v + R·Is·(exp(v/Vs) − 1) = a, alone or together, whatever they start from.</summary>
public class JunctionLawTests
{
    private const int N = Harmonics.Samples;

    private static readonly Gen<(double A, double R, double Is, double Vs, double Start)> Cases = Gen.Select(
        Gen.Double[-300, 300],
        Gen.Double[-4, 7].Select(e => Math.Pow(10, e)),
        Gen.Double[-16, -1].Select(e => Math.Pow(10, e)),
        Gen.Double[0.005, 0.3],
        Gen.Double[-50, 2]
    );

    [Fact]
    public void The_voltage_solves_the_law() => Cases.Sample(c => Solves(c.A, c.R, c.Is, c.Vs, c.Start));

    /// <summary>A start 95 slopes too high: the steps down from there, a slope each, must not run out.</summary>
    [Fact]
    public void A_start_far_above_the_solution_does_no_harm() =>
        Assert.True(Solves(284.26423600104056, 0.19399010249373794, 1e-7, 1 / 59.0, 2));

    [Fact]
    public void The_voltage_rises_with_the_wave() =>
        Gen.Select(Cases, Gen.Double[0.01, 50])
            .Sample((c, more) => Volts(c.A + more, c.R, c.Is, c.Vs, c.Start) >= Volts(c.A, c.R, c.Is, c.Vs, c.Start) - (1e-6 * c.Vs));

    /// <summary>
    /// Two to four junctions on resistances of their own and one that all share, up to ten million times as large: the equations
    /// Lᵀ·i = â − v̂ in the currents, and no more power back than came.
    /// </summary>
    [Fact]
    public void Junctions_on_a_common_resistance_solve_their_laws_together() =>
        Gen.Select(
                Gen.Double[-1, 1].Array[4],
                Gen.Double[-2, 1].Select(e => Math.Pow(10, e)).Array[4],
                Gen.Double[-2, 5].Select(e => Math.Pow(10, e)),
                Gen.Double[-12, -2].Select(e => Math.Pow(10, e)).Array[4],
                Gen.Int[2, 4]
            )
            .Sample((volts, own, shared, saturation, ports) => SolveTogether(volts[..ports], own, shared, saturation[..ports]));

    private static bool Solves(double a, double r, double saturationAmps, double slopeVolts, double start)
    {
        var v = Volts(a, r, saturationAmps, slopeVolts, start);
        var current = saturationAmps * (Math.Exp(v / slopeVolts) - 1);
        // What a millionth of the slope in voltage leaves of the equation.
        var slack = (1e-5 * (slopeVolts + (r * (Math.Abs(current) + saturationAmps)))) + (1e-12 * Math.Abs(a));
        return Math.Abs(v + (r * current) - a) <= slack;
    }

    private static double Volts(double a, double r, double saturationAmps, double slopeVolts, double start)
    {
        var law = new JunctionLaw();
        law.Begin([1 / Math.Sqrt(r)], [saturationAmps], [slopeVolts]);
        double[] incident = [.. Enumerable.Repeat(a / Math.Sqrt(r), N)];
        double[] volts = [.. Enumerable.Repeat(start, N)];
        law.Reflect(incident, volts, new double[N]);
        return volts[0];
    }

    private static bool SolveTogether(double[] share, double[] own, double shared, double[] saturation)
    {
        var ports = share.Length;
        var reference = new ReferenceResistance();
        System.Numerics.Complex[] z =
        [
            .. Enumerable
                .Range(0, ports * ports)
                .Select(n => new System.Numerics.Complex(shared + (n / ports == n % ports ? own[n / ports] : 0), 0)),
        ];
        reference.Set(z, ports);
        double[] slope = [.. Enumerable.Repeat(0.05, ports)];
        var law = new JunctionLaw();
        law.Begin(reference.Inverse, saturation, slope);
        double[] incident = [.. Enumerable.Range(0, ports * N).Select(n => 20 * share[n / N] * Math.Cos(2 * Math.PI * n / N))];
        var (volts, reflected) = (new double[ports * N], new double[ports * N]);
        // A ten-thousandth of a slope; where the waves leave kilovolts on a blocked junction, what a double resolves of those.
        if (law.Reflect(incident, volts, reflected) > 1e-4 * Math.Max(1, volts.Max(Math.Abs) / 1000))
            return false;
        for (var n = 0; n < N; n++)
        {
            var (sent, back) = (0.0, 0.0);
            for (var p = 0; p < ports; p++)
            {
                var (wave, answer) = (incident[(p * N) + n], reflected[(p * N) + n]);
                (sent, back) = (sent + (wave * wave), back + (answer * answer));
                var (current, slack) = (0.0, 1e-7);
                for (var q = p; q < ports; q++)
                {
                    var amps = saturation[q] * (Math.Exp(volts[(q * N) + n] / slope[q]) - 1);
                    current += reference.Factor[(q * ports) + p] * amps;
                    slack += 1e-5 * Math.Abs(reference.Factor[(q * ports) + p] * (Math.Abs(amps) + saturation[q]));
                }
                for (var q = 0; q <= p; q++)
                    slack += 1e-5 * slope[q] * Math.Abs(reference.Inverse[(p * ports) + q]);
                if (Math.Abs(current - ((wave - answer) / 2)) > slack)
                    return false;
            }
            if (back > sent + 1e-6)
                return false;
        }
        return true;
    }
}
