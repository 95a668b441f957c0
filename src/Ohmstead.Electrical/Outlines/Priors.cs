namespace Ohmstead.Electrical.Outlines;

/// <summary>
/// What is known of a unit's numbers before any reading, from its plate. For cores of one shape and material core area and window
/// both go with the square of the size L, so VA ∝ f·L⁴, volts per turn ∝ √(f·VA), copper loss over VA ∝ VA^(−¼), core loss ∝ VA^¾
/// (docs/methods/outline.md). The constants are common practice, no source.
/// </summary>
internal sealed class Priors(Outline outline)
{
    /// <summary>What a plate without watts adds to the doubt of all that is worked out from them.</summary>
    public const double DoubtOfUnknownWatts = 0.4;

    /// <summary>The plate's watts for which the constants are given.</summary>
    private const double UsualWatts = 150;

    private readonly double volts = outline.Volts;

    private readonly double watts = outline.Watts.Value;

    /// <summary>The size of the core against one of 150 W: L⁴.</summary>
    private readonly double size = outline.Watts.Value / UsualWatts;

    private double Omega => 2 * Math.PI * outline.Hertz;

    /// <summary>The highest line tap over the plate's volts: how much longer the whole primary is than its part in use.</summary>
    private double Longer => outline.LineTaps.IsEmpty ? 1 : outline.LineTaps[^1] / volts;

    /// <summary>Turns of the primary at the plate's volts. Only ratios can be measured, so they are fixed by convention.</summary>
    public double TurnsAtPlate => volts / (0.0034 * Math.Sqrt(watts * outline.Hertz));

    /// <summary>Turns of the whole primary.</summary>
    public Figure PrimaryTurns => new(TurnsAtPlate * Longer, 0, Origin.Derived);

    /// <summary>Turns that give some volts at no load, the doubt of the formula beside that of the volts.</summary>
    public Figure Turns(Figure v, double doubt) =>
        v with
        {
            Value = TurnsFor(v.Value),
            Doubt = double.Hypot(v.Doubt, double.Hypot(doubt, outline.VoltsDoubt)),
        };

    /// <summary>Turns that give some volts at no load: 0.5 % more than the ratio, for the drop in the primary.</summary>
    public double TurnsFor(double v) => 1.005 * v / volts * TurnsAtPlate;

    private double OhmsAtPlate => 0.042 * Math.Pow(size, -0.25) * volts * volts / watts;

    /// <summary>Ohms of the whole primary.</summary>
    public Figure PrimaryOhms => Of(OhmsAtPlate * Longer, 0.25);

    /// <summary>Ohms between the blades, at rest [Ω].</summary>
    public double BladeOhms =>
        OhmsAtPlate
        + (2 * Cord.Value)
        + (2 * Joint.Value)
        + (outline.BreakerIn("primary") is { } b ? BreakerOhms(b).Value : 0)
        + (outline.LineTaps.IsEmpty ? 0 : 0.01);

    /// <summary>Ohms of a winding of some turns, with its share of the plate's watts.</summary>
    /// <param name="isWhole">The winding is made for all of the plate's watts.</param>
    public Figure WindingOhms(double turns, double shareOfWatts, bool isWhole) =>
        Of(1.35 * OhmsAtPlate * Math.Pow(turns / TurnsAtPlate, 2) / shareOfWatts, isWhole ? 0.3 : 0.45);

    /// <summary>Ohms of a boost or extra winding, by those of the main winding for a turn.</summary>
    public Figure BoostOhms(double turns, double mainOhms, double mainTurns) => Of(1.45 * mainOhms / mainTurns * turns, 0.35);

    /// <summary>Loss resistance across the whole primary.</summary>
    public Figure LossOhms => Of(volts * volts / (9.5 * Math.Pow(size, 0.75)) * Longer * Longer, 0.25);

    /// <summary>Magnetising amps at the plate's volts.</summary>
    private Figure ExcitationAmps => Of(24 * Math.Pow(size, 0.75) / volts, 0.35);

    /// <summary>Doubt of the magnetising current, all points by one factor.</summary>
    public Figure Excitation => ExcitationAmps with { Value = 1 };

