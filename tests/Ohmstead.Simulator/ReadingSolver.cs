using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>The value of one reading, or null for OL.</summary>
internal static class ReadingSolver
{
    public static double? Value(SpiceSession spice, JsonObject unit, Bench bench)
    {
        Circuit circuit = CircuitBuilder.Build(unit, bench);
        if (bench.Quantity is "ohms" or "insulation-ohms")
            return DirectSolution.Resistance(spice, circuit, bench);
        if (bench.Source is null)
            return 0;
        if (bench.Source.DirectAmps is not null)
            return bench.Quantity == "dc-volts" ? DirectSolution.Volts(spice, circuit, bench) : 0;
        Wiring wiring = new(circuit, bench);
        PhasorResult phasor = PhasorSolution.Solve(spice, wiring);
        if (!Conducts(circuit, phasor))
        {
            return bench.Quantity switch
            {
                "ac-volts" => phasor.ProbeVolts,
                "dc-volts" => 0,
                "ac-amps" => phasor.Amps,
                "watts" => phasor.Watts,
                _ => throw new InvalidDataException($"there is no quantity {bench.Quantity}"),
            };
        }
        TransientResult steady = new PeriodicSolution(spice, wiring, phasor).Solve();
        return bench.Quantity switch
        {
            "ac-volts" => steady.AcVolts,
            "dc-volts" => steady.DcVolts,
            "ac-amps" => steady.Amps,
            "watts" => steady.Watts,
            _ => throw new InvalidDataException($"there is no quantity {bench.Quantity}"),
        };
    }

    private static bool Conducts(Circuit circuit, PhasorResult phasor) =>
        circuit
            .Parts.OfType<Rectifier>()
            .Select((rectifier, n) => Math.Sqrt(2) * phasor.JunctionVolts[n] > 0.05 * rectifier.SlopeVolts)
            .Any(yes => yes);
}
