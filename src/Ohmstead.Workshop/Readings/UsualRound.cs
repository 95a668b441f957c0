using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Readings;

/// <summary>The readings that someone who knows takes of every unit of a kind: a dozen, the case closed.</summary>
public static class UsualRound
{
    /// <summary>One page.</summary>
    public const int Most = 12;

    /// <summary>A fault that one reading shows is worth this share again when a second shows it too.</summary>
    private const double AgainShare = 0.3;

    /// <summary>
    /// Chooses them: the cold gates and whatever the chosen need; then, one after another, the reading that brings to light most
    /// of the sheet's faults per minute, those that are shown already counting less. A fault counts by the root of its chance: a
    /// round that looks for the usual only would miss what is rare and grave. In the order of taking: gates,
    /// cold, low voltage, mains; each after its needs.
    /// </summary>
    /// <param name="model">The type sheet, nominal. Cost: a solution for each closed reading and fault mode, once for a sheet.</param>
    public static ImmutableArray<ReadingSpec> Choose(UnitModel model, Meter meter)
    {
        var sheet = model.Sheet;
        var closed = sheet.Readings.Where(r => !r.IsOpenCase).ToList();
        var modes = new FaultCatalogue(model).Modes;
        var shows = closed.AsParallel().AsOrdered().Select(r => ShownBy(model, r, modes, meter)).ToList();
        var worth = modes.Select(m => Math.Sqrt(m.Percent / 100)).ToArray();
        var chosen = new List<int>();
        void Take(int r)
        {
            if (chosen.Contains(r))
                return;
            foreach (var need in closed[r].Needs.Select(id => closed.FindIndex(c => c.Id == id)).Where(n => n >= 0))
                Take(need);
            chosen.Add(r);
            for (var m = 0; m < worth.Length; m++)
                if (shows[r][m])
                    worth[m] *= AgainShare;
        }
        for (var r = 0; r < closed.Count; r++)
            if (closed[r].IsGate)
                Take(r);
        while (chosen.Count < Math.Min(Most, closed.Count))
        {
            double Rate(int r) =>
                Enumerable.Range(0, worth.Length).Where(m => shows[r][m]).Sum(m => worth[m]) / Math.Max(closed[r].Minutes, 0.5);
            var best = Enumerable.Range(0, closed.Count).Where(r => !chosen.Contains(r)).MaxBy(Rate);
            Take(best);
        }
        return [.. InOrder(chosen.Select(r => closed[r]), sheet)];
    }

    /// <summary>The line to go on to from one: the next that can be taken and is not; else the next that can be taken; -1 for none.</summary>
    /// <param name="from">A place among the lines; -1 before the first.</param>
    public static int Next(IEnumerable<ReadingOffer> lines, int from)
    {
        var open = lines.Select((o, place) => (o, place)).Where(l => l.place > from && l.o.IsOpen).ToList();
        return open.Where(l => l.o.IsToDo).Concat(open).Select(l => l.place).FirstOrDefault(-1);
    }

    /// <summary>By mode: true when the fault, of a middling size, moves the reading out of what sound units show.</summary>
    private static bool[] ShownBy(UnitModel model, ReadingSpec spec, ImmutableArray<FaultMode> modes, Meter meter)
    {
        var expected = Expectation.Of(model, spec, spec.State, meter);
        var leads = meter.For(spec.Quantity).LeadsIn(spec.Quantity);
        var (solver, circuits, values) = (new ReadingSolver(), new FaultedCircuits(model, spec, spec.State), model.Nominal.Copy());
        var limit = Solution.OverRange(spec.Quantity);
        return
        [
            .. modes.Select(m =>
            {
                var fault = new Fault(m, m.MiddleSize);
                values.CopyFrom(model.Nominal);
                fault.ApplyTo(values);
                return solver.Solve(circuits.For([fault]), values, meter.For(spec.Quantity).IsAveraging).Value is { } value
                    && !expected.Holds(value > limit ? double.PositiveInfinity : value + leads);
            }),
        ];
    }

    private static List<ReadingSpec> InOrder(IEnumerable<ReadingSpec> chosen, TypeSheet sheet)
    {
        var left = chosen.OrderBy(Stage).ThenBy(r => sheet.Readings.IndexOf(r)).ToList();
        var order = new List<ReadingSpec>();
        while (left.Count > 0)
        {
            var next = left.FirstOrDefault(r => !r.Needs.Any(n => left.Any(l => l.Id == n))) ?? left[0];
            order.Add(next);
            left.Remove(next);
        }
        return order;
    }

    private static int Stage(ReadingSpec r) =>
        r.IsGate ? 0
        : r.State.Source is null ? 1
        : r.State.Source.Volts <= 30 ? 2
        : 3;
}
