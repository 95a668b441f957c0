using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Observed;

/// <summary>The benches by the figures of docs/methods/diagnosis.md, "Benches" (common practice, no source), on the sample sheet.</summary>
public class BenchFiguresTests
{
    private static readonly BenchUnit Twin = new(Reference.Twin160);

    private static readonly Evidence Evidence = new(
        new ReadingLibrary(Twin.Model),
        WireBench.Unit(Twin, [WireBench.Value(Twin, "volts-17", Twin.ReadListed("volts-17")), WireBench.OL(Twin, "insulation-core")]),
        0.02
    );

    private static readonly AssumedBench[] Others = new BenchTable(Evidence).Others();

    private static AssumedBench Of(DoubtAbout about) => Others.First(b => b.About == about);

    [Fact]
    public void One_of_them_it_is()
    {
        var matching = new BenchTable(Evidence).Matching;
        Assert.Equal((null, 0.805), (matching.About, matching.Chance));
        Assert.Equal(
            [
                (DoubtAbout.Line, 0.015),
                (DoubtAbout.Leads, 0.04),
                (DoubtAbout.Meter, 0.015),
                (DoubtAbout.Unit, 0.03),
                (DoubtAbout.Unit, 0.01),
                (DoubtAbout.Internal, 0.08),
                (DoubtAbout.Kind, 0.005),
            ],
            Others.Select(b => (b.About!.Value, b.Chance))
        );
        Assert.Equal(1, matching.Chance + Others.Sum(b => b.Chance), 1e-12);
    }

    [Fact]
    public void Unit_core_and_type_vary_by_their_figures_and_the_others_as_the_sheet_says()
    {
        foreach (var (p, n) in Twin.Model.Parameters.Select((p, n) => (p, n)))
        {
            var batch = Math.Pow(
                p.Kind switch
                {
                    ParameterKind.Turns => Math.Max(1.5, 0.012 / p.Sigma),
                    ParameterKind.LossOhms => Math.Max(1.5, 0.45 / p.Sigma),
                    _ => 1.5,
                },
                2
            );
            var core = p.Kind switch
            {
                ParameterKind.LossOhms => 1.2 / p.Sigma,
                ParameterKind.Excitation => 0.5 / p.Sigma,
                _ => 1,
            };
            Assert.Equal(batch, Of(DoubtAbout.Unit).Variances[n], 1e-9 * batch);
            Assert.Equal(9 * batch, Of(DoubtAbout.Kind).Variances[n], 1e-8 * batch);
            Assert.Equal(core * core, Of(DoubtAbout.Internal).Variances[n], 1e-9 * core * core);
            Assert.All([DoubtAbout.Line, DoubtAbout.Leads, DoubtAbout.Meter], about => Assert.Equal(1, Of(about).Variances[n]));
            Assert.Equal(1, new BenchTable(Evidence).Matching.Variances[n]);
        }
        Assert.Contains(Twin.Model.Parameters, p => p.Kind == ParameterKind.LossOhms);
        Assert.Contains(Twin.Model.Parameters, p => p.Kind == ParameterKind.Excitation);
    }

    /// <summary>Cells of another make: their drop by 1.5, their series resistance by 0.4 of the logarithm (common practice, no source).</summary>
    [Fact]
    public void A_batch_has_cells_in_common_and_another_type_three_times_all_of_it()
    {
        var (unit, kind) = (Of(DoubtAbout.Unit).Commons, Of(DoubtAbout.Kind).Commons);
        foreach (var (p, n) in Twin.Model.Parameters.Select((p, n) => (p, n)))
        {
            Assert.Equal(p.Kind == ParameterKind.SaturationAmps ? 1.5 / p.Sigma : 0, unit[2][n], 1e-9);
            Assert.Equal(p.Kind == ParameterKind.SeriesOhms ? 0.4 / p.Sigma : 0, unit[3][n], 1e-9);
            Assert.All(Enumerable.Range(0, 4), c => Assert.Equal(3 * unit[c][n], kind[c][n], 1e-9));
        }
        Assert.All(unit, c => Assert.Contains(c, v => v > 0));
        Assert.All([DoubtAbout.Line, DoubtAbout.Leads, DoubtAbout.Meter, DoubtAbout.Internal], about => Assert.Empty(Of(about).Commons));
    }

    [Fact]
    public void A_poor_meter_and_another_type_err_by_three_limits()
    {
        Assert.All(Others, b => Assert.Equal(b.About is DoubtAbout.Meter or DoubtAbout.Kind ? 9 : 1, b.ErrorVariance));
        var sound = Of(DoubtAbout.Meter) with { Sound = Quantity.Ohms };
        Assert.Equal((1, 9), (sound.ErrorVarianceOn(Quantity.Ohms), sound.ErrorVarianceOn(Quantity.AcVolts)));
    }

    /// <summary>3 % of the volts, in the meter's limits at them; an OL has no part in it.</summary>
    [Fact]
    public void A_line_is_off_for_the_type_too_and_nowhere_else()
    {
        var volts = Evidence.Value(0);
        var by = 0.03 * volts / Meter.Usual.For(Quantity.AcVolts).LimitAt(volts);
        Assert.All(
            [DoubtAbout.Line, DoubtAbout.Kind],
            about => Assert.Equal([by, 0], Assert.Single(Of(about).Shared).Select(v => Math.Round(v, 9)), (a, b) => Math.Abs(a - b) < 1e-6)
        );
        Assert.All([DoubtAbout.Meter, DoubtAbout.Unit, DoubtAbout.Internal], about => Assert.Empty(Of(about).Shared));
        Assert.Equal([0, 0], Assert.Single(Of(DoubtAbout.Leads).Shared));
        Assert.Equal(0, Evidence.SlopeOfScale(1));
    }
}
