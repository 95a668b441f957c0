namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>
/// A two-winding transformer of the textbooks as a type sheet: turns as volts, series impedances in the windings, the shunt
/// branch across the induced voltage of the high winding. Reactances are at 60 Hz. Terminals h1, h2, l1, l2.
/// </summary>
internal sealed record BenchTransformer(double HighVolts, double LowVolts)
{
    private const double Omega = 2 * Math.PI * 60;

    /// <summary>
    /// What stands for no resistance. The source's current is a difference of volts over this, so at kilovolts nothing less will
    /// do (a sheet may say 0; see ZeroOhmTests for what holds then).
    /// </summary>
    private const double LeastOhms = 1e-6;

    public double HighOhms { get; init; }

    public double HighReactance { get; init; }

    public double LowOhms { get; init; }

    public double LowReactance { get; init; }

    /// <summary>Across the high winding; so large that it draws nothing unless it is set.</summary>
    public double LossOhms { get; init; } = 1e12;

    public double MagnetisingOhms { get; init; } = 1e11;

    public double Ratio => HighVolts / LowVolts;

    public BenchUnit Unit() =>
        new SheetDraft()
            .Core("core", "high", LossOhms, MagnetisingOhms / Omega)
            .Winding("high", "h1", "h2", HighVolts, Math.Max(HighOhms, LeastOhms), HighReactance / Omega)
            .Winding("low", "l1", "l2", LowVolts, Math.Max(LowOhms, LeastOhms / Ratio / Ratio), LowReactance / Omega)
            .Unit();

    /// <summary>Amps and watts drawn at the high side with the low side open.</summary>
    public (double Amps, double Watts) Open(double volts) =>
        Drawn(
            new
            {
                source = new
                {
                    from = "h1",
                    to = "h2",
                    volts,
                },
            }
        );

    /// <summary>Amps and watts drawn at the low side with the high side open.</summary>
    public (double Amps, double Watts) OpenFromLow(double volts) =>
        Drawn(
            new
            {
                source = new
                {
                    from = "l1",
                    to = "l2",
                    volts,
                },
            }
        );

    /// <summary>Amps and watts drawn at the high side with the low side strapped.</summary>
    public (double Amps, double Watts) Shorted(double volts) =>
        Drawn(
            new
            {
                source = new
                {
                    from = "h1",
                    to = "h2",
                    volts,
                },
                joined = new[] { new[] { "l1", "l2" } },
            }
        );

    /// <summary>Amps and watts drawn at the low side with the high side strapped.</summary>
    public (double Amps, double Watts) ShortedFromLow(double volts) =>
        Drawn(
            new
            {
                source = new
                {
                    from = "l1",
                    to = "l2",
                    volts,
                },
                joined = new[] { new[] { "h1", "h2" } },
            }
        );

    /// <summary>Volts at the low side, fed at the high side; with a load of ohms and reactance, or none.</summary>
    public double LowVoltsAt(double volts, (double Ohms, double Reactance)? load) =>
        Unit().Read("ac-volts", ["l1", "l2"], Fed(volts, load));

    /// <summary>Amps and watts drawn at the high side with a load.</summary>
    public (double Amps, double Watts) Loaded(double volts, (double Ohms, double Reactance) load) => Drawn(Fed(volts, load));

    /// <summary>Volts at the high side that give <paramref name="lowVolts"/> at the load: the circuit is linear.</summary>
    public double HighVoltsFor(double lowVolts, (double Ohms, double Reactance) load) => HighVolts * lowVolts / LowVoltsAt(HighVolts, load);

    /// <summary>Rise of the low side's volts from full load to none, in percent of full load.</summary>
    public double RegulationPercent((double Ohms, double Reactance) load) =>
        100 * (LowVoltsAt(HighVolts, null) / LowVoltsAt(HighVolts, load) - 1);

    /// <summary>
    /// Efficiency [%] with the rated volts at the load. The books take the core's loss as constant, so the loss resistance is
    /// set to <paramref name="coreWatts"/> at the voltage that the core then has (its winding has no impedance here).
    /// </summary>
    public double EfficiencyPercent(double coreWatts, (double Ohms, double Reactance) load)
    {
        var volts = HighVoltsFor(LowVolts, load);
        var fed = this with { LossOhms = volts * volts / coreWatts };
        var at = fed.LowVoltsAt(volts, load);
        var given = at * at * load.Ohms / ((load.Ohms * load.Ohms) + (load.Reactance * load.Reactance));
        return 100 * given / fed.Loaded(volts, load).Watts;
    }

    /// <summary>The load that takes volt-amperes at the low side's rated volts with a lagging power factor.</summary>
    public (double Ohms, double Reactance) Load(double voltAmps, double powerFactor)
    {
        var ohms = LowVolts * LowVolts / voltAmps;
        return (ohms * powerFactor, ohms * Math.Sqrt(1 - (powerFactor * powerFactor)));
    }

    private static object Fed(double volts, (double Ohms, double Reactance)? load)
    {
        object[] loads = load is { } l
            ?
            [
                new
                {
                    from = "l1",
                    to = "l2",
                    ohms = l.Ohms,
                    henries = l.Reactance / Omega,
                },
            ]
            : [];
        return new
        {
            source = new
            {
                from = "h1",
                to = "h2",
                volts,
            },
            loads,
        };
    }

    private (double Amps, double Watts) Drawn(object state)
    {
        var unit = Unit();
        return (unit.ReadSource("ac-amps", state), unit.ReadSource("watts", state));
    }
}
