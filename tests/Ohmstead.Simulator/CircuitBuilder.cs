using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>Makes the circuit of a sheet (faults already applied) in the state of one reading.</summary>
internal static class CircuitBuilder
{
    public static Circuit Build(JsonObject sheet, Bench bench)
    {
        Circuit circuit = new();
        foreach (string[] group in bench.Joined)
        foreach (string terminal in group)
            circuit.Strap(circuit.Terminal(group[0]), circuit.Terminal(terminal));
        foreach (JsonObject core in sheet.Objects("cores"))
            circuit.Cores.Add(Core.Read(sheet, core));
        foreach (JsonObject element in sheet.Objects("elements"))
            if (!bench.Lifted.Contains(element.Word("id")))
                Add(circuit, sheet, element, bench);
        foreach (JsonObject load in bench.Loads)
            circuit.Add(
                new Branch(
                    circuit.Terminal(load.Word("from")),
                    circuit.Terminal(load.Word("to")),
                    load.Number("ohms", 0),
                    load.Number("henries", 0)
                )
            );
        return circuit;
    }

    private static void Add(Circuit circuit, JsonObject sheet, JsonObject element, Bench bench)
    {
        string kind = element.Word("kind");
        if (kind == "winding")
        {
            Core core = circuit.Cores.First(entry => entry.Id == element.Word("core"));
            WindingBuilder.Add(circuit, element, core, bench);
            return;
        }
        if (kind == "resistor" && (element.ContainsKey("sliders") || element.ContainsKey("taps")))
        {
            WindingBuilder.Add(circuit, element, null, bench);
            return;
        }
        int from = circuit.Terminal(element.Word("from"));
        int to = circuit.Terminal(element.Word("to"));
        if (element["_watched"] is not null)
            from = Watch(circuit, from, to);
        if (kind == "capacitor" && element.Number("_leakOhms", 0) is > 0 and var leak)
            circuit.Add(new Branch(from, to, leak));
        circuit.Add(
            kind switch
            {
                "wire" => new Branch(from, to, element.Number("ohms", 0.004)),
                "joint" => new Branch(from, to, element.Number("ohms", 0.002)),
                "resistor" or "breaker" or "insulation" => new Branch(from, to, element.Number("ohms")),
                "switch" => new Branch(from, to, SwitchOhms(sheet, element, bench)),
                "capacitor" => new Capacitor(from, to, element.Number("farads"), element.Number("_seriesOhms", 0)),
                "lamp" => new Lamp(from, to, element.Number("volts"), element.Number("amps")),
                "rectifier" => new Rectifier(
                    from,
                    to,
                    element.Number("saturationAmps"),
                    element.Number("slopeVolts"),
                    element.Number("seriesOhms"),
                    element.Number("leakageOhms")
                ),
                _ => throw new InvalidDataException($"there is no kind {kind}"),
            }
        );
    }

    /// <summary>A resistance of nothing to speak of before the part, so that its current can be read.</summary>
    private static int Watch(Circuit circuit, int from, int to)
    {
        int inner = circuit.Inner();
        circuit.Add(new Branch(from, inner, 1e-6, IsWatched: true));
        circuit.Watched = (inner, to);
        return inner;
    }

    private static double SwitchOhms(JsonObject sheet, JsonObject element, Bench bench)
    {
        string position = bench.Position(sheet, element.Word("control"));
        bool closed = element["closedIn"].Words().Contains(position);
        string stuck = element.Word("_stuck", "");
        if (stuck == "stuck-open")
            return element.Number("openOhms", 1e8);
        if (closed)
            return element.Number("ohms", 0.01);
        return stuck == "stuck-closed" ? 0.01 : element.Number("openOhms", 1e8);
    }
}
