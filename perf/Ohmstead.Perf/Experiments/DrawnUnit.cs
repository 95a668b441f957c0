using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Experiments;

/// <summary>A unit drawn by the sheet's spread and chances, and what a meter shows on it.</summary>
internal sealed record DrawnUnit(ImmutableHashSet<string> Truth, UnitReadings Readings)
{
    /// <summary>The meter of the contract's cases.</summary>
    public static Meter CaseMeter { get; } = new(new Dictionary<Quantity, MeterError>
    {
        [Quantity.Ohms] = new(0.8, 0.05, 0, 0),
        [Quantity.InsulationOhms] = new(5, 20e3, 0, 0),
        [Quantity.AcVolts] = new(0.8, 0.03, 0, 0),
        [Quantity.DcVolts] = new(0.5, 0.02, 0, 0),
        [Quantity.AcAmps] = new(1.5, 0.01, 0, 0),
        [Quantity.Watts] = new(1.5, 0.4, 0, 0),
    }.ToImmutableDictionary());

    private const double ExpectedFaults = 2;

    /// <param name="share">Share of the readings that were taken [0..1].</param>
    /// <param name="atNominal">The line gives exactly the sheet's volts.</param>
    public static DrawnUnit Draw(UnitModel model, int seed, double share = 1, bool atNominal = false)
    {
        var dice = new Random(seed);
        var catalogue = new FaultCatalogue(model);
        var faults = DrawFaults(catalogue, dice);
        var values = model.Nominal.Copy();
        foreach (var p in model.Parameters) values.Scale(p, Math.Exp(p.Sigma * Gauss(dice)));
        foreach (var f in faults) f.ApplyTo(values);
        var ratio = atNominal ? 1 : 0.95 + (0.1 * dice.NextDouble());
        var solver = new ReadingSolver();
        var taken = ImmutableArray.CreateBuilder<TakenReading>();
        foreach (var spec in model.Sheet.Readings)
        {
            var state = spec.State.Source is { IsDirect: false } s ? spec.State with { Source = s with { Volts = Math.Round(s.Volts * ratio, 2) } } : spec.State;
            var value = solver.Solve(new FaultedCircuits(model, spec, state).For(faults), values).Value!.Value;
            var shown = Shown(spec.Quantity, value, dice);
            var isLeftOut = spec.IsOpenCase && dice.NextDouble() < 0.5 && !atNominal;
            if (isLeftOut || dice.NextDouble() > share) continue;
            taken.Add(new TakenReading(spec, double.IsPositiveInfinity(shown) ? Outcome.OverRange : Outcome.Value, shown, [], "", "", state));
        }
        return new DrawnUnit(
            [.. faults.Select(f => f.Mode.Name)],
            new UnitReadings(model.Sheet.Id, Math.Round(model.Sheet.SupplyVolts * ratio, 2), ExpectedFaults, CaseMeter, taken.ToImmutable(), []));
    }

    private static double Shown(Quantity quantity, double value, Random dice)
    {
        var error = CaseMeter.For(quantity);
        var by = ((2 * dice.NextDouble()) - 1) * error.LimitAt(value);
        return value > Solution.OverRange(quantity) ? double.PositiveInfinity : value + by;
    }

    private static Fault[] DrawFaults(FaultCatalogue catalogue, Random dice)
    {
        var chances = catalogue.Chances(catalogue.Odds(ExpectedFaults));
        var faults = new List<Fault>();
        foreach (var modes in catalogue.Modes.GroupBy(m => catalogue.ElementOf[m.Number]))
        {
            var u = dice.NextDouble();
            foreach (var m in modes)
            {
                u -= chances[m.Number];
                if (u >= 0) continue;
                faults.Add(new Fault(m, m is { Kind: "winding", Mode: "open" } ? 0 : m.Size == SizeKind.None ? 0 : m.SizeAt(dice.NextDouble())));
                break;
            }
        }
        return [.. faults];
    }

    private static double Gauss(Random dice) => Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
}
