using static Ohmstead.Electrical.Tests.Diagnosis.WireBench;

namespace Ohmstead.Electrical.Tests.Diagnosis.Answers;

/// <summary>Faults that are not there but could be are named together where alone they would do the same.</summary>
public class AloneAlikeTests
{
    [Fact]
    public void On_a_sound_row_breaks_stand_with_breaks_and_poor_wires_with_poor_wires()
    {
        var unit = Parts(("w1", "a", "b", 1), ("w2", "b", "c", 2), ("w3", "c", "d", 3), ("w4", "x", "y", 3))
            .Reading("row", "ohms", ["a", "c"])
            .Reading("end", "ohms", ["c", "d"])
            .Unit();
        var result = Diagnose(unit, Value(unit, "row", 0.02), Value(unit, "end", 0.01));
        Assert.Equal(
            ["w1:open w2:open", "w1:resistive w2:resistive"],
            result.Alike.Select(g => string.Join(' ', g.Select(m => m.Name).Order(StringComparer.Ordinal))).Order(StringComparer.Ordinal)
        );
    }

    /// <summary>A wire (0.4 to 30 Ω) and a breaker's contact (0.3 to 5 Ω) in a row are one to who reads the row alone; the wire's own reading tells them apart.</summary>
    [Fact]
    public void What_has_a_reading_of_its_own_stands_with_nothing_that_leaves_it_as_it_is()
    {
        var none = new Dictionary<string, double>
        {
            ["open"] = 0,
            ["bypassed"] = 0,
            ["resistive"] = 10,
        };
        var unit = Parts(("w1", "a", "b", 0))
            .Element("breaker", "k", "b", "c", new { ohms = 0.05, faults = none })
            .Reading("row", "ohms", ["a", "c"])
            .Reading("again", "ohms", ["c", "a"])
            .Reading("wire", "ohms", ["a", "b"])
            .Unit();
        var told = Diagnose(unit, Value(unit, "row", 0.06), Value(unit, "wire", 0.01));
        Assert.DoesNotContain(told.Alike, g => g.Any(m => m.Name == "k:resistive"));
        var alike = Diagnose(unit, Value(unit, "row", 0.06), Value(unit, "again", 0.06));
        Assert.Contains(
            alike.Alike,
            g => g.Select(m => m.Name).Order(StringComparer.Ordinal).SequenceEqual(["k:resistive", "w1:resistive"])
        );
    }

    /// <summary>Five ohms more, by the wire or the contact; one that is ruled out by its own reading stands with neither.</summary>
    [Fact]
    public void What_is_very_likely_stands_with_what_could_be_there_in_its_stead_and_not_with_what_was_ruled_out()
    {
        var unit = Parts(("w1", "a", "b", 1), ("w2", "b", "c", 1), ("w3", "c", "d", 1))
            .Reading("row", "ohms", ["a", "d"])
            .Reading("last", "ohms", ["c", "d"])
            .Unit();
        var result = Diagnose(unit, Value(unit, "row", 5.03), Value(unit, "last", 0.01));
        Assert.Contains(
            result.Alike,
            g => g.Select(m => m.Name).Order(StringComparer.Ordinal).SequenceEqual(["w1:resistive", "w2:resistive"])
        );
        Assert.DoesNotContain(result.Alike, g => g.Any(m => m.Element == "w3") && g.Any(m => m.Element == "w1"));
        Assert.Equal(result.Alike.SelectMany(g => g).Distinct().Count(), result.Alike.Sum(g => g.Length));
    }
}
