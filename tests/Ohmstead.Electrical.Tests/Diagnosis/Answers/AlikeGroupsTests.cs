using Ohmstead.Electrical.Diagnosis;

namespace Ohmstead.Electrical.Tests.Diagnosis.Answers;

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
        var result = WireBench.Diagnose(
            unit,
            WireBench.Value(unit, "path", unit.ReadListed("path") + more),
            WireBench.Value(unit, "beside", unit.ReadListed("beside"))
        );
        var group = Assert.Single(result.Alike, g => g.Any(m => m.Name == "lead:resistive"));
        Assert.Equal(["contact:resistive", "lead:resistive"], group.Select(m => m.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void One_more_reading_between_them_tells_them_apart()
    {
        var unit = Path();
        var result = WireBench.Diagnose(
            unit,
            WireBench.Value(unit, "path", unit.ReadListed("path") + 5.1),
            WireBench.Value(unit, "lead", unit.ReadListed("lead") + 5.1)
        );
        Assert.DoesNotContain(result.Alike, g => g.Any(m => m.Name == "contact:resistive") && g.Any(m => m.Name == "lead:resistive"));
        Assert.Equal("lead:resistive", result.Faults[0].Mode.Name);
    }

    /// <summary>
    /// Three contacts meet in one point. With the first open (its own reading says so) the other two are read only together;
    /// alone they would differ in two readings.
    /// </summary>
    [Fact]
    public void Beside_an_open_contact_two_others_are_alike_that_alone_are_not()
    {
        var faults = new Dictionary<string, double>
        {
            ["stuck-open"] = 5,
            ["resistive"] = 0,
            ["stuck-closed"] = 0,
        };
        var contact = new
        {
            control = "lever",
            closedIn = new[] { "on" },
            faults,
        };
        var unit = new SheetDraft()
            .Selector("lever", "on", "off")
            .Element("switch", "x", "a", "m", contact)
            .Element("switch", "y", "m", "b", contact)
            .Element("switch", "z", "p", "m", contact)
            .Reading("own", "ohms", ["a", "m"])
            .Reading("whole", "ohms", ["a", "b"])
            .Reading("side", "ohms", ["a", "p"])
            .Reading("tap", "ohms", ["p", "b"])
            .Unit();
        var (own, whole, side, tap) = (
            WireBench.OL(unit, "own"),
            WireBench.OL(unit, "whole"),
            WireBench.OL(unit, "side"),
            WireBench.OL(unit, "tap")
        );
        var both = WireBench.Diagnose(unit, own, whole, side, tap);
        Assert.Contains(
            both.Alike,
            g => g.Select(m => m.Name).Order(StringComparer.Ordinal).SequenceEqual(["y:stuck-open", "z:stuck-open"])
        );
        Assert.Equal(WireBench.Chance(both, "y:stuck-open"), WireBench.Chance(both, "z:stuck-open"), 1e-6);
        var sideIsSound = WireBench.Value(unit, "side", unit.ReadListed("side"));
        var ownIsSound = WireBench.Value(unit, "own", unit.ReadListed("own"));
        var one = WireBench.Diagnose(unit, ownIsSound, whole, sideIsSound, tap);
        Assert.DoesNotContain(one.Alike, g => g.Any(m => m.Name == "y:stuck-open") && g.Any(m => m.Name == "z:stuck-open"));
        Assert.True(WireBench.Chance(one, "y:stuck-open") > 0.9);
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
