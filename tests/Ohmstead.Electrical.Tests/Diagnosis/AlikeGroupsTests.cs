using Ohmstead.Electrical.Diagnosis;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>Which faults are named together, because the readings taken do not tell them apart.</summary>
public class AlikeGroupsTests
{
    /// <summary>
    /// Ohms in series are the same ohms in a wire (0.4 to 30) and in a contact (0.5 to 20), at any size: at large ones the
    /// meter's limit is a small step of either range.
    /// </summary>
    [Theory]
    [InlineData(0.9)]
    [InlineData(2.3)]
    [InlineData(5.1)]
    [InlineData(8.7)]
    [InlineData(15.3)]
    public void A_wire_and_a_contact_in_series_are_alike_at_any_size(double more)
    {
        var unit = Path();
        var result = OverRangeTests.Diagnose(
            unit,
            OverRangeTests.Value(unit, "path", unit.ReadListed("path") + more),
            OverRangeTests.Value(unit, "beside", unit.ReadListed("beside"))
        );
        var group = Assert.Single(result.Alike, g => g.Any(m => m.Name == "lead:resistive"));
        Assert.Equal(["contact:resistive", "lead:resistive"], group.Select(m => m.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void One_more_reading_between_them_tells_them_apart()
    {
        var unit = Path();
        var result = OverRangeTests.Diagnose(
            unit,
            OverRangeTests.Value(unit, "path", unit.ReadListed("path") + 5.1),
            OverRangeTests.Value(unit, "lead", unit.ReadListed("lead") + 5.1)
        );
        Assert.DoesNotContain(result.Alike, g => g.Any(m => m.Name == "contact:resistive") && g.Any(m => m.Name == "lead:resistive"));
        Assert.Equal("lead:resistive", result.Faults[0].Mode.Name);
    }

    private static BenchUnit Path() =>
        new SheetDraft()
            .Selector("lever", "on", "off")
            .Wire("lead", "a", "b", 0.02)
            .Element("switch", "contact", "b", "c", new { control = "lever", closedIn = new[] { "on" } })
            .Wire("other", "c", "d", 0.02)
            .Reading("path", "ohms", ["a", "c"])
            .Reading("lead", "ohms", ["a", "b"])
            .Reading("beside", "ohms", ["c", "d"])
            .Unit();
}
