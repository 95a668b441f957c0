using BenchmarkDotNet.Attributes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>One diagnosis of a full set of readings with four faults, warm, in process.</summary>
public class DiagnoseBenchmark
{
    private UnitModel model = null!;
    private UnitReadings readings = null!;

    /// <summary>Reads the case.</summary>
    [GlobalSetup]
    public void SetUp()
    {
        model = new UnitModel(RepositoryRoot.Sample);
        readings = ReadingsFile
            .Read(File.ReadAllText(Path.Combine(RepositoryRoot.Path, "tests/Reference/sample/cases/008.readings.json")), model.Sheet)
            .Required;
    }

    /// <summary>With the next readings ranked.</summary>
    [Benchmark]
    public double Diagnose() => Diagnoser.Run(model, readings, new DiagnosisOptions()).SoundProbability;
}
