namespace Ohmstead.Simulator;

/// <summary>Disjoint sets of node numbers.</summary>
internal sealed class Nets
{
    private readonly List<int> parent = [];

    public int Count => parent.Count;

    public int Add()
    {
        parent.Add(parent.Count);
        return parent.Count - 1;
    }

    public int Find(int node)
    {
        while (parent[node] != node)
            node = parent[node] = parent[parent[node]];
        return node;
    }

    public void Unite(int a, int b) => parent[Find(b)] = Find(a);

    public Nets Clone()
    {
        Nets copy = new();
        copy.parent.AddRange(parent);
        return copy;
    }
}
