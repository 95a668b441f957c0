namespace Ohmstead.Electrical.Circuits;

/// <summary>The graph of a circuit while its elimination is planned.</summary>
internal sealed class MeshOrder(int nodeCount)
{
    private readonly Dictionary<int, int>[] neighbours = [.. Enumerable.Range(0, nodeCount).Select(_ => new Dictionary<int, int>())];
    private readonly bool[] gone = new bool[nodeCount];

    public int Slots { get; private set; }

    /// <summary>The slot of the edge between two nodes.</summary>
    public int Edge(int a, int b)
    {
        if (neighbours[a].TryGetValue(b, out var slot))
            return slot;
        neighbours[a][b] = neighbours[b][a] = Slots;
        return Slots++;
    }

    /// <summary>Eliminates the nodes that may go, least neighbours first, and appends the steps; with <paramref name="places"/> they name the nodes by place.</summary>
    public void Eliminate(Func<int, bool> mayGo, List<int> steps, int[]? places)
    {
        while (true)
        {
            var best = -1;
            for (var n = 0; n < nodeCount; n++)
                if (!gone[n] && mayGo(n) && (best < 0 || neighbours[n].Count < neighbours[best].Count))
                    best = n;
            if (best < 0)
                return;
            Step(best, steps, places);
        }
    }

    private void Step(int node, List<int> steps, int[]? places)
    {
        var around = neighbours[node].OrderBy(p => p.Key).ToArray();
        if (places is not null)
            steps.Add(places[node]);
        steps.Add(around.Length);
        foreach (var (other, slot) in around)
        {
            steps.Add(slot);
            if (places is not null)
                steps.Add(places[other]);
            neighbours[other].Remove(node);
        }
        for (var j = 0; j < around.Length; j++)
        for (var k = j + 1; k < around.Length; k++)
            steps.Add(Edge(around[j].Key, around[k].Key));
        neighbours[node].Clear();
        gone[node] = true;
    }

    /// <summary>The slots between nodes that are left.</summary>
    public List<int> Alive() => [.. Edges().Select(e => e.Slot)];

    /// <summary>The nodes that are left.</summary>
    public List<int> Left() => [.. Enumerable.Range(0, nodeCount).Where(n => !gone[n])];

    /// <summary>The edges between nodes that are left.</summary>
    public IEnumerable<(int Slot, int A, int B)> Edges()
    {
        for (var a = 0; a < nodeCount; a++)
            foreach (var (b, slot) in neighbours[a].OrderBy(p => p.Key))
                if (a < b)
                    yield return (slot, a, b);
    }
}
