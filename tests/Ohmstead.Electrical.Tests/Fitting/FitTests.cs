using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Fitting;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Fitting;

/// <summary>Medians and spreads planted in drawn units come out again, within the standard errors that are claimed.</summary>
public sealed class FitTests
{
    private static readonly UnitModel Model = new(Reference.Twin160);

    private static readonly Lazy<FitResult> Fitted = new(() => Fit.Run(Model, Units(30)));

    /// <summary>What the units were really drawn with: a primary of 10 % more resistance, and twice the spread of it.</summary>
    private static double Factor(Parameter p) => p.Path == "elements.primary.ohms" ? 1.10 : 1;

    private static double SpreadFactor(Parameter p) => p.Path == "elements.primary.ohms" ? 2 : 1;

    private static ImmutableArray<UnitReadings> Units(int count)
    {
        var dice = new Random(11);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
        var solver = new ReadingSolver();
        var units = ImmutableArray.CreateBuilder<UnitReadings>();
        for (var n = 0; n < count; n++)
        {
            var values = Model.Nominal.Copy();
            foreach (var p in Model.Parameters)
                values.Scale(p, Factor(p) * Math.Exp(SpreadFactor(p) * p.Sigma * Gauss()));
            var taken = ImmutableArray.CreateBuilder<TakenReading>();
            foreach (var spec in Model.Sheet.Readings)
            {
                var value = solver.Solve(new FaultedCircuits(Model, spec, spec.State).Usual, values).Value!.Value;
                if (value > Solution.OverRange(spec.Quantity))
                    continue;
                value += ((2 * dice.NextDouble()) - 1) * Meter.Usual.For(spec.Quantity).LimitAt(value);
                taken.Add(new TakenReading(spec, Outcome.Value, value, [], "", "", spec.State));
            }
            units.Add(new UnitReadings(Model.Sheet.Id, 120, null, Meter.Usual, taken.ToImmutable(), []));
        }
        return units.ToImmutable();
    }

    private static FittedParameter Of(string path) => Fitted.Value.Parameters.Single(p => p.Path == path);

    [Fact]
    public void A_planted_median_comes_out_within_its_standard_error()
    {
        var primary = Of("elements.primary.ohms");
        Assert.True(primary.Determined);
        Assert.InRange(primary.Value, (3.9 * 1.10) - (3 * primary.StandardError), (3.9 * 1.10) + (3 * primary.StandardError));
        // 30 units of 16 % spread: the error of a mean is 16 % / √30 of 4.29 Ω, 0.125 Ω, and the meter adds hardly anything.
        Assert.InRange(primary.StandardError, 0.08, 0.18);
    }

    [Fact]
    public void A_planted_spread_comes_out_too()
    {
        var spread = Of("elements.primary.spread.ohms");
        Assert.True(spread.Determined);
        Assert.InRange(spread.Value, 0.16 - (3 * spread.StandardError), 0.16 + (3 * spread.StandardError));
        Assert.True(spread.Value > 0.11, "the sheet's 0.08 was kept");
    }

    [Fact]
    public void Determined_medians_lie_about_the_truth_as_their_errors_say()
    {
        var z = Model
            .Parameters.Select(p => (Truth: p.Nominal * Factor(p), Fit: Of(p.Path)))
            .Where(p => p.Fit.Determined)
            .Select(p => (p.Fit.Value - p.Truth) / p.Fit.StandardError)
            .ToArray();
        Assert.True(z.Length >= 10, "hardly anything was determined");
        Assert.InRange(z.Count(v => Math.Abs(v) < 2) / (double)z.Length, 0.8, 1);
    }

    [Fact]
    public void What_no_reading_shows_is_named_as_undetermined()
    {
        // A joint of 2 mΩ in a path that the meter reads to 50 mΩ.
        Assert.False(Of("elements.joint-tap-5.spread.ohms").Determined);
    }
}
