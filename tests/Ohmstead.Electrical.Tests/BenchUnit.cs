using System.Text.Json;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests;

/// <summary>A unit on the bench of a test: readings of a sheet, with faults, as an ideal meter shows them.</summary>
internal sealed class BenchUnit
{
    private readonly ReadingSolver solver = new();
    private readonly HashSet<string> terminals;

    public BenchUnit(TypeSheet sheet)
    {
        Model = new UnitModel(sheet);
        Catalogue = new FaultCatalogue(Model);
        terminals = sheet.Elements.SelectMany(e => e.OtherTerminals.Append(e.From).Append(e.To)).ToHashSet(StringComparer.Ordinal);
    }

    public UnitModel Model { get; }

    public FaultCatalogue Catalogue { get; }

    /// <summary>Alternating volts are read with a meter that averages.</summary>
    public bool HasAveragingMeter { get; init; }

    /// <summary>How the last reading's iteration ended.</summary>
    public Solution Last { get; private set; }

    /// <summary>True when a rectifier conducted in the last reading.</summary>
    public bool WasPeriodic { get; private set; }

    /// <summary>A reading described on the spot: "ac-volts", ["a", "b"], new { source = … }.</summary>
    /// <returns>The value in the quantity's unit; positive infinity for OL.</returns>
    public double Read(string quantity, string[] between, object? state = null, params string[] faults) =>
        Read(Spec(quantity, between, state), Model.Nominal, Faults(faults));

    /// <summary>A reading at the source: amps or watts.</summary>
    public double ReadSource(string quantity, object state, params string[] faults) => Read(quantity, [], state, faults);

    /// <summary>A reading of the sheet.</summary>
    public double ReadListed(string id, params string[] faults) =>
        Read(Model.Sheet.FindReading(id) ?? throw new ArgumentException($"no reading {id}", nameof(id)), Model.Nominal, Faults(faults));

    public double Read(ReadingSpec spec, UnitValues values, params Fault[] faults)
    {
        var circuit = new FaultedCircuits(Model, spec, spec.State).For(faults);
        var own = values.Copy();
        foreach (var f in faults)
            f.ApplyTo(own);
        Last = solver.Solve(circuit, own, HasAveragingMeter);
        WasPeriodic = Last.IsPeriodic;
        Assert.True(Last.Value is not null, $"{spec.Id} did not converge: {Last}");
        var value = Last.Value.GetValueOrDefault();
        Assert.False(double.IsNaN(value), $"{spec.Id} is NaN");
        return value > Solution.OverRange(spec.Quantity) ? double.PositiveInfinity : value;
    }

    public Fault[] Faults(params string[] faults) => [.. faults.Select(FaultOf)];

    public ReadingSpec Spec(string quantity, string[] between, object? state = null)
    {
        var problems = new List<Problem>();
        var json = JsonSerializer.SerializeToElement(
            new
            {
                id = "on-the-spot",
                quantity,
                between,
                state = state ?? new { },
            }
        );
        var spec = ReadingReader.Read(new JsonCursor(json, "$", problems), double.NaN);
        Assert.Empty(problems);
        Assert.All(between, t => Assert.Contains(t, terminals));
        foreach (var l in spec!.State.Loads)
            Assert.True(terminals.Contains(l.From) && terminals.Contains(l.To));
        if (spec.State.Source is { } s)
            Assert.True(terminals.Contains(s.From) && terminals.Contains(s.To));
        return spec;
    }

    private Fault FaultOf(string text)
    {
        Assert.True(Fault.TryParse(text, Catalogue, out var fault, out _, out var reason), reason);
        return fault;
    }
}
