namespace Ohmstead.Perf.Experiments.Drafted;

/// <summary>
/// A core and its windings as a works would design them for a plate: a shell core whose window takes half its area for the primary and
/// half for the rest, wire for a current density. Flux density, current density, steel and spacing are drawn within what old toy
/// transformers may have had (common practice, no source). Nothing of what the tool takes for usual is in it.
/// </summary>
internal sealed class CoreAndWire
{
    private const double Copper = 1.72e-8,
        Vacuum = 4e-7 * Math.PI,
        SteelPerCubicMeter = 7650,
        Stacking = 0.95;

    /// <summary>A shell core stamped without waste: its window is half a tongue by one and a half, its path six tongues.</summary>
    private const double Window = 0.75,
        Path = 6;

    private readonly Random dice;
    private readonly double plateVolts,
        tongue,
        stack,
        teslaAtPlate,
        copperShare,
        linear,
        steep,
        gap,
        spacing,
        lossPerKilogram;

    /// <param name="watts">What the plate prints.</param>
    public CoreAndWire(double volts, double hertz, double watts, Random dice)
    {
        this.dice = dice;
        plateVolts = volts;
        teslaAtPlate = Between(1.1, 1.3);
        var ampsPerSquareMeter = Between(3.8e6, 5.2e6);
        copperShare = Between(0.26, 0.34) / 2;
        stack = Between(1, 1.5);
        lossPerKilogram = Between(3.5, 5.5) * Math.Pow(hertz / 60, 1.3);
        (linear, steep, gap, spacing) = (Between(120, 200), Between(25, 60), Between(20e-6, 60e-6), Between(1e-3, 4e-3));
        // VA = 4.44·f·B·(core area)·(amps per area)·(copper of one half of the window).
        tongue = Math.Pow(watts / (4.44 * hertz * teslaAtPlate * Stacking * stack * ampsPerSquareMeter * Window * copperShare), 0.25);
        TurnsPerVolt = 1 / (4.44 * hertz * teslaAtPlate * Stacking * stack * tongue * tongue);
        PrimaryTurns = Math.Round(volts * TurnsPerVolt);
    }

    /// <summary>Turns for a volt at no load.</summary>
    public double TurnsPerVolt { get; }

    /// <summary>Turns of the primary.</summary>
    public double PrimaryTurns { get; }

    /// <summary>Copper of one half of the window [m²].</summary>
    private double OneHalf => copperShare * Window * tongue * tongue;

    /// <summary>Length of a turn in the half of the window next to the core, and in the half outside it [m].</summary>
    private double Inner => (2 * tongue * (1 + stack)) + (2 * Math.PI * ((0.125 * tongue) + 0.002));

    private double Outer => (2 * tongue * (1 + stack)) + (2 * Math.PI * ((0.375 * tongue) + 0.003));

    /// <summary>Ohms of the primary [Ω].</summary>
    public double PrimaryOhms => Copper * Inner * PrimaryTurns * PrimaryTurns / OneHalf;

    /// <summary>Ohms of a winding of some turns that takes a share of the outer half of the window [Ω].</summary>
    public double OhmsOf(double turns, double share) => Copper * Outer * turns * turns / (share * OneHalf);

    /// <summary>What the core takes at the plate's volts, as ohms across the primary [Ω].</summary>
    public double LossOhms =>
        plateVolts
        * plateVolts
        / (lossPerKilogram * teslaAtPlate * teslaAtPlate * SteelPerCubicMeter * Stacking * Path * stack * Math.Pow(tongue, 3));

    /// <summary>Leakage of a winding of some turns: half of that of the pair that it makes with the primary [H].</summary>
    public double LeakageOf(double turns) =>
        Vacuum * turns * turns * ((Inner + Outer) / 2) / (1.5 * tongue) * (spacing + (0.5 * tongue / 3)) / 2;

    /// <summary>The magnetising curve at the primary (V, A): the steel's field along its path, and that of the gaps at the joints.</summary>
    public (double Volts, double Amps)[] Excitation =>
        [
            .. new[] { 0, 0.3, 0.5, 0.7, 0.85, 1, 1.1, 1.2 }.Select(p =>
            {
                var tesla = p * teslaAtPlate;
                var ampereTurns = ((linear * tesla) + (steep * Math.Pow(tesla, 9))) * Path * tongue;
                return (p * plateVolts, (ampereTurns + (tesla * gap / Vacuum)) / (PrimaryTurns * Math.Sqrt(2)));
            }),
        ];

    /// <summary>Evenly between two numbers.</summary>
    public double Between(double low, double high) => low + ((high - low) * dice.NextDouble());

    /// <summary>A factor evenly in the logarithm, up to so far to either side.</summary>
    public double Factor(double most) => Math.Exp(Between(-most, most));
}
