using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>A dead unit with its controls set, and what an ohmmeter shows between two gangs of its terminals.</summary>
internal sealed class OhmmeterBench
{
    /// <summary>Solder or a whisker between two nets [Ω] (common practice, no source).</summary>
    private const double BridgeOhms = 0.1;

    /// <summary>A sound unit lies within this share of its nominal resistance (common practice, no source).</summary>
    private const double Margin = 0.2;

    private readonly UnitModel model;
    private readonly ImmutableDictionary<string, ControlPosition> controls;
    private readonly MeterError meter;
    private readonly ReadingSolver solver = new();

    public OhmmeterBench(TypeSheet sheet, ImmutableDictionary<string, ControlPosition> controls, Meter meter)
    {
        (model, this.controls, this.meter) = (new UnitModel(sheet), controls, meter.For(Quantity.Ohms));
        Nets = FindNets();
    }

    /// <summary>The terminals by net, all in the sheet's order: what wires, joints and closed contacts join.</summary>
    public ImmutableArray<ImmutableArray<string>> Nets { get; }

    /// <summary>How many circuits were solved so far.</summary>
    public long Solutions { get; private set; }

    /// <summary>
    /// Resistance between two gangs of terminals, some elements taken out [Ω]; infinity for OL. Where it cannot be solved 0, across which
    /// no bridge shows: no check is built on it.
    /// </summary>
    public double Ohms(IReadOnlyList<string> first, IReadOnlyList<string> second, params ImmutableArray<string> lifted)
    {
        Solutions++;
        var joined = new[] { first, second }.Where(g => g.Count > 1).Select(g => g.ToImmutableArray());
        var state = new ReadingState(null, controls, [], lifted, [.. joined], 20);
        var spec = new ReadingSpec("", "", Quantity.Ohms, first[0], second[0], state, 0, ReadingSpec.Closed, [], null, false, "");
        var circuit = CircuitBuilder.Build(model, spec, state, new bool[model.Sheet.Elements.Length]);
        var ohms = solver.Solve(circuit, model.Nominal).Value ?? 0;
        return ohms > Solution.OverRange(Quantity.Ohms) ? double.PositiveInfinity : ohms;
    }

    /// <summary>True when a bridge across so much shows on this meter, on every unit within the spread.</summary>
    public bool ShowsBridge(double ohms) => Lowest(ohms) > Highest(BridgeOhms, 0);

    /// <summary>True when a terminal that has come off its net shows.</summary>
    public bool ShowsLoose(string hub, string terminal)
    {
        var wires = model.Sheet.Elements.Where(e => IsMetal(e) && (e.From == terminal || e.To == terminal));
        return Highest(Ohms([hub], [terminal]), Margin) < Lowest(Ohms([hub], [terminal], [.. wires.Select(w => w.Id)]));
    }

    private double Lowest(double ohms) => double.IsPositiveInfinity(ohms) ? ohms : (ohms * (1 - Margin)) - meter.LimitAt(ohms);

    private double Highest(double ohms, double margin) => (ohms * (1 + margin)) + meter.LimitAt(ohms);

    private bool IsMetal(Element e) =>
        e.Kind is ElementKind.Wire or ElementKind.Joint
        || (e is Switch s && s.ClosedIn.Contains(PositionOf(s.Control), StringComparer.Ordinal));

    private string PositionOf(string control) =>
        controls.TryGetValue(control, out var at) ? at.Selector : model.Sheet.Controls.First(c => c.Id == control).Rest;

    private ImmutableArray<ImmutableArray<string>> FindNets()
    {
        var map = new NodeMap();
        foreach (var e in model.Sheet.Elements.Where(IsMetal))
            map.Join([e.From, e.To]);
        return
        [
            .. model
                .Sheet.Elements.SelectMany(e => e.OtherTerminals.Prepend(e.To).Prepend(e.From))
                .Distinct(StringComparer.Ordinal)
                .GroupBy(map.Of)
                .Select(g => g.ToImmutableArray()),
        ];
    }
}
