using MathNet.Numerics.Integration;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis.Observed;

/// <summary>A wide parameter behind a fixed one: the amps bend with it, and the ohms say how far it is out.</summary>
/// <remarks>Expected: ∫ N(z; 0, 1) · Π N(reading; its value at z, 1/3) dz by Gauss–Legendre (MathNet).</remarks>
public class BentSpreadTests
{
    private const double Fixed = 10;
    private const double Wide = 20;
    private const double Sigma = 0.4;

    [Theory]
    [InlineData(0)]
    [InlineData(-1.5)]
    [InlineData(1.5)]
    [InlineData(2.5)]
    public void The_likelihood_holds_far_from_the_nominal_parameters(double z)
    {
        var unit = new SheetDraft()
            .Element("resistor", "fixed", "a", "b", new { ohms = Fixed, spread = new { ohms = 1e-6 } })
            .Element("resistor", "wide", "b", "g", new { ohms = Wide, spread = new { ohms = Sigma } })
            .Reading("ohms", "ohms", ["b", "g"])
            .Reading(
                "amps",
                "ac-amps",
                [],
                new
                {
                    source = new
                    {
                        from = "a",
                        to = "g",
                        volts = 120,
                    },
                }
            )
            .Unit();
        double[] Of(double at) => [Wide * Math.Exp(Sigma * at), 120 / (Fixed + (Wide * Math.Exp(Sigma * at)))];
        var readings = new UnitReadings(
            "draft",
            120,
            null,
            Meter.Usual,
            [.. unit.Model.Sheet.Readings.Select((r, n) => new TakenReading(r, Outcome.Value, Of(z)[n], [], "", "", r.State))],
            []
        );
        var library = new ReadingLibrary(unit.Model);
        var evidence = new Evidence(library, readings, 1e-3);
        var workers = new Workers(evidence.Set, 1);
        var rows = library.Rows(evidence.Set, workers, () => false);
        var spreads = new SpreadModel(evidence, rows, workers);
        double[] sound = [.. rows.Select(r => r.Sound)];
        var spread = spreads.Of(Members.None, sound);
        for (var n = 0; n < 3 && spreads.About(Members.None, sound, spread) is { } near; n++)
            spread = near;
        double Log(double at) =>
            (-0.5 * at * at)
            - (0.5 * Math.Log(2 * Math.PI))
            + Of(at)
                .Select((v, n) => evidence.Set.ToScale(n, v) - evidence.Measured(n))
                .Sum(d => (-1.5 * d * d) - (0.5 * Math.Log(2 * Math.PI / 3)));
        var most = Enumerable.Range(-400, 801).Max(k => Log(k / 100.0));
        var exact =
            most
            + Math.Log(
                Enumerable
                    .Range(-400, 800)
                    .Sum(k => GaussLegendreRule.Integrate(u => Math.Exp(Log(u) - most), k / 100.0, (k + 1) / 100.0, 10))
            );
        Assert.Equal(exact, workers.One(w => new Judge(evidence, spread, w).LogLikelihood(sound)), 0.15);
    }
}
