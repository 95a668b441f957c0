using System.Globalization;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>
/// What is wrong with the bench: against closed forms where the unit is a few resistors, and by what it says of the sample sheet. The chances
/// and deviations of the benches are common practice, no source (docs/methods/diagnosis.md, "Benches").
/// </summary>
public class BenchDoubtTests
{
    private const double Percent = 0.5;
    private const double Floor = 0.02;
    private static readonly BenchUnit Twin = new(Reference.Twin160);
    private static readonly DiagnosisOptions Options = new() { RankNext = false };

    /// <summary>Resistors of 2 Ω that differ by 3 % and have no faults; each is read too high by the same.</summary>
    [Theory]
    [InlineData(3, 0.3)]
    [InlineData(4, 0.3)]
    [InlineData(5, 0.2)]
    [InlineData(4, -0.2)]
    [InlineData(6, 0.5)]
    public void Leads_in_every_reading_are_as_probable_as_eight_normal_laws_say(int resistors, double over)
    {
        const double ohms = 2;
        const double sigma = 0.03;
        var unit = Resistors(resistors, ohms, sigma);
        var result = Run(unit, [.. Ids(resistors).Select(id => WireBench.Value(unit, id, ohms + over))], 1e-12);
        // On the meter's scale: the limit of error is 1, its variance 1/3.
        double Limit(double v) => (Percent / 100 * v) + Floor;
        double Scale(double v) => Math.Log(1 + (Percent / 100 * v / Floor)) / (Percent / 100);
        var (z, slope, lead) = (Scale(ohms + over) - Scale(ohms), sigma * ohms / Limit(ohms), 0.3 / Limit(ohms + over));
        // n equal residuals z with variance v each and c in common: eigenvalues v + n·c once, v else.
        double Log(double v, double c) =>
            -0.5 * ((resistors * z * z / (v + (resistors * c))) + Math.Log(v + (resistors * c)) + ((resistors - 1) * Math.Log(v)));
        var (own, error) = (slope * slope, 1.0 / 3);
        double[] weights =
        [
            0.805 * Math.Exp(Log(own + error, 0)),
            0.015 * Math.Exp(Log(own + error, 0)),
            0.04 * Math.Exp(Log(own + error, lead * lead)),
            0.015 * Math.Exp(Log(own + (9 * error), 0)),
            0.03 * Math.Exp(Log((2.25 * own) + error, 0)),
            0.01 * Math.Exp(Log(own + error, 0)),
            0.08 * Math.Exp(Log(own + error, 0)),
            0.005 * Math.Exp(Log((20.25 * own) + (9 * error), 0)),
        ];
        var expected = weights[2] / weights.Sum();
        var doubt = result.Doubts.SingleOrDefault(d => d.About == DoubtAbout.Leads);
        if (expected < 0.5 || over < 0)
        {
            Assert.Null(doubt);
            return;
        }
        Assert.NotNull(doubt);
        // Of the eight at most three are worked out.
        Assert.Equal(expected, doubt.Probability, 0.01);
        Assert.Equal(0.3 * lead * resistors * z / (own + error + (resistors * lead * lead)), doubt.Value, 1e-3);
        Assert.Equal(Ids(resistors).Order(StringComparer.Ordinal), doubt.Readings.Order(StringComparer.Ordinal));
        Assert.Equal(doubt.Value, Gates.DoubtsOf(WireBench.Unit(unit, []), result).LeadOhms);
    }

    [Fact]
    public void A_sound_unit_on_a_good_bench_raises_no_doubt()
    {
        var result = Run(Twin, All(Twin, _ => true, (_, v) => v));
        Assert.Empty(result.Doubts);
        Assert.Empty(result.Slips);
        Assert.True(result.IsExplained);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(-5)]
    public void A_line_that_was_not_as_noted_is_named_with_its_volts(double off)
    {
        var share = 1 + (off / Reference.Twin160.SupplyVolts);
        var taken = All(Twin, r => !OnMains(r) || r.Quantity == Quantity.AcVolts, (r, v) => OnMains(r) ? v * share : v);
        var doubt = Assert.Single(Run(Twin, taken).Doubts);
        Assert.Equal(DoubtAbout.Line, doubt.About);
        Assert.Equal(Reference.Twin160.SupplyVolts + off, doubt.Value, 0.5);
        Assert.All(doubt.Readings, id => Assert.True(OnMains(Reference.Twin160.FindReading(id)!)));
    }

