using BenchmarkDotNet.Attributes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>All readings of the sample sheet for one set of faults, and the three kinds of reading apart.</summary>
public class SolveBenchmark
{
    private readonly ReadingSolver solver = new();
    private ReadingCircuit[] all = [];
    private ReadingCircuit[] direct = [];
    private ReadingCircuit[] phasor = [];
    private ReadingCircuit[] periodic = [];
    private UnitValues values = null!;

    /// <summary>Lays out the circuits and solves each once.</summary>
    [GlobalSetup]
    public void SetUp()
    {
        var model = new UnitModel(RepositoryRoot.Sample);
        var catalogue = new FaultCatalogue(model);
        Fault[] faults = [new(catalogue.Find("roller-left:worn")!, 1.2), new(catalogue.Find("disc-right:high-drop")!, 3)];
        values = model.Nominal.Copy();
        foreach (var f in faults)
            f.ApplyTo(values);
        all = [.. model.Sheet.Readings.Select(r => new FaultedCircuits(model, r, r.State).For(faults))];
        var kinds = all.ToLookup(c => ReadingKinds.Of(c, values, solver));
        (direct, phasor, periodic) = ([.. kinds[ReadingKind.Direct]], [.. kinds[ReadingKind.Phasor]], [.. kinds[ReadingKind.Periodic]]);
    }

    /// <summary>How many readings there are of each kind, as the table says them.</summary>
    internal string Counts() =>
        FormattableString.Invariant(
            $"{all.Length} readings: {direct.Length} direct-current, {phasor.Length} phasor, {periodic.Length} periodic"
        );

    /// <summary>All 42 readings.</summary>
    [Benchmark]
    public double AllReadings() => Solve(all);

    /// <summary>Readings with direct current.</summary>
    [Benchmark]
    public double DirectCurrent() => Solve(direct);

    /// <summary>Readings with alternating current and no rectifier conducting.</summary>
    [Benchmark]
    public double Phasor() => Solve(phasor);

    /// <summary>Readings with a rectifier conducting.</summary>
    [Benchmark]
    public double Periodic() => Solve(periodic);

    private double Solve(ReadingCircuit[] circuits)
    {
        var sum = 0.0;
        foreach (var c in circuits)
            sum += solver.Solve(c, values).Value.GetValueOrDefault();
        return sum;
    }
}
