using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Carrying;

/// <summary>
/// The currents in the windings, sliders, closed switches and breakers of a reading's circuit, each by a small resistance in
/// series with it: what it carries itself, its share where paths lie side by side. A winding carries in each stretch between
/// taps and contacts what flows there.
/// </summary>
internal sealed class PartCurrents(UnitModel model, ReadingSpec spec)
{
    private readonly ReadingSolver solver = new();

    /// <summary>What carries current in a state of the unit.</summary>
    /// <param name="state">How the unit is fed and loaded; fed with alternating current.</param>
    public IEnumerable<CarryingPart> PartsIn(ReadingState state)
    {
        var circuit = CircuitBuilder.Build(model, spec, state, new bool[model.Sheet.Elements.Length]);
        var sliders = new HashSet<int>();
        foreach (var b in circuit.Branches)
        {
            var part = b.Kind switch
            {
                // The turn that a roller bridges carries what circulates through the roller, whatever the load.
                BranchKind.Segment when b.Y - b.X > 1 => model.Sheet.Elements[b.Index].Id,
                BranchKind.Slider when sliders.Add(b.Index) => model.Sliders[b.Index].Slider.Id,
                BranchKind.Contact when b.X > 0 => model.Sheet.Elements[b.Index].Id,
                BranchKind.Element when model.Sheet.Elements[b.Index].Kind == ElementKind.Breaker => model.Sheet.Elements[b.Index].Id,
                _ => "",
            };
            if (part.Length > 0)
                yield return new CarryingPart(part, b);
        }
    }

    /// <summary>The current in a part, direct part included [A RMS]; null where the circuit cannot be solved.</summary>
    public double? AmpsIn(CarryingPart part, ReadingState state)
    {
        Solution Sensed(Quantity quantity) =>
            solver.Solve(CircuitBuilder.BuildSensing(model, spec with { Quantity = quantity }, state, part.Branch), model.Nominal);
        var alternating = Sensed(Quantity.AcVolts);
        var direct = alternating.IsPeriodic ? Sensed(Quantity.DcVolts).Value : 0;
        return (alternating.Value * alternating.Value) + (direct * direct) is { } squares
            ? Math.Sqrt(squares) / CircuitBuilder.SenseOhms
            : null;
    }

    /// <summary>The volts between two terminals, as the quantity of the reading counts them [V]; null where the circuit cannot be solved.</summary>
    public double? VoltsBetween(string from, string to, Quantity quantity, ReadingState state) =>
        solver
            .Solve(
                CircuitBuilder.Build(
                    model,
                    spec with
                    {
                        From = from,
                        To = to,
                        Quantity = quantity,
                    },
                    state,
                    new bool[model.Sheet.Elements.Length]
                ),
                model.Nominal
            )
            .Value
            is { } volts
            ? Math.Abs(volts)
            : null;
}

/// <summary>A part that carries current in a circuit; a winding is one for each of its stretches.</summary>
internal sealed record CarryingPart(string Id, Branch Branch);
