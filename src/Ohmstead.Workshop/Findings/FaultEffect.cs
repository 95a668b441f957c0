using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Findings;

/// <summary>What one fault does to one reading of the nominal unit.</summary>
internal static class FaultEffect
{
    /// <summary>What is solved at the probes with the fault, or of the sound unit for null; positive infinity for OL, null where it cannot be solved. Leads are not in it.</summary>
    public static double? ValueWith(UnitModel model, ReadingSpec spec, ReadingState state, Fault? fault, Meter meter)
    {
        var values = model.Nominal.Copy();
        fault?.ApplyTo(values);
        var circuits = new FaultedCircuits(model, spec, state);
        var circuit = fault is { } f ? circuits.For([f]) : circuits.Usual;
        var value = new ReadingSolver().Solve(circuit, values, meter.For(spec.Quantity).IsAveraging).Value;
        return value > Solution.OverRange(spec.Quantity) ? double.PositiveInfinity : value;
    }

    /// <summary>The place of a value on the scale of its meter, on which the limit of error is 1 everywhere; OL stands at its end.</summary>
    public static double OnScale(double value, Quantity quantity, Meter meter) =>
        meter.For(quantity).ToScale(Math.Min(value, Solution.OverRange(quantity)));

    /// <summary>How far the fault moves the reading, in limits of the meter's error; 0 where that cannot be solved.</summary>
    public static double Limits(UnitModel model, ReadingSpec spec, Fault fault, Meter meter)
    {
        double? At(Fault? f) => ValueWith(model, spec, spec.State, f, meter) is { } v ? OnScale(v, spec.Quantity, meter) : null;
        return At(fault) - At(null) is { } moved ? Math.Abs(moved) : 0;
    }
}
