using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Standards;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary><c>standards</c>: what a unit gives, beside open standards of toys and model railroads (docs/methods/proving.md).</summary>
/// <param name="Current">ac or dc.</param>
/// <param name="TrackMillimetres">Between the rails; null where it is not known: rows of one gauge are left out then.</param>
/// <param name="Figures">What is known of the unit.</param>
public sealed record ToyStandards(string Current, double? TrackMillimetres, ImmutableDictionary<ToyFigure, double> Figures) : Question
{
    /// <summary>The line is said to the tenth: 120.05 V is 120 V.</summary>
    private const double Hair = 1e-9;

    private static readonly ImmutableArray<(string Field, ToyFigure Figure)> Fields =
    [
        ("volts", ToyFigure.Volts),
        ("trackVolts", ToyFigure.TrackVolts),
        ("accessoryVolts", ToyFigure.AccessoryVolts),
        ("voltAmperes", ToyFigure.VoltAmperes),
        ("amps", ToyFigure.Amps),
        ("lineVolts", ToyFigure.LineVolts),
        ("lineHertz", ToyFigure.LineHertz),
        ("pulseVolts", ToyFigure.PulseVolts),
        ("pulseSeconds", ToyFigure.PulseSeconds),
        ("busSquareMillimetres", ToyFigure.BusSquareMillimetres),
        ("feederSquareMillimetres", ToyFigure.FeederSquareMillimetres),
    ];

    /// <summary>Reads its fields.</summary>
    public static ToyStandards Read(QuestionFields fields)
    {
        var figures = ImmutableDictionary.CreateBuilder<ToyFigure, double>();
        foreach (var (field, figure) in Fields)
            if (fields.Optional(field, NumberRange.NotNegative) is { } value)
                figures[figure] = value;
        if (fields.Has("inputWatts") || fields.Has("plateWatts"))
            figures[ToyFigure.InputOverPlate] =
                fields.Number("inputWatts", NumberRange.NotNegative) / fields.Number("plateWatts", NumberRange.Positive);
        if (!Fields.Any(f => fields.Has(f.Field)) && figures.Count == 0)
            fields.Report(
                "volts",
                "is missing, and so is every other figure",
                "at least one figure of the unit, such as volts, is required"
            );
        ImmutableArray<double> posts =
        [
            .. new[] { ToyFigure.TrackVolts, ToyFigure.AccessoryVolts }.Where(figures.ContainsKey).Select(f => figures[f]),
        ];
        if (!posts.IsEmpty)
            figures.TryAdd(ToyFigure.Volts, posts.Max());
        return new(
            fields.OneOf("current", ["ac", "dc"], "ac"),
            fields.Optional("trackMillimetres", NumberRange.Positive),
            figures.ToImmutable()
        );
    }

    /// <inheritdoc/>
    public override ToyStandardsAnswer Answer()
    {
        var rows = ToyRule.All.Where(IsAsked).Select(Row).ToImmutableArray();
        var over = rows.Where(r => !r.Within && !r.IsNominal).ToList();
        return new(rows, Current == "dc" && Figures.TryGetValue(ToyFigure.TrackVolts, out var dc) ? dc + ToyRule.DigitalOverDc : null)
        {
            Words =
            [
                over.Count == 0
                    ? "Nothing here is outside what these standards ask of new toys."
                    : $"Outside what is asked of new toys: {string.Join("; ", over.Select(Breach).Distinct())}.",
                .. rows.Where(r => !r.Within && r.IsNominal)
                    .Select(r =>
                        FormattableString.Invariant(
                            $"Not the nominal {r.Says.Replace(", nominal", "", StringComparison.Ordinal)}: {r.Value:0.##} {r.Unit} ({r.Source})."
                        )
                    ),
                .. Current == "dc" && Figures.ContainsKey(ToyFigure.TrackVolts)
                    ? ["Plus on the right-hand rail drives the train forward (NMRA S-9)."]
                    : ImmutableArray<string>.Empty,
            ],
            Outside =
            [
                "An old unit was made before these standards. They say what is usual today, not what it must meet.",
                "A short between the posts is to be expected in use (UL 697, scope).",
                TestRecord.NoCertification,
            ],
        };
    }

    private bool IsAsked(ToyRule rule) =>
        Figures.ContainsKey(rule.Of)
        && (rule.Current.Length == 0 || rule.Current == Current)
        && (
            rule is { FromMillimetres: 0, BelowMillimetres: double.PositiveInfinity }
            || (TrackMillimetres is { } gauge && gauge >= rule.FromMillimetres && gauge < rule.BelowMillimetres)
        );

    /// <summary>What is asked and what is there: "a toy transformer made today: at most 24 V AC, here 40 (EN 61558-2-7, as cited)".</summary>
    private static string Breach(ToyRow row) =>
        FormattableString.Invariant(
            $"{row.Says}: {(row.Value > row.Most ? "at most" : "at least")} {(row.Value > row.Most ? row.Most : row.Least):0.##} {row.Unit}, here {row.Value:0.##} ({row.Source})"
        );

    private ToyRow Row(ToyRule rule)
    {
        var value = Figures[rule.Of];
        return new(
            rule.Source,
            rule.Says,
            rule.Least,
            rule.Most,
            rule.Unit,
            rule.IsNominal,
            value,
            value >= (rule.Least ?? double.NegativeInfinity) * (1 - Hair) && value <= (rule.Most ?? double.PositiveInfinity) * (1 + Hair)
        );
    }
}

/// <summary>What <c>standards</c> answers.</summary>
/// <param name="Rows">Each figure beside what a standard says of it.</param>
/// <param name="DigitalVolts">Track volts of digital control that go with these of DC; null where there are none.</param>
public sealed record ToyStandardsAnswer(ImmutableArray<ToyRow> Rows, double? DigitalVolts) : Answer;

/// <summary>A figure beside a standard.</summary>
/// <param name="Within">Not below the least, not above the most.</param>
public sealed record ToyRow(
    string Source,
    string Says,
    double? Least,
    double? Most,
    string Unit,
    bool IsNominal,
    double Value,
    bool Within
);
