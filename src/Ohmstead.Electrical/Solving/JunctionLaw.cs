using System.Numerics;
using System.Runtime.InteropServices;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// Conducting junctions seen together by waves: v + R·i(v) = a with i = I_s·(exp(v/V_s) − 1) for each and one positive definite
/// reference resistance R = L·Lᵀ for all. Waves are in units of √W, â = L⁻¹·a, so that their squares add up to power and
/// the answer ŵ = L⁻¹·(v − R·i) is never the larger of two.
/// </summary>
internal sealed class JunctionLaw
{
    private const int N = Harmonics.Samples;
    private const int MostSteps = 60;

    /// <summary>Newton's method ends at a step of this share of the slope voltage; the next would be about its square.</summary>
    private const double Enough = 1e-6;

    private const double Rounding = 1e-4;

    private int ports;
    private double[] inverse = [];
    private double[] conductance = [];
    private double[] saturation = [];
    private double[] slope = [];
    private Vector<double>[] drive = [];
    private Vector<double>[] step = [];
    private Vector<double>[] matrix = [];
    private Vector<double>[] top = [];

    /// <summary>Sets the junctions.</summary>
    /// <param name="inverseFactor">L⁻¹, lower triangle, row by row [Ω^−½].</param>
    public void Begin(ReadOnlySpan<double> inverseFactor, ReadOnlySpan<double> saturationAmps, ReadOnlySpan<double> slopeVolts)
    {
        ports = saturationAmps.Length;
        if (saturation.Length < ports)
        {
            (inverse, conductance, matrix) = (new double[ports * ports], new double[ports * ports], new Vector<double>[ports * ports]);
            (saturation, slope) = (new double[ports], new double[ports]);
            (drive, step, top) = (new Vector<double>[ports], new Vector<double>[ports], new Vector<double>[ports]);
        }
        inverseFactor[..(ports * ports)].CopyTo(inverse);
        saturationAmps.CopyTo(saturation);
        slopeVolts.CopyTo(slope);
        for (var i = 0; i < ports; i++)
        for (var j = 0; j < ports; j++)
        {
            var sum = 0.0;
            for (var k = Math.Max(i, j); k < ports; k++)
                sum += inverse[(k * ports) + i] * inverse[(k * ports) + j];
            conductance[(i * ports) + j] = sum;
        }
    }

    /// <summary>Answers the incident waves of a period.</summary>
    /// <param name="incident">â at [port·Samples + sample] [√W].</param>
    /// <param name="volts">In: a guess. Out: the voltages of the junctions [V].</param>
    /// <param name="reflected">ŵ [√W].</param>
    /// <returns>The largest last step as a share of the slope voltage: at most a millionth unless an iteration ran out of steps.</returns>
    public double Reflect(ReadOnlySpan<double> incident, Span<double> volts, Span<double> reflected)
    {
        var a = MemoryMarshal.Cast<double, Vector<double>>(incident);
        var v = MemoryMarshal.Cast<double, Vector<double>>(volts);
        var w = MemoryMarshal.Cast<double, Vector<double>>(reflected);
        var stride = N / Vector<double>.Count;
        var worst = 0.0;
        for (var n = 0; n < stride; n++)
        {
            worst = Math.Max(worst, SolveVoltages(a[n..], v[n..], stride));
            for (var p = 0; p < ports; p++)
            {
                var sum = Vector<double>.Zero;
                for (var q = 0; q <= p; q++)
                    sum += inverse[(p * ports) + q] * v[(q * stride) + n];
                w[(p * stride) + n] = sum + sum - a[(p * stride) + n];
            }
        }
        return worst;
    }

    /// <summary>Newton's method on R⁻¹·v + i(v) = L⁻ᵀ·â for as many samples as a vector holds.</summary>
    private double SolveVoltages(ReadOnlySpan<Vector<double>> incident, Span<Vector<double>> volts, int stride)
    {
        for (var p = 0; p < ports; p++)
        {
            drive[p] = Vector<double>.Zero;
            for (var q = p; q < ports; q++)
                drive[p] += inverse[(q * ports) + p] * incident[q * stride];
        }
        var (worst, isBounded) = (double.PositiveInfinity, false);
        for (var n = 0; n < MostSteps; n++)
        {
            Linearise(volts, stride);
            SolveSteps();
            var before = worst;
            worst = LargestStep();
            if (worst > 0.5 && !isBounded)
            {
                SetTop(incident, stride);
                isBounded = true;
            }
            for (var p = 0; p < ports; p++)
            {
                var next = volts[p * stride] + step[p];
                volts[p * stride] = isBounded ? Vector.Min(next, top[p]) : next;
            }
            // Where R spans ohms to gigohms, rounding may be more than a millionth of a slope voltage.
            if (worst < Enough || (worst < Rounding && worst > 0.5 * before))
                break;
        }
        return worst;
    }

    private void Linearise(ReadOnlySpan<Vector<double>> volts, int stride)
    {
        for (var p = 0; p < ports; p++)
        {
            // Below −40 slopes a junction carries its saturation current to the last digit.
            var e = saturation[p] * Vector.Exp(Vector.Max(volts[p * stride] * (1 / slope[p]), new Vector<double>(-40)));
            var rest = drive[p] - e + new Vector<double>(saturation[p]);
            for (var q = 0; q < ports; q++)
            {
                var g = conductance[(p * ports) + q];
                rest -= g * volts[q * stride];
                matrix[(p * ports) + q] = new Vector<double>(g);
            }
            matrix[(p * ports) + p] += e * (1 / slope[p]);
            step[p] = rest;
        }
    }

    /// <summary>Symmetric positive definite, so elimination needs no exchange of rows.</summary>
    private void SolveSteps()
    {
        for (var k = 0; k < ports; k++)
        {
            var inversePivot = Vector<double>.One / matrix[(k * ports) + k];
            for (var i = k + 1; i < ports; i++)
            {
                var f = matrix[(k * ports) + i] * inversePivot;
                for (var j = i; j < ports; j++)
                    matrix[(i * ports) + j] -= f * matrix[(k * ports) + j];
                step[i] -= f * step[k];
            }
            matrix[(k * ports) + k] = inversePivot;
        }
        for (var k = ports - 1; k >= 0; k--)
        {
            for (var j = k + 1; j < ports; j++)
                step[k] -= matrix[(k * ports) + j] * step[j];
            step[k] *= matrix[(k * ports) + k];
        }
    }

    private double LargestStep()
    {
        var most = Vector<double>.Zero;
        for (var p = 0; p < ports; p++)
            most = Vector.Max(most, Vector.Abs(step[p]) * (1 / slope[p]));
        var worst = 0.0;
        for (var n = 0; n < Vector<double>.Count; n++)
            worst = Math.Max(worst, most[n]);
        return worst;
    }

    /// <summary>
    /// Voltages not below the solution, so that no step can leave the range of exponentials: junctions take power, v·i ≥ 0,
    /// hence |Lᵀ·i| ≤ |â| and i_p² ≤ (R⁻¹)_pp·|â|². The equations are convex: from above Newton's method comes down to the solution.
    /// </summary>
    private void SetTop(ReadOnlySpan<Vector<double>> incident, int stride)
    {
        var power = Vector<double>.Zero;
        for (var p = 0; p < ports; p++)
            power += incident[p * stride] * incident[p * stride];
        var amplitude = Vector.SquareRoot(power);
        for (var p = 0; p < ports; p++)
            top[p] = slope[p] * Vector.Log(Vector<double>.One + (amplitude * (Math.Sqrt(conductance[(p * ports) + p]) / saturation[p])));
    }
}
