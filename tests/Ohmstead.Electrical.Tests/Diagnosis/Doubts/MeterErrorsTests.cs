using Ohmstead.Electrical.Diagnosis.Doubts;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>
/// By how much a meter errs, and on what: resistors that hardly differ, read off by known parts of the meter's limit. Of errors that are all k
/// limits large, the likeliest variance is k², three times that of a limit's own: a factor of √3·k.
/// </summary>
public class MeterErrorsTests
{
    private static readonly BenchUnit Unit = Resistors();

    [Theory]
    [InlineData(1.5)]
    [InlineData(2)]
    [InlineData(2.5)]
    [InlineData(3)]
    [InlineData(3.5)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(8)]
    public void The_factor_is_that_under_which_the_readings_are_likeliest(double factor)
    {
        var off = factor / Math.Sqrt(3);
        var (evidence, set) = Read([off, -off, off, -off], [off, -off]);
        Assert.Equal(factor, MeterErrors.Factor(evidence, set, set.Spread, new Worker(evidence.Set)));
    }

    /// <summary>The ohms are off by four limits, the volts are right: as good as stated the ohms would be less likely by far.</summary>
    [Fact]
    public void The_quantity_is_named_that_is_off_with_its_worst_reading_first()
    {
        Assert.Equal(["one", "two", "zero", "three"], Named([4, -5, 4.5, -3.5], [0.1, -0.2]));
        Assert.Equal(["high", "low"], Named([0.1, 0.3, -0.2, 0], [6, -5]));
        // Both are off, the volts by more.
        Assert.Equal(["high", "low", "two", "zero", "one", "three"], Named([2, -1.9, 2.1, -1.8], [6, -5.8]));
    }

    private static IEnumerable<string> Named(double[] ohms, double[] volts)
    {
        var (evidence, set) = Read(ohms, volts);
        return MeterErrors.Readings(evidence, set, set.Spread, new Worker(evidence.Set)).Select(r => evidence.Taken[r].Spec.Id);
    }

    /// <summary>The sound unit, judged on the bench of a poor meter.</summary>
    private static (Evidence Evidence, Hypothesis Set) Read(double[] ohms, double[] volts)
    {
        double[] off = [.. ohms, .. volts];
        var taken = Unit.Model.Sheet.Readings.Select(
            (r, n) =>
            {
                var error = Meter.Usual.For(r.Quantity);
                return WireBench.Value(Unit, r.Id, error.FromScale(error.ToScale(Unit.ReadListed(r.Id)) + off[n]));
            }
        );
        var pieces = new Pieces(Unit, [.. taken], wrongChance: 1e-12);
        var poor = pieces.Evidence.On(pieces.Evidence.Bench with { ErrorVariance = 9 });
        var spread = poor.SpreadOf([.. pieces.Rows.SelectMany(r => r.Slopes)], [.. pieces.Rows.Select(r => r.Shift)]);
        return (
            poor,
            new FittedHypothesis(Members.None, spread, null)
            {
                Predicted = pieces.Sound,
                LeftOut = [],
                LogEvidence = 0,
                Deviations = [],
                Directions = [],
            }
        );
    }

    private static BenchUnit Resistors()
    {
        var draft = new SheetDraft();
        foreach (var (id, ohms) in new[] { ("zero", 10.0), ("one", 15.0), ("two", 20.0), ("three", 25.0) })
            draft = draft
                .Element("resistor", "r-" + id, "a-" + id, "g", new { ohms, spread = new { ohms = 1e-6 } })
                .Reading(id, "ohms", ["a-" + id, "g"]);
        object source = new
        {
            source = new
            {
                from = "a-zero",
                to = "a-one",
                volts = 12,
            },
        };
        return draft.Reading("high", "ac-volts", ["a-one", "g"], source).Reading("low", "ac-volts", ["a-zero", "g"], source).Unit();
    }
}
