using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis.Observed;

/// <summary>How far the sound parameters move a reading depends on what else is there; what an OL says depends on how far.</summary>
public class SpreadAboutFaultsTests
{
    private const double Ohms = 10;
    private const double Sigma = 0.1;

    /// <summary>
    /// Two equal resistors side by side, one of which spreads: sound, it moves half as much as alone, on half the ohms. Expected: half the
    /// difference of the scale across ± one deviation, squared, and 1/3 of the meter's limit squared.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_set_of_faults_has_the_spread_of_the_faulted_unit(bool isOpen)
    {
        var (evidence, spreads, rows, workers, unit) = Bench(
            new SheetDraft()
                .Element("resistor", "wide", "a", "b", new { ohms = Ohms, spread = new { ohms = Sigma } })
                .Element("resistor", "other", "a", "b", new { ohms = Ohms, spread = new { ohms = 1e-6 } })
                .Reading("both", "ohms", ["a", "b"])
                .Unit(),
            Outcome.Value,
            Ohms / 2
        );
        var set = Members.None;
        if (isOpen)
        {
            var classes = ClassBuilder.Build(evidence, rows, unit.Catalogue.Odds(null), workers, out _);
            set = set.With(classes.Single(c => c.Lead.Name == "other:open"), 0);
        }
        double At(double wide) => evidence.Set.ToScale(0, isOpen ? wide : wide * Ohms / (wide + Ohms));
        var slope = (At(Ohms * Math.Exp(Sigma)) - At(Ohms * Math.Exp(-Sigma))) / 2;
        var predicted = workers.One(worker => worker.Predict(set, [rows[0].Sound]));
        Assert.Equal((slope * slope) + (1.0 / 3), spreads.Of(set, predicted).Gaussian.Covariance[0], 0.02 * slope * slope);
    }

    /// <summary>An OL at 5 MΩ, with a range of 20: Φ(−1.4/σ) of such parts are above it, with the meter's own doubt beside σ.</summary>
    [Fact]
    public void An_open_reading_below_the_range_is_the_likelier_the_wider_the_part_spreads()
    {
        double Log(double sigma)
        {
            var (evidence, spreads, rows, _, _) = Bench(
                new SheetDraft()
                    .Element("resistor", "path", "a", "b", new { ohms = 5e6, spread = new { ohms = sigma } })
                    .Reading("both", "ohms", ["a", "b"])
                    .Unit(),
                Outcome.OverRange,
                0
            );
            return evidence.LogOfOne(0, [rows[0].Sound], spreads.Of(Members.None, [rows[0].Sound]));
        }
        Assert.True(Log(0.05) < Log(0.3));
        Assert.True(Log(0.3) < Log(1));
    }

    private static (Evidence Evidence, SpreadModel Spreads, ReadingRow[] Rows, Workers Workers, BenchUnit Unit) Bench(
        BenchUnit unit,
        Outcome outcome,
        double value
    )
    {
        var spec = unit.Model.Sheet.Readings[0];
        var library = new ReadingLibrary(unit.Model);
        var readings = new UnitReadings("draft", 120, null, Meter.Usual, [new(spec, outcome, value, [], "", "", spec.State)], []);
        var evidence = new Evidence(library, readings, 1e-6);
        var workers = new Workers(evidence.Set, 1);
        var rows = library.Rows(evidence.Set, workers, () => false);
        return (evidence, new SpreadModel(evidence, rows, workers), rows, workers, unit);
    }

    /// <summary>
    /// Both resistors spread by a tenth: each moves the two together by half of what it would alone, in quadrature; with one of them drifted
    /// to twice its ohms by a fault its own spread still counts, at its new share of the current.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_parameter_has_its_part_in_the_spread(bool isDrifted)
    {
        var (evidence, spreads, rows, workers, unit) = Bench(
            new SheetDraft()
                .Element("resistor", "wide", "a", "b", new { ohms = Ohms, spread = new { ohms = Sigma } })
                .Element("resistor", "other", "a", "b", new { ohms = Ohms, spread = new { ohms = Sigma } })
                .Reading("both", "ohms", ["a", "b"])
                .Unit(),
            Outcome.Value,
            Ohms / 2
        );
        var (set, other) = (Members.None, Ohms);
        if (isDrifted)
        {
            var drifted = ClassBuilder
                .Build(evidence, rows, unit.Catalogue.Odds(null), workers, out _)
                .Single(c => c.Lead.Name == "other:drifted");
            (set, other) = (set.With(drifted, 0.9), Ohms * drifted.SizeAt(0.9));
        }
        double At(double wide, double beside) => evidence.Set.ToScale(0, wide * beside / (wide + beside));
        var up = Math.Exp(0.1 * Sigma);
        var first = (At(Ohms * up, other) - At(Ohms, other)) / 0.1;
        var second = (At(Ohms, other * up) - At(Ohms, other)) / 0.1;
        var predicted = workers.One(worker => worker.Predict(set, [rows[0].Sound]));
        var covariance = spreads.Of(set, predicted).Gaussian.Covariance[0];
        Assert.Equal((first * first) + (second * second) + (1.0 / 3), covariance, 0.02 * covariance);
    }

