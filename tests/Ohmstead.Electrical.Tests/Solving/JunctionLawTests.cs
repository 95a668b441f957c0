using CsCheck;
using Ohmstead.Electrical.Solving;

namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>A junction seen by a wave obeys v + R·Is·(exp(v/Vs) − 1) = a, whatever it starts from.</summary>
public class JunctionLawTests
{
    private static readonly Gen<(double A, double R, double Is, double Vs, double Start)> Cases = Gen.Select(
        Gen.Double[-300, 300], Gen.Double[-4, 7].Select(e => Math.Pow(10, e)), Gen.Double[-16, -1].Select(e => Math.Pow(10, e)), Gen.Double[0.005, 0.3], Gen.Double[-50, 2]);

    [Fact]
    public void The_voltage_solves_the_law() =>
        Cases.Sample(c =>
        {
            var v = JunctionLaw.Volts(c.A, c.R, c.Is, c.Vs, c.Start);
            var current = c.Is * (Math.Exp(v / c.Vs) - 1);
            // What a millionth of the slope in voltage leaves of the equation.
            var slack = 1e-5 * (c.Vs + (c.R * (Math.Abs(current) + c.Is))) + (1e-12 * Math.Abs(c.A));
            return Math.Abs(v + (c.R * current) - c.A) <= slack;
        });

    [Fact]
    public void The_voltage_rises_with_the_wave() =>
        Gen.Select(Cases, Gen.Double[0.01, 50]).Sample((c, more) => JunctionLaw.Volts(c.A + more, c.R, c.Is, c.Vs, c.Start) >= JunctionLaw.Volts(c.A, c.R, c.Is, c.Vs, c.Start) - (1e-6 * c.Vs));
}
