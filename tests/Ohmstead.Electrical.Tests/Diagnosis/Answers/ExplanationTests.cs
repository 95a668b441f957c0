using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Tests.Diagnosis.WireBench;

namespace Ohmstead.Electrical.Tests.Diagnosis.Answers;

/// <summary>Each reading beside what is expected of it: how far it lies off the sound unit, and which remain unexplained.</summary>
public class ExplanationTests
{
    private static readonly MeterError Error = Meter.Usual.For(Quantity.Ohms);

    /// <summary>10 Ω that vary by a tenth: off by its distance on the scale over √(slope² + 1/3).</summary>
    [Theory]
    [InlineData(10.7)]
    [InlineData(8.9)]
    public void A_value_lies_off_by_its_distance_in_deviations_of_the_sound_unit(double ohms)
    {
        var unit = Row(1);
        var row = Assert.Single(Diagnose(unit, Value(unit, "r0", ohms)).Readings);
        var slope = (Error.ToScale(10 * Math.Exp(0.01)) - Error.ToScale(10)) / 0.1;
        var expected = (Error.ToScale(ohms) - Error.ToScale(10)) / Math.Sqrt((slope * slope) + (1.0 / 3));
        Assert.Equal(expected, row.Deviation!.Value, 0.01 * Math.Abs(expected));
        Assert.Equal((ohms, false, false), (row.Measured, row.IsOverRange, row.IsDoubted));
        Assert.Equal(10, row.Expected!.Value, 1e-6);
    }

    [Fact]
    public void An_OL_lies_off_as_far_as_the_range_is()
    {
        var unit = Row(1);
        var row = Assert.Single(Diagnose(unit, OL(unit, "r0")).Readings);
        var slope = (Error.ToScale(10 * Math.Exp(0.01)) - Error.ToScale(10)) / 0.1;
        Assert.Equal((Error.ToScale(20e6) - Error.ToScale(10)) / Math.Sqrt((slope * slope) + (1.0 / 3)), row.Deviation!.Value, 2);
        Assert.Equal((null, true), (row.Measured, row.IsOverRange));
    }

    /// <summary>Values that fit nothing on parts that cannot fail: one of ten is let pass, two of nineteen are not, one that is told as a slip counts none.</summary>
    [Theory]
    [InlineData(10, "r3=37", true)]
    [InlineData(9, "r3=37", false)]
    [InlineData(19, "r3=37 r5=37", false)]
    [InlineData(20, "r3=37 r5=37", true)]
    [InlineData(9, "r3=100", true)]
    [InlineData(5, "r3=100 r4=1", true)]
    public void One_in_ten_may_stay_unexplained(int count, string off, bool isExplained)
    {
        var unit = Row(count);
        var noted = off.Split(' ')
            .Select(o => o.Split('='))
            .ToDictionary(o => o[0], o => double.Parse(o[1], System.Globalization.CultureInfo.InvariantCulture));
        var result = Diagnose(unit, [.. unit.Model.Sheet.Readings.Select(r => Value(unit, r.Id, noted.GetValueOrDefault(r.Id, 10)))]);
        Assert.Equal(isExplained, result.IsExplained);
        Assert.Equal(noted.Keys.Order(StringComparer.Ordinal), result.Unexplained.Order(StringComparer.Ordinal));
        Assert.All(result.Readings, r => Assert.Equal(noted.ContainsKey(r.Spec.Id), r.IsDoubted));
    }

    private static BenchUnit Row(int count)
    {
        var draft = new SheetDraft();
        for (var n = 0; n < count; n++)
        {
            var (id, from) = (FormattableString.Invariant($"r{n}"), FormattableString.Invariant($"a{n}"));
            draft
                .Element(
                    "resistor",
                    "of-" + id,
                    from,
                    "g",
                    new
                    {
                        ohms = 10,
                        spread = new { ohms = 0.1 },
                        faults = new Dictionary<string, double>
                        {
                            ["open"] = 0,
                            ["shorted"] = 0,
                            ["drifted"] = 0,
                        },
                    }
                )
                .Reading(id, "ohms", [from, "g"]);
        }
        return draft.Unit();
    }
}
