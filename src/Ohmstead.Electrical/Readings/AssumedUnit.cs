using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Readings;

/// <summary>
/// A unit as it is assumed to be: nominal, some parameters by factors, with some faults. What it shows hangs on nothing but that, whatever
/// its predictor is asked meanwhile; disposed of, its numbers are used again.
/// </summary>
internal sealed class AssumedUnit(Predictor predictor, UnitValues ofUnit, Fault[] faults) : IDisposable
{
    private UnitValues? values = ofUnit;

    /// <summary>A reading in its quantity's unit; null where it could not be solved.</summary>
    public double? Value(int reading) => predictor.Solve(reading, values ?? throw new ObjectDisposedException(nameof(AssumedUnit)), faults);

    /// <summary>A reading on the meter's scale; null where it could not be solved.</summary>
    public double? Scaled(int reading) => Value(reading) is { } value ? predictor.Set.ToScale(reading, value) : null;

    /// <summary>All readings on the meter's scale, each circuit solved once.</summary>
    public double?[] ScaledAll()
    {
        var all = new double?[predictor.Set.Count];
        foreach (var r in predictor.Set.InGroups)
            all[r] = Scaled(r);
        return all;
    }

    public void Dispose()
    {
        if (values is { } used)
            predictor.TakeBack(used);
        values = null;
    }
}
