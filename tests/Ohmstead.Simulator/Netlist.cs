namespace Ohmstead.Simulator;

/// <summary>
/// Writes a circuit as ngspice lines. Small resistances are written as a branch with its own current (a controlled
/// voltage), not as a conductance, so that a leakage of 1e-9 S beside 1e3 S is not lost in rounding.
/// </summary>
internal sealed class Netlist
{
    private const double BranchBelowOhms = 1e3;
    private const double ThermalVolts = 300.15 * 1.38064852e-23 / 1.6021766208e-19;
    private readonly Analysis analysis;
    private readonly Circuit circuit;
    private readonly Nets islands;
    private readonly Dictionary<int, int> grounds = [];
    private readonly double[]? initial;
    private int inner;
    private int serial;

    /// <param name="preferredGround">The node that becomes the zero of its island; other islands take any.</param>
    /// <param name="initial">
    /// The currents of the inductors at the start of a transient, in their order, then the voltages of the capacitors in theirs.
    /// </param>
    public Netlist(Circuit circuit, Analysis analysis, int preferredGround, (int A, int B)? joinedBySource, double[]? initial = null)
    {
        (this.circuit, this.analysis, this.initial) = (circuit, analysis, initial);
        islands = circuit.Islands();
        if (joinedBySource is { } pair)
            islands.Unite(pair.A, pair.B);
        grounds[islands.Find(preferredGround)] = circuit.Node(preferredGround);
        Lines.Add("* made by the simulator");
    }

    public List<string> Lines { get; } = [];

    /// <summary>Names of the inductors in their order: cores first.</summary>
    public List<string> Inductors { get; } = [];

    /// <summary>Voltages of the capacitors in their order, as expressions.</summary>
    public List<string> CapacitorVolts { get; } = [];

    public List<double> Henries { get; } = [];

    /// <summary>The two ends of every junction, in the order of the rectifiers.</summary>
    public List<(string A, string B)> Junctions { get; } = [];

    /// <summary>The source whose current is that of the watched branch; empty without one.</summary>
    public string Watched { get; private set; } = "";

    public bool Together(int a, int b) => islands.Find(a) == islands.Find(b);

    public string Name(int node)
    {
        int own = circuit.Node(node);
        int island = islands.Find(own);
        if (!grounds.TryGetValue(island, out int zero))
            grounds[island] = zero = own;
        return zero == own ? "0" : "n" + own.Text();
    }

    public string Volts(int a, int b)
    {
        (string first, string second) = (Name(a), Name(b));
        return Difference(first, second);
    }

    public static string Difference(string first, string second) =>
        (first, second) switch
        {
            ("0", "0") => "0",
            (_, "0") => $"v({first})",
            ("0", _) => $"-v({second})",
            _ => $"v({first})-v({second})",
        };

    /// <summary>Writes the parts, with the magnetising inductances and lamp resistances given.</summary>
    public void Write(IReadOnlyList<double> coreHenries, IReadOnlyList<double> lampOhms)
    {
        bool alternating = analysis is Analysis.Phasor or Analysis.Transient;
        for (int n = 0; alternating && n < circuit.Cores.Count; n++)
        {
            string node = "c" + n.Text();
            Inductor(node, "0", coreHenries[n]);
            Lines.Add($"rc{n.Text()} {node} 0 {circuit.Cores[n].LossOhms.Text()}");
        }
        int lamp = 0;
        foreach (Part part in circuit.Parts)
        {
            (string a, string b) = (Name(part.A), Name(part.B));
            switch (part)
            {
                case Branch branch:
                    if (branch.IsWatched)
                        Watched = "vh" + serial.Text();
                    Series(a, b, branch.Ohms, alternating ? branch.Henries : 0);
                    break;
                case Lamp bulb:
                    Lines.Add($"rl{lamp.Text()} {a} {b} {(alternating ? lampOhms[lamp] : bulb.Cold).Text()}");
                    lamp++;
                    break;
                case Coil coil when alternating:
                    Winding(a, b, coil);
                    break;
                case Coil coil:
                    Series(a, b, coil.Ohms, 0);
                    break;
                case Capacitor capacitor when alternating:
                    Plates(a, b, capacitor);
                    break;
                case Capacitor:
                    // Open to direct current; what hangs on it alone must not float.
                    Lines.Add($"r{(serial++).Text()} {a} {b} 1e18");
                    break;
                case Rectifier rectifier:
                    Junction(a, b, rectifier);
                    break;
            }
        }
    }

