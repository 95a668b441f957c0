using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>Readings of one unit under given conditions, each with its meter, laid out for solving many times. Shared by threads.</summary>
internal sealed class ReadingSet
{
    private readonly ImmutableArray<bool> isJudged;
    private readonly ImmutableArray<int> groups;

    /// <summary>Lays out readings that are all taken with one meter.</summary>
    public ReadingSet(UnitModel model, FaultCatalogue catalogue, IEnumerable<(ReadingSpec Spec, ReadingState State)> readings, Meter meter)
        : this(model, catalogue, readings.Select(r => (r.Spec, r.State, meter.For(r.Spec.Quantity)))) { }

    /// <summary>Lays out readings, each with the error of its own meter.</summary>
    public ReadingSet(
        UnitModel model,
        FaultCatalogue catalogue,
        IEnumerable<(ReadingSpec Spec, ReadingState State, MeterError Error)> readings
    )
    {
        (Model, Catalogue) = (model, catalogue);
        var all = readings.ToList();
        groups = Grouped([.. all.Select(r => (r.Spec, r.State))]);
        Circuits = Laid([.. all.Select(r => (r.Spec, r.State))]);
        InGroups = [.. Enumerable.Range(0, all.Count).OrderBy(r => groups[r])];
        Errors = [.. all.Select(r => r.Error)];
        isJudged = [.. Circuits.Select(c => Judging.CanJudge(model, c))];
    }

    /// <summary>The unit.</summary>
    public UnitModel Model { get; }

    /// <summary>Its fault modes.</summary>
    public FaultCatalogue Catalogue { get; }

    /// <summary>The circuits, in order.</summary>
    public ImmutableArray<FaultedCircuits> Circuits { get; }

    /// <summary>The meter's error for each reading.</summary>
    public ImmutableArray<MeterError> Errors { get; }

    /// <summary>All readings, those of one circuit one after another: so each circuit is solved once (<see cref="Predictor"/>).</summary>
    public ImmutableArray<int> InGroups { get; }

    /// <summary>The first of the readings that are read off one circuit with this one.</summary>
    internal int GroupOf(int reading) => groups[reading];

    /// <summary>False for a reading that is predicted and never judged (<see cref="Judging"/>).</summary>
    public bool CanJudge(int reading) => isJudged[reading];

    /// <summary>Number of readings.</summary>
    public int Count => Circuits.Length;

    /// <summary>The reading's definition.</summary>
    public ReadingSpec SpecOf(int reading) => Circuits[reading].Usual.Reading;

    /// <summary>What the meter would show, on its scale, for a solved value: with the leads still in it.</summary>
    internal double ToScale(int reading, double value)
    {
        var error = Errors[reading];
        return error.ToScale(value + error.LeadsIn(SpecOf(reading).Quantity));
    }

    /// <summary>The place on a reading's scale above which the meter shows OL.</summary>
    internal double OverRangeOnScale(int reading) =>
        ToScale(reading, Math.Min(Solving.Solution.OverRange(SpecOf(reading).Quantity), Solving.Solution.NoPathOhms));

    /// <summary>
    /// Covariance of the meter's errors of two readings on the scale: rectangular with limit 1, hence variance 1/3; a share of
    /// the limit is common to all readings of a quantity with the same meter, which is known by its figures.
    /// </summary>
    internal double ErrorCovariance(int a, int b)
    {
        var shared = Errors[a].Shared;
        if (a == b)
            return ((shared * shared) + ((1 - shared) * (1 - shared))) / 3;
        return SpecOf(a).Quantity == SpecOf(b).Quantity && Errors[a] == Errors[b] ? shared * shared / 3 : 0;
    }

    /// <summary>By reading: the first that is taken with alternating current in the same state; direct current runs from probe to probe.</summary>
    private static ImmutableArray<int> Grouped(ImmutableArray<(ReadingSpec Spec, ReadingState State)> all)
    {
        var first = new int[all.Length];
        for (var r = 0; r < all.Length; r++)
        {
            first[r] = r;
            for (var other = 0; other < r && first[r] == r && IsAlternating(all[r]); other++)
                if (first[other] == other && IsAlternating(all[other]) && all[other].State.IsSameAs(all[r].State))
                    first[r] = other;
        }
        return [.. first];
    }

    private static bool IsAlternating((ReadingSpec Spec, ReadingState State) reading) =>
        reading.Spec.Quantity is not (Quantity.Ohms or Quantity.InsulationOhms) && reading.State.Source is { IsDirect: false };

    private ImmutableArray<FaultedCircuits> Laid(ImmutableArray<(ReadingSpec Spec, ReadingState State)> all)
    {
        var circuits = new FaultedCircuits[all.Length];
        foreach (var group in Enumerable.Range(0, all.Length).GroupBy(r => groups[r]))
        foreach (
            var (circuit, reading) in FaultedCircuits.Together(Model, [.. group.Select(r => all[r].Spec)], all[group.Key].State).Zip(group)
        )
            circuits[reading] = circuit;
        return [.. circuits];
    }
}
