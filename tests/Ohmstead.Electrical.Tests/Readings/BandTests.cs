using MathNet.Numerics.Distributions;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>The predicted 95 % bands against units drawn by the spread of docs/formats.md: low and high good to a tenth of the band's width.</summary>
public class BandTests(ITestOutputHelper output)
{
    private const int Seed = 160;

    /// <summary>Of the width. A tenth is allowed; what the drawing itself is off, up to 0.03, must not use that up.</summary>
    private const double Tolerance = 0.06;

    /// <summary>Of readings with alternating current: most of their bands are nearly normal.</summary>
    private const int Draws = 2500;

    /// <summary>Of readings with direct current, which cost little, and whose bands have long tails where insulation is read.</summary>
    private const int DirectDraws = 16_000;

    [Fact]
    public void Bands_of_the_sound_sample_sheet_agree_with_drawn_units() => Compare(Reference.Twin160, []);

    [Theory]
    [InlineData("roller-left:worn=2")]
    [InlineData("disc-left:leaky=4", Traits = ["kind", "long"])]
    [InlineData("primary:shorted-turns=8")]
    [InlineData("cord-1:resistive=3", Traits = ["kind", "long"])]
    [InlineData("roller-right:worn", Traits = ["kind", "long"])]
    [InlineData("disc-right:high-drop", Traits = ["kind", "long"])]
    [InlineData("ins-primary-core:low")]
    public void Bands_with_a_fault_of_one_size_or_any_agree_with_drawn_units(string fault) => Compare(Reference.Twin160, [fault]);

    [Fact]
    public void Bands_with_two_faults_of_any_size_agree_with_drawn_units() =>
        Compare(Reference.Twin160, ["disc-left:leaky", "w-left:resistive"]);

    [Theory]
    [InlineData("solo-110")]
    [InlineData("twin-175")]
    [InlineData("step-230")]
    public void Bands_of_the_demonstration_sheets_agree_with_drawn_units(string id) =>
        Compare(Reference.Sheet($"demo/{id}.sheet.json"), []);

    private void Compare(TypeSheet sheet, string[] faults)
    {
        var unit = new BenchUnit(sheet);
        AssumedFault[] assumed = [.. faults.Select(f => Assumed(unit, f))];
        // A bridge of four junctions takes ten milliseconds to solve: too long to draw thousands.
        var specs = sheet.Readings.Where(r => !IsBridge(sheet) || IsDirect(r)).ToArray();
        var drawn = Draw(unit, [.. specs.Where(r => !IsDirect(r))], assumed, Draws)
            .Concat(Draw(unit, [.. specs.Where(IsDirect)], assumed, DirectDraws))
            .ToDictionary(d => d.Key, d => d.Value, StringComparer.Ordinal);
        var bands = Prediction.Run(unit.Model, specs.Select(r => (r, r.State)), [.. assumed]);
        var wrong = new List<string>();
        foreach (var band in bands)
        {
            var values = drawn[band.Spec.Id];
            Array.Sort(values);
            var (low, high) = (Quantile(values, 0.025), Quantile(values, 0.975));
            var off = Math.Max(Off(band.Low, low, high - low), Off(band.High, high, high - low));
            output.WriteLine(
                FormattableString.Invariant(
                    $"{band.Spec.Id, -18} {off, 6:F3}  ours {band.Low:G5}..{band.High:G5}  drawn {low:G5}..{high:G5}"
                )
            );
            if (off > Tolerance)
                wrong.Add(
                    FormattableString.Invariant(
                        $"{band.Spec.Id}: {off:F2} of the width; ours {band.Low:G5}..{band.High:G5}, drawn {low:G5}..{high:G5}"
                    )
                );
        }
        Assert.Empty(wrong);
    }

    private static AssumedFault Assumed(BenchUnit unit, string text)
    {
        Assert.True(Fault.TryParse(text, unit.Catalogue, out var fault, out var hasSize, out var reason), reason);
        return new AssumedFault(fault.Mode, hasSize ? fault.Size : null);
    }

    private static double Off(double ours, double drawn, double width) =>
        double.IsInfinity(ours) || double.IsInfinity(drawn) ? (ours.Equals(drawn) ? 0 : 1) : Math.Abs(ours - drawn) / Math.Max(width, 1e-9);

    private static bool IsDirect(ReadingSpec r) =>
        r.Quantity is Quantity.Ohms or Quantity.InsulationOhms || r.State.Source is { IsDirect: true };

    private static bool IsBridge(TypeSheet sheet) => sheet.Elements.OfType<Rectifier>().Count() >= 4;

    /// <summary>
    /// Draws units evenly (a Latin hypercube: every parameter takes each of its strata once). Drawn at random, the error of a
    /// quantile would be √(p(1 − p)/n)/density: of the band's width 0.013 for a normal law and 2,500 draws; 0.016 at the upper
    /// end of a log-normal one of deviation 0.7 and 16,000 draws. Drawn evenly it is less.
    /// </summary>
    private static Dictionary<string, double[]> Draw(BenchUnit unit, ReadingSpec[] specs, AssumedFault[] faults, int draws)
    {
        var random = new Random(Seed);
        var parameters = unit.Model.Parameters;
        var values = specs.ToDictionary(r => r.Id, _ => new double[draws], StringComparer.Ordinal);
        var normals = parameters.Select(_ => Strata(random, draws).Select(u => Normal.InvCDF(0, 1, u)).ToArray()).ToArray();
        var sizes = faults.Select(_ => Strata(random, draws)).ToArray();
        var nominal = faults.Select(f => new Fault(f.Mode, f.Size ?? f.Mode.MiddleSize)).ToArray();
        var circuits = specs.Select(r => new FaultedCircuits(unit.Model, r, r.State).For(nominal)).ToArray();
        var solver = new ReadingSolver();
        for (var n = 0; n < draws; n++)
        {
            var one = unit.Model.Nominal.Copy();
            for (var p = 0; p < parameters.Length; p++)
                one.Scale(parameters[p], Math.Exp(parameters[p].Sigma * normals[p][n]));
            for (var f = 0; f < faults.Length; f++)
                new Fault(faults[f].Mode, faults[f].Size ?? faults[f].Mode.SizeAt(sizes[f][n])).ApplyTo(one);
            for (var r = 0; r < circuits.Length; r++)
            {
                var value = solver.Solve(circuits[r], one).Value!.Value;
                values[specs[r].Id][n] = value > Solution.OverRange(specs[r].Quantity) ? double.PositiveInfinity : value;
            }
        }
        return values;
    }

    private static double[] Strata(Random random, int draws)
    {
        var strata = Enumerable.Range(0, draws).Select(n => (n + random.NextDouble()) / draws).ToArray();
        random.Shuffle(strata);
        return strata;
    }

    private static double Quantile(double[] sorted, double share)
    {
        var at = share * (sorted.Length - 1);
        var n = (int)at;
        return double.IsInfinity(sorted[n + 1]) ? sorted[n + 1] : sorted[n] + ((at - n) * (sorted[n + 1] - sorted[n]));
    }
}
