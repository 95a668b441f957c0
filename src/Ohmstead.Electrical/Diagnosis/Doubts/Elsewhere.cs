using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis.Doubts;

/// <summary>
/// A reading as it comes out when one probe lies on another terminal, when the meter is set to the other kind of volts, or when a
/// control stands elsewhere: which of these explains what was noted. Chances of each are common practice, no source.
/// </summary>
internal sealed class Elsewhere(UnitModel model, FaultCatalogue catalogue, Fault[] faults)
{
    /// <summary>Of wrong readings, the share that each way has.</summary>
    private const double Place = 0.1;
    private const double Quantity = 0.08;
    private const double Control = 0.1;

    /// <summary>And the share of those of which nothing more is known.</summary>
    private const double Nothing = WrongReadings.Anywhere - Place - Quantity - Control - ExchangedReadings.Share;

    /// <summary>What sound parameters move a reading that nothing else was learned of, squared [limits of the meter's error].</summary>
    private const double OwnVariance = 4;

    /// <summary>Where a throttle that is not at its place is looked for.</summary>
    private static readonly double[] Throttles = [0, 0.25, 0.5, 0.65, 0.8, 0.87, 0.92, 0.96, 0.99, 1];

    private readonly string[] terminals =
    [
        .. model.Sheet.Readings.SelectMany(r => new[] { r.From, r.To }).Where(t => t.Length > 0).Distinct(StringComparer.Ordinal),
    ];

    /// <summary>The way that explains a value best; <see cref="SlipKind.Unknown"/> where none does.</summary>
    /// <param name="variance">Of what the other readings expect of it.</param>
    public (SlipKind Kind, string? With) Best(TakenReading taken, MeterError error, double variance)
    {
        var noted = error.ToScale(taken.Value);
        double Normal(double at) => NormalLaw.Density(noted - at, variance + OwnVariance);
        var places = Places(taken.Spec).ToArray();
        var found = new List<(SlipKind Kind, string? With, double Density)>
        {
            (SlipKind.Unknown, null, Nothing / WrongReadings.ScaleWidth),
        };
        foreach (var spec in places)
            if (Solve(spec, taken.State, error) is { } at)
                found.Add((SlipKind.Place, $"{spec.From}..{spec.To}", Place / places.Length * Normal(at)));
        if (OtherVolts(taken.Spec) is { } other && Solve(other, taken.State, error) is { } volts)
            found.Add((SlipKind.Quantity, null, Quantity * Normal(volts)));
        double?[] moved =
        [
            .. taken.State.Controls.Keys.Order(StringComparer.Ordinal).Select(id => Moved(taken, id, error, noted, variance + OwnVariance)),
        ];
        var count = Math.Max(1, moved.Count(m => m is not null));
        found.AddRange(moved.OfType<double>().Select(density => (SlipKind.Control, (string?)null, Control / count * density)));
        var best = found.MaxBy(f => f.Density);
        return (best.Kind, best.With);
    }

    private IEnumerable<ReadingSpec> Places(ReadingSpec spec)
    {
        if (spec.From.Length == 0)
            yield break;
        foreach (var t in terminals.Where(t => t != spec.From && t != spec.To))
        {
            yield return spec with
            {
                To = t,
            };
            yield return spec with
            {
                From = t,
            };
        }
    }

    private static ReadingSpec? OtherVolts(ReadingSpec spec) =>
        spec.Quantity switch
        {
            TypeSheets.Quantity.AcVolts => spec with { Quantity = TypeSheets.Quantity.DcVolts },
            TypeSheets.Quantity.DcVolts => spec with { Quantity = TypeSheets.Quantity.AcVolts },
            _ => null,
        };

    /// <summary>
    /// Density of what was noted with one control elsewhere: at any other position, or anywhere along the throttle. Null where the control
    /// does not move the reading.
    /// </summary>
    private double? Moved(TakenReading taken, string control, MeterError error, double noted, double variance)
    {
        double? At(ControlPosition p) => Solve(taken.Spec, taken.State with { Controls = taken.State.Controls.SetItem(control, p) }, error);
        var here = At(taken.State.Controls[control]) ?? noted;
        var definition = model.Sheet.Controls.First(c => c.Id == control);
        var sigma = Math.Sqrt(variance);
        if (!definition.IsThrottle)
        {
            var others = definition.Positions.Where(p => p != taken.State.Controls[control].Selector).ToArray();
            var at = others.Select(p => At(new(0, p))).OfType<double>().ToArray();
            if (at.Length == 0 || IsStill([.. at, here]))
                return null;
            return at.Sum(other => NormalLaw.Density(noted - other, variance) / others.Length);
        }
        var points = Throttles.Select(x => At(new(x, ""))).ToArray();
        if (IsStill([.. points.OfType<double>(), here]))
            return null;
        var sum = 0.0;
        for (var n = 1; n < points.Length; n++)
            if (points[n - 1] is { } a && points[n] is { } b && Math.Abs(b - a) > 1e-6)
                sum +=
                    Math.Abs(NormalLaw.Below((b - noted) / sigma) - NormalLaw.Below((a - noted) / sigma))
                    / Math.Abs(b - a)
                    / (points.Length - 1);
        return sum;
    }

    private static bool IsStill(double[] at) => at.Max() - at.Min() < 1;

    private double? Solve(ReadingSpec spec, ReadingState state, MeterError error)
    {
        using var unit = new Predictor(new ReadingSet(model, catalogue, [(spec, state, error)])).Assume(faults);
        return unit.Scaled(0);
    }
}
