using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>
/// Paper takes up water in the whole unit, so all of its insulation falls together, by ten times and more (common practice, no source): that is
/// neither another type nor one weak place.
/// </summary>
public class DampUnitTests
{
    private static readonly BenchUnit Twin = new(Reference.Twin160);

    [Theory]
    [InlineData(6)]
    [InlineData(12)]
    [InlineData(30)]
    public void Insulation_that_is_low_everywhere_is_named_and_nothing_else_is(double times)
    {
        var values = Twin.Model.Nominal.Copy();
        foreach (var p in Twin.Model.Parameters.Where(p => IsPaper(p.Path)))
            values.Scale(p, 1 / times);
        var result = Run(values);
        var doubt = Assert.Single(result.Doubts);
        Assert.Equal(DoubtAbout.Unit, doubt.About);
        Assert.NotEmpty(doubt.Parameters);
        Assert.All(doubt.Parameters, p => Assert.True(IsPaper(p), p));
        Assert.All(result.Faults, f => Assert.InRange(f.Probability, 0, 0.6));
    }

    [Fact]
    public void One_weak_place_is_a_fault_and_no_doubt()
    {
        var values = Twin.Model.Nominal.Copy();
        var weak = Twin.Model.Parameters.Single(p => p.Path.EndsWith("ins-primary-core.ohms", StringComparison.Ordinal));
        values.Scale(weak, 100e3 / values[weak]);
        var result = Run(values);
        Assert.Empty(result.Doubts);
        Assert.Equal("ins-primary-core:low", result.Faults.MaxBy(f => f.Probability)!.Mode.ToString());
    }

    private static bool IsPaper(string parameter) =>
        Twin.Model.Sheet.Elements.Any(e =>
            e.Kind == ElementKind.Insulation && parameter.EndsWith($"{e.Id}.ohms", StringComparison.Ordinal)
        );

    private static DiagnosisResult Run(UnitValues values) =>
        Diagnoser.Run(
            Twin.Model,
            WireBench.Unit(
                Twin,
                [
                    .. Twin
                        .Model.Sheet.Readings.Where(r => r.Quantity is Quantity.InsulationOhms or Quantity.Ohms)
                        .Select(r => (r.Id, Value: Twin.Read(r, values)))
                        .Select(r => double.IsInfinity(r.Value) ? WireBench.OL(Twin, r.Id) : WireBench.Value(Twin, r.Id, r.Value)),
                ]
            ) with
            {
                SupplyVolts = Twin.Model.Sheet.SupplyVolts,
            },
            new() { RankNext = false }
        );
}