    [Fact]
    public void A_meter_that_errs_by_three_of_its_limits_is_named_with_its_factor()
    {
        var dice = new Random(5);
        double Err(ReadingSpec r, double v) =>
            double.IsInfinity(v) ? v : v + (3 * Meter.Usual.For(r.Quantity).LimitAt(v) * ((2 * dice.NextDouble()) - 1));
        var doubt = Assert.Single(Run(Twin, All(Twin, r => r.Quantity is not (Quantity.InsulationOhms or Quantity.Ohms), Err)).Doubts);
        Assert.Equal(DoubtAbout.Meter, doubt.About);
        Assert.InRange(doubt.Value, 2, 4);
        Assert.NotEmpty(doubt.Readings);
    }

    /// <summary>
    /// The watts of a sound unit lie off by more of the meter's limits than a poor voltmeter's volts: two of the sheet's deviations of the
    /// core's loss. That is the unit's spread, and none of the meter's error.
    /// </summary>
    [Fact]
    public void A_meter_that_errs_on_volts_alone_is_named_for_volts_whatever_the_unit_spreads()
    {
        var (values, dice) = (Twin.Model.Nominal.Copy(), new Random(7));
        foreach (var p in Twin.Model.Parameters.Where(p => p.Path.EndsWith("lossOhms", StringComparison.Ordinal)))
            values.Scale(p, Math.Exp(-2 * p.Sigma));
        double Err(ReadingSpec r) =>
            Twin.Read(r, values) is var v && !double.IsInfinity(v) && r.Quantity == Quantity.AcVolts
                ? v + (3 * Meter.Usual.For(r.Quantity).LimitAt(v) * ((2 * dice.NextDouble()) - 1))
                : v;
        var doubt = Assert.Single(
            Run(Twin, All(Twin, r => r.Quantity is Quantity.AcVolts or Quantity.AcAmps or Quantity.Watts, (r, _) => Err(r))).Doubts
        );
        Assert.Equal(DoubtAbout.Meter, doubt.About);
        Assert.Equal([Quantity.AcVolts], doubt.Readings.Select(id => Reference.Twin160.FindReading(id)!.Quantity).Distinct());
    }

    /// <summary>Half the loss resistance: as much again in the core as a sound one takes.</summary>
    [Fact]
    public void A_core_that_takes_more_than_any_sound_one_is_named_with_its_watts()
    {
        var values = Twin.Model.Nominal.Copy();
        foreach (var p in Twin.Model.Parameters.Where(p => p.Path.EndsWith("lossOhms", StringComparison.Ordinal)))
            values.Scale(p, 0.4);
        var taken = All(Twin, _ => true, (r, _) => Twin.Read(r, values));
        var doubt = Assert.Single(Run(Twin, taken).Doubts);
        Assert.Equal(DoubtAbout.Internal, doubt.About);
        var idle = Reference.Twin160.FindReading("watts-idle")!;
        Assert.Equal(Twin.Read(idle, values) - Twin.ReadListed("watts-idle"), doubt.Value, 1);
    }

    /// <summary>Sound readings with leads left in: a contact that all but one of them pass does the same, and is not very likely (0.8) for that.</summary>
    [Fact]
    public void Of_a_few_cold_readings_leads_left_in_are_no_burnt_breaker_contact_that_is_very_likely()
    {
        string[] cold = ["blades", "ohms-5", "ohms-17", "ohms-left", "ohms-right"];
        var result = Run(Twin, All(Twin, r => cold.Contains(r.Id), (_, v) => v + 0.3));
        Assert.InRange(result.Faults.Single(f => f.Mode.Name == "breaker:resistive").Probability, 0.5, 0.8);
    }

    /// <summary>Four of the sheet's deviations at once in the loss of the core: about one sound unit in thirty thousand.</summary>
    [Fact]
    public void A_core_that_takes_half_as_much_again_is_doubted_before_it_is_called_sound()
    {
        var values = Twin.Model.Nominal.Copy();
        foreach (var p in Twin.Model.Parameters.Where(p => p.Path.EndsWith("lossOhms", StringComparison.Ordinal)))
            values.Scale(p, 0.68);
        var doubt = Assert.Single(Run(Twin, All(Twin, _ => true, (r, _) => Twin.Read(r, values))).Doubts);
        Assert.Equal(DoubtAbout.Internal, doubt.About);
        Assert.InRange(doubt.Probability, 0.5, 0.85);
    }

