using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Readings;

/// <summary>Where a throttle stands, from what its post shows with nothing on it.</summary>
/// <param name="Position">From 0 to 1; null when no position gives that voltage.</param>
/// <param name="Least">What the post shows at one stop [V].</param>
/// <param name="Most">What it shows at the other [V].</param>
public sealed record ThrottleSetting(double? Position, double Least, double Most)
{
    private const int Steps = 50;

    /// <summary>
    /// Finds the position at which the nominal unit shows these volts on this meter, by bisection. With nothing connected no
    /// contact or joint resistance counts, so the turns alone decide: a worn roller does not spoil the setting.
    /// </summary>
    /// <param name="spec">The reading that the throttle is set for.</param>
    /// <param name="state">Its state as it really is (<see cref="BenchConditions"/>).</param>
    /// <param name="control">The throttle.</param>
    /// <param name="noLoadVolts">What the meter shows at the post with nothing on it [V RMS].</param>
    public static ThrottleSetting ByNoLoadVolts(
        UnitModel model,
        ReadingSpec spec,
        ReadingState state,
        string control,
        double noLoadVolts,
        Meter meter
    )
    {
        var across = NoLoad(spec);
        var isAveraging = meter.IsAveraging;
        var solver = new ReadingSolver();
        // Selectors go to rest: a whistle or a direction position would add to the volts or take them away.
        var throttles = state.Controls.Where(c => model.Sheet.Controls.Any(k => k.Id == c.Key && k.IsThrottle)).ToImmutableDictionary();
        double? VoltsAt(double x)
        {
            var at = state with { Loads = [], Controls = throttles.SetItem(control, new ControlPosition(x, "")) };
            return solver.Solve(new FaultedCircuits(model, across, at).Usual, model.Nominal, isAveraging).Value;
        }
        if (VoltsAt(0) is not { } first || VoltsAt(1) is not { } last)
            return new(null, 0, 0);
        var (least, most) = (Math.Min(first, last), Math.Max(first, last));
        if (!(noLoadVolts >= least && noLoadVolts <= most) || most - least < 1e-6)
            return new(null, least, most);
        var (low, high) = (0.0, 1.0);
        for (var n = 0; n < Steps; n++)
        {
            var middle = (low + high) / 2;
            if (VoltsAt(middle) is not { } volts)
                return new(null, least, most);
            if (volts < noLoadVolts == first < last)
                low = middle;
            else
                high = middle;
        }
        return new((low + high) / 2, least, most);
    }

    /// <summary>Alternating volts at the probes of a reading of volts, else across what it loads.</summary>
    private static ReadingSpec NoLoad(ReadingSpec spec)
    {
        var isVolts = spec.Quantity is Quantity.AcVolts or Quantity.DcVolts && spec.From.Length > 0;
        var (from, to) = isVolts || spec.State.Loads.IsEmpty ? (spec.From, spec.To) : (spec.State.Loads[0].From, spec.State.Loads[0].To);
        return spec with { Quantity = Quantity.AcVolts, From = from, To = to };
    }
}
