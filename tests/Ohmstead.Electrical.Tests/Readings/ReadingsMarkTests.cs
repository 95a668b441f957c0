using System.Numerics;
using System.Text;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>The mark of some readings: FNV-1a of 64 bits (Fowler, Noll, Vo; its offset and prime are published with the algorithm).</summary>
public class ReadingsMarkTests
{
    private static readonly TypeSheet Sheet = Reference.Twin160;

    private static TakenReading Taken(string id, double value, Outcome outcome = Outcome.Value) =>
        new(Sheet.FindReading(id)!, outcome, value, [], "", "", Sheet.FindReading(id)!.State);

    private static string Mark(params TakenReading[] taken) =>
        ReadingsMark.Of(new UnitReadings(Sheet.Id, Sheet.SupplyVolts, null, Meter.Usual, [.. taken], []));

    /// <summary>The algorithm as published, in whole numbers: hash = (hash xor byte)·prime mod 2⁶⁴.</summary>
    private static string Fnv(string text)
    {
        var hash = BigInteger.Parse("14695981039346656037", System.Globalization.CultureInfo.InvariantCulture);
        foreach (var b in Encoding.UTF8.GetBytes(text))
            hash = (hash ^ b) * ((BigInteger.One << 40) + (1 << 8) + 0xb3) % (BigInteger.One << 64);
        return ((ulong)hash).ToString("x16", System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public void Of_nothing_it_is_the_published_offset() => Assert.Equal("cbf29ce484222325", Mark());

    [Fact]
    public void It_is_that_of_the_values_in_order_whatever_the_readings_are_called()
    {
        Assert.Equal(Fnv("AcVolts 17.5\nOhms 4.1"), Mark(Taken("blades", 4.1), Taken("volts-17", 17.5)));
        Assert.Equal(Mark(Taken("blades", 4.1), Taken("volts-17", 17.5)), Mark(Taken("volts-17", 17.5), Taken("blades", 4.1)));
        Assert.Equal(Mark(Taken("ohms-left", 4.1)), Mark(Taken("blades", 4.1)));
        Assert.NotEqual(Mark(Taken("blades", 4.1)), Mark(Taken("blades", 4.2)));
    }

    [Fact]
    public void Only_numbers_count() =>
        Assert.Equal(
            Mark(Taken("blades", 4.1)),
            Mark(Taken("blades", 4.1), Taken("ohms-left", 0, Outcome.OverRange), Taken("ohms-5", 3, Outcome.Jumps))
        );
}
