using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>
/// Lays out one winding: its pieces between taps and contacts, a break, turns closed on themselves; or the wire of a resistor, the
/// same without a core.
/// </summary>
internal static class WindingBuilder
{
    private const double SameTurn = 1e-9;
    private const double Break = 1e7;

    public static void Add(Circuit circuit, JsonObject winding, Core? core, Bench bench)
    {
        double full = core is null ? winding.Number("turns", 100) : winding.Number("turns");
        double perTurn = winding.Number("ohms") * (core is null ? 1 : (234.5 + bench.Celsius) / 254.5) / full;
        double leakPerTurn = winding.Number("leakageHenries", 0) / full;
        double shorted = winding.Number("_shorted", 0);
        double turns = full - shorted;
        if (shorted > 0 && core is not null)
        {
            (int start, int end) = (circuit.Inner(), circuit.Inner());
            circuit.Add(new Coil(start, end, core, shorted, perTurn * shorted, leakPerTurn * shorted));
            circuit.Add(new Branch(start, end, 1e-3));
        }

        List<(double Turn, int Node)> points = [];
        foreach (JsonObject tap in winding.Objects("taps"))
            points.Add((Place(tap.Number("turn") - shorted, turns), circuit.Terminal(tap.Word("to"))));
        foreach (JsonObject slider in winding.Objects("sliders"))
            AddSlider(circuit, slider, bench, shorted, turns, points);
        points.Add((turns, circuit.Terminal(winding.Word("to"))));
        points.Sort((one, other) => one.Turn.CompareTo(other.Turn));

        double? broken = winding["_brokenAt"]?.GetValue<double>();
        int at = circuit.Terminal(winding.Word("from"));
        double turn = 0;
        void Wind(double to)
        {
            if (to - turn <= SameTurn)
                return;
            int next = circuit.Inner();
            circuit.Add(
                core is null
                    ? new Branch(at, next, perTurn * (to - turn))
                    : new Coil(at, next, core, to - turn, perTurn * (to - turn), leakPerTurn * (to - turn))
            );
            (at, turn) = (next, to);
        }

        foreach ((double place, int node) in points)
        {
            if (broken is { } gap && gap <= place + SameTurn)
            {
                Wind(Place(gap, turns));
                int beyond = circuit.Inner();
                circuit.Add(new Branch(at, beyond, Break));
                at = beyond;
                broken = null;
            }
            Wind(place);
            circuit.Strap(at, node);
        }
    }

    private static void AddSlider(Circuit circuit, JsonObject slider, Bench bench, double shorted, double turns, List<(double, int)> points)
    {
        double x = bench.Throttle(slider.Word("control"));
        double place = slider.Number("fromTurn") + x * (slider.Number("toTurn") - slider.Number("fromTurn"));
        place = Place(place - shorted, turns);
        double half = slider.Number("bridgesTurns", 0) / 2;
        double ohms = slider.Number("contactOhms");
        int arm = circuit.Terminal(slider.Word("to"));
        if (x < slider.Number("offBelow", 0) || x > slider.Number("offAbove", 1))
            (half, ohms) = (0, Break);
        double[] touched = half > 0 ? [Place(place - half, turns), Place(place + half, turns)] : [place];
        foreach (double touch in touched)
        {
            int contact = circuit.Inner();
            circuit.Add(new Branch(contact, arm, ohms * touched.Length));
            points.Add((touch, contact));
        }
    }

    private static double Place(double turn, double turns) => Math.Clamp(turn, 0, turns);
}
