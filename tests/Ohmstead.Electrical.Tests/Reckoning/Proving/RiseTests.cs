namespace Ohmstead.Electrical.Tests.Reckoning.Proving;

/// <summary>Rise by resistance, and one rise taken to other loads.</summary>
public class RiseTests
{
    private static double Rise(string metal, double cold, double celsius, double hot, double end) =>
        Asked
            .Answer(
                FormattableString.Invariant(
                    $"\"question\": \"rise\", \"metal\": \"{metal}\", \"cold\": {{ \"ohms\": {cold}, \"celsius\": {celsius} }}, \"hotOhms\": {hot}, \"endCelsius\": {end}"
                )
            )
            .Number("riseKelvin");

    /// <remarks>physicsforums.com thread 381286, seen: 83.63 °C, 63.63 K (check value 2.2).</remarks>
    [Fact]
    public void Eighty_ohms_that_become_a_hundred_have_risen_as_published()
    {
        var p = Published.Case("windings", "2.2");
        Assert.Equal(63.63, Rise("copper", 80, 20, 100, 20), 0.01);
        Assert.Equal("SEEN", p.Mark);
    }

    /// <remarks>Closed form with a room that warms from 20 to 25 °C (check value 2.3; common practice, derived): 58.625 K, 56.25 K.</remarks>
    [Theory]
    [InlineData("copper", 58.625)]
    [InlineData("aluminium", 56.25)]
    public void A_room_that_warms_is_taken_off(string metal, double kelvin) => Assert.Equal(kelvin, Rise(metal, 10, 20, 12.5, 25), 1e-9);

    /// <remarks>Check value 2.4, seen and wrong: a page answers 134.73 Ω for 108 Ω at 22 °C warmed to 80 °C; with 234.5 it is 132.42 Ω.</remarks>
    [Fact]
    public void A_published_slip_is_not_ours()
    {
        Assert.Equal(58, Rise("copper", 108, 22, 132.42, 22), 0.01);
        Assert.True(Rise("copper", 108, 22, 134.73, 22) > 63);
    }

    /// <remarks>Check value 2.5, derived: 1.3083 from 25 to 105 °C, 1.3143 from 20 to 100 °C.</remarks>
    [Theory]
    [InlineData(25, 105, 1.3083)]
    [InlineData(20, 100, 1.3143)]
    public void The_factor_of_a_class_of_insulation_is_met(double from, double to, double factor) =>
        Assert.Equal(to - from, Rise("copper", 1, from, factor, from), 0.03);

    [Fact]
    public void A_winding_far_colder_than_the_room_is_a_slip() =>
        Assert.Equal(
            ["$.hotOhms"],
            Asked.Refused("\"question\": \"rise\", \"cold\": { \"ohms\": 3, \"celsius\": 20 }, \"hotOhms\": 2.9, \"endCelsius\": 20")
        );

    [Fact]
    public void A_winding_a_little_colder_is_not() => Assert.Equal(-2.545, Rise("copper", 3, 20, 2.97, 20), 1e-9);

    private const string Elsewhere =
        "\"question\": \"rise-elsewhere\", \"noLoadWatts\": 11, \"loadWattsAt20\": 14, \"testAmps\": 6, \"testCelsius\": 22, \"finalRiseKelvin\": 52, \"limitKelvin\": 65";

    [Fact]
    public void At_the_load_and_room_of_the_test_the_rise_is_that_of_the_test() =>
        Assert.Equal(
            52,
            Asked.Answer($"{Elsewhere}, \"at\": [ {{ \"amps\": 6, \"ambientCelsius\": 22 }} ]").Number("at[0].riseKelvin"),
            1e-9
        );

    /// <remarks>By another road: the loss and the rise found by turns until they agree.</remarks>
    [Fact]
    public void The_most_amps_bring_the_rise_just_to_the_limit()
    {
        var answer = Asked.Answer($"{Elsewhere}, \"mostAmpsCelsius\": 30");
        var (amps, perWatt, rise) = (answer.Number("mostAmps"), answer.Number("kelvinPerWatt"), 0.0);
        for (var n = 0; n < 500; n++)
            rise = perWatt * (11 + (14 * amps * amps / 36 * (234.5 + 30 + rise) / 254.5));
        Assert.Equal(65, rise, 1e-6);
    }

    [Fact]
    public void A_load_whose_loss_outgrows_its_cooling_has_no_rise() =>
        Assert.Null(Asked.Answer($"{Elsewhere}, \"at\": [ {{ \"amps\": 19, \"ambientCelsius\": 22 }} ]").At("at[0].riseKelvin"));

    [Fact]
    public void Where_no_load_alone_is_too_much_nothing_is_left() =>
        Assert.Equal(
            0,
            Asked.Answer(Elsewhere.Replace("\"limitKelvin\": 65", "\"limitKelvin\": 15", StringComparison.Ordinal)).Number("mostAmps")
        );
}
