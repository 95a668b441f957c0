namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>Winding temperature by resistance (tests/Reference/published/windings.json), through the temperature of a reading's state.</summary>
public class WindingTemperatureTests
{
    private static Published Case(string id) => Published.Case("windings", id);

    [Fact]
    public void A_winding_reads_the_resistance_from_which_its_temperature_was_worked_out()
    {
        var p = Case("2.2");
        Assert.Equal(p.Given("coldOhms"), Ohms(p.Given("coldOhms"), p.Given("coldCelsius")), 1e-6);
        // The printed temperature is rounded to a hundredth, which is 0.003 ohm.
        Assert.Equal(p.Given("hotOhms"), Ohms(p.Given("coldOhms"), p.Expected("hotCelsius")), 0.004);
        Assert.Equal(p.Given("hotOhms"), Ohms(p.Given("coldOhms"), p.Given("coldCelsius") + p.Expected("rise")), 0.004);
    }

    [Fact]
    public void A_rise_counts_from_the_room_as_it_is_at_the_end()
    {
        var p = Case("2.3");
        Assert.Equal(p.Given("hotOhms"), Ohms(p.Given("coldOhms"), p.Given("roomCelsius") + p.Expected("riseOverRoom")), 1e-6);
    }

    [Fact]
    public void A_winding_measured_at_22_degrees_is_referred_to_20_first()
    {
        var p = Case("2.4");
        var ohmsAt20 = p.Given("coldOhms") * p.Given("coldOhms") / Ohms(p.Given("coldOhms"), p.Given("coldCelsius"));
        Assert.Equal(p.Given("coldOhms"), Ohms(ohmsAt20, p.Given("coldCelsius")), 1e-9);
        var hot = Ohms(ohmsAt20, p.Given("hotCelsius"));
        p.Agrees("hotOhms", hot, 0.005);
        Assert.True(Math.Abs(hot - p.Misprinted("hotOhms")) > 2);
    }

    [Theory]
    [InlineData("2.5-105")]
    [InlineData("2.5-100")]
    public void Copper_follows_its_factor_between_two_temperatures(string id)
    {
        var p = Case(id);
        p.Agrees("factor", Ohms(7, p.Given("hotCelsius")) / Ohms(7, p.Given("coldCelsius")), 0.0001);
    }

    /// <summary>A length of wire wound on a core: the only conductor here that follows its temperature.</summary>
    [Theory]
    [InlineData("1.7-12")]
    [InlineData("1.7-14")]
    [InlineData("1.7-16")]
    [InlineData("1.7-18")]
    public void A_thousand_feet_of_wire_wound_up_read_the_wire_table_at_75_degrees(string id)
    {
        var p = Case(id);
        p.Agrees("ohmsAt75", Ohms(p.Given("ohmsAt20"), 75), 0.002 * p.Expected("ohmsAt75"));
    }

    [Fact]
    public void Nothing_but_windings_follows_the_temperature()
    {
        var unit = new SheetDraft().Wire("w", "a", "b", 2).Resistor("r", "b", "c", 5).Unit();
        Assert.Equal(unit.Read("ohms", ["a", "c"]), unit.Read("ohms", ["a", "c"], new { celsius = 90 }));
    }

    private static double Ohms(double ohmsAt20, double celsius) =>
        new SheetDraft()
            .Core("core", "coil", 1000, 1)
            .Winding("coil", "a", "b", 100, ohmsAt20)
            .Unit()
            .Read("ohms", ["a", "b"], new { celsius });
}
