using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.Tests.Reckoning.Standards;

/// <summary>What meters show of waves that are no sine (tests/Reference/published/measurement.json, check values 9.10–9.13).</summary>
public class MeterWaveTests
{
    public static TheoryData<string> ThroughDc => [.. Published.All("measurement", "9.10-").Select(p => p.Id)];

    public static TheoryData<string> WithoutDc => [.. Published.All("measurement", "9.11-").Select(p => p.Id)];

    private static JsonObject Shows(string wave, double rms, double duty = 50) =>
        Asked.Answer(
            FormattableString.Invariant(
                $"\"question\": \"meter-shows\", \"wave\": \"{wave}\", \"rmsVolts\": {rms}, \"dutyPercent\": {duty}"
            )
        );

    private static string WaveOf(string id) => id[(id.IndexOf('-', StringComparison.Ordinal) + 1)..];

    [Theory]
    [MemberData(nameof(ThroughDc))]
    public void A_meter_that_lets_DC_through_errs_as_published(string id)
    {
        var p = Published.Case("measurement", id);
        var shows = Shows(id.Split('-')[1], p.Given("rmsVolts"), p.Given("dutyPercent"));
        p.Agrees("errorPercent", shows.Number("averageErrorPercent"), 0.55);
        if (p.Expects("volts"))
            p.Agrees("volts", shows.Number("averageWithDcVolts"), 0.0005);
    }

    /// <remarks>The average type on a half wave is misprinted as 0.764: with sin θ = 1/π it is π/(2√2)·(4·cos θ − (2/π)(π − 2θ))/π = 0.7794.</remarks>
    [Theory]
    [MemberData(nameof(WithoutDc))]
    public void A_meter_that_lets_no_DC_through_shows_what_is_published(string id)
    {
        var p = Published.Case("measurement", id);
        var shows = Shows(WaveOf(id), p.Given("rmsVolts"));
        p.Agrees("trueRms", shows.Number("trueRmsVolts"), 0.0011);
        p.Agrees("average", shows.Number("averageVolts"), 0.0026);
        p.Agrees("dc", shows.Number("dcVolts"), 0.0007);
        if (!p.IsMisprinted)
            return;
        var angle = Math.Asin(1 / Math.PI);
        var derived = Math.PI / (2 * Math.Sqrt(2)) * ((4 * Math.Cos(angle)) - (2 / Math.PI * (Math.PI - (2 * angle)))) / Math.PI;
        Assert.Equal(derived, shows.Number("averageVolts"), 1e-5);
        Assert.True(shows.Number("averageVolts") - p.Misprinted("average") > 0.014);
    }

    /// <remarks>Closed form: a pulse that is on for a share d of the time has the mean RMS·√d; of 0.1 % √0.001.</remarks>
    [Theory]
    [InlineData(0.1)]
    [InlineData(30)]
    public void A_short_pulse_has_its_own_mean(double duty)
    {
        var (shows, d) = (Shows("pulse", 10, duty), duty / 100);
        Assert.Equal(10 * Math.Sqrt(d), shows.Number("dcVolts"), 1e-9);
        Assert.Equal(10 * Math.Sqrt(1 - d), shows.Number("trueRmsVolts"), 1e-9);
        Assert.Equal(10 * Math.PI / Math.Sqrt(2) * Math.Sqrt(d) * (1 - d), shows.Number("averageVolts"), 1e-9);
    }

    [Fact]
    public void A_half_wave_shows_five_different_numbers()
    {
        var p = Published.Case("measurement", "9.12");
        var shows = Shows("half-wave", p.Given("rmsVolts"));
        foreach (
            var (name, field) in new[]
            {
                ("dc", "dcVolts"),
                ("rms", "rmsVolts"),
                ("trueRms", "trueRmsVolts"),
                ("average", "averageVolts"),
                ("averageWithDc", "averageWithDcVolts"),
            }
        )
            p.Agrees(name, shows.Number(field), 6e-5);
        Assert.Equal(-29.3, shows.Number("averageErrorPercent"), 0.05);
        // The same wave, asked for by its DC.
        var byDc = Asked.Answer("\"question\": \"meter-shows\", \"wave\": \"half-wave\", \"dcVolts\": 0.4502");
        p.Agrees("rms", byDc.Number("rmsVolts"), 1e-4);
    }

    [Fact]
    public void AC_and_DC_add_by_their_squares()
    {
        var p = Published.Case("measurement", "9.13");
        var shows = Shows("half-wave", 1);
        Assert.Equal(p.Given("ac"), shows.Number("trueRmsVolts"), 0.001);
        Assert.Equal(p.Given("dc"), shows.Number("dcVolts"), 0.001);
        p.Agrees("volts", Math.Sqrt(Math.Pow(shows.Number("trueRmsVolts"), 2) + Math.Pow(shows.Number("dcVolts"), 2)), 1e-9);
    }

    [Fact]
    public void On_a_sine_every_AC_meter_is_right()
    {
        var shows = Shows("sine", 12);
        foreach (var field in new[] { "rmsVolts", "trueRmsVolts", "averageVolts", "averageWithDcVolts" })
            Assert.Equal(12, shows.Number(field), 1e-4);
        Assert.Equal(0, shows.Number("dcVolts"), 1e-9);
    }

    [Theory]
    [InlineData("\"wave\": \"sine\", \"dcVolts\": 1", "$.dcVolts")]
    [InlineData("\"wave\": \"half-wave\", \"dcVolts\": 1, \"rmsVolts\": 2", "$.dcVolts")]
    [InlineData("\"wave\": \"half-wave\"", "$.rmsVolts")]
    [InlineData("\"wave\": \"saw\", \"rmsVolts\": 2", "$.wave")]
    public void What_cannot_be_is_refused(string rest, string path) =>
        Assert.Equal([path], Asked.Refused($"\"question\": \"meter-shows\", {rest}"));
}
