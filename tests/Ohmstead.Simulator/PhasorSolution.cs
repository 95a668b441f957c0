using System.Numerics;

namespace Ohmstead.Simulator;

/// <summary>The .ac solution, repeated until every core and lamp stands at its operating point.</summary>
internal static class PhasorSolution
{
    private const int MostRounds = 80;
    private const double Settled = 1e-11;

    public static PhasorResult Solve(SpiceSession spice, Wiring wiring)
    {
        double volts = wiring.Bench.Source!.Volts;
        double[] settings = wiring.Settings([.. wiring.Circuit.Cores.Select(_ => volts), .. wiring.Lamps.Select(lamp => lamp.Volts)]);
        Netlist netlist = wiring.Netlist(Analysis.Phasor);
        netlist.Write(wiring.CoreHenries(settings), wiring.LampOhms(settings));
        spice.Load([
            .. netlist.Lines,
            $"vs {netlist.Name(wiring.Plus)} {netlist.Name(wiring.Minus)} dc 0 ac {volts.Text()}",
            ".options gmin=1e-18 pivtol=1e-30 pivrel=0.5",
            ".end",
        ]);
        string run = $"ac lin 1 {wiring.Bench.Hertz.Text()} {wiring.Bench.Hertz.Text()}";
        string[] watched = wiring.SettingVolts(netlist);

        Anderson anderson = new(settings.Length + 1);
        double[] rms = [];
        for (int round = 0; ; round++)
        {
            if (round == MostRounds)
                throw new SpiceFailure($"{wiring.Bench.Id}: no operating point");
            rms = [.. Phasors(spice, [.. Alterations(wiring, settings), run], watched).Select(Complex.Abs)];
            double[] wanted = wiring.Settings(rms);
            if (settings.Length == 0 || settings.Zip(wanted, (x, g) => Math.Abs(g - x)).Max() < Settled)
                break;
            double[] next = anderson.Next(settings, wanted);
            settings = [.. settings.Zip(next, (x, n) => x + Math.Clamp(n - x, -2, 2))];
        }

        string probes = wiring.Probes is { } ends && netlist.Together(ends.A, ends.B) ? netlist.Volts(ends.A, ends.B) : "0";
        Complex[] answer = Phasors(
            spice,
            [],
            [
                probes,
                "vs#branch",
                .. netlist.Junctions.Select(j => Netlist.Difference(j.A, j.B)),
                .. netlist.Inductors.Select(name => name + "#branch"),
            ]
        );
        int junctions = netlist.Junctions.Count;
        return new PhasorResult(
            settings,
            rms,
            Complex.Abs(answer[0]),
            Complex.Abs(answer[1]),
            -volts * answer[1].Real,
            [.. answer.Skip(2).Take(junctions).Select(Complex.Abs)],
            [.. answer.Skip(2 + junctions)]
        );
    }

    private static IEnumerable<string> Alterations(Wiring wiring, double[] settings)
    {
        double[] henries = wiring.CoreHenries(settings);
        double[] ohms = wiring.LampOhms(settings);
        return henries
            .Select((value, n) => $"alter l{n.Text()} = {value.Text()}")
            .Concat(ohms.Select((value, n) => $"alter rl{n.Text()} = {value.Text()}"));
    }

    private static Complex[] Phasors(SpiceSession spice, string[] commands, string[] expressions)
    {
        string[] asked = [.. expressions.Where(expression => expression != "0")];
        double[] parts = spice.Ask(
            2 * asked.Length,
            [.. commands, .. asked.SelectMany(e => new[] { $"print real({e})", $"print imag({e})" })]
        );
        int next = 0;
        return [.. expressions.Select(e => e == "0" ? Complex.Zero : new Complex(parts[2 * next], parts[2 * next++ + 1]))];
    }
}
