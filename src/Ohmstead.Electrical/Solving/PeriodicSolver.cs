using System.Numerics;
using Ohmstead.Electrical.Circuits;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// The periodic steady state where junctions conduct. The linear rest is seen from the junctions as impedances at the
/// harmonics (0 to <see cref="Harmonics.Highest"/>); waves run between it and the junctions until they repeat
/// (<see cref="WaveExchange"/>). Cores and lamps follow at the RMS of all harmonics.
/// </summary>
internal sealed class PeriodicSolver
{
    private const int MostRounds = 300;
    private const int MostOuter = 30;
    private const double WaveTolerance = 1e-8;

    /// <summary>For the waves of the first operating point, the linear solution's, which is not theirs yet.</summary>
    private const double FirstWaveTolerance = 1e-4;

    private const double PartTolerance = 1e-6;

    /// <summary>A smaller correction of the operating point than this is felt at the supply frequency and the mean only.</summary>
    private const double SmallCorrection = 0.01;

    private readonly PhasorSolver phasor;
    private readonly ConductingJunctions conducting = new();
    private readonly HarmonicResponse response;
    private readonly OperatingPoint point;
    private readonly WaveExchange waves = new();
    private Complex[] probes = new Complex[Harmonics.Highest];
    private double[] squares = [];
    private ReadingCircuit circuit = null!;
    private UnitValues values = null!;

    public PeriodicSolver(PhasorSolver phasor) =>
        (this.phasor, response, point) = (phasor, new HarmonicResponse(phasor, conducting), new OperatingPoint(phasor));

    /// <summary>Mean of the voltage between a pair of probes [V].</summary>
    public double ProbeMean(int place) => Probe(place)[0].Real;

    /// <summary>RMS of that voltage without its mean [V].</summary>
    public double ProbeRms(int place) => Math.Sqrt(squares[response.FirstProbe + place]);

    /// <summary>Its alternating part as an averaging meter scaled for a sine shows it [V].</summary>
    public double ProbeAveraged(int place) => Harmonics.SineScaledAverage(Probe(place));

    /// <summary>It at the samples of a period [V].</summary>
    public double[] ProbeWave(int place) => Harmonics.Wave(Probe(place));

    /// <summary>The voltage of an element's junction at the samples of a period [V]; null where it does not conduct.</summary>
    public double[]? JunctionWave(int element) => conducting.PortOf(element) is >= 0 and var port ? waves.Volts(port).ToArray() : null;

    /// <summary>RMS current of the source, direct part included [A].</summary>
    public double SourceAmps => Math.Sqrt(squares[response.Source]);

    /// <summary>Mean power of the source [W].</summary>
    public double SourceWatts { get; private set; }

    /// <summary>Finds the junctions that conduct by the phasor solution; false where there are none.</summary>
    public bool FindConducting(ReadingCircuit forCircuit, UnitValues withValues)
    {
        (circuit, values) = (forCircuit, withValues);
        conducting.Find(circuit, values, phasor);
        return conducting.Count > 0;
    }

    /// <summary>
    /// Solves with the conducting junctions; one that the others' currents wake joins them, and it is solved again.
    /// </summary>
    /// <param name="start">Another's solution to start from, where the same junctions conduct; where it leads nowhere, waves at rest.</param>
    public Ending Solve(Network network, PeriodicStart? start)
    {
        point.Begin();
        response.Begin(circuit, network);
        var rounds = 0;
        while (true)
        {
            var near = start?.Fits(circuit, values, conducting.Numbers) == true ? start : null;
            var ending = SolveFrom(near);
            rounds += ending.Rounds;
            if (near is not null && !ending.HasConverged)
            {
                point.Return();
                ending = SolveFrom(null);
                rounds += ending.Rounds;
            }
            if (!conducting.Wake(squares.AsSpan(response.FirstJunction)))
                return ending with { Rounds = rounds };
        }
    }

    /// <summary>Keeps the last solution as a start for others.</summary>
    public void Keep(PeriodicStart into)
    {
        into.Begin(circuit, values, conducting.Numbers, phasor.Parts);
        waves.Keep(into);
        point.Keep(into);
    }

    private Ending SolveFrom(PeriodicStart? near)
    {
        response.Reserve();
        if (squares.Length < response.Outputs)
            squares = new double[response.Outputs];
        if (probes.Length < response.Probes * Harmonics.Highest)
            probes = new Complex[response.Probes * Harmonics.Highest];
        waves.Begin(circuit, values, conducting.Numbers, near);
        point.Start(near);
        var rounds = 0;
        var (waveResidual, residual, isSmall) = (0.0, 0.0, false);
        for (var outer = 0; outer < MostOuter; outer++)
        {
            for (var h = 0; h < (isSmall ? 2 : response.Grid.Solved.Length); h++)
                response.Solve(h);
            var tolerance = outer == 0 ? FirstWaveTolerance : WaveTolerance;
            rounds += waves.Run(response.Impedances, response.Open, MostRounds, tolerance, out waveResidual);
            Collect();
            residual = point.Compare(squares);
            if (residual < PartTolerance && outer > 0)
                break;
            isSmall = residual < SmallCorrection;
            // The first residual holds what the first waves lack: only a step far larger than that teaches anything.
            if (outer > 0)
                point.Learn(outer > 1 ? 0 : 100 * FirstWaveTolerance);
            point.Correct();
        }
        var worst = Math.Max(residual, waveResidual);
        return new(rounds, worst, worst < 1e-4);
    }

    /// <summary>Sums the outputs over the harmonics.</summary>
    private void Collect()
    {
        var outputs = response.Outputs;
        Array.Clear(squares, 0, outputs);
        for (var k = 0; k < Harmonics.Highest; k++)
        for (var o = 0; o < outputs; o++)
        {
            var value = response.Output(o, k, waves);
            var isProbe = o >= response.FirstProbe && o < response.Source;
            if (isProbe)
                Probe(o - response.FirstProbe)[k] = value;
            if (o == response.Source && k == 1)
                SourceWatts = phasor.SourceVolts * value.Real;
            if (k > 0 || !isProbe)
                squares[o] += (value.Real * value.Real) + (value.Imaginary * value.Imaginary);
        }
    }

    /// <summary>By harmonic, the voltage between a pair of probes [V RMS].</summary>
    private Span<Complex> Probe(int place) => probes.AsSpan(place * Harmonics.Highest, Harmonics.Highest);
}
