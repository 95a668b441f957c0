using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.App.Demo;

/// <summary>
/// One unit of a kind as it could stand on the bench: its parameters drawn from the spread of the sheet, faults planted, and a
/// meter with an error of its own. The same seed gives the same unit.
/// </summary>
internal sealed class DrawnUnit
{
    /// <summary>What the sheet spreads over more than this is not drawn further: a rare unit would puzzle whoever tries the tool.</summary>
    private const double MostSigmas = 1.4;

    private readonly UnitModel model;
    private readonly Fault[] faults;
    private readonly UnitValues values;
    private readonly ReadingSolver solver = new();
    private readonly Random chance;
    private readonly double gain;

    /// <param name="planted">Faults as "element:mode" with their sizes.</param>
    public DrawnUnit(TypeSheet sheet, int seed, params (string Fault, double Size)[] planted)
    {
        (model, chance) = (new UnitModel(sheet), new Random(seed));
        var catalogue = new FaultCatalogue(model);
        faults =
        [
            .. planted.Select(p => new Fault(
                catalogue.Find(p.Fault) ?? throw new ArgumentException($"no fault {p.Fault}", nameof(planted)),
                p.Size
            )),
        ];
        values = model.Nominal.Copy();
        foreach (var parameter in model.Parameters)
            values.Scale(parameter, Math.Exp(parameter.Sigma * Normal()));
        foreach (var fault in faults)
            fault.ApplyTo(values);
        gain = 0.3 * Normal();
    }

    /// <summary>The unit's sheet.</summary>
    public TypeSheet Sheet => model.Sheet;

    /// <summary>Takes a reading with the state of the bench.</summary>
    public ReadingEntered Read(string id, BenchState bench)
    {
        var spec = Sheet.FindReading(id) ?? throw new ArgumentException($"no reading {id}", nameof(id));
        var state = BenchConditions.StateOf(model, spec, bench, Shop.Usual);
        var meter = Shop.Usual.Meters[0];
        var error = MeterInHand.ErrorOf(meter, spec.Quantity);
        var circuit = new FaultedCircuits(model, spec, state).For(faults);
        var value =
            solver.Solve(circuit, values, error.IsAveraging).Value
            ?? throw new InvalidOperationException($"{id} of {Sheet.Id} cannot be solved.");
        if (!(Math.Abs(value) < Solution.OverRange(spec.Quantity)))
            return new(id, Shown.OverRange, bench);
        var shown = value + error.LeadsIn(spec.Quantity);
        shown += gain * error.Percent / 100 * Math.Abs(shown);
        return new(id, Shown.Number(Rounded(shown, spec.Quantity)), bench);
    }

    /// <summary>To the digits of a hand meter of 6,000 counts.</summary>
    private static double Rounded(double value, Quantity quantity)
    {
        if (value == 0)
            return 0;
        var finest = quantity switch
        {
            Quantity.AcAmps => 0.001,
            Quantity.Watts => 0.1,
            Quantity.InsulationOhms => 1e6,
            _ => 0.01,
        };
        var step = Math.Max(finest, Math.Pow(10, Math.Floor(Math.Log10(Math.Abs(value) / 6)) - 2));
        return Math.Round(Math.Round(value / step) * step, 6);
    }

    /// <summary>A normal number, cut off (Box and Muller).</summary>
    private double Normal() =>
        Math.Clamp(
            Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble()),
            -MostSigmas,
            MostSigmas
        );
}
