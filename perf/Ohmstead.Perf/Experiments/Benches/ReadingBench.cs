using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Experiments.Benches;

/// <summary>A unit of given numbers on a bench: what the meter shows on it.</summary>
/// <param name="Model">The type that the unit really is.</param>
/// <param name="Values">Its numbers, faults included.</param>
internal sealed record ReadingBench(UnitModel Model, Fault[] Faults, UnitValues Values, Meter Meter, Bench Bench)
{
    private readonly ReadingSolver solver = new();

    /// <summary>What the meter shows: infinite for OL, null where the solver did not come to an end.</summary>
    /// <param name="state">How the unit really stands.</param>
    public double? Show(ReadingSpec spec, ReadingState state, Random dice)
    {
        if (solver.Solve(new FaultedCircuits(Model, spec, state).For(Faults), Values).Value is not { } value)
            return null;
        var isOverRange = value > Solution.OverRange(spec.Quantity);
        if (spec.Quantity == Quantity.Ohms)
            value += Bench.LeadOhms;
        var by = ((2 * dice.NextDouble()) - 1) * Meter.For(spec.Quantity).LimitAt(value) * Bench.MeterTimes;
        return isOverRange ? double.PositiveInfinity : value + by;
    }

    /// <summary>A reading as it is noted.</summary>
    /// <param name="noted">How the unit stands by the notes.</param>
    public static TakenReading Noted(ReadingSpec spec, double shown, ReadingState noted) =>
        new(spec, double.IsPositiveInfinity(shown) ? Outcome.OverRange : Outcome.Value, shown, [], "", "", noted);
}
