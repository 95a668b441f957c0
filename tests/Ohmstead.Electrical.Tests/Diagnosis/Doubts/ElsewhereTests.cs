using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Doubts;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>
/// How far a value may lie from what a slip would show and still be told as that slip: as far as its normal density, times the slip's share of
/// all wrong readings, is above a tenth of them spread over 300 limits. The shares are common practice, no source: another place 0.1, the other
/// kind of volts 0.08, a control elsewhere 0.1; what varies of itself moves it by two limits.
/// </summary>
public class ElsewhereTests
{
    private const double Rest = 0.1 / 300;
    private const double Own = 4;

    private static readonly object Feed = new
    {
        from = "a",
        to = "g",
        volts = 12,
    };

    private static readonly object Source = new { source = Feed };

    /// <summary>12 V over 10, 20 and 30 Ω; the volts over the last two, and over the last.</summary>
    private static readonly BenchUnit Divider = new SheetDraft()
        .Resistor("top", "a", "b", 10)
        .Resistor("middle", "b", "c", 20)
        .Resistor("low", "c", "g", 30)
        .Reading("high", "ac-volts", ["b", "g"], Source)
        .Reading("low", "ac-volts", ["c", "g"], Source)
        .Unit();

    /// <summary>Between b, c and g there are two other places for each probe of a reading: 10 V and 4 V.</summary>
    [Theory]
    [InlineData(10, "b..g", 0)]
    [InlineData(4, "c..b", 0)]
    [InlineData(10, "b..g", 3)]
    public void Another_place_is_told_as_far_as_its_share_reaches(double volts, string place, double variance)
    {
        var reach = Reach(0.1 / 2, variance + Own);
        Assert.Equal((SlipKind.Place, place), Best(Divider, "low", volts, reach - 0.05, variance));
        Assert.Equal((SlipKind.Place, place), Best(Divider, "low", volts, 0.05 - reach, variance));
        Assert.Equal((SlipKind.Unknown, null), Best(Divider, "low", volts, reach + 0.05, variance));
    }

    /// <summary>There is no direct part in these volts: nothing is what the other kind shows.</summary>
    [Fact]
    public void The_other_kind_of_volts_is_told_as_far_as_its_share_reaches()
    {
        var reach = Reach(0.08, 1 + Own);
        Assert.Equal((SlipKind.Quantity, null), Best(Divider, "low", 0, reach - 0.05, 1));
        Assert.Equal((SlipKind.Unknown, null), Best(Divider, "low", 0, reach + 0.05, 1));
    }

    /// <summary>A lever with three places: off, half the resistance, none; a knob that moves nothing has no part in the share.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_control_elsewhere_is_told_as_far_as_its_share_reaches(bool hasAnother)
    {
        var unit = Levers(hasAnother);
        // One reading: no other place. In the lever's two other positions the volts are 4 and 9.6; the other knob makes them 8.
        var share = hasAnother ? 0.1 / 2 / 2 : 0.1 / 2;
        var reach = Reach(share, 1 + Own);
        foreach (var volts in new[] { 4, 9.6 })
        {
            Assert.Equal((SlipKind.Control, null), Best(unit, "low", volts, reach - 0.05, 1));
            Assert.Equal((SlipKind.Unknown, null), Best(unit, "low", volts, reach + 0.05, 1));
        }
        if (!hasAnother)
            return;
        var alone = Reach(0.1 / 2, 1 + Own);
        Assert.Equal((SlipKind.Control, null), Best(unit, "low", 8, alone - 0.05, 1));
        Assert.Equal((SlipKind.Unknown, null), Best(unit, "low", 8, alone + 0.05, 1));
    }

    /// <summary>A fault that is there is there elsewhere, too: with the top resistor shorted the volts over the last two are all twelve.</summary>
    [Fact]
    public void What_is_wrong_with_the_unit_is_counted()
    {
        var spec = Divider.Model.Sheet.FindReading("low")!;
        var error = Meter.Usual.For(Quantity.AcVolts);
        var faulty = new Elsewhere(Divider.Model, Divider.Catalogue, Divider.Faults("top:shorted"));
        TakenReading Taken(double volts) => new(spec, Outcome.Value, volts, [], "", "", spec.State);
        Assert.Equal((SlipKind.Place, "b..g"), faulty.Best(Taken(12), error, 0));
        Assert.Equal((SlipKind.Unknown, null), faulty.Best(Taken(10), error, 0));
    }

