using Ohmstead.Workshop.Testing;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Testing;

/// <summary>What is said beside a limit. Figures are closed forms or published ones that the core’s tests hold.</summary>
public class TestAsideTests
{
    private static string Of(TestSort sort)
    {
        var unit = new TestedUnit();
        var test = unit.All.First(t => t.Sort == sort);
        return string.Join(
            ' ',
            TestAside.Of(test, OnTheBench.Sheet with { SupplyVolts = 120, SupplyHertz = 60 }, unit.Result(test.Id).Limit)
        );
    }

    /// <remarks>500/√2 = 354; 1000 + 2·120 = 1240 (from memory), its peak 1754 (check value 8.7). An old unit never gets it.</remarks>
    [Fact]
    public void The_insulation_test_is_compared_and_no_old_unit_gets_high_volts()
    {
        var said = Of(TestSort.Insulation);
        Assert.Contains("as hard on insulation as 354 V AC", said, StringComparison.Ordinal);
        Assert.Contains(
            "Makers test new units, from memory, with 1240 V AC or 1754 V DC. Never do that to an old unit.",
            said,
            StringComparison.Ordinal
        );
    }

    /// <remarks>0.25 mA/(2π·60 Hz·120 V) = 5.5 nF, half of check value 8.5.</remarks>
    [Fact]
    public void Touch_current_is_compared_with_a_capacitor() =>
        Assert.Contains(
            "A capacitor of 5.5 nF from the line to the core lets 0.25 mA through.",
            Of(TestSort.TouchCurrent),
            StringComparison.Ordinal
        );

    /// <remarks>Check value 7.1: 24 V AC, 200 VA.</remarks>
    [Fact]
    public void The_volts_of_a_post_are_compared_with_those_of_a_new_toy_transformer() =>
        Assert.Contains("at most 24 V AC and 200 VA (EN 61558-2-7, as cited)", Of(TestSort.NoLoadVolts), StringComparison.Ordinal);

    /// <remarks>A half wave of 4 V DC: 4·0.5453/0.4502 = 4.85 V true RMS, 4·0.5511/0.4502 = 4.90 V (check value 9.12).</remarks>
    [Fact]
    public void Before_the_whistle_is_read_it_is_said_what_an_AC_range_would_show() =>
        Assert.Contains(
            "On AC a half wave of 4 V DC, at the limit, shows 4.8 V with true RMS, 4.9 V on a meter that responds to the average.",
            Of(TestSort.WhistleFirst),
            StringComparison.Ordinal
        );

    /// <remarks>In the second step nearly all of a post’s volts are AC: a half wave is the first step’s.</remarks>
    [Fact]
    public void Of_the_second_step_of_the_whistle_no_half_wave_is_spoken() =>
        Assert.Equal("Set the meter to DC. On AC nearly the full post volts show.", Of(TestSort.WhistleSecond));

    [Fact]
    public void Beside_other_tests_nothing_is_said() => Assert.Equal("", Of(TestSort.NoLoadWatts));
}
