using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Tests.Diagnosis.Doubts.DoubtBench;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>What is wrong with the bench, by what it says of a sound unit of the sample sheet on it.</summary>
public class TwinDoubtTests
{
    [Fact]
    public void A_sound_unit_on_a_good_bench_raises_no_doubt()
    {
        var result = Run(All(_ => true, (_, v) => v));
        Assert.Empty(result.Doubts);
        Assert.Empty(result.Slips);
        Assert.True(result.IsExplained);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(-5)]
    public void A_line_that_was_not_as_noted_is_named_with_its_volts(double off)
    {
        var share = 1 + (off / Reference.Twin160.SupplyVolts);
        var taken = All(r => !OnMains(r) || r.Quantity == Quantity.AcVolts, (r, v) => OnMains(r) ? v * share : v);
        var doubt = Assert.Single(Run(taken).Doubts);
        Assert.Equal(DoubtAbout.Line, doubt.About);
        Assert.Equal(Reference.Twin160.SupplyVolts + off, doubt.Value, 0.5);
        Assert.All(doubt.Readings, id => Assert.True(OnMains(Reference.Twin160.FindReading(id)!)));
    }

    /// <summary>Sound readings with leads left in: a contact that all but one of them pass does the same, and is not very likely (0.8) for that.</summary>
    [Fact]
    public void Of_a_few_cold_readings_leads_left_in_are_no_burnt_breaker_contact_that_is_very_likely()
    {
        string[] cold = ["blades", "ohms-5", "ohms-17", "ohms-left", "ohms-right"];
        var result = Run(All(r => cold.Contains(r.Id), (_, v) => v + 0.3));
        Assert.InRange(result.Faults.Single(f => f.Mode.Name == "breaker:resistive").Probability, 0.5, 0.8);
    }
}
