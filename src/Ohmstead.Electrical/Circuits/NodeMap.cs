namespace Ohmstead.Electrical.Circuits;

/// <summary>Numbers the nodes of a circuit: terminals by name, straps joined, inner nodes without a name.</summary>
internal sealed class NodeMap
{
    private readonly Dictionary<string, int> byName = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> joinedTo = new(StringComparer.Ordinal);

    public int Count { get; private set; }

    /// <summary>Makes the terminals one node; before any of them is numbered.</summary>
    public void Join(IEnumerable<string> terminals)
    {
        string? first = null;
        foreach (var t in terminals)
        {
            var root = Root(t);
            if (first is null)
                first = root;
            else if (root != first)
                joinedTo[root] = first;
        }
    }

    /// <summary>The node of a terminal.</summary>
    public int Of(string terminal)
    {
        var root = Root(terminal);
        if (!byName.TryGetValue(root, out var node))
            byName[root] = node = Count++;
        return node;
    }

    /// <summary>A node without a name.</summary>
    public int Inner() => Count++;

    private string Root(string terminal)
    {
        while (joinedTo.TryGetValue(terminal, out var next))
            terminal = next;
        return terminal;
    }
}
