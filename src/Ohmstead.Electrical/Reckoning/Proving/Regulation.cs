using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>
/// <c>regulation</c>: a post's volts at no load and the ohms behind it, from two or more readings at different amps, each taken
/// back to one supply: volts = E·s/S − r·I by least squares (docs/methods/proving.md).
/// </summary>
/// <param name="SupplyVolts">S, the supply that the answer is for; above 0.</param>
/// <param name="Points">The readings.</param>
/// <param name="AtAmps">For which amps to say the volts.</param>
public sealed record Regulation(double SupplyVolts, ImmutableArray<LoadPoint> Points, ImmutableArray<double> AtAmps) : Question
{
    /// <summary>Reads its fields.</summary>
    public static Regulation Read(QuestionFields fields)
    {
        var supply = fields.Number("supplyVolts", NumberRange.Positive);
        var points = fields.List(
            "points",
            p => new LoadPoint(
                p.Number("amps", NumberRange.NotNegative),
                p.Number("volts", NumberRange.NotNegative),
                p.Number("supplyVolts", NumberRange.Positive, supply)
            ),
            least: 2
        );
        if (points.Length >= 2 && fields.IsSoundAt("points") && (IsOneCurrent(points) || !TellsApart(points)))
            fields.Report("points", "are all of one current", "two or more different amps are needed");
        return new(supply, points, fields.Numbers("atAmps", NumberRange.NotNegative));
    }

    /// <inheritdoc/>
    public override RegulationAnswer Answer()
    {
        // The normal equations of volts = E·x − r·I with x = s/S.
        double Sum(Func<double, double, double, double> of) => Points.Sum(p => of(p.SupplyVolts / SupplyVolts, p.Amps, p.Volts));
        var (xx, xi, ii, xv, iv) = (
            Sum((x, _, _) => x * x),
            Sum((x, i, _) => x * i),
            Sum((_, i, _) => i * i),
            Sum((x, _, v) => x * v),
            Sum((_, i, v) => i * v)
        );
        var determinant = (xx * ii) - (xi * xi);
        var (noLoad, source) = (((xv * ii) - (xi * iv)) / determinant, ((xi * xv) - (xx * iv)) / determinant);
        return new(
            noLoad,
            source,
            [.. AtAmps.Select(i => new RegulationAt(i, noLoad - (source * i), 100 * source * i / (noLoad - (source * i))))],
            Points.Max(p => Math.Abs(p.Volts - (noLoad * p.SupplyVolts / SupplyVolts) + (source * p.Amps)))
        )
        {
            Outside = ["This holds where no rectifier lies in the path."],
        };
    }

    /// <summary>One current at two supplies would give ohms out of the meter's last digit.</summary>
    private static bool IsOneCurrent(ImmutableArray<LoadPoint> points) =>
        points.Max(p => p.Amps) - points.Min(p => p.Amps) <= 1e-9 * points.Max(p => p.Amps);

    /// <summary>False where amps and supply rise together so that no one can say which of them moved the volts.</summary>
    private static bool TellsApart(ImmutableArray<LoadPoint> points)
    {
        var (xx, ii, xi) = (
            points.Sum(p => p.SupplyVolts * p.SupplyVolts),
            points.Sum(p => p.Amps * p.Amps),
            points.Sum(p => p.SupplyVolts * p.Amps)
        );
        return (xx * ii) - (xi * xi) > 1e-12 * xx * ii;
    }
}

/// <summary>One reading at a post.</summary>
/// <param name="Amps">What the load drew.</param>
/// <param name="Volts">At the post.</param>
/// <param name="SupplyVolts">The line while it was read.</param>
public sealed record LoadPoint(double Amps, double Volts, double SupplyVolts);

/// <summary>What <c>regulation</c> answers.</summary>
/// <param name="NoLoadVolts">E, at the reference supply.</param>
/// <param name="SourceOhms">r, behind the post.</param>
/// <param name="At">At the amps that were asked for.</param>
/// <param name="WorstResidualVolts">How far the reading that fits least lies from the line.</param>
public sealed record RegulationAnswer(double NoLoadVolts, double SourceOhms, ImmutableArray<RegulationAt> At, double WorstResidualVolts)
    : Answer;

/// <summary>A load and what the post gives then.</summary>
public sealed record RegulationAt(double Amps, double Volts, double RegulationPercent);
