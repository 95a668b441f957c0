namespace Ohmstead.Simulator;

/// <summary>
/// The periodic steady state where rectifiers conduct: two cycles at a time by .tran from given inductor currents.
/// The currents of leakages and loads settle by themselves; those of the cores, slow by the time constant of the
/// start-up flux, and the settings of cores and lamps by their RMS are driven to their fixed point by
/// Newton's method with slopes tried out. Gear's method damps what a coil behind an open contact would ring. First coarse steps, then fine ones.
/// </summary>
internal sealed class PeriodicSolution
{
    private const int Cycles = 2;
    private const int MostRounds = 8;
    private const int MostSlopes = 2;
    private static readonly (string Tolerances, int Coarse, int Fine)[] Manners =
    [
        ("pivrel=0.5 reltol=1e-5 vntol=1e-5 abstol=1e-8", 128, 512),
        ("pivrel=0.1 reltol=1e-6 vntol=1e-7 abstol=1e-9", 128, 512),
        ("pivrel=0.9 reltol=1e-4 vntol=1e-4 abstol=1e-7", 200, 800),
        ("pivrel=0.01 reltol=1e-4 vntol=1e-4 abstol=1e-7", 160, 640),
        ("pivrel=0.3 reltol=1e-4 vntol=1e-5 abstol=1e-7", 150, 600),
        ("pivrel=0.05 reltol=1e-4 vntol=1e-5 abstol=1e-7", 180, 560),
    ];

    /// <summary>What the voltages of capacitors are a share of [V].</summary>
    private const double CapacitorVolts = 10;
    private const double TrialOfCurrent = 0.5;
    private const double TrialOfSetting = 0.05;
    private static readonly bool Trace = Environment.GetEnvironmentVariable("SIM_TRACE") is not null;
    private readonly SpiceSession spice;
    private readonly Wiring wiring;
    private readonly double[] weights;
    private readonly int cores;
    private readonly int capacitors;
    private double[] fast;
    private (string Tolerances, int Coarse, int Fine) manner = Manners[0];

    public PeriodicSolution(SpiceSession spice, Wiring wiring, PhasorResult start)
    {
        (this.spice, this.wiring) = (spice, wiring);
        cores = wiring.Circuit.Cores.Count;
        fast = new double[start.InductorAmps.Length - cores];
        // The supply starts at its peak, where a magnetising current is near its zero. Its weight makes it a share of
        // its own amplitude.
        capacitors = wiring.Circuit.Parts.Count(p => p is Capacitor);
        weights =
        [
            .. start.InductorAmps.Take(cores).Select(i => 1 / Math.Max(1e-6, Math.Sqrt(2) * i.Magnitude)),
            .. start.Settings.Select(_ => 1.0),
            .. Enumerable.Repeat(1 / CapacitorVolts, capacitors),
        ];
        Slow = Scale(
            [
                .. start.InductorAmps.Take(cores).Select(i => Math.Sqrt(2) * i.Real),
                .. start.Settings,
                .. Enumerable.Repeat(0.0, capacitors),
            ],
            weights
        );
    }

    /// <summary>Magnetising currents, the settings of cores and lamps, then the voltages of capacitors, all weighted.</summary>
    public double[] Slow { get; private set; }

    public TransientResult Solve()
    {
        (double[] slow, double[] settled) = (Slow, fast);
        string failures = "";
        foreach ((string, int, int) next in Manners)
        {
            (Slow, fast, manner) = (slow, settled, next);
            try
            {
                for (int round = 0; round < 2; round++)
                    Slow = Map(manner.Coarse).Image;
                for (int attempt = 0; attempt < MostSlopes; attempt++)
                {
                    Slopes slopes = Learn();
                    Converge(slopes, manner.Coarse, 1e-4);
                    if (Converge(slopes, manner.Fine, 1e-5) is { } result)
                        return result;
                }
            }
            catch (SpiceFailure failure) when (!failure.HasEnded)
            {
                failures += failure.Message;
            }
        }
        throw new SpiceFailure($"{wiring.Bench.Id}: no periodic steady state. {failures}");
    }

    /// <summary>Large for a magnetising current: the map is nearly linear in it, with a slope close to 1.</summary>
    private double Trial(int n) => n < cores ? TrialOfCurrent : TrialOfSetting;

    private Slopes Learn()
    {
        (double[] at, double[] settled) = (Slow, fast);
        double[] image = Map(manner.Coarse).Image;
        double[][] images =
        [
            .. Enumerable
                .Range(0, at.Length)
                .Select(n =>
                {
                    (Slow, fast) = ((double[])at.Clone(), settled);
                    Slow[n] += Trial(n);
                    return Map(manner.Coarse).Image;
                }),
        ];
        (Slow, fast) = (at, settled);
        return new Slopes(image, images, Trial);
    }

