namespace Ohmstead.Simulator;

/// <summary>The parts of a unit in one state, on numbered nodes; strapped terminals share a node.</summary>
internal sealed class Circuit
{
    private readonly Nets nodes = new();
    private readonly Dictionary<string, int> terminals = new(StringComparer.Ordinal);
    private readonly List<Part> parts = [];

    public List<Core> Cores { get; } = [];

    /// <summary>The two ends of the rectifier whose waves are asked for.</summary>
    public (int A, int B)? Watched { get; set; }

    /// <summary>All parts, their ends as the representative nodes.</summary>
    public IEnumerable<Part> Parts => parts.Select(part => part with { A = nodes.Find(part.A), B = nodes.Find(part.B) });

    public int Terminal(string name)
    {
        if (!terminals.TryGetValue(name, out int node))
            terminals[name] = node = nodes.Add();
        return nodes.Find(node);
    }

    /// <summary>How many inductors a netlist with alternating current has: cores, leakages, loads.</summary>
    public int Inductors => Cores.Count + parts.Count(p => p is Coil { Henries: > 0 } or Branch { Henries: > 0 });

    public int Inner() => nodes.Add();

    public int Node(int node) => nodes.Find(node);

    public void Strap(int a, int b) => nodes.Unite(a, b);

    public void Add(Part part)
    {
        if (part is Branch { Ohms: 0, Henries: 0 })
            Strap(part.A, part.B);
        else
            parts.Add(part);
    }

    /// <summary>Which nodes are joined by any conducting path: one number for each island.</summary>
    public Nets Islands()
    {
        Nets islands = nodes.Clone();
        foreach (Part part in parts)
            islands.Unite(part.A, part.B);
        return islands;
    }
}
