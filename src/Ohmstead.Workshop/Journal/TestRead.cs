using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Ohmstead.Workshop.Journal;

/// <summary>A test was read: what the meter showed, and the limit and the error of the meter that it was held against on that day.</summary>
/// <param name="Test">Which test.</param>
/// <param name="Title">What it is called, in words.</param>
/// <param name="Readings">One, or four and more, in the unit of the limit; of touch current volts, the plug one way and the other.</param>
/// <param name="OverRangeAbove">Where the meter shows OL, when it did; else null.</param>
/// <param name="MeterPercent">Share of the reading in the meter's limit of error [%].</param>
/// <param name="MeterFloor">Fixed part of it, in the unit of the values.</param>
/// <param name="Touch">Across what touch current was read; null for any other test.</param>
public sealed record TestRead(
    string Test,
    string Title,
    ImmutableArray<TestReading> Readings,
    double? OverRangeAbove,
    TestBound Limit,
    double MeterPercent,
    double MeterFloor,
    TouchSetup? Touch
) : Fact
{
    /// <summary>The numbers of the readings.</summary>
    [JsonIgnore]
    public ImmutableArray<double> Values => [.. Readings.Select(r => r.Value)];

    /// <summary>Numbers as readings.</summary>
    public static ImmutableArray<TestReading> Of(params ReadOnlySpan<double> values)
    {
        var readings = ImmutableArray.CreateBuilder<TestReading>();
        foreach (var value in values)
            readings.Add(new(value));
        return readings.ToImmutable();
    }
}

/// <summary>A reading of a test.</summary>
/// <param name="Value">What was shown.</param>
public sealed record TestReading(double Value);

/// <summary>A limit with where it comes from.</summary>
/// <param name="Min">The least; null for none.</param>
/// <param name="Max">The most; null for none.</param>
/// <param name="Unit">Of both.</param>
/// <param name="Source">Who says so, with its mark: "from memory", "common practice, no source".</param>
public sealed record TestBound(double? Min, double? Max, string Unit, string Source);

/// <summary>Across what touch current is read.</summary>
/// <param name="Network">The resistors, as question files name them.</param>
/// <param name="Hertz">Of the mains.</param>
/// <param name="EarthProved">True when the ground it is read against was proved.</param>
public sealed record TouchSetup(string Network, double Hertz, bool EarthProved)
{
    /// <summary>The mains that the unit is made for [V]; null in older entries: then its type sheet says.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? SupplyVolts { get; init; }
}
