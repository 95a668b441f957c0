namespace Ohmstead.Simulator;

/// <summary>Operating points: ohmmeter, insulation tester, a direct current with a limit to its voltage.</summary>
internal static class DirectSolution
{
    private static readonly string[] Tolerances =
    [
        "abstol=1e-15 vntol=1e-10 reltol=1e-8",
        "abstol=1e-13 vntol=1e-8 reltol=1e-6",
        "abstol=1e-11 vntol=1e-6 reltol=1e-5",
    ];

    /// <summary>V/I of the meter, or null for OL.</summary>
    public static double? Resistance(SpiceSession spice, Circuit circuit, Bench bench)
    {
        bool insulation = bench.Quantity == "insulation-ohms";
        Analysis analysis = insulation ? Analysis.Insulation : Analysis.Direct;
        (int first, int second) = (circuit.Terminal(bench.First), circuit.Terminal(bench.Second));
        if (first == second)
            return 0;
        if (!new Netlist(circuit, analysis, second, null).Together(first, second))
            return null;
        double limit = insulation ? 500 : 3;
        double most = insulation ? 1e9 : 20e6;
        double ohms = limit / Current(spice, circuit, analysis, (first, second), limit);
        if (!insulation && ohms < limit / 1e-3)
            ohms = Drive(spice, circuit, (first, second), 1e-3, (first, second))[0] / 1e-3;
        return ohms > most ? null : ohms;
    }

    /// <summary>Volts between the probes while a direct current flows, limited in its voltage.</summary>
    public static double Volts(SpiceSession spice, Circuit circuit, Bench bench, double limit = 30)
    {
        Supply source = bench.Source!;
        (int from, int to) = (circuit.Terminal(source.From), circuit.Terminal(source.To));
        (int first, int second) = (circuit.Terminal(bench.First), circuit.Terminal(bench.Second));
        bool closed = new Netlist(circuit, Analysis.Direct, to, null).Together(from, to);
        if (!new Netlist(circuit, Analysis.Direct, to, (from, to)).Together(first, second))
            return 0;
        double amps = source.DirectAmps!.Value;
        if (closed)
        {
            // The network is passive: at the limit it draws less than the current wanted, or the limit is not reached.
            double atLimit = Current(spice, circuit, Analysis.Direct, (from, to), limit);
            if (atLimit >= amps)
            {
                double[] volts = Drive(spice, circuit, (from, to), amps, (first, second));
                if (volts[0] <= limit * (1 + 1e-6))
                    return volts[1];
                throw new SpiceFailure($"{bench.Id}: {atLimit.Text()} A at the limit, {volts[0].Text()} V at the current");
            }
        }
        Netlist netlist = new(circuit, Analysis.Direct, to, (from, to));
        netlist.Write([], []);
        netlist.Lines.Add($"vs {netlist.Name(from)} {netlist.Name(to)} {limit.Text()}");
        return Run(spice, netlist, netlist.Volts(first, second))[0];
    }

    private static double Current(SpiceSession spice, Circuit circuit, Analysis analysis, (int A, int B) ends, double volts)
    {
        Netlist netlist = new(circuit, analysis, ends.B, null);
        netlist.Write([], []);
        netlist.Lines.Add($"vs {netlist.Name(ends.A)} {netlist.Name(ends.B)} {volts.Text()}");
        return Run(spice, netlist, "-vs#branch")[0];
    }

    /// <summary>Drives a current; returns the volts across the source and between the probes.</summary>
    private static double[] Drive(SpiceSession spice, Circuit circuit, (int A, int B) ends, double amps, (int A, int B) probes)
    {
        Netlist netlist = new(circuit, Analysis.Direct, ends.B, ends);
        netlist.Write([], []);
        netlist.Lines.Add($"is {netlist.Name(ends.B)} {netlist.Name(ends.A)} {amps.Text()}");
        return Run(spice, netlist, netlist.Volts(ends.A, ends.B), netlist.Volts(probes.A, probes.B));
    }

    private static double[] Run(SpiceSession spice, Netlist netlist, params string[] wanted)
    {
        foreach (string tolerances in Tolerances)
        {
            spice.Load([.. netlist.Lines, $".options gmin=1e-18 itl1=1000 pivtol=1e-30 pivrel=0.5 {tolerances}", ".end"]);
            try
            {
                return spice.Ask(wanted.Length, ["op", .. wanted.Select(expression => $"print {expression}")]);
            }
            catch (SpiceFailure) when (tolerances != Tolerances[^1])
            {
                // A silicon junction in a floating part: ask a little less.
            }
        }
        throw new SpiceFailure("no operating point");
    }
}
