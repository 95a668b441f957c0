using System.Numerics;
using Ohmstead.Electrical.Circuits;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// The sinusoidal steady state: cores and lamps at their operating point by Newton's method on the logarithms of their
/// voltages, junctions as the conductance saturationAmps/slopeVolts.
/// </summary>
internal sealed partial class PhasorSolver
{
    private const int MostRounds = 60;
    private const double Tolerance = 1e-11;
    private const int PatientRounds = 12;
    private const double CornerTolerance = 1e-5;
    private const double LeastVolts = 1e-9;

    private readonly SymmetricSystem system = new();
    private readonly Frame frame = new();
    private Complex[] x = new Complex[8];
    private Complex[] response = new Complex[8];
    private double[] jacobian = new double[4];
    private double[] step = new double[2];
    private Complex[] across = new Complex[2];
    private double[] slopes = new double[2];
    private ReadingCircuit circuit = null!;
    private UnitValues values = null!;

    /// <summary>ln of the voltages of cores (reference winding), then of lamps: the operating point [ln V].</summary>
    public double[] LogVolts { get; private set; } = new double[2];

    /// <summary>Admittances of cores (without loss), then of lamps, at the operating point [S].</summary>
    public double[] Siemens { get; private set; } = new double[2];

    /// <summary>Cores and lamps together.</summary>
    public int Parts { get; private set; }

    /// <summary>The reduced equations at the supply frequency.</summary>
    public Frame Frame => frame;

    /// <summary>The solution: kept nodes, then volts per turn of the cores.</summary>
    public ReadOnlySpan<Complex> Unknowns => x.AsSpan(0, frame.Size);

    /// <summary>The source voltage [V RMS].</summary>
    public double SourceVolts => circuit.State.Source!.Volts;

    /// <summary>Finds the operating point; how its iteration ended.</summary>
    public Ending Solve(ReadingCircuit forCircuit, UnitValues withValues, Network network)
    {
        (circuit, values) = (forCircuit, withValues);
        var sheet = circuit.Model.Sheet;
        network.Begin(circuit, values);
        network.Reduce(sheet.OmegaRadPerSecond, frame);
        Parts = sheet.Cores.Length + circuit.Lamps.Length;
        if (x.Length < frame.Size)
            (x, response) = (new Complex[frame.Size], new Complex[frame.Size]);
        if (LogVolts.Length < Parts)
            (LogVolts, Siemens, across, slopes, step, jacobian) = (
                new double[Parts],
                new double[Parts],
                new Complex[Parts],
                new double[Parts],
                new double[Parts],
                new double[Parts * Parts]
            );
        if (jacobian.Length < Parts * Parts)
            jacobian = new double[Parts * Parts];
        Begin(sheet.Cores.Length);
        var residual = 0.0;
        var rounds = 1;
        for (; rounds <= MostRounds; rounds++)
        {
            SetAdmittances();
            SolveLinear();
            residual = Residual();
            // At a corner of an excitation table or of the lamp's law the steps may swing by a little for ever.
            if (residual < (rounds < PatientRounds ? Tolerance : CornerTolerance))
                break;
            Correct(rounds);
        }
        return new(rounds, residual, residual < 1e-4);
    }

    /// <summary>Starts from the source's voltage on the cores and the rated voltage on the lamps.</summary>
    private void Begin(int cores)
    {
        for (var q = 0; q < cores; q++)
            LogVolts[q] = Math.Log(SourceVolts);
        for (var l = 0; l < circuit.Lamps.Length; l++)
            LogVolts[cores + l] = Math.Log(circuit.Lamps[l].Volts);
    }

    /// <summary>Admittances of cores and lamps at <see cref="LogVolts"/>.</summary>
    public void SetAdmittances()
    {
        var sheet = circuit.Model.Sheet;
        for (var q = 0; q < sheet.Cores.Length; q++)
            (Siemens[q], slopes[q]) = NonlinearParts.Magnetising(
                sheet.Cores[q],
                values.Excitation[q],
                sheet.OmegaRadPerSecond,
                Math.Exp(LogVolts[q])
            );
        for (var l = 0; l < circuit.Lamps.Length; l++)
        {
            var at = sheet.Cores.Length + l;
            (Siemens[at], slopes[at]) = BranchValues.IsBroken(circuit.Lamps[l], values)
                ? (1 / BranchValues.OpenOhms, 0)
                : NonlinearParts.Lamp(circuit.Lamps[l], Math.Exp(LogVolts[at]));
        }
    }

    private void SolveLinear()
    {
        system.Load(frame.Matrix, frame.Size);
        AddParts(system, 1, null);
        system.Factor();
        frame.Drive.AsSpan(0, frame.Size).CopyTo(x);
        AddDrive(x, null);
        for (var k = 0; k < frame.Size; k++)
            x[k] *= SourceVolts;
        system.Solve(x.AsSpan(0, frame.Size));
    }

    private double Residual()
    {
        var worst = 0.0;
        for (var p = 0; p < Parts; p++)
        {
            across[p] = PartVolts(x, p, SourceVolts);
            step[p] = Math.Log(Math.Max(across[p].Magnitude, LeastVolts)) - LogVolts[p];
            worst = Math.Max(worst, Math.Abs(step[p]));
        }
        return worst;
    }

    /// <summary>1 − d(log voltage)/d(operating point), row by row, at the present solution.</summary>
    public void FillJacobian(Span<double> into)
    {
        var cores = circuit.Model.Sheet.Cores.Length;
        for (var k = 0; k < Parts; k++)
        {
            Complex admittance = k < cores ? new Complex(0, -Siemens[k]) : Siemens[k];
            if (slopes[k] != 0)
                Inject(k, cores);
            for (var i = 0; i < Parts; i++)
            {
                var isFlat = slopes[k] == 0 || across[i].Magnitude < LeastVolts;
                var sensitivity = isFlat ? 0 : -(PartVolts(response, i, 0) * across[k] * admittance * slopes[k] / across[i]).Real;
                into[(i * Parts) + k] = (i == k ? 1 : 0) - sensitivity;
            }
        }
    }

    /// <summary>The response to 1 A driven into a core's reference winding or a lamp.</summary>
    private void Inject(int part, int cores)
    {
        var plan = circuit.Elimination;
        Array.Clear(response, 0, frame.Size);
        if (part < cores)
            response[plan.Unknowns + part] = ReferenceTurns(part);
        else
        {
            var lamp = circuit.Lamps[part - cores];
            if (plan.Rows[lamp.A] >= 0)
                response[plan.Rows[lamp.A]] += 1;
            if (plan.Rows[lamp.B] >= 0)
                response[plan.Rows[lamp.B]] -= 1;
        }
        system.Solve(response.AsSpan(0, frame.Size));
    }

    private void Correct(int round)
    {
        FillJacobian(jacobian);
        SmallSolve.InPlace(jacobian, step, Parts);
        var damping = round > 20 ? 0.5 : 1;
        for (var p = 0; p < Parts; p++)
            LogVolts[p] += damping * (slopes[p] == 0 ? step[p] : Math.Clamp(step[p], -2, 2));
    }
}
