using Ohmstead.Electrical.Circuits;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Untyped;

namespace Ohmstead.App.Tests.Demo;

/// <summary>What was read on the demo's units goes from their journals to the core as it would by way of a readings file.</summary>
public class DemoReadingsTests
{
    public static TheoryData<string> Tags() => FilledDemo.Tags();

    [Theory]
    [MemberData(nameof(Tags))]
    public async Task The_readings_of_a_unit_are_those_that_its_readings_file_gives(string tag)
    {
        var demo = await FilledDemo.ReadAsync();
        var card = demo.Cards.Single(c => c.Tag == tag);
        var unit = demo.Units[card.Id];
        var sheet = demo.SheetOf(card) ?? UntypedSheet.Of(unit);
        var model = new UnitModel(OwnSheet.OnBench(unit, sheet, demo.Shop).Required);
        var typed = BenchReadings.Of(unit with { Doubts = UnitDoubts.None }, model, demo.Shop).Required;
        Assert.Equal(ReadingsAsFile.Read(unit, model, demo.Shop).Required, typed);
        Assert.Equal(unit.CurrentReadings.Count() + unit.CurrentWaivers.Count(), typed.Readings.Length);
    }

    [Fact]
    public async Task Most_of_them_were_read()
    {
        var demo = await FilledDemo.ReadAsync();
        // Counted in the demo: nine of its twelve units have readings.
        Assert.InRange(demo.Units.Values.Count(u => u.CurrentReadings.Any()), 8, 12);
    }
}
