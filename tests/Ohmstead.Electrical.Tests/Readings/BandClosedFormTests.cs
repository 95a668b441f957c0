using System.Collections.Immutable;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>Bands whose ends are known: one log-normal part, sizes that lie evenly on a logarithmic scale, and sums of two of them.</summary>
public class BandClosedFormTests
{
    /// <summary>97.5 % of a standard normal law lie below (tables of the normal law).</summary>
    private const double Deviations = 1.959964;

    /// <remarks>A log-normal value of median R and deviation σ in its logarithm lies in R·e^(∓1.96σ), 95 % of it.</remarks>
    [Theory]
    [InlineData(0.02)]
    [InlineData(0.14)]
    [InlineData(0.16)]
    [InlineData(0.7)]
    public void One_part_has_the_band_of_its_own_law(double sigma)
    {
        var band = Band(Row(("r", 100, sigma)), []);
        Assert.Equal(100, band.Value, 1e-6);
        Near(100 * Math.Exp(-Deviations * sigma), 100 * Math.Exp(Deviations * sigma), band, 0.02);
    }

    /// <remarks>The size of a resistive wire lies evenly on ln 0.4 … ln 30: a share u of it below 0.4·75^u.</remarks>
    [Fact]
    public void A_fault_of_any_size_has_the_band_of_its_sizes()
    {
        var band = Band(Row(("w", 1, 0), ("r", 5, 0)), ["w:resistive"]);
        Assert.Equal(5 + Math.Sqrt(0.4 * 30), band.Value, 1e-6);
        Near(5 + (0.4 * Math.Pow(75, 0.025)), 5 + (0.4 * Math.Pow(75, 0.975)), band, 0.02);
    }

    [Fact]
    public void A_fault_of_a_given_size_has_no_width()
    {
        var band = Band(Row(("w", 1, 0), ("r", 5, 0)), ["w:resistive=2"]);
        Assert.Equal((7, 7, 7), (Math.Round(band.Low, 6), Math.Round(band.Value, 6), Math.Round(band.High, 6)));
    }

    /// <remarks>Two, three and four such sizes in a row, by counting 200,000 evenly drawn sums: their quantiles are good to half a percent.</remarks>
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Faults_of_any_size_in_a_row_have_the_band_of_their_sum(int faults)
    {
        var dice = new Random(faults);
        double[] sums =
        [
            .. Enumerable
                .Range(0, 200_000)
                .Select(_ => Enumerable.Range(0, faults).Sum(_ => 0.4 * Math.Pow(75, dice.NextDouble())))
                .Order(),
        ];
        var wires = Enumerable.Range(0, faults).Select(n => FormattableString.Invariant($"w{n}")).ToArray();
        var band = Band(Row([.. wires.Select(w => (w, 1.0, 0.0))]), [.. wires.Select(w => $"{w}:resistive")]);
        Near(sums[5_000], sums[195_000], band, 0.06);
    }

    /// <remarks>
    /// A part of deviation 0.3 beside a fault of any size: the product is sought where neither alone decides. ln of the ratio of a divider
    /// is not needed: both lie in one row, and the sum is counted as above.
    /// </remarks>
    [Fact]
    public void A_part_and_a_fault_of_any_size_share_the_band()
    {
        var dice = new Random(9);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
        double[] sums =
        [
            .. Enumerable.Range(0, 200_000).Select(_ => (20 * Math.Exp(0.3 * Normal())) + (0.4 * Math.Pow(75, dice.NextDouble()))).Order(),
        ];
        Near(sums[5_000], sums[195_000], Band(Row(("w", 1, 0), ("r", 20, 0.3)), ["w:resistive"]), 0.03);
    }

    /// <summary>Wires of so many ohms and such a spread, one behind the other.</summary>
    private static SheetDraft Row(params (string Id, double Ohms, double Sigma)[] wires)
    {
        var draft = new SheetDraft();
        for (var n = 0; n < wires.Length; n++)
            draft.Element(
                "wire",
                wires[n].Id,
                Place(n),
                Place(n + 1),
                new { ohms = wires[n].Ohms, spread = new { ohms = wires[n].Sigma } }
            );
        return draft.Reading("row", "ohms", [Place(0), Place(wires.Length)]);
    }

    private static PredictedReading Band(SheetDraft draft, string[] faults)
    {
        var unit = draft.Unit();
        var spec = unit.Model.Sheet.Readings[0];
        ImmutableArray<AssumedFault> assumed =
        [
            .. faults.Select(f =>
            {
                Assert.True(Fault.TryParse(f, unit.Catalogue, out var fault, out var hasSize, out var reason), reason);
                return new AssumedFault(fault.Mode, hasSize ? fault.Size : null);
            }),
        ];
        return Prediction.Run(unit.Model, [(spec, spec.State)], assumed)[0];
    }

    /// <summary>Both ends, to a share of the band's width.</summary>
    private static void Near(double low, double high, PredictedReading band, double share)
    {
        Assert.Equal(low, band.Low, share * (high - low));
        Assert.Equal(high, band.High, share * (high - low));
    }

    private static string Place(int n) => FormattableString.Invariant($"p{n}");
}