    /// <summary>A set that was fitted is judged by the spread it was fitted with; one that was only found by that of the set itself, worked out.</summary>
    [Fact]
    public void A_set_that_was_fitted_keeps_its_spread()
    {
        var unit = WireBench.Chain(2);
        var pieces = new Pieces(unit, [WireBench.Value(unit, "whole", 5)]);
        var (sound, fitted) = (pieces.Fitted(Members.None), pieces.Fitted(pieces.Set(("w0:resistive", 0.5))));
        Assert.Same(fitted.Spread, pieces.Spreads.Of(fitted));
        var found = new FoundHypothesis(fitted.Members, sound)
        {
            Predicted = fitted.Predicted,
            LeftOut = [],
            LogEvidence = 0,
        };
        Assert.Same(sound.Spread, found.Spread);
        Assert.NotSame(sound.Spread, pieces.Spreads.Of(found));
        Assert.Equal(fitted.Spread.Gaussian.Covariance[0], pieces.Spreads.Of(found).Gaussian.Covariance[0], 1e-3);
    }

    /// <summary>Two resistors, each with a reading of its own: a fault of one leaves what the other may show as it was.</summary>
    [Theory]
    [InlineData("second:drifted", 0)]
    [InlineData("first:drifted", 1)]
    public void A_reading_that_no_fault_moves_spreads_as_in_the_sound_unit(string fault, int reading)
    {
        var unit = new SheetDraft()
            .Element("resistor", "first", "a", "g", new { ohms = Ohms, spread = new { ohms = 3 * Sigma } })
            .Element("resistor", "second", "b", "g", new { ohms = 3 * Ohms, spread = new { ohms = 2 * Sigma } })
            .Reading("first", "ohms", ["a", "g"])
            .Reading("second", "ohms", ["b", "g"])
            .Unit();
        var pieces = new Pieces(unit, [WireBench.Value(unit, "first", Ohms), WireBench.Value(unit, "second", 3 * Ohms)]);
        var set = pieces.Set((fault, 0.2));
        var (sound, spread) = (pieces.Spreads.Of(Members.None, pieces.Sound), pieces.Spreads.Of(set, pieces.Predict(set)));
        Assert.True(sound.Gaussian.Covariance[3 * reading] > 10);
        Assert.Equal(sound.Gaussian.Covariance[3 * reading], spread.Gaussian.Covariance[3 * reading], 1e-12);
        Assert.Equal(sound.Shift[reading], spread.Shift[reading], 1e-12);
        Assert.NotEqual(0, spread.Shift[reading]);
        // The other lies at its new ohms: ½σ²·d²t/d(ln R)² of t = ln(1 + pR/f)/p.
        var (moved, error) = (1 - reading, Meter.Usual.For(Ohmstead.Electrical.TypeSheets.Quantity.Ohms));
        var ohms = (moved == 0 ? Ohms : 3 * Ohms) * 0.4 * Math.Pow(2.5 / 0.4, 0.2);
        var (sigma, x) = (moved == 0 ? 3 * Sigma : 2 * Sigma, error.Percent / 100 * ohms / error.Floor);
        var shift = 0.5 * sigma * sigma * x / ((1 + x) * (1 + x)) / (error.Percent / 100);
        Assert.Equal(shift, spread.Shift[moved], 0.1 * shift);
    }

    /// <summary>
    /// A wire across a resistor hides it: broken it lays it open, and then what that varies by is worked out too; poor it is not looked at, and
    /// costs no solution more than what the sound reading hangs on: one resistor
    /// instead of two.
    /// </summary>
    [Fact]
    public void Only_what_a_break_lays_open_is_worked_out_anew()
    {
        var unit = new SheetDraft()
            .Element("resistor", "rest", "a", "b", new { ohms = Ohms, spread = new { ohms = Sigma } })
            .Element("resistor", "hidden", "b", "c", new { ohms = 5 * Ohms, spread = new { ohms = Sigma } })
            .Element("wire", "across", "b", "c", new { ohms = 0.001, spread = new { ohms = 0.01 } })
            .Reading("row", "ohms", ["a", "c"])
            .Reading("bare", "ohms", ["a", "c"], new { lifted = new[] { "across" } })
            .Unit();
        var pieces = new Pieces(unit, [WireBench.Value(unit, "row", Ohms), WireBench.Value(unit, "bare", 6 * Ohms)]);
        (double Variance, long Solved) Of(string fault)
        {
            var set = pieces.Set((fault, 0.5));
            var (predicted, before) = (pieces.Predict(set), pieces.Workers.Solved);
            var spread = pieces.Spreads.Of(set, predicted);
            return (spread.Gaussian.Covariance[0], pieces.Workers.Solved - before);
        }
        var (open, poor) = (Of("across:open"), Of("across:resistive"));
        double Slope(double one) =>
            (pieces.Evidence.Set.ToScale(0, (6 * Ohms) + (one * (Math.Exp(0.1 * Sigma) - 1))) - pieces.Evidence.Set.ToScale(0, 6 * Ohms))
            / 0.1;
        var variance = Math.Pow(Slope(Ohms), 2) + Math.Pow(Slope(5 * Ohms), 2) + (1.0 / 3);
        Assert.Equal(variance, open.Variance, 0.02 * variance);
        Assert.Equal(2 * poor.Solved, open.Solved);
    }
}
