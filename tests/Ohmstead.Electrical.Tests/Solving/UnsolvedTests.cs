using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;

namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>
/// An iteration that does not end has evidence and no value, and whoever asked says what that means for him. No sheet of the repository
/// brings the solvers to that; numbers that are none do.
/// </summary>
public class UnsolvedTests
{
    private static readonly BenchUnit Twin = new(Reference.Twin160);

    [Theory]
    [InlineData("right-full")]
    [InlineData("lamp-60")]
    [InlineData("left-first-dc")]
    public void What_does_not_converge_has_no_value(string id)
    {
        var spec = Twin.Model.Sheet.FindReading(id)!;
        var circuit = new FaultedCircuits(Twin.Model, spec, spec.State).Usual;
        var solver = new ReadingSolver();
        var spoilt = Twin.Model.Nominal.Copy();
        foreach (var p in Twin.Model.Parameters)
            spoilt.Scale(p, double.NaN);
        Assert.Null(solver.Solve(circuit, spoilt).Value);
        // The same solver is none the worse for it.
        Assert.Equal(new ReadingSolver().Solve(circuit, Twin.Model.Nominal), solver.Solve(circuit, Twin.Model.Nominal));
    }

    [Fact]
    public void A_value_counts_only_with_an_iteration_that_ended()
    {
        Assert.Equal(new Solution(3, 7, 1e-12), Solution.Of(3, new Ending(7, 1e-12, true)));
        Assert.Equal(new Solution(null, 60, 0.2), Solution.Of(3, new Ending(60, 0.2, false)));
        Assert.Equal(new Solution(null, 2, 0), Solution.Of(double.NaN, new Ending(2, 0, true)));
    }

    [Fact]
    public void A_set_whose_reading_cannot_be_solved_is_judged_by_the_others()
    {
        var readings = Sound(["right-load", "left-load"]);
        var library = new ReadingLibrary(Twin.Model);
        var evidence = new Evidence(library, readings, 1e-3);
        var workers = new Workers(evidence.Set, 1);
        var rows = library.Rows(evidence.Set, workers, () => false);
        var classes = ClassBuilder.Build(evidence, rows, Twin.Catalogue.Odds(null), workers, out _);
        var worn = classes.First(c => c.Modes.Any(m => m.Name == "roller-right:worn"));
        double[] sound = [.. rows.Select(r => r.Sound)];
        // A size that is no number: the reading it moves stays as it was, the other is what it is.
        var without = workers.One(w => w.Predict(new Members([worn], [double.NaN]), sound));
        Assert.Equal(sound, without);
        var with = workers.One(w => w.Predict(new Members([worn], [0.9]), sound));
        Assert.NotEqual(sound[0], with[0]);
    }

    [Fact]
    public void A_parameter_at_which_nothing_is_solved_moves_nothing()
    {
        var set = new ReadingSet(
            Twin.Model,
            Twin.Catalogue,
            [(Twin.Model.Sheet.FindReading("right-load")!, Twin.Model.Sheet.FindReading("right-load")!.State)],
            Meter.Usual
        );
        var (predictor, count) = (new Predictor(set), Twin.Model.Parameters.Length);
        var (slopes, bends, which) = (new double[count], new double[count], new bool[count]);
        var (factors, steps) = (new double[count], new double[count]);
        Array.Fill(which, true);
        Array.Fill(factors, 1);
        Array.Fill(steps, 1);
        predictor.SlopesAbout(0, [], predictor.OfSound(0), factors, steps, which, slopes, bends);
        var moving = Array.FindIndex(slopes, s => Math.Abs(s) > 0.1);
        Assert.True(moving >= 0);
        // The same parameter, stepped to where the reading cannot be solved.
        (slopes, bends, which) = (new double[count], new double[count], new bool[count]);
        (which[moving], steps[moving]) = (true, double.NaN);
        predictor.SlopesAbout(0, [], predictor.OfSound(0), factors, steps, which, slopes, bends);
        Assert.All(slopes.Concat(bends), s => Assert.Equal(0, s));
    }

    private static UnitReadings Sound(string[] ids) =>
        new(
            Twin.Model.Sheet.Id,
            120,
            null,
            Meter.Usual,
            [
                .. ids.Select(id => Twin.Model.Sheet.FindReading(id)!)
                    .Select(r => new TakenReading(r, Outcome.Value, Twin.ReadListed(r.Id), [], "", "", r.State)),
            ],
            []
        );
}
