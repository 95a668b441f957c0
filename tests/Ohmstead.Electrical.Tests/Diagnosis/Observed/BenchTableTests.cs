using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Observed;

/// <summary>What another bench does to the readings, against readings of the sample sheet on that bench.</summary>
public class BenchTableTests
{
    private static readonly BenchUnit Twin = new(Reference.Twin160);
    private static readonly Evidence Evidence = EvidenceOf();

    /// <summary>A line noted 3 % off: what the same unit shows there, to the share that its cores and rectifiers bend.</summary>
    [Theory]
    [InlineData("volts-17")]
    [InlineData("left-full")]
    [InlineData("watts-idle")]
    public void A_line_that_was_noted_wrongly_moves_readings_as_that_line_does(string id)
    {
        var spec = Twin.Model.Sheet.FindReading(id)!;
        var (here, there) = (Read(spec, 1), Read(spec, 1 + BenchTable.LineDeviation));
        var error = Meter.Usual.For(spec.Quantity);
        Assert.Equal(
            error.ToScale(there) - error.ToScale(here),
            Bench(DoubtAbout.Line).Shared[0][Place(id)],
            0.12 * Math.Abs(error.ToScale(there) - error.ToScale(here))
        );
    }

    [Fact]
    public void Leads_that_were_left_in_move_ohms_and_nothing_else()
    {
        var leads = Bench(DoubtAbout.Leads).Shared[0];
        var (value, error) = (Evidence.Value(Place("ohms-left")), Meter.Usual.For(Quantity.Ohms));
        Assert.Equal(
            error.ToScale(value + BenchTable.LeadDeviation) - error.ToScale(value),
            leads[Place("ohms-left")],
            0.15 * leads[Place("ohms-left")]
        );
        Assert.Equal(0, leads[Place("volts-17")]);
    }

    /// <summary>Other wire and other turns are the secondaries': what is fixed by convention, the primary, has none of it.</summary>
    [Fact]
    public void What_a_batch_has_in_common_is_the_secondaries()
    {
        var unit = Bench(DoubtAbout.Unit);
        var (ohms, turns) = (unit.Commons[0], unit.Commons[1]);
        foreach (var (parameter, n) in Twin.Model.Parameters.Select((p, n) => (p, n)))
        {
            var isWinding = Twin.Model.Sheet.Elements[parameter.Index] is Winding;
            var isSecondary = isWinding && !Twin.Model.ReferenceWindings.Contains(parameter.Index);
            Assert.Equal(parameter.Kind == ParameterKind.Ohms && isSecondary ? 0.2 / parameter.Sigma : 0, ohms[n], 1e-12);
            Assert.Equal(parameter.Kind == ParameterKind.Turns && isSecondary ? 0.012 / parameter.Sigma : 0, turns[n], 1e-12);
        }
    }

    [Fact]
    public void A_damp_unit_has_all_its_insulation_in_common_and_nothing_else()
    {
        var damp = new BenchTable(Evidence).Others().Last(b => b.About == DoubtAbout.Unit);
        var common = Assert.Single(damp.Commons);
        foreach (var (parameter, n) in Twin.Model.Parameters.Select((p, n) => (p, n)))
        {
            var isPaper = Twin.Model.Sheet.Elements[parameter.Index].Kind == ElementKind.Insulation;
            Assert.Equal(isPaper ? BenchTable.DampDeviation / parameter.Sigma : 0, common[n], 1e-12);
        }
        Assert.All(damp.Variances, v => Assert.Equal(1, v));
    }

    /// <summary>One of them is true.</summary>
    [Fact]
    public void The_chances_of_all_benches_come_to_one() =>
        Assert.Equal(1, new BenchTable(Evidence).Others().Append(new BenchTable(Evidence).Matching).Sum(b => b.Chance), 1e-12);

    private static AssumedBench Bench(DoubtAbout about) => new BenchTable(Evidence).Others().First(b => b.About == about);

    private static int Place(string id) => Array.FindIndex(Evidence.Taken, t => t.Spec.Id == id);

    private static double Read(ReadingSpec spec, double line)
    {
        var source = spec.State.Source!;
        return Twin.Read(
            spec with
            {
                State = spec.State with { Source = source with { Volts = line * source.Volts } },
            },
            Twin.Model.Nominal
        );
    }

    private static Evidence EvidenceOf()
    {
        var taken = new[] { "volts-17", "left-full", "watts-idle", "ohms-left" }.Select(id =>
        {
            var spec = Twin.Model.Sheet.FindReading(id)!;
            return new TakenReading(spec, Outcome.Value, Twin.ReadListed(id), [], "", "", spec.State);
        });
        return new(new ReadingLibrary(Twin.Model), new UnitReadings("twin-160", 120, null, Meter.Usual, [.. taken], []), 0.02);
    }
}