    /// <summary>
    /// A throttle may stand anywhere: in each stretch between ten places looked at its volts are as likely as each other, 1/9 over the length
    /// of the stretch, blurred by the normal law. Told where a tenth of that is above what is left for nothing, and of no value past its ends.
    /// </summary>
    [Fact]
    public void A_throttle_is_told_where_its_stretch_is_dense_enough_and_not_beyond_its_ends()
    {
        var twin = new BenchUnit(Reference.Twin160);
        var spec = Reference.Twin160.FindReading("left-load")!;
        var (error, elsewhere) = (Meter.Usual.For(spec.Quantity), new Elsewhere(twin.Model, twin.Catalogue, []));
        double At(double throttle) =>
            error.ToScale(
                twin.Read(
                    spec with
                    {
                        State = spec.State with { Controls = spec.State.Controls.SetItem("throttle-left", new(throttle, "")) },
                    },
                    twin.Model.Nominal
                )
            );
        double[] points = [.. new[] { 0, 0.25, 0.5, 0.65, 0.8, 0.87, 0.92, 0.96, 0.99, 1 }.Select(At)];
        double Density(double noted) =>
            points
                .Zip(points.Skip(1))
                .Where(p => Math.Abs(p.Second - p.First) > 1e-6)
                .Sum(p => Math.Abs(Below(p.Second - noted) - Below(p.First - noted)) / Math.Abs(p.Second - p.First) / 9);
        SlipKind Kind(double noted) =>
            elsewhere.Best(new(spec, Outcome.Value, error.FromScale(noted), [], "", "", spec.State), error, 1).Kind;
        var (told, untold) = (0, 0);
        for (var x = 0.02; x < 1; x += 0.07)
        {
            var share = 0.1 * Density(At(x));
            (told, untold) = (told + (share > 1.1 * Rest ? 1 : 0), untold + (share < 0.9 * Rest ? 1 : 0));
            if (share > 1.1 * Rest)
                Assert.Equal(SlipKind.Control, Kind(At(x)));
            else if (share < 0.9 * Rest)
                Assert.NotEqual(SlipKind.Control, Kind(At(x)));
        }
        Assert.True(told > 2 && untold > 2, FormattableString.Invariant($"{told} {untold}"));
        Assert.NotEqual(SlipKind.Control, Kind(points.Max() + 30));
        static double Below(double off) => MathNet.Numerics.Distributions.Normal.CDF(0, Math.Sqrt(1 + Own), off);
    }

    /// <summary>
    /// The same by a meter of ± 0.5 V, on which all stretches are short: from the first to the last, and a little beyond either end. Another
    /// place may explain a value better, but it is never one of which nothing is known.
    /// </summary>
    [Fact]
    public void On_a_coarse_meter_a_throttle_is_told_from_end_to_end_and_a_little_beyond()
    {
        var twin = new BenchUnit(Reference.Twin160);
        var spec = Reference.Twin160.FindReading("left-load")!;
        var (error, elsewhere) = (new MeterError(0, 0.5, 0, 0), new Elsewhere(twin.Model, twin.Catalogue, []));
        ReadingState At(double throttle) => spec.State with { Controls = spec.State.Controls.SetItem("throttle-left", new(throttle, "")) };
        double[] points =
        [
            .. new[] { 0, 0.25, 0.5, 0.65, 0.8, 0.87, 0.92, 0.96, 0.99, 1 }.Select(x =>
                error.ToScale(twin.Read(spec with { State = At(x) }, twin.Model.Nominal))
            ),
        ];
        double Below(double off) => MathNet.Numerics.Distributions.Normal.CDF(0, Math.Sqrt(1 + Own), off);
        double Density(double noted) =>
            points
                .Zip(points.Skip(1))
                .Where(p => Math.Abs(p.Second - p.First) > 1e-6)
                .Sum(p => (Below(p.Second - noted) - Below(p.First - noted)) / (p.Second - p.First) / 9);
        var (told, untold) = (0, 0);
        // In small steps where it comes to its end.
        for (var noted = points.Min() - 9; noted < points.Max() + 9; noted += noted > points.Max() + 2 ? 0.1 : 0.8)
        {
            var (share, value) = (0.1 * Density(noted), error.FromScale(noted));
            var kind = elsewhere.Best(new(spec, Outcome.Value, value, [], "", "", spec.State), error, 1).Kind;
            (told, untold) = (told + (share > 1.1 * Rest ? 1 : 0), untold + (share < 0.9 * Rest ? 1 : 0));
            if (share > 1.1 * Rest)
                Assert.NotEqual(SlipKind.Unknown, kind);
            else if (share < 0.9 * Rest)
                Assert.NotEqual(SlipKind.Control, kind);
        }
        Assert.True(told > 9 && untold > 3, FormattableString.Invariant($"{told} {untold}"));
    }

    /// <summary>share·N(d; 0, variance) = Rest, solved for d.</summary>
    private static double Reach(double share, double variance) =>
        Math.Sqrt(2 * variance * Math.Log(share / Rest / Math.Sqrt(2 * Math.PI * variance)));

    /// <summary>What is told of a value so many limits off the volts given.</summary>
    private static (SlipKind Kind, string? With) Best(BenchUnit unit, string id, double volts, double off, double variance)
    {
        var (spec, error) = (unit.Model.Sheet.FindReading(id)!, Meter.Usual.For(Quantity.AcVolts));
        var taken = new TakenReading(spec, Outcome.Value, error.FromScale(error.ToScale(volts) + off), [], "", "", spec.State);
        return new Elsewhere(unit.Model, unit.Catalogue, []).Best(taken, error, variance);
    }

    private static BenchUnit Levers(bool hasAnother)
    {
        var draft = new SheetDraft()
            .Selector("lever", "off", "half", "none")
            .Selector("idle", "here", "there")
            .Resistor("top", "a", "c", 30)
            .Resistor("low", "c", "g", 30)
            .Resistor("beside", "d", "g", 30)
            .Resistor("across", "e", "a", 10)
            .Element("switch", "to-low", "c", "d", new { control = "lever", closedIn = new[] { "half" } })
            .Element("switch", "to-top", "c", "e", new { control = "lever", closedIn = new[] { "none" } });
        if (hasAnother)
            draft = draft
                .Selector("knob", "out", "in")
                .Resistor("more", "f", "a", 30)
                .Element("switch", "to-more", "c", "f", new { control = "knob", closedIn = new[] { "in" } });
        object state = hasAnother
            ? new
            {
                source = Feed,
                controls = new
                {
                    lever = "off",
                    idle = "here",
                    knob = "out",
                },
            }
            : new { source = Feed, controls = new { lever = "off", idle = "here" } };
        return draft.Reading("low", "ac-volts", ["c", "g"], state).Unit();
    }
}
