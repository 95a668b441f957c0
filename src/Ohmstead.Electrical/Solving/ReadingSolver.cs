using System.Numerics;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// Solves readings: what an ideal meter would show on a unit of given numbers. Holds the scratch of one thread; after the
/// first solution of the largest circuit it allocates nothing.
/// </summary>
public sealed class ReadingSolver
{
    private readonly Network network = new();
    private readonly PhasorSolver phasor = new();
    private readonly PeriodicSolver periodic;
    private readonly DirectSolver direct;
    private Ending ending;
    private bool isPeriodic;

    /// <summary>Makes a solver.</summary>
    public ReadingSolver() => (periodic, direct) = (new PeriodicSolver(phasor), new DirectSolver(network));

    /// <summary>Solves one reading. Cost: microseconds; tens of them where a rectifier conducts.</summary>
    /// <param name="circuit">The reading's circuit; its tapped windings must be the way round that <paramref name="values"/> say.</param>
    /// <param name="values">The numbers of the unit.</param>
    /// <param name="isAveraging">Alternating volts as a meter shows them that rectifies, averages and is scaled for a sine.</param>
    /// <returns>The value in the quantity's unit, if the iteration ended, and how it did.</returns>
    public Solution Solve(ReadingCircuit circuit, UnitValues values, bool isAveraging = false) => Solve(circuit, values, isAveraging, null);

    /// <summary>Keeps the last solution, in which a rectifier carried current, as a start for others.</summary>
    internal void Keep(PeriodicStart into) => periodic.Keep(into);

    /// <summary>The same from a solution near by: sooner, and the same to the last tolerance.</summary>
    internal Solution Solve(ReadingCircuit circuit, UnitValues values, bool isAveraging, PeriodicStart? start)
    {
        if (circuit.IsDirect)
            return direct.Solve(circuit, values);
        ending = phasor.Solve(circuit, values, network);
        isPeriodic = periodic.FindConducting(circuit, values);
        if (isPeriodic)
        {
            var waves = periodic.Solve(network, start);
            ending = waves with { Rounds = ending.Rounds + waves.Rounds };
        }
        return Read(circuit, isAveraging);
    }

    /// <summary>Another reading of the alternating circuit that was solved last, in the same state and of the same unit.</summary>
    internal Solution Read(ReadingCircuit circuit, bool isAveraging)
    {
        if (!isPeriodic)
            return Solution.Of(PhasorValue(circuit), ending);
        var value = circuit.Spec.Quantity switch
        {
            Quantity.AcVolts => isAveraging ? periodic.ProbeAveraged(circuit.ProbePlace) : periodic.ProbeRms(circuit.ProbePlace),
            Quantity.DcVolts => periodic.ProbeMean(circuit.ProbePlace),
            Quantity.AcAmps => periodic.SourceAmps,
            _ => periodic.SourceWatts,
        };
        return Solution.Of(value, ending, isPeriodic: true);
    }

    /// <summary>
    /// The voltage between the probes at the samples of a period, and that of an element's junction where it conducts; null where the
    /// iteration did not end.
    /// </summary>
    /// <param name="circuit">Of a reading of direct volts with alternating current.</param>
    /// <param name="element">A rectifier, by number.</param>
    internal (double[] Across, double[]? Junction)? Wave(ReadingCircuit circuit, UnitValues values, int element)
    {
        var solved = Solve(circuit, values);
        if (solved.Value is null)
            return null;
        if (solved.IsPeriodic)
            return (periodic.ProbeWave(circuit.ProbePlace), periodic.JunctionWave(element));
        return (
            Harmonics.Wave([Complex.Zero, HarmonicResponse.ProbeVolts(circuit, circuit.ProbePlace, phasor.Unknowns, phasor.SourceVolts)]),
            null
        );
    }

    private double PhasorValue(ReadingCircuit circuit)
    {
        Complex drive = phasor.SourceVolts;
        return circuit.Spec.Quantity switch
        {
            Quantity.AcVolts => HarmonicResponse.ProbeVolts(circuit, circuit.ProbePlace, phasor.Unknowns, drive).Magnitude,
            Quantity.DcVolts => 0,
            Quantity.AcAmps => phasor.SourceCurrent(phasor.Unknowns, drive, phasor.Frame, null).Magnitude,
            _ => phasor.SourceVolts * phasor.SourceCurrent(phasor.Unknowns, drive, phasor.Frame, null).Real,
        };
    }
}
