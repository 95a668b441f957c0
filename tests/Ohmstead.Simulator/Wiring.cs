namespace Ohmstead.Simulator;

/// <summary>A circuit with its alternating source in place, and where the reading is taken.</summary>
internal sealed class Wiring
{
    public Wiring(Circuit circuit, Bench bench)
    {
        Circuit = circuit;
        Bench = bench;
        Supply source = bench.Source!;
        (int from, int to) = (circuit.Terminal(source.From), circuit.Terminal(source.To));
        (Plus, Minus) = (from, to);
        if (source.SeriesLamp is { } lamp)
        {
            Plus = circuit.Inner();
            circuit.Add(new Lamp(Plus, from, lamp.Volts, lamp.Amps));
        }
        else if (source.SeriesOhms > 0)
        {
            Plus = circuit.Inner();
            circuit.Add(new Branch(Plus, from, source.SeriesOhms));
        }
        if (bench.First.Length > 0)
            Probes = (circuit.Terminal(bench.First), circuit.Terminal(bench.Second));
        Lamps = [.. circuit.Parts.OfType<Lamp>()];
    }

    public Circuit Circuit { get; }

    public Bench Bench { get; }

    public int Plus { get; }

    public int Minus { get; }

    public (int A, int B)? Probes { get; }

    public Lamp[] Lamps { get; }

    public double Omega => 2 * Math.PI * Bench.Hertz;

    public Netlist Netlist(Analysis analysis, double[]? initial = null) => new(Circuit, analysis, Minus, (Plus, Minus), initial);

    /// <summary>Logarithms of the core reactances and lamp resistances at given RMS voltages.</summary>
    public double[] Settings(IReadOnlyList<double> volts)
    {
        int cores = Circuit.Cores.Count;
        return
        [
            .. volts.Select(
                (v, n) => n < cores ? -Math.Log(Math.Max(1e-12, Circuit.Cores[n].Susceptance(v, Omega))) : Math.Log(Lamps[n - cores].Hot(v))
            ),
        ];
    }

    public double[] CoreHenries(double[] settings) => [.. settings.Take(Circuit.Cores.Count).Select(x => Math.Exp(x) / Omega)];

    public double[] LampOhms(double[] settings) => [.. settings.Skip(Circuit.Cores.Count).Select(Math.Exp)];

    /// <summary>ngspice expressions of the voltages that the settings depend on.</summary>
    public string[] SettingVolts(Netlist netlist) =>
        [.. Circuit.Cores.Select((_, n) => $"v(c{n.Text()})"), .. Lamps.Select(lamp => netlist.Volts(lamp.A, lamp.B))];
}
