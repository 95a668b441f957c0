using CsCheck;

namespace Ohmstead.Electrical.Tests.Reckoning.Proving;

/// <summary>Volts over amps of a post: a straight line through its readings, each at its own supply.</summary>
public class RegulationTests
{
    /// <remarks>Readings made from a line by the same words: E = 20 V at 120 V, r = 0.3 Ω. No road of our own leads back to them.</remarks>
    [Fact]
    public void Readings_made_from_a_line_give_it_back_at_any_supply() =>
        Gen.Select(Gen.Double[5, 30], Gen.Double[0.05, 0.9], Gen.Double[105, 130], Gen.Double[105, 130])
            .Sample(
                (e, r, s1, s2) =>
                {
                    FormattableString question = $$"""
                        "question": "regulation", "supplyVolts": 120, "atAmps": [2, 5],
                        "points": [ { "amps": 0, "volts": {{e * s1 / 120:R}}, "supplyVolts": {{s1:R}} }, { "amps": 3, "volts": {{(
                            e * s2 / 120
                        ) - (3 * r):R}}, "supplyVolts": {{s2:R}} },
                                    { "amps": 4, "volts": {{e - (4 * r):R}} } ]
                        """;
                    var answer = Asked.Answer(FormattableString.Invariant(question));
                    Assert.Equal(e, answer.Number("noLoadVolts"), 1e-8);
                    Assert.Equal(r, answer.Number("sourceOhms"), 1e-8);
                    Assert.Equal(e - (2 * r), answer.Number("at[0].volts"), 1e-8);
                    Assert.Equal(100 * ((e / (e - (5 * r))) - 1), answer.Number("at[1].regulationPercent"), 1e-6);
                    Assert.Equal(0, answer.Number("worstResidualVolts"), 1e-8);
                },
                iter: 100
            );

    [Fact]
    public void What_lies_off_the_line_is_said_in_volts()
    {
        // Amps 0, 1, 2 and volts 10, 9.7, 9: the line is 10.0667 − 0.5·I, off by 1/15, 2/15, 1/15.
        var answer = Asked.Answer(
            """
            "question": "regulation", "supplyVolts": 120, "atAmps": [],
            "points": [ { "amps": 0, "volts": 10 }, { "amps": 1, "volts": 9.7 }, { "amps": 2, "volts": 9 } ]
            """
        );
        Assert.Equal(0.5, answer.Number("sourceOhms"), 1e-9);
        Assert.Equal(2 / 15.0, answer.Number("worstResidualVolts"), 1e-9);
    }

    [Theory]
    [InlineData(2.5, 119)]
    [InlineData(2.5, 123)]
    [InlineData(0, 123)]
    public void Points_of_one_current_say_nothing_of_the_ohms_whatever_the_supply(double amps, double supply) =>
        Assert.Equal(
            ["$.points"],
            Asked.Refused(
                FormattableString.Invariant(
                    $$"""
                    "question": "regulation", "supplyVolts": 120, "atAmps": [1], "points": [ { "amps": {{amps}}, "volts": 19, "supplyVolts": 119 }, { "amps": {{amps}}, "volts": 19.1, "supplyVolts": {{supply}} } ]
                    """
                )
            )
        );

    [Theory]
    [InlineData("\"supplyVolts\": 0,", "", "$.supplyVolts")]
    [InlineData("\"supplyVolts\": 120,", ", \"supplyVolts\": 0", "$.points[1].supplyVolts")]
    public void A_supply_of_nothing_is_refused(string supply, string own, string path) =>
        Assert.Equal(
            [path],
            Asked.Refused(
                $$"""
                "question": "regulation", {{supply}} "atAmps": [1], "points": [ { "amps": 0, "volts": 19 }, { "amps": 2.5, "volts": 18{{own}} } ]
                """
            )
        );
}