    /// <summary>The magnetising curve across the whole primary (V, A), from (0, 0).</summary>
    public (double Volts, double Amps)[] ExcitationCurve =>
        [
            .. new[] { (0.0, 0.0), (0.5, 0.30), (0.9, 0.76), (1.0, 1.0), (1.1, 1.46) }.Select(p =>
                (p.Item1 * volts * Longer, p.Item2 * ExcitationAmps.Value / Longer)
            ),
        ];

    /// <summary>Leakage of the primary, of a winding, of a boost: by the ohms of each.</summary>
    public Figure PrimaryHenries => Of(0.36 * PrimaryOhms.Value / Omega, 0.4);

    public Figure WindingHenries(double ohms) => Of(0.18 * ohms / Omega, 0.6);

    public Figure BoostHenries(double ohms) => Of(0.09 * ohms / Omega, 0.6);

    /// <summary>Ohms of a breaker: 0.3 V at its rated amps, 0.7 V in the primary.</summary>
    public Figure BreakerOhms(BreakerBlock b)
    {
        var drop = b.In == "primary" ? 0.7 : 0.3;
        var amps = BreakerAmps(b);
        return b.Amps is null ? Of(drop / amps, 0.5) with { Origin = Origin.Assumed } : b.Amps.Derived(drop / amps, 0.35);
    }

    /// <summary>Rated amps of a breaker; where nobody knows, a third more than the usable watts draw at the highest volts.</summary>
    public double BreakerAmps(BreakerBlock b) => b.Amps?.Value ?? 1.35 * outline.UsableWatts / (b.In == "primary" ? volts : HighestVolts);

    private double HighestVolts =>
        outline
            .Windings.SelectMany(w => w.Posts.Select(p => p.Volts.Value).Append(w.Volts?.Value ?? 0))
            .Concat(outline.Throttles.SelectMany(t => t.Volts.Select(v => v.Value)))
            .Max();

    /// <summary>What the plate gives by a formula; of a plate without watts it is assumed.</summary>
    private Figure Of(double value, double doubt)
    {
        // Nearly all of it goes with the square of the plate's volts.
        doubt = double.Hypot(doubt, 2 * outline.VoltsDoubt);
        return outline.Watts.Derived(value, outline.Watts.Origin == Origin.Assumed ? double.Hypot(doubt, DoubtOfUnknownWatts) : doubt);
    }

    /// <summary>The contact of a throttle on its turns or wire.</summary>
    public static Figure Contact(ThrottleKind kind) =>
        Usual(
            kind switch
            {
                ThrottleKind.Roller => 0.09,
                ThrottleKind.Shoe => 0.05,
                _ => 0.1,
            },
            0.35
        );

    public static Figure Cord => Usual(0.05, 0.3);

    public static Figure Wire => Usual(0.004, 0.3);

    public static Figure Joint => Usual(0.002, 0.3);

    /// <summary>A resistance wire whose ohms nobody knows.</summary>
    public static Figure ResistanceWire => Usual(1.5, 0.3);

    /// <summary>A resistance wire whose ohms were read: a cheap meter, its leads, and age.</summary>
    public static Figure KnownWire(Figure ohms) => ohms with { Doubt = double.Hypot(ohms.Doubt, 0.3) };

    /// <summary>A pilot lamp's amps, at 1.12 times the volts that it burns on.</summary>
    public const double PilotAmps = 0.12,
        PilotVolts = 1.12;

    /// <summary>A cell: saturation current [A], slope [V], series and leakage resistance [Ω].</summary>
    public static (Figure Saturation, Figure SlopeVolts, Figure Series, Figure Leakage) Cell(string cell) =>
        cell switch
        {
            "selenium" => (Usual(1.5e-3, 0.8), Usual(0.14, 0.15), Usual(0.15, 0.5), Usual(300, 0.9)),
            "silicon" => (Usual(10e-9, 1), Usual(0.05, 0.05), Usual(0.03, 0.5), Usual(2e6, 1)),
            _ => (Usual(2.2e-3, 0.6), Usual(0.12, 0.1), Usual(0.12, 0.35), Usual(110, 0.6)),
        };

    private static Figure Usual(double value, double doubt) => new(value, doubt, Origin.Assumed);
}
