using System.Collections.Immutable;
using CsCheck;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>A meter's limit of error: published sums (tests/Reference/published/measurement.json) and the scale on which it is 1.</summary>
public class MeterErrorTests
{
    private static readonly Gen<MeterError> Errors = Gen.Select(
        Gen.OneOf(Gen.Const(0.0), Gen.Double[1e-3, 20]),
        Gen.Double[-4, 5],
        (percent, floor) => new MeterError(percent, Math.Pow(10, floor), 0, 0)
    );

    private static readonly Gen<double> Values = Gen.Select(
        Gen.Double[-6, 9],
        Gen.Bool,
        (size, isNegative) => (isNegative ? -1 : 1) * Math.Pow(10, size)
    );

    [Theory]
    [InlineData("9.5")]
    [InlineData("9.7")]
    [InlineData("9.8")]
    [InlineData("9.9")]
    public void The_limit_of_error_is_percent_of_the_value_plus_digits(string id)
    {
        var p = Published.Case("measurement", id);
        var error = new MeterError(p.Given("percent"), p.Given("digits") * p.Given("digit"), 0, 0);
        var value = p.Given("value");
        p.Agrees("limit", error.LimitAt(value), 1e-9);
        Assert.Equal(error.LimitAt(value), error.LimitAt(-value), 1e-12);
        if (!p.Expects("low"))
            return;
        p.Agrees("low", value - error.LimitAt(value), 1e-9);
        p.Agrees("high", value + error.LimitAt(value), 1e-9);
    }

    [Fact]
    public void A_misprinted_lower_end_is_not_ours()
    {
        var p = Published.Case("measurement", "9.7");
        var error = new MeterError(p.Given("percent"), p.Given("digits") * p.Given("digit"), 0, 0);
        Assert.True(Math.Abs(p.Given("value") - error.LimitAt(p.Given("value")) - p.Misprinted("low")) > 0.5);
    }

    /// <summary>A rectangular error of limit a has the standard uncertainty a/√3.</summary>
    [Fact]
    public void The_error_counts_as_rectangular()
    {
        var p = Published.Case("measurement", "9.5");
        var error = new MeterError(p.Given("percent"), p.Given("digits") * p.Given("digit"), 0, 0);
        var set = OneReading(error);
        p.Agrees("standardUncertainty", Math.Sqrt(set.ErrorCovariance(0, 0)) * error.LimitAt(p.Given("value")), 0.0005);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.3)]
    [InlineData(1.0)]
    public void A_shared_part_of_the_error_is_common_to_readings_of_one_quantity(double shared)
    {
        var set = OneReading(new MeterError(1, 0.1, shared, 0));
        // Two independent rectangular parts of limits s and 1 − s, the first one the same for both readings.
        Assert.Equal(((shared * shared) + ((1 - shared) * (1 - shared))) / 3, set.ErrorCovariance(0, 0), 1e-12);
        Assert.Equal(shared * shared / 3, set.ErrorCovariance(0, 1), 1e-12);
        Assert.Equal(0, set.ErrorCovariance(0, 2));
    }

    [Fact]
    public void Two_meters_have_no_error_in_common()
    {
        var (one, other) = (new MeterError(0.8, 0.03, 0.5, 0), new MeterError(0.3, 0.01, 0.5, 0));
        var unit = new SheetDraft().Resistor("r", "a", "b", 10).Unit();
        var spec = unit.Spec(
            "ac-volts",
            ["a", "b"],
            new
            {
                source = new
                {
                    from = "a",
                    to = "b",
                    volts = 10,
                },
            }
        );
        var set = new ReadingSet(unit.Model, unit.Catalogue, [(spec, spec.State, one), (spec, spec.State, other), (spec, spec.State, one)]);
        Assert.Equal([0, 0.25 / 3], [set.ErrorCovariance(0, 1), set.ErrorCovariance(0, 2)]);
    }

    [Fact]
    public void The_scale_and_its_inverse_undo_each_other() =>
        Gen.Select(Errors, Values)
            .Sample((error, value) => Math.Abs(error.FromScale(error.ToScale(value)) - value) <= 1e-9 * (Math.Abs(value) + error.Floor));

    [Fact]
    public void The_limit_of_error_is_one_everywhere_on_the_scale() =>
        Gen.Select(Errors, Values)
            .Sample(
                (error, value) =>
                {
                    // The scale's slope by a difference across a hundredth of the limit, times the limit. Beyond 1e9 limits that step
                    // is lost in the last digits of the value, and a wider one, through which the limit changes by nothing, serves.
                    var limit = error.LimitAt(value);
                    var step = Math.Max(0.005 * limit, 1e-6 * Math.Abs(value));
                    var across = error.ToScale(value + step) - error.ToScale(value - step);
                    return Math.Abs((across * limit / (2 * step)) - 1) < 2e-3;
                }
            );

    [Fact]
    public void The_scale_rises() =>
        Gen.Select(Errors, Values, Values)
            .Sample(
                (error, a, b) =>
                    IsOneNumber(error, a, b) || Math.Sign(error.ToScale(a).CompareTo(error.ToScale(b))) == Math.Sign(a.CompareTo(b))
            );

    [Fact]
    public void The_scale_is_odd() =>
        Gen.Select(Errors, Values).Sample((error, a) => error.ToScale(-a) == -error.ToScale(a) && error.ToScale(0) == 0);

    [Fact]
    public void An_exact_floor_of_nothing_does_not_break_the_scale()
    {
        var error = new MeterError(1, 0, 0, 0);
        Assert.True(double.IsFinite(error.ToScale(1e9)) && double.IsFinite(error.ToScale(1e-12)));
        Assert.Equal(5.0, error.FromScale(error.ToScale(5)), 1e-9);
    }

    /// <summary>Whether two values lie so close, for this meter, that they may be one number on the scale: a double holds 15 digits.</summary>
    private static bool IsOneNumber(MeterError error, double a, double b) =>
        Math.Abs(a - b) < (1e-9 * error.LimitAt(a)) + (1e-12 * Math.Abs(a));

    private static ReadingSet OneReading(MeterError volts)
    {
        var unit = new SheetDraft().Resistor("r", "a", "b", 10).Unit();
        var source = new
        {
            from = "a",
            to = "b",
            volts = 10,
        };
        ReadingSpec[] specs =
        [
            unit.Spec("ac-volts", ["a", "b"], new { source }),
            unit.Spec("ac-volts", ["b", "a"], new { source }),
            unit.Spec("ohms", ["a", "b"]),
        ];
        var meter = new Meter(Meter.Usual.Errors.SetItem(Quantity.AcVolts, volts));
        return new ReadingSet(unit.Model, unit.Catalogue, specs.Select(s => (s, s.State)), meter);
    }
}