    [Fact]
    public void Windings_of_another_gauge_and_other_turns_are_another_batch()
    {
        var (values, dice) = (Twin.Model.Nominal.Copy(), new Random(2));
        foreach (var p in Twin.Model.Parameters)
        {
            values.Scale(p, Math.Exp(p.Sigma * MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, dice.NextDouble())));
            var isSecondary = Twin.Model.Sheet.Elements[p.Index] is Winding && !Twin.Model.ReferenceWindings.Contains(p.Index);
            if (p.Path.EndsWith(".lossOhms", StringComparison.Ordinal))
                values.Scale(p, 1 / 1.6);
            else if (isSecondary && p.Path.EndsWith(".ohms", StringComparison.Ordinal))
                values.Scale(p, 1.25);
            else if (isSecondary && p.Path.EndsWith(".turns", StringComparison.Ordinal))
                values.Scale(p, p.Index % 2 == 0 ? 1.015 : 1 / 1.015);
            else if (p.Path.EndsWith(".saturationAmps", StringComparison.Ordinal))
                values.Scale(p, Math.Exp(-1.5));
        }
        var doubt = Assert.Single(Run(Twin, All(Twin, _ => true, (r, _) => Twin.Read(r, values))).Doubts);
        Assert.Contains(doubt.About, new[] { DoubtAbout.Unit, DoubtAbout.Kind });
        Assert.Contains("main.lossOhms", doubt.Parameters.Select(p => "main." + p[(p.IndexOf('.', StringComparison.Ordinal) + 1)..]));
        Assert.True(doubt.Value > 2, FormattableString.Invariant($"{doubt.Value}"));
    }

    /// <summary>As above with two resistors: as probable, and not said.</summary>
    [Fact]
    public void Of_two_readings_nothing_is_said_of_the_bench()
    {
        var unit = Resistors(2, 2, 0.001);
        Assert.Empty(Run(unit, [.. Ids(2).Select(id => WireBench.Value(unit, id, 2.3))], 1e-12).Doubts);
        var three = Resistors(3, 2, 0.001);
        Assert.Equal(
            DoubtAbout.Leads,
            Assert.Single(Run(three, [.. Ids(3).Select(id => WireBench.Value(three, id, 2.3))], 1e-12).Doubts).About
        );
    }

    private static bool OnMains(ReadingSpec r) => r.State.Source is { IsDirect: false, IsMains: true };

    private static string[] Ids(int count) =>
        [.. Enumerable.Range(0, count).Select(n => n.ToString(CultureInfo.InvariantCulture)).Select(n => $"read-{n}")];

    private static BenchUnit Resistors(int count, double ohms, double spread)
    {
        var draft = new SheetDraft();
        var none = new Dictionary<string, double>
        {
            ["open"] = 0,
            ["shorted"] = 0,
            ["drifted"] = 0,
        };
        foreach (var id in Ids(count))
            draft = draft
                .Element(
                    "resistor",
                    "of-" + id,
                    "a-" + id,
                    "b-" + id,
                    new
                    {
                        ohms,
                        spread = new { ohms = spread },
                        faults = none,
                    }
                )
                .Reading(id, "ohms", ["a-" + id, "b-" + id]);
        return draft.Unit();
    }

    private static TakenReading[] All(BenchUnit unit, Func<ReadingSpec, bool> which, Func<ReadingSpec, double, double> shown) =>
        [
            .. unit
                .Model.Sheet.Readings.Where(which)
                .Select(r => (r.Id, Value: shown(r, unit.ReadListed(r.Id))))
                .Select(r => double.IsInfinity(r.Value) ? WireBench.OL(unit, r.Id) : WireBench.Value(unit, r.Id, r.Value)),
        ];

    private static DiagnosisResult Run(BenchUnit unit, TakenReading[] taken, double? wrong = null)
    {
        var readings = WireBench.Unit(unit, taken);
        return wrong is { } chance
            ? Diagnoser.Run(
                unit.Model,
                readings with
                {
                    Meter = new(Meter.Usual.Errors.SetItem(Quantity.Ohms, new(Percent, Floor, 0, 0))),
                },
                Options with
                {
                    WrongReadingChance = chance,
                }
            )
            : Diagnoser.Run(unit.Model, readings with { SupplyVolts = unit.Model.Sheet.SupplyVolts }, Options);
    }
}
