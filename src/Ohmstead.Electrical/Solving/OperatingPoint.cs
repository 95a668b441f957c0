namespace Ohmstead.Electrical.Solving;

/// <summary>
/// Where cores and lamps stand, sought by Newton's method on the logarithm of their voltages. The Jacobian begins as the phasor
/// solution's; where junctions conduct it can be far from that, and is corrected by what each step did (Broyden).
/// </summary>
internal sealed class OperatingPoint(PhasorSolver phasor)
{
    private double[] phasorLogVolts = [];
    private double[] phasorJacobian = [];
    private double[] jacobian = [];
    private double[] off = [];
    private double[] step = [];
    private double[] offBefore = [];
    private double[] solved = [];

    private int Parts => phasor.Parts;

    /// <summary>Remembers the phasor solution's.</summary>
    public void Begin()
    {
        if (off.Length < Parts)
            (off, step, offBefore, phasorLogVolts) = (new double[Parts], new double[Parts], new double[Parts], new double[Parts]);
        if (jacobian.Length < Parts * Parts)
            (jacobian, phasorJacobian, solved) = (new double[Parts * Parts], new double[Parts * Parts], new double[Parts * Parts]);
        phasor.LogVolts.AsSpan(0, Parts).CopyTo(phasorLogVolts);
    }

    /// <summary>Goes back to the phasor solution's.</summary>
    public void Return()
    {
        phasorLogVolts.AsSpan(0, Parts).CopyTo(phasor.LogVolts);
        phasor.SetAdmittances();
    }

    /// <summary>Takes the Jacobian as it is where the phasor solver stands; with another's solution, what was learned there, and its place.</summary>
    public void Start(PeriodicStart? near)
    {
        phasor.FillJacobian(phasorJacobian);
        phasorJacobian.AsSpan(0, Parts * Parts).CopyTo(jacobian);
        if (near is null)
            return;
        for (var p = 0; p < Parts; p++)
            phasor.LogVolts[p] = phasorLogVolts[p] + near.Above[p];
        for (var n = 0; n < Parts * Parts; n++)
            jacobian[n] += near.Learned[n];
        phasor.SetAdmittances();
    }

    /// <summary>How far it is from what the circuit shows there [ln V], the worst of all.</summary>
    /// <param name="squares">By core and lamp: the square of its voltage, all harmonics added up [V²].</param>
    public double Compare(ReadOnlySpan<double> squares)
    {
        var worst = 0.0;
        for (var p = 0; p < Parts; p++)
        {
            off[p] = Math.Log(Math.Max(Math.Sqrt(squares[p]), 1e-9)) - phasor.LogVolts[p];
            worst = Math.Max(worst, Math.Abs(off[p]));
        }
        return worst;
    }

    /// <summary>One step of Newton's method.</summary>
    public void Correct()
    {
        off.AsSpan(0, Parts).CopyTo(offBefore);
        jacobian.AsSpan(0, Parts * Parts).CopyTo(solved);
        SmallSolve.InPlace(solved, off, Parts);
        for (var p = 0; p < Parts; p++)
        {
            step[p] = Math.Clamp(off[p], -1, 1);
            phasor.LogVolts[p] += step[p];
        }
        phasor.SetAdmittances();
    }

    /// <summary>Corrects the Jacobian by what the last step did, if that was longer than <paramref name="leastStep"/>.</summary>
    public void Learn(double leastStep)
    {
        var length = 0.0;
        for (var p = 0; p < Parts; p++)
            length += step[p] * step[p];
        if (length <= leastStep * leastStep)
            return;
        for (var i = 0; i < Parts; i++)
        {
            var miss = offBefore[i] - off[i];
            for (var k = 0; k < Parts; k++)
                miss -= jacobian[(i * Parts) + k] * step[k];
            for (var k = 0; k < Parts; k++)
                jacobian[(i * Parts) + k] += miss * step[k] / length;
        }
    }

    /// <summary>Keeps where it stands, and what was learned, beside the phasor solution's.</summary>
    public void Keep(PeriodicStart into)
    {
        for (var p = 0; p < Parts; p++)
            into.Above[p] = phasor.LogVolts[p] - phasorLogVolts[p];
        for (var n = 0; n < Parts * Parts; n++)
            into.Learned[n] = jacobian[n] - phasorJacobian[n];
    }
}