    private void Winding(string a, string b, Coil coil)
    {
        string name = (serial++).Text();
        string core = "c" + (circuit.Cores.IndexOf(coil.Core)).Text();
        string ratio = (coil.Turns / coil.Core.ReferenceTurns).Text();
        (string after, string sense) = (Fresh(), Fresh());
        Lines.Add($"e{name} {a} {after} {core} 0 {ratio}");
        Lines.Add($"vf{name} {after} {sense} 0");
        Lines.Add($"f{name} 0 {core} vf{name} {ratio}");
        Series(sense, b, Math.Max(coil.Ohms, 1e-9), coil.Henries);
    }

    private void Plates(string a, string b, Capacitor capacitor)
    {
        string inner = capacitor.SeriesOhms > 0 ? Fresh() : a;
        if (capacitor.SeriesOhms > 0)
            Series(a, inner, capacitor.SeriesOhms, 0);
        int number = CapacitorVolts.Count;
        string start = initial is null ? "" : $" ic={initial[circuit.Inductors + number].Text()}";
        Lines.Add($"cx{number.Text()} {inner} {b} {capacitor.Farads.Text()}{start}");
        Lines.Add($"r{(serial++).Text()} {inner} {b} 1e18");
        CapacitorVolts.Add(Difference(inner, b));
    }

    private void Junction(string a, string b, Rectifier rectifier)
    {
        Series(a, b, rectifier.LeakageOhms, 0);
        if (analysis == Analysis.Insulation)
            return;
        string name = (serial++).Text();
        string anode = a;
        if (rectifier.SeriesOhms > 0)
            Series(a, anode = Fresh(), rectifier.SeriesOhms, 0);
        Junctions.Add((anode, b));
        if (analysis == Analysis.Phasor)
        {
            Lines.Add($"rj{name} {anode} {b} {(rectifier.SlopeVolts / rectifier.SaturationAmps).Text()}");
            return;
        }
        Lines.Add($"d{name} {anode} {b} md{name}");
        Lines.Add(DeepReverse(name, anode, b, rectifier));
        Lines.Add($".model md{name} d(is={rectifier.SaturationAmps.Text()} n={(rectifier.SlopeVolts / ThermalVolts).Text()})");
    }

    /// <summary>
    /// Below -3 slopes ngspice's diode follows a cubic tail in place of the exponential, 0.4 % of the saturation current
    /// off; this source makes up the difference.
    /// </summary>
    private static string DeepReverse(string name, string a, string b, Rectifier rectifier)
    {
        string knee = (3 * rectifier.SlopeVolts).Text();
        string depth = $"max(v({b})-v({a}),{knee})";
        return $"b{name} {a} {b} i={rectifier.SaturationAmps.Text()}*(exp(-{depth}/{rectifier.SlopeVolts.Text()})"
            + $"-pow({knee}/({Math.E.Text()}*{depth}),3))";
    }

    private void Series(string a, string b, double ohms, double henries)
    {
        string between = henries > 0 && ohms > 0 ? Fresh() : a;
        if (henries > 0)
            Inductor(a, ohms > 0 ? between : b, henries);
        if (ohms <= 0)
            return;
        string name = (serial++).Text();
        if (ohms >= BranchBelowOhms)
        {
            Lines.Add($"r{name} {between} {b} {ohms.Text()}");
            return;
        }
        string sense = Fresh();
        Lines.Add($"vh{name} {between} {sense} 0");
        Lines.Add($"h{name} {sense} {b} vh{name} {ohms.Text()}");
    }

    private void Inductor(string a, string b, double henries)
    {
        int number = Inductors.Count;
        string name = "l" + number.Text();
        string start = initial is null ? "" : $" ic={initial[number].Text()}";
        Lines.Add($"{name} {a} {b} {henries.Text()}{start}");
        Inductors.Add(name);
        Henries.Add(henries);
    }

    private string Fresh() => "m" + (inner++).Text();
}
