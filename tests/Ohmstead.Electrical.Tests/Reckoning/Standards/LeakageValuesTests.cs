using System.Text.Json.Nodes;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Electrical.Reckoning.Standards;

namespace Ohmstead.Electrical.Tests.Reckoning.Standards;

/// <summary>Touch current and insulation against published values (tests/Reference/published/leakage.json, check values 8.2, 8.5, 8.7).</summary>
public class LeakageValuesTests
{
    [Fact]
    public void The_weighted_network_has_its_two_corners()
    {
        var p = Published.Case("leakage", "8.2");
        p.Agrees("skinHertz", TouchNetwork.SkinHertz, 0.5);
        p.Agrees("filterHertz", TouchNetwork.FilterHertz, 0.5);
    }

    /// <remarks>Closed forms: 2000 Ω at DC; at the filter’s corner 1/√2 is left; far above both corners the skin is bridged and 500 Ω are left.</remarks>
    [Fact]
    public void Its_ohms_and_its_filter_are_those_of_the_drawing()
    {
        Assert.Equal(2000, TouchNetwork.Ohms(0), 1e-9);
        Assert.Equal(500, TouchNetwork.Ohms(1e7), 0.1);
        Assert.Equal(Math.Sqrt(0.5), TouchNetwork.FilterShare(TouchNetwork.FilterHertz), 1e-12);
        // At the skin’s corner 1500/(1 + j) = 750 − 750j beside 500.
        Assert.Equal(Math.Sqrt((1250 * 1250.0) + (750 * 750)), TouchNetwork.Ohms(TouchNetwork.SkinHertz), 1e-9);
        foreach (var part in new[] { "1.5 kΩ", "0.22 µF", "500 Ω", "10 kΩ", "0.022 µF" })
            Assert.Contains(part, TouchNetwork.Parts, StringComparison.Ordinal);
    }

    private static JsonObject Touch(double volts, string rest = "") =>
        Asked.Answer(
            FormattableString.Invariant(
                $"\"question\": \"verdict\", \"limit\": {{ \"max\": 0.25, \"unit\": \"mA\" }}, \"meter\": {{ \"percent\": 1, \"floor\": 0.001 }}, \"touch\": {{ \"volts\": [{volts:R}, 0.001], \"network\": \"1500-ohm\", \"hertz\": 60{rest} }}"
            )
        );

    /// <remarks>8.5, closed form: C = I/(2πf·V). Half of it on a line of 240 V.</remarks>
    [Fact]
    public void Half_a_milliampere_is_explained_by_eleven_nanofarads()
    {
        var p = Published.Case("leakage", "8.5");
        var volts = p.Given("milliamps") * 1.5;
        p.Agrees("nanofarads", Touch(volts).Number("nanofarads"), 0.005);
        Assert.Equal(p.Expected("nanofarads") / 2, Touch(volts, ", \"supplyVolts\": 240").Number("nanofarads"), 0.005);
        Assert.Contains(
            Touch(volts)["words"]!.AsArray(),
            w => w!.GetValue<string>().Contains("A capacitor of 11 nF", StringComparison.Ordinal)
        );
        Assert.Equal(1500, Touch(volts).Number("networkOhms"), 1e-9);
    }

    [Fact]
    public void A_trickle_is_not_explained() =>
        Assert.DoesNotContain(Touch(0.06)["words"]!.AsArray(), w => w!.GetValue<string>().Contains("capacitor", StringComparison.Ordinal));

    [Fact]
    public void DC_is_as_hard_on_insulation_as_the_peak_of_AC()
    {
        var p = Published.Case("leakage", "8.7");
        var ac = HighVolts.OfNewEquipment(p.Given("lineVolts"));
        p.Agrees("ac", ac, 1e-9);
        p.Agrees("dc", HighVolts.DcOf(ac), 0.5);
        Assert.Equal(ac, HighVolts.AcOf(HighVolts.DcOf(ac)), 1e-9);
    }
}
