namespace Ohmstead.Electrical.Tests.Reckoning.Deciding;

/// <summary>Resistance wire and lamps in place of others.</summary>
public class WireAndLampTests
{
    private const string Wire =
        "\"question\": \"resistance-wire\", \"diameterMillimetres\": 0.5, \"ohmMillimetresSquaredPerMetre\": 1.1, \"amps\": 2";

    /// <remarks>R·A = ρ·L, and the watts spread over circumference times length, in meters.</remarks>
    [Fact]
    public void Length_ohms_and_heat_hang_together()
    {
        var answer = Asked.Answer($"{Wire}, \"wantedOhms\": 3, \"perKelvin\": 0.0002, \"wireCelsius\": 220, \"dutyPercent\": 25");
        var metres = answer.Number("metres");
        Assert.Equal(3 * Math.PI * 0.25 * 0.25, 1.1 * metres, 1e-12);
        Assert.Equal(3, answer.Number("ohms"), 1e-12);
        Assert.Equal(3 / metres, answer.Number("ohmsPerMetre"), 1e-12);
        Assert.Equal(3 + (3 * 0.04), answer.Number("hotOhms"), 1e-12);
        Assert.Equal(2 * 2 * 3.12 / 4, answer.Number("watts"), 1e-12);
        Assert.Equal(3.12 / (Math.PI * 0.05 * metres * 100), answer.Number("wattsPerSquareCentimetre"), 1e-12);
    }

    [Fact]
    public void A_length_gives_the_ohms_that_would_ask_for_it()
    {
        var wanted = Asked.Answer($"{Wire}, \"wantedOhms\": 3");
        var given = Asked.Answer(FormattableString.Invariant($"{Wire}, \"metres\": {wanted.Number("metres"):R}"));
        Assert.Equal(3, given.Number("ohms"), 1e-12);
        Assert.Equal(wanted.Number("watts"), given.Number("watts"), 1e-12);
    }

    [Fact]
    public void The_old_sleeve_is_warned_of_every_time() =>
        Assert.Contains(
            Asked.Answer($"{Wire}, \"metres\": 1")["cautions"]!.AsArray(),
            c => c!.GetValue<string>().Contains("asbestos", StringComparison.Ordinal)
        );

    [Theory]
    [InlineData("\"perKelvin\": 0", "$.wantedOhms")]
    [InlineData("\"wantedOhms\": 0", "$.wantedOhms")]
    [InlineData("\"wantedOhms\": 1, \"metres\": 1", "$.metres")]
    [InlineData("\"metres\": 1, \"perKelvin\": -0.01, \"wireCelsius\": 500", "$.perKelvin")]
    [InlineData("\"metres\": 1, \"dutyPercent\": 101", "$.dutyPercent")]
    public void A_wire_that_cannot_be_is_refused(string rest, string path) => Assert.Equal([path], Asked.Refused($"{Wire}, {rest}"));

    public static TheoryData<string> Rerated => ["11.2", "11.3"];

    [Theory]
    [MemberData(nameof(Rerated))]
    public void A_lamp_above_its_volts_is_brighter_and_dies_sooner_as_published(string id)
    {
        var p = Published.Case("lamps", id);
        // Against a lamp that is at its rated volts here, of the same rated watts.
        var answer = Asked.Answer(
            FormattableString.Invariant(
                $$"""
                "question": "lamp", "volts": {{p.Given("volts")}}, "original": { "volts": {{p.Given("volts")}}, "amps": {{p.Given(
                    "ratedVolts"
                ) / p.Given("volts")}}, "base": "screw" },
                "lamps": [ { "id": "lamp", "volts": {{p.Given("ratedVolts")}}, "amps": 1, "base": "bayonet" } ]
                """
            )
        );
        p.Agrees("amps", answer.Number("lamps[0].amps"), 0.0005);
        p.Agrees("light", answer.Number("lamps[0].lightPercent") / 100, 0.005);
        p.Agrees("lifeHigh", answer.Number("lamps[0].lifeFactorHigh"), 0.0005);
        if (p.Expects("lifeLow"))
            p.Agrees("lifeLow", answer.Number("lamps[0].lifeFactorLow"), 0.0005);
        Assert.Equal(answer.Number("lamps[0].amps") * p.Given("volts"), answer.Number("lamps[0].watts"), 1e-9);
        Assert.False(answer.At("lamps[0].fits")!.GetValue<bool>());
    }

    [Theory]
    [InlineData(0.27, true)]
    [InlineData(0.28, false)]
    public void A_tenth_more_heat_passes(double amps, bool passes)
    {
        var answer = Asked.Answer(
            FormattableString.Invariant(
                $$"""
                "question": "lamp", "volts": 14, "original": { "volts": 14, "amps": 0.25, "base": "b" }, "lamps": [ { "id": "x", "volts": 14, "amps": {{amps}}, "base": "b" } ]
                """
            )
        );
        Assert.Equal((passes, true), (answer.At("lamps[0].coolEnough")!.GetValue<bool>(), answer.At("lamps[0].fits")!.GetValue<bool>()));
        Assert.Equal(100 * amps / 0.25, answer.Number("lamps[0].lightPercent"), 1e-9);
    }

    /// <remarks>Below its rated volts a lamp lives longer: the lesser factor is then the other exponent's.</remarks>
    [Fact]
    public void The_lesser_life_comes_first_on_either_side_of_the_rated_volts()
    {
        var answer = Asked.Answer(
            """
            "question": "lamp", "volts": 7, "original": { "volts": 14, "amps": 0.25, "base": "b" }, "lamps": [ { "id": "x", "volts": 14, "amps": 0.25, "base": "b" } ]
            """
        );
        Assert.Equal((4096, 65536), (answer.Number("lamps[0].lifeFactorLow"), answer.Number("lamps[0].lifeFactorHigh")));
    }

    [Fact]
    public void A_lamp_without_base_or_with_another_s_name_is_refused() =>
        Assert.Equal(
            ["$.original.base", "$.lamps[1].id", "$.lamps[1].volts"],
            Asked.Refused(
                """
                "question": "lamp", "volts": 14, "original": { "volts": 14, "amps": 0.25 }, "lamps": [ { "id": "x", "volts": 14, "amps": 0.25, "base": "b" }, { "id": "x", "volts": 0, "amps": 1, "base": "b" } ]
                """
            )
        );
}
