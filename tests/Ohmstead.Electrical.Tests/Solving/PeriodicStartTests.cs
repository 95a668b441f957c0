using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>Where a rectifier conducts, a solution found from the sound unit's waves is the one found from rest, and is found sooner.</summary>
public class PeriodicStartTests
{
    private const int Units = 60;

    /// <summary>The last correction of a core's or a lamp's voltage that is not made any more is 10⁻⁶ of it.</summary>
    private const double Within = 1e-6;

    [Theory]
    [InlineData("tests/Reference/sample/twin-160.sheet.json")]
    [InlineData("demo/step-230.sheet.json")]
    public void From_the_sound_units_waves_a_drawn_unit_reads_the_same_and_sooner(string file)
    {
        var model = new UnitModel(Reference.Sheet(file));
        var catalogue = new FaultCatalogue(model);
        var readings = model
            .Sheet.Readings.Select(r => new FaultedCircuits(model, r, r.State))
            .Where(c => IsPeriodic(model, c.Usual))
            .ToArray();
        Assert.NotEmpty(readings);
        var random = new Random(7);
        var (solver, fresh, rounds, coldRounds) = (new ReadingSolver(), new ReadingSolver(), 0, 0);
        for (var n = 0; n < Units; n++)
        {
            var circuits = readings[random.Next(readings.Length)];
            var faults = Drawn(catalogue, random);
            var values = model.Nominal.Copy();
            foreach (var p in model.Parameters)
                values.Scale(p, Math.Exp(p.Sigma * ((4 * random.NextDouble()) - 2)));
            foreach (var f in faults)
                f.ApplyTo(values);
            var start = new PeriodicStart();
            Assert.NotNull(solver.Solve(circuits.Usual, model.Nominal).Value);
            solver.Keep(start);
            var circuit = circuits.For(faults);
            var (warm, cold) = (solver.Solve(circuit, values, false, start), fresh.Solve(circuit, values));
            Assert.Equal(cold.Value!.Value, warm.Value!.Value, Within * Math.Max(Math.Abs(cold.Value.Value), 1e-3));
            (rounds, coldRounds) = (rounds + warm.Rounds, coldRounds + cold.Rounds);
        }
        Assert.InRange(rounds, 1, coldRounds - 1);
    }

    private static bool IsPeriodic(UnitModel model, ReadingCircuit circuit)
    {
        var solved = new ReadingSolver().Solve(circuit, model.Nominal);
        return solved.Value is not null && solved.IsPeriodic;
    }

    /// <summary>None to two faults.</summary>
    private static Fault[] Drawn(FaultCatalogue catalogue, Random random) =>
        [
            .. Enumerable
                .Range(0, random.Next(3))
                .Select(_ => catalogue.Modes[random.Next(catalogue.Modes.Length)])
                .DistinctBy(m => m.Target)
                .Select(m => new Fault(m, m.MiddleSize)),
        ];
}