    private TransientResult? Converge(Slopes slopes, int steps, double tolerance)
    {
        TransientResult? before = null;
        for (int round = 0; round < MostRounds; round++)
        {
            (TransientResult result, double[] image) = Map(steps);
            double[] residual = [.. image.Zip(Slow, (g, x) => g - x)];
            Slow = [.. Slow.Zip(slopes.Step(residual), (x, s) => x + s)];
            double off = residual.Max(Math.Abs);
            if (Trace)
                Console.Error.WriteLine($"  {steps.Text()} {off.Text()} {result.DcVolts.Text()} {result.AcVolts.Text()}");
            // A run whose steps ngspice had to cut is a little noisy: later rounds ask a little less.
            double enough = tolerance * (1 + round / 2);
            if (off < enough && before is not null && result.Near(before, enough))
                return result;
            if (!(off < 10))
                return null;
            before = result;
        }
        return null;
    }

    private (TransientResult Result, double[] Image) Map(int steps)
    {
        double[] plain = Scale(Slow, [.. weights.Select(w => 1 / w)]);
        double[] settings = plain[cores..^capacitors];
        Netlist netlist = wiring.Netlist(Analysis.Transient, [.. plain[..cores], .. fast, .. plain[^capacitors..]]);
        netlist.Write(wiring.CoreHenries(settings), wiring.LampOhms(settings));
        double period = 1 / wiring.Bench.Hertz;
        string hertz = wiring.Bench.Hertz.Text();
        string peak = (Math.Sqrt(2) * wiring.Bench.Source!.Volts).Text();
        spice.Load([
            .. netlist.Lines,
            $"vs {netlist.Name(wiring.Plus)} {netlist.Name(wiring.Minus)} sin(0 {peak} {hertz} 0 0 90)",
            $".options method=gear maxord=2 trtol=1e12 gmin=1e-15 {manner.Tolerances} itl4=200 pivtol=1e-30",
            ".end",
        ]);
        string probes = wiring.Probes is { } ends && netlist.Together(ends.A, ends.B) ? netlist.Volts(ends.A, ends.B) : "0";
        string[] columns =
        [
            .. netlist.Inductors.Select(name => name + "#branch"),
            .. netlist.CapacitorVolts,
            .. wiring.SettingVolts(netlist),
            .. WatchedColumns(netlist),
            probes,
            "-vs#branch",
            netlist.Volts(wiring.Plus, wiring.Minus),
        ];
        string step = (period / steps).Text();
        Waveforms waves = spice.Waves([$"tran {step} {(Cycles * period).Text()} 0 {step} uic"], columns, Cycles * period);

        int inductors = netlist.Inductors.Count;
        int tail = columns.Length - 3;
        fast = [.. Enumerable.Range(cores, inductors - cores).Select(waves.Last)];
        int settingsAt = inductors + capacitors;
        int settingsEnd = settingsAt + settings.Length;
        double[] rms = [.. Enumerable.Range(settingsAt, settings.Length).Select(n => waves.Rms(n, period))];
        double dc = waves.Mean(tail, period);
        double all = waves.Rms(tail, period);
        double ac = Math.Sqrt(Math.Max(0, all * all - dc * dc));
        double[] image =
        [
            .. Enumerable.Range(0, cores).Select(waves.Last),
            .. wiring.Settings(rms),
            .. Enumerable.Range(inductors, capacitors).Select(waves.Last),
        ];
        TransientResult result = new(ac, dc, waves.Rms(tail + 1, period), waves.MeanProduct(tail + 1, tail + 2, period))
        {
            Part =
                settingsEnd == tail
                    ? null
                    : new(
                        -waves.Least(settingsEnd, period),
                        Math.Max(waves.Most(settingsEnd + 1, period), -waves.Least(settingsEnd + 1, period)),
                        waves.MeanProduct(settingsEnd, settingsEnd + 1, period)
                    ),
        };
        return (result, Scale(image, weights));
    }

    /// <summary>Volts across the watched rectifier and amps through it, where one is watched.</summary>
    private string[] WatchedColumns(Netlist netlist) =>
        wiring.Circuit.Watched is { } ends ? [netlist.Volts(ends.A, ends.B), netlist.Watched + "#branch"] : [];

    private static double[] Scale(double[] values, double[] by) => [.. values.Zip(by, (v, w) => v * w)];
}
