using MathNet.Numerics.Distributions;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>The predicted 95 % bands against units drawn by the contract's spread: low and high within a tenth of the band's width.</summary>
public class BandTests(ITestOutputHelper output)
{
    private const int Draws = 2000;
    private const int Seed = 160;

    [Fact]
    public void Bands_of_the_sound_sample_sheet_agree_with_drawn_units() => Compare(Reference.Twin160, []);

    [Theory]
    [InlineData("roller-left:worn=2")]
    [InlineData("disc-left:leaky=4")]
    [InlineData("primary:shorted-turns=8")]
    [InlineData("cord-1:resistive=3")]
    [InlineData("roller-right:worn")]
    [InlineData("disc-right:high-drop")]
    public void Bands_with_a_fault_of_one_size_or_any_agree_with_drawn_units(string fault) => Compare(Reference.Twin160, [fault]);

    private void Compare(TypeSheet sheet, string[] faults)
    {
        var unit = new BenchUnit(sheet);
        AssumedFault[] assumed = [.. faults.Select(f => Assumed(unit, f))];
        var drawn = Draw(unit, assumed);
        var bands = Prediction.Run(unit.Model, sheet.Readings.Select(r => (r, r.State)), [.. assumed]);
        var wrong = new List<string>();
        foreach (var band in bands)
        {
            var values = drawn[band.Spec.Id];
            Array.Sort(values);
            var (low, high) = (Quantile(values, 0.025), Quantile(values, 0.975));
            var off = Math.Max(Off(band.Low, low, high - low), Off(band.High, high, high - low));
            output.WriteLine(FormattableString.Invariant($"{band.Spec.Id,-18} {off,6:F3}  ours {band.Low:G5}..{band.High:G5}  drawn {low:G5}..{high:G5}"));
            if (off > 0.1) wrong.Add(FormattableString.Invariant($"{band.Spec.Id}: {off:F2} of the width; ours {band.Low:G5}..{band.High:G5}, drawn {low:G5}..{high:G5}"));
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

    /// <summary>
    /// Draws units evenly (a Latin hypercube: every parameter takes each of its strata once), which leaves a quantile of 2,000
    /// an error of about a hundredth of the band's width.
    /// </summary>
    private static Dictionary<string, double[]> Draw(BenchUnit unit, AssumedFault[] faults)
    {
        var random = new Random(Seed);
        var (specs, parameters) = (unit.Model.Sheet.Readings, unit.Model.Parameters);
        var values = specs.ToDictionary(r => r.Id, _ => new double[Draws], StringComparer.Ordinal);
        var normals = parameters.Select(_ => Strata(random).Select(u => Normal.InvCDF(0, 1, u)).ToArray()).ToArray();
        var sizes = faults.Select(_ => Strata(random)).ToArray();
        var nominal = faults.Select(f => new Fault(f.Mode, f.Size ?? f.Mode.MiddleSize)).ToArray();
        var circuits = specs.Select(r => new FaultedCircuits(unit.Model, r, r.State).For(nominal)).ToArray();
        var solver = new ReadingSolver();
        for (var n = 0; n < Draws; n++)
        {
            var one = unit.Model.Nominal.Copy();
            for (var p = 0; p < parameters.Length; p++) one.Scale(parameters[p], Math.Exp(parameters[p].Sigma * normals[p][n]));
            for (var f = 0; f < faults.Length; f++) new Fault(faults[f].Mode, faults[f].Size ?? faults[f].Mode.SizeAt(sizes[f][n])).ApplyTo(one);
            for (var r = 0; r < circuits.Length; r++)
            {
                var solution = solver.Solve(circuits[r], one);
                values[specs[r].Id][n] = solution.Value > Solution.OverRange(specs[r].Quantity) ? double.PositiveInfinity : solution.Value;
            }
        }
        return values;
    }

    private static double[] Strata(Random random)
    {
        var strata = Enumerable.Range(0, Draws).Select(n => (n + random.NextDouble()) / Draws).ToArray();
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
