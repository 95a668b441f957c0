using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>Readings of one unit under given conditions with a given meter, laid out for solving many times. Shared by threads.</summary>
public sealed class ReadingSet
{
    /// <summary>Lays out the readings.</summary>
    public ReadingSet(UnitModel model, FaultCatalogue catalogue, IEnumerable<(ReadingSpec Spec, ReadingState State)> readings, Meter meter)
    {
        (Model, Catalogue) = (model, catalogue);
        Circuits = [.. readings.Select(r => new FaultedCircuits(model, r.Spec, r.State))];
        Errors = [.. Circuits.Select(c => meter.For(c.Usual.Reading.Quantity))];
        Cap = [.. Circuits.Select((c, n) => Errors[n].ToScale(Solving.Solution.NoPathOhms))];
    }

    /// <summary>The unit.</summary>
    public UnitModel Model { get; }

    /// <summary>Its fault modes.</summary>
    public FaultCatalogue Catalogue { get; }

    /// <summary>The circuits, in order.</summary>
    public ImmutableArray<FaultedCircuits> Circuits { get; }

    /// <summary>The meter's error for each reading.</summary>
    public ImmutableArray<MeterError> Errors { get; }

    /// <summary>Number of readings.</summary>
    public int Count => Circuits.Length;

    /// <summary>The reading's definition.</summary>
    public ReadingSpec SpecOf(int reading) => Circuits[reading].Usual.Reading;

    /// <summary>The largest place on a reading's scale.</summary>
    internal ImmutableArray<double> Cap { get; }

    /// <summary>What the meter would show, on its scale, for a solved value: with the leads still in it.</summary>
    internal double ToScale(int reading, double value)
    {
        var lead = SpecOf(reading).Quantity == Quantity.Ohms ? Errors[reading].LeadOhms : 0;
        return Errors[reading].ToScale(value + lead);
    }

    /// <summary>The place on a reading's scale above which the meter shows OL.</summary>
    internal double OverRangeOnScale(int reading) => ToScale(reading, Math.Min(Solving.Solution.OverRange(SpecOf(reading).Quantity), Solving.Solution.NoPathOhms));
}
