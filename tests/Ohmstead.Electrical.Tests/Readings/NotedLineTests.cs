using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>Which line voltage belongs to several readings: the one that was noted with most of them.</summary>
public class NotedLineTests
{
    private static readonly TypeSheet Sheet = Reference.Twin160;

    private static TakenReading Taken(string id, double line, Outcome outcome = Outcome.Value) =>
        new(Sheet.FindReading(id)!, outcome, 1, [], "", "", UnitReadings.AtLine(Sheet, Sheet.FindReading(id)!.State, line));

    private static double Line(string[] of, params TakenReading[] taken) =>
        new UnitReadings(Sheet.Id, 121, null, Meter.Usual, [.. taken], []).NotedLine(Sheet, of);

    [Fact]
    public void Without_a_reading_on_mains_it_is_that_of_readings_to_come()
    {
        Assert.Equal(121, Line([]));
        Assert.Equal(121, Line(["volts-17"]));
        Assert.Equal(121, Line(["low-17", "blades"], Taken("low-17", 12), Taken("blades", 0)));
        Assert.Equal(121, Line(["volts-17"], Taken("volts-17", Sheet.SupplyVolts, Outcome.NotTaken)));
    }

    [Fact]
    public void The_volts_noted_with_most_of_them_count()
    {
        Assert.Equal(119, Line(["volts-17"], Taken("volts-17", 119)));
        string[] three = ["volts-17", "volts-5", "left-full"];
        Assert.Equal(119, Line(three, Taken("left-full", 117), Taken("volts-17", 119), Taken("volts-5", 119)));
        Assert.Equal(117, Line(three, Taken("volts-17", 119), Taken("volts-5", 117), Taken("left-full", 117)));
    }

    [Fact]
    public void Of_a_reading_taken_twice_the_later_counts_and_of_others_none()
    {
        Assert.Equal(118, Line(["volts-17"], Taken("volts-17", 119), Taken("volts-17", 118)));
        Assert.Equal(119, Line(["volts-17"], Taken("volts-17", 119), Taken("volts-17", 118, Outcome.NotTaken)));
        Assert.Equal(121, Line(["volts-5"], Taken("volts-17", 119)));
    }
}
